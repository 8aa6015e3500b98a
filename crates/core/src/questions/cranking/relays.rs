//! The further relays that are switched at a speed, each by the demands of what it feeds.

mod pump;
mod running;

use std::rc::Rc;

use super::{
    Answer, Asked, Memory, advice, bounds,
    figures::{bands, power, stop},
    judge::{self, Case},
    problems,
};
use crate::{
    questions::cranking::words,
    car::Car,
    cranking::{self, Inputs},
    finding::Findings,
    message::Message,
    quantity::seconds,
    read::{Known, Purpose, SpeedRelay},
    report::Tone,
    say,
};

/// An answer for each relay of the list.
pub(super) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let each = |relay: &SpeedRelay| {
        let asked = Asked { known: Rc::clone(&car.cranking), relay: Some(relay.clone()) };
        memory.recall(asked, findings, |asked, findings| {
            Some(answer(&asked.known, asked.relay.as_ref()?, findings))
        })
    };
    car.relays.iter().filter_map(each).collect()
}

fn answer(known: &Known, relay: &SpeedRelay, findings: &mut Findings) -> Answer {
    let (inputs, purpose) = match (&known.inputs, relay.purpose) {
        (Some(inputs), Some(purpose)) => (of_relay(inputs, relay), purpose),
        _ => return open(known, relay),
    };
    let mut answer = if purpose.is_for_starting() {
        match starting(known, relay, purpose, &inputs, findings) {
            Some(answer) => answer,
            None => return open(known, relay),
        }
    } else {
        running::answer(relay, purpose, &inputs, findings)
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
fn of_relay(inputs: &Inputs, relay: &SpeedRelay) -> Inputs {
    let is_coils = relay.purpose == Some(Purpose::Coils);
    Inputs {
        threshold: relay.threshold,
        release: relay.release,
        relay: relay.relay,
        dwell: if is_coils { inputs.dwell } else { seconds(0.0) },
        ..inputs.clone()
    }
}

/// A relay that must be closed while the starter turns.
fn starting(
    known: &Known,
    relay: &SpeedRelay,
    purpose: Purpose,
    inputs: &Inputs,
    findings: &mut Findings,
) -> Option<Answer> {
    let result = cranking::answer(inputs)?;
    let known = known.of_relay(relay);
    let advice = advice::advice(inputs, &result);
    let (mut tone, mut verdict, mut why) = judge::verdict(&known, inputs, &result);
    let case = inputs.threshold.map(|it| judge::case(&known, inputs, &result, it));
    let works = [Case::Suits, Case::MissesSpark, Case::Late, Case::NoMark];
    if purpose == Purpose::Pump {
        if case.is_some_and(|case| works.contains(&case)) {
            (tone, verdict, why) = pump::verdict(relay, inputs, &result);
        }
        findings.extend(pump::findings(relay, inputs, &result));
    }
    findings.extend(problems::of_relay(&known, inputs, &result, advice, purpose));
    let mut answer = Answer::new(relay.path(), tone, verdict);
    answer.why = Some(why);
    answer.to_do = to_do(relay, inputs, advice);
    if purpose == Purpose::Pump {
        answer.cautions = vec![say!(words::CAUTION_PUMP)];
        answer.figures.extend(pump::figures(relay, inputs, &result));
    }
    answer.figures.extend(power(&result));
    answer.figures.extend(bands(&result).into_iter().take(1));
    answer.figures.extend(bounds::figures(inputs, &result));
    answer.figures.extend(stop(&result));
    Some(answer)
}

fn to_do(relay: &SpeedRelay, inputs: &Inputs, advice: Option<advice::Advice>) -> Vec<Message> {
    let mut steps = Vec::new();
    steps.extend(relay.threshold.is_none().then(|| say!(words::relays::RELAY_WANTS_THRESHOLD)));
    steps.extend(advice.map(|it| {
        say!(
            words::DO_SET,
            threshold = it.threshold,
            release = it.release,
            agree = inputs.confirmation
        )
    }));
    if relay.purpose == Some(Purpose::Pump) {
        steps.push(say!(words::relays::DO_PUMP));
    }
    steps
}
