//! Relays that must stay out while the starter turns, and be on while the engine runs: the alternator's field, a fan.

use crate::{
    cranking::CrankingInputs,
    fields,
    finding::{Finding, Findings, Severity},
    message::{Edit, Message},
    quantity::{Measure, RotationalSpeed, rpm},
    questions::cranking::Details,
    questions::cranking::search::StartSearch,
    questions::cranking::words,
    read::{Purpose, SpeedRelay},
    report::{Answer, Figure, Tone},
    say,
    timeline::Interval,
    working::{Formula, step},
};

const LOW: Formula = Formula {
    symbols: "n_on > n_crest",
    source: "the fastest reading while the starter turns, in any case: simulated",
};
const HIGH: Formula = Formula {
    symbols: "n_on ≤ n_idle",
    source: "it must be on while the engine idles; common practice, no source",
};

/// Why a threshold is wrong, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum ThresholdCase {
    ReleaseAbove,
    WhileCranking,
    HoldsWhileCranking,
    NotAtIdle,
    Suits,
}

pub(super) fn answer(
    relay: &SpeedRelay,
    purpose: Purpose,
    search: StartSearch<'_>,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let inputs = search.inputs;
    let (crest, at) = crest(search);
    let band = Interval { low: crest.base(), high: inputs.idle.base() };
    let (low, high) = super::advice::ends(band);
    let mut to_do: Option<Message> = None;
    let (tone, verdict, why) = match relay.threshold {
        _ if band.is_empty() => (
            Tone::Bad,
            say!(words::NONE_WORKS),
            say!(words::relays::RUNNING_NONE_WHY, crest = crest, idle = inputs.idle),
        ),
        None => (
            Tone::Open,
            say!(words::ANY_WORKS, low = low, high = high),
            say!(words::relays::RUNNING_ANY_WHY, crest = crest, idle = inputs.idle),
        ),
        Some(threshold) => {
            let release = inputs.release.of(threshold);
            let case = case(relay, inputs, crest, threshold);
            let (on, off) = advised(band);
            to_do = (case != ThresholdCase::Suits).then(|| {
                say!(words::DO_SET, threshold = on, release = off, agree = inputs.confirmation)
                    .done_by(set_to(relay, on, off))
            });
            findings.extend(finding(relay, purpose, case, (crest, &at), inputs, (on, off)));
            let why = say!(
                words::relays::RUNNING_WHY,
                crest = crest,
                at = at.as_str(),
                release = release,
                idle = inputs.idle
            );
            (tone(case, purpose), words(case, threshold), why)
        }
    };
    let mut answer = Answer::new(relay.path(), tone, verdict);
    answer.why = Some(why);
    answer.to_do = to_do.into_iter().collect();
    answer.show(details.map(|it| (it.running)(band)));
    answer
}

/// The fastest reading while the starter turns, and the corner at which it is read.
fn crest(search: StartSearch<'_>) -> (RotationalSpeed, String) {
    let none = (rpm(0.0), String::new());
    search
        .readings_at_corners()
        .into_iter()
        .fold(none, |most, (name, reading)| if reading > most.0 { (reading, name) } else { most })
}

fn case(
    relay: &SpeedRelay,
    inputs: &CrankingInputs,
    crest: RotationalSpeed,
    threshold: RotationalSpeed,
) -> ThresholdCase {
    let tests = [
        (ThresholdCase::WhileCranking, threshold <= crest),
        (ThresholdCase::ReleaseAbove, relay.release_above.is_some()),
        (ThresholdCase::HoldsWhileCranking, inputs.release.of(threshold) <= crest),
        (ThresholdCase::NotAtIdle, threshold > inputs.idle),
    ];
    tests.into_iter().find(|(_, so)| *so).map_or(ThresholdCase::Suits, |(case, _)| case)
}

fn tone(case: ThresholdCase, purpose: Purpose) -> Tone {
    match (case, purpose) {
        (ThresholdCase::Suits, _) => Tone::Good,
        (ThresholdCase::ReleaseAbove, _)
        | (ThresholdCase::WhileCranking, Purpose::AlternatorField) => Tone::Bad,
        _ => Tone::Doubtful,
    }
}

fn words(case: ThresholdCase, threshold: RotationalSpeed) -> Message {
    match case {
        ThresholdCase::ReleaseAbove => say!(words::RELEASE, threshold = threshold),
        ThresholdCase::WhileCranking => say!(words::relays::RUNNING_EARLY, threshold = threshold),
        ThresholdCase::HoldsWhileCranking => say!(words::relays::RUNNING_HOLDS),
        ThresholdCase::NotAtIdle => say!(words::relays::RUNNING_LATE, threshold = threshold),
        ThresholdCase::Suits => say!(words::relays::RUNNING_SUITS, threshold = threshold),
    }
}

/// A threshold and a release that leave crest and idle as far off as they can.
fn advised(band: Interval) -> (RotationalSpeed, RotationalSpeed) {
    let between = |low: f64, high: f64| {
        let middle = (low * high).sqrt();
        let round = (middle / 10.0).round() * 10.0;
        if round > low && round < high { round } else { middle }
    };
    let on = between(band.low, band.high);
    (rpm(on), rpm(between(band.low, on)))
}

fn finding(
    relay: &SpeedRelay,
    purpose: Purpose,
    case: ThresholdCase,
    (crest, at): (RotationalSpeed, &str),
    inputs: &CrankingInputs,
    (on, off): (RotationalSpeed, RotationalSpeed),
) -> Option<Finding> {
    let name = relay.title();
    let is_field = purpose == Purpose::AlternatorField;
    let severity = if is_field { Severity::Fault } else { Severity::Doubt };
    let (severity, path, message) = match case {
        ThresholdCase::WhileCranking => (
            severity,
            fields::relays::RELAY_ON_AT.at(relay.at),
            say!(words::relays::RELAY_WHILE_CRANKING, name = name, crest = crest, at = at),
        ),
        ThresholdCase::HoldsWhileCranking => (
            Severity::Doubt,
            fields::relays::RELAY_OFF_BELOW.at(relay.at),
            say!(words::relays::RELAY_HOLDS_WHILE_CRANKING, name = name, crest = crest),
        ),
        ThresholdCase::NotAtIdle => (
            Severity::Doubt,
            fields::relays::RELAY_ON_AT.at(relay.at),
            say!(words::relays::RELAY_NOT_AT_IDLE, name = name, idle = inputs.idle),
        ),
        ThresholdCase::ReleaseAbove | ThresholdCase::Suits => return None,
    };
    let cure = say!(words::relays::SET_RUNNING, threshold = on, release = off)
        .done_by(set_to(relay, on, off));
    Some(Finding::new(severity, path, message).cured_by([cure]))
}

fn set_to(relay: &SpeedRelay, on: RotationalSpeed, off: RotationalSpeed) -> Vec<Edit> {
    let edits = [(fields::relays::RELAY_ON_AT, on), (fields::relays::RELAY_OFF_BELOW, off)];
    edits.map(|(key, speed)| key.at(relay.at).edit(speed.show().into_shown())).into()
}

pub(in crate::questions::cranking) fn figure(band: Interval) -> Figure {
    let (low, high) = (rpm(band.low), rpm(band.high));
    let (on, _) = advised(band);
    let working = vec![
        step(&LOW, &[("n_on", on.show()), ("n_crest", low.show())], low),
        step(&HIGH, &[("n_on", on.show()), ("n_idle", high.show())], high),
    ];
    let shown = super::advice::shown(band);
    Figure::plain(say!(words::FIGURE_WORKS), crate::quantity::Value::text(shown), working)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: √(300 · 800) = 489.9 and √(300 · 490) = 383.4 are 490 and 380 in whole tens; √(80) and √(110) have no whole ten between
    /// 8 and 10, or 10 and 11.
    #[test]
    fn what_is_advised_lies_midway_in_whole_tens_where_one_lies_between() {
        let advised = |low: f64, high: f64| advised(Interval { low, high });
        assert_eq!(advised(300.0, 800.0), (rpm(490.0), rpm(380.0)));
        assert_eq!(advised(8.0, 10.0).0, rpm(80.0_f64.sqrt()));
        assert_eq!(advised(10.0, 11.0).0, rpm(110.0_f64.sqrt()));
    }
}
