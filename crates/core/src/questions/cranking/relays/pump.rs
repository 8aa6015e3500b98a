//! The fuel pump: it must run while the starter turns, and stop when the engine does.

use crate::{
    cranking::{CrankingAnswer, CrankingInputs, Release},
    fields,
    fields::relays::Cut,
    finding::{Finding, Severity},
    message::Message,
    quantity::{Measure, Time, rpm, seconds},
    questions::cranking::words,
    questions::cranking::{
        advice,
        extent::{latest, longest_interval},
        search::StartSearch,
    },
    read::SpeedRelay,
    report::{Figure, Tone},
    say,
    schema::Choice,
    working::{Formula, step},
};

const PRIME: Formula = Formula {
    symbols: "t_wait = t_prime − t_power",
    source: "the pump runs from key-on for t_prime, and again t_power after the starter begins to turn, from the worst start",
};

/// A pump that runs longer than this on an engine that stands runs on; a usual stall time-out and prime are no longer
/// (common practice, no source).
const RUNS_ON_S: f64 = 2.0;

/// Whether something stops the pump beside its relay.
pub(super) fn is_cut(cut: Option<Cut>) -> bool {
    matches!(cut, Some(Cut::Inertia | Cut::OilPressure))
}

/// How grave it is that a pump runs on: what else may stop it where that was not said is to be found out.
pub(super) fn running_on(cut: Option<Cut>) -> (Severity, Tone) {
    match cut {
        Some(Cut::Nothing) => (Severity::Danger, Tone::Bad),
        Some(Cut::Inertia | Cut::OilPressure) | None => (Severity::Doubt, Tone::Doubtful),
    }
}

/// A switch that cuts a pump without the controller.
pub(super) fn fit_cut(at: usize) -> Message {
    let edit = fields::relays::CUT.at(at).edit(Cut::Inertia.choosable().code);
    say!(words::relays::FIT_CUT).done_by(vec![edit])
}

/// How long it runs on an engine that stands.
fn on_at_rest(answer: &CrankingAnswer) -> Time {
    answer.stop.map_or(seconds(0.0), |stop| stop.on_at_rest)
}

/// The verdict on a threshold that works while cranking.
pub(super) fn verdict(
    relay: &SpeedRelay,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
) -> (Tone, Message, Message) {
    let (on, power) = (on_at_rest(answer), latest(answer).0);
    let threshold = inputs.threshold.unwrap_or_default();
    if on.base() > RUNS_ON_S {
        let (_, tone) = running_on(relay.cut);
        let why = say!(
            words::relays::PUMP_RUNS_ON_WHY,
            on = on,
            timeout = inputs.stall_timeout.high,
            release = inputs.release.of(threshold)
        );
        return (tone, say!(words::relays::PUMP_RUNS_ON, on = on), why);
    }
    let off = answer.stop.map_or(seconds(0.0), |stop| stop.off_after);
    let why = say!(words::relays::PUMP_SUITS_WHY, power = power, off = off, on = on);
    if relay.cut == Some(Cut::Nothing) {
        return (Tone::Doubtful, say!(words::relays::PUMP_NO_CUT, threshold = threshold), why);
    }
    (Tone::Good, say!(words::relays::PUMP_SUITS, threshold = threshold), why)
}

/// What the fitter should know of a pump after a stall or a crash.
pub(super) fn findings(
    relay: &SpeedRelay,
    search: StartSearch<'_>,
    answer: &CrankingAnswer,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let on = on_at_rest(answer);
    if on.base() > RUNS_ON_S {
        let (severity, _) = running_on(relay.cut);
        let message = say!(words::relays::PUMP_ON_AFTER_STOP, name = relay.title(), on = on);
        let interval = longest_interval(answer);
        let mut cures: Vec<_> = raised(relay, search, answer).into_iter().collect();
        cures.push(say!(words::SHORTER_TIMEOUT, interval = interval));
        cures.extend((!is_cut(relay.cut)).then(|| fit_cut(relay.at)));
        let key = fields::relays::RELAY_OFF_BELOW.at(relay.at);
        findings.push(Finding::new(severity, key, message).cured_by(cures));
    }
    if relay.cut == Some(Cut::Nothing) {
        let message = say!(words::relays::PUMP_UNCUT, name = relay.title());
        let finding = Finding::new(Severity::Doubt, fields::relays::CUT.at(relay.at), message);
        findings.push(finding.cured_by([fit_cut(relay.at)]));
    }
    findings
}

/// A release that works while cranking and stops the pump in time; the nearest to the best of them.
fn raised(relay: &SpeedRelay, search: StartSearch<'_>, answer: &CrankingAnswer) -> Option<Message> {
    let threshold = search.inputs.threshold?;
    let best = advice::best(search, answer)?.release;
    let highest = search.releases(threshold)?.high;
    let between = (best.base() * highest).sqrt();
    let tries = [best.base(), between.round(), (highest * 0.95).round()].map(rpm);
    let release = tries.into_iter().find(|release| {
        search.stop(*release).on_at_rest.base() <= RUNS_ON_S
            && search.serves(Release::At(*release), threshold)
    })?;
    let edit = fields::relays::RELAY_OFF_BELOW.at(relay.at).edit(release.show().into_shown());
    Some(say!(words::relays::RAISE_RELEASE, release = release).done_by(vec![edit]))
}

/// How soon after key-on the starter must turn for the pump not to stand in between.
pub(in crate::questions::cranking) fn figures(
    relay: &SpeedRelay,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
) -> Option<Figure> {
    inputs.threshold?;
    if answer.corners.iter().any(|corner| !corner.closes) {
        return None;
    }
    let (prime, power) = (relay.prime, latest(answer).0);
    let wait = prime.map(|prime| prime - power);
    let values = [("t_prime", prime.nominal.show()), ("t_power", power.show())];
    let working = vec![step(&PRIME, &values, wait.nominal)];
    Some(Figure::new(say!(words::relays::FIGURE_PRIME), wait, working))
}
