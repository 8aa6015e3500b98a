//! The further relays that are switched at a speed, each by the demands of what it feeds.

pub(super) mod on_key;
pub(super) mod pump;
pub(super) mod running;

use std::rc::Rc;

use super::{
    Answer, Details, StartAsked, advice,
    judge::{self, StartCase},
    problems,
    search::{Searched, StartSearch},
    unsearched,
};
use crate::{
    budget::{Budget, Pool},
    car::Car,
    cranking::{self, CrankingInputs, Starts},
    finding::Findings,
    message::Message,
    quantity::seconds,
    questions::cranking::words,
    read::{Known, Purpose, SpeedRelay},
    report::{Tone, recall::Recall},
    say,
};

/// An answer for each relay of the list.
pub(super) fn answers(
    car: &Car<'_>,
    pool: &mut Pool,
    (memory, starts): (&mut Recall<StartAsked>, Option<&Starts>),
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let each = |relay: &SpeedRelay| {
        let asked = StartAsked { known: Rc::clone(&car.cranking), relay: Some(relay.clone()) };
        memory.recall(asked, pool, findings, |asked, budget, findings| {
            Some(answer(&asked.known, asked.relay.as_ref()?, (starts, budget), details, findings))
        })
    };
    car.relays.iter().filter_map(each).collect()
}

fn answer(
    known: &Known,
    relay: &SpeedRelay,
    (starts, budget): (Option<&Starts>, &Budget),
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let (inputs, starts, purpose) = match (&known.inputs, starts, relay.purpose) {
        (Some(inputs), Some(starts), Some(purpose)) => (of_relay(inputs, relay), starts, purpose),
        _ => return open(known, relay),
    };
    let search = StartSearch { inputs: &inputs, starts, budget };
    let mut answer = if purpose.is_for_starting() {
        match search.answer(false) {
            Searched::Whole(result) => {
                let mut answer = starting(known, relay, purpose, search, &result, findings);
                let is_wanted = answer.verdict.tone != Tone::Good || inputs.threshold.is_none();
                let best = advice::best(search, &result).filter(|_| is_wanted);
                answer.show(
                    details.map(|it| (it.relay)(relay, purpose, &inputs, &result, best.as_ref())),
                );
                answer
            }
            Searched::TooMuch(outline) => {
                not_searched(known, relay, purpose, search, &outline, findings)
            }
        }
    } else {
        running::answer(relay, purpose, search, details, findings)
    };
    answer.title = Some(say!(words::relays::RELAY_TITLE, name = relay.title()));
    answer
}

fn open(known: &Known, relay: &SpeedRelay) -> Answer {
    let mut answer = Answer::new(relay.path(), Tone::Open, say!(words::OPEN));
    answer.title = Some(say!(words::relays::RELAY_TITLE, name = relay.title()));
    answer.why = Some(if relay.purpose.is_none() {
        say!(words::relays::RELAY_WANTS_PURPOSE)
    } else {
        super::wants(known)
    });
    answer
}

/// The same engine with this relay.
fn of_relay(inputs: &CrankingInputs, relay: &SpeedRelay) -> CrankingInputs {
    let is_coils = relay.purpose.is_some_and(|it| it.feeds(Purpose::Coils));
    CrankingInputs {
        threshold: relay.threshold,
        release: relay.release,
        relay: relay.relay,
        dwell: if is_coils { inputs.dwell } else { seconds(0.0) },
        ..inputs.clone()
    }
}

/// A relay of which following every start is too much: what can be told without.
fn not_searched(
    known: &Known,
    relay: &SpeedRelay,
    purpose: Purpose,
    search: StartSearch<'_>,
    outline: &cranking::CrankingAnswer,
    findings: &mut Findings,
) -> Answer {
    let known = known.of_relay(relay);
    let inputs = search.inputs;
    let (tone, verdict, why) = unsearched::verdict(&known, inputs, outline);
    let mut answer = Answer::new(relay.path(), tone, verdict);
    answer.why = Some(why);
    let finding = unsearched::finding(&known, search);
    answer.to_do.clone_from(&finding.remedies);
    findings.push(finding);
    answer.cautions = cautions(relay);
    findings.extend(problems::of_relay(&known, inputs, outline, None, purpose));
    if purpose == Purpose::Pump {
        findings.extend(pump::findings(relay, search, outline));
    }
    answer
}

/// A relay that must be closed while the starter turns.
fn starting(
    known: &Known,
    relay: &SpeedRelay,
    purpose: Purpose,
    search: StartSearch<'_>,
    result: &cranking::CrankingAnswer,
    findings: &mut Findings,
) -> Answer {
    let inputs = search.inputs;
    let first = known.inputs.as_ref().and_then(|it| it.threshold);
    let known = known.of_relay(relay);
    let advice = advice::advice(search, result, true);
    let (mut tone, mut verdict, mut why) = judge::verdict(&known, inputs, result);
    let case = inputs.threshold.map(|it| judge::case(&known, inputs, result, it));
    let works = [StartCase::Suits, StartCase::MissesSpark, StartCase::Late, StartCase::NoMark];
    if purpose == Purpose::Pump {
        if case.is_some_and(|case| works.contains(&case)) {
            (tone, verdict, why) = pump::verdict(relay, inputs, result);
        }
        findings.extend(pump::findings(relay, search, result));
    }
    findings.extend(problems::of_relay(&known, inputs, result, advice, purpose));
    // what the time-out cuts at full speed, or of the coils' relay as well, is told with that
    if first != inputs.threshold && !problems::is_silent_at_speed(inputs, result) {
        findings.extend(problems::timeout_in_gap(inputs, result));
    }
    let mut answer = Answer::new(relay.path(), tone, verdict);
    answer.why = Some(why);
    answer.to_do = to_do(&known, relay, inputs, advice);
    answer.cautions = cautions(relay);
    answer
}

/// A pump that nothing but its relay stops.
fn cautions(relay: &SpeedRelay) -> Vec<Message> {
    let is_uncut = relay.purpose == Some(Purpose::Pump) && !pump::is_cut(relay.cut);
    is_uncut.then(|| say!(words::CAUTION_PUMP)).into_iter().collect()
}

fn to_do(
    known: &Known,
    relay: &SpeedRelay,
    inputs: &CrankingInputs,
    advice: Option<advice::Advice>,
) -> Vec<Message> {
    let mut steps = Vec::new();
    steps.extend(relay.threshold.is_none().then(|| say!(words::relays::RELAY_WANTS_THRESHOLD)));
    steps.extend(advice.map(|it| it.step(known, inputs)));
    if relay.purpose == Some(Purpose::Pump) {
        steps.push(say!(words::relays::DO_PUMP));
    }
    steps
}
