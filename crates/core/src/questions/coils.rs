//! The answer to the question of coils: are they charged in time, and what must their feed bear?

mod feed;
pub mod fields;
mod judge;
mod numbers;
pub(crate) mod read;
mod starting;
pub(crate) mod words;

use std::rc::Rc;

use crate::report::{Answer, Detail, Tone};
use crate::{
    car::Car,
    coil::cures::CoilCures,
    coil::{CoilAnswer, CoilInputs},
    finding::Findings,
    message::Message,
    plan::Plan,
    quantity::Value,
    questions::Question,
    read::Coiled,
    say,
    schema::Part,
};

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "coils",
    name: "Coils",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Coils, Part::Relays],
    subjects,
};

fn subjects(plan: &Plan) -> Vec<String> {
    let is_asked = !plan.is_blank(Part::Coils);
    let of_coils = ["coils", "coils.feed"].into_iter().filter(|_| is_asked);
    of_coils.map(str::to_owned).collect()
}

pub(crate) use read::Memory;

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    charging: fn(&CoilInputs, &CoilAnswer) -> Detail,
    feed: feed::Detailing,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { charging: numbers::detail, feed: feed::detail };

/// The answers: the charging, and the feed.
pub(crate) fn answers(
    car: &Car<'_>,
    _: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    match &car.coils {
        None => vec![Answer::new("coils", Tone::Open, say!(words::BLANK)).into()],
        Some(read) => {
            let at_relay = (car.feeds.exposed(read.relay), car.feeds.shared(read.relay));
            let answers = answered(read, at_relay, details, findings);
            answers.into_iter().map(Into::into).collect()
        }
    }
}

fn answered(
    read: &Coiled,
    at_relay: feed::AtRelay,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let inputs = &read.inputs;
    let Some(found) = &read.found else {
        return vec![Answer::new("coils", Tone::Bad, say!(words::NO_VOLTAGE))];
    };
    let is_enough = found.at_speed.as_ref().is_none_or(|at| at.is_enough(inputs));
    let cures = if is_enough {
        CoilCures::default()
    } else {
        CoilCures::of(inputs, read.once_a_cycle.as_ref())
    };
    let cures = judge::cures(&cures);
    let (tone, verdict) = judge::verdict(read, found);
    let mut answer = Answer::new("coils", tone, verdict);
    answer.title = Some(say!(words::TITLE));
    answer.why = judge::why(inputs, found);
    answer.to_do = judge::to_do(read, found, &cures);
    answer.assume(taken(&read.taken));
    answer.cautions = vec![say!(words::CAUTION_SPARK)];
    // an igniter that lets go, a relay that falls out with the engine, or its fuse ends it
    let is_unfused =
        read.parts.fuse.is_none() && read.lets_go.is_none() && read.cut_below.is_none();
    if is_unfused || feed::burns_at_rest(read, found) {
        answer.cautions.push(say!(
            words::CAUTION_HELD,
            current = found.held.current.nominal,
            heat = found.held.in_coil.nominal
        ));
    }
    answer.show(details.map(|it| (it.charging)(inputs, found)));
    judge::concerns(read, found, &cures, findings);
    findings.extend(starting::finding(read, &found.at_key_on, feed::speed_relay(read)));
    findings.extend(feed::held(read, found));
    vec![answer, feed::answer(read, found, at_relay, details.map(|it| it.feed), findings)]
}

/// What was taken where nothing was given.
pub(crate) fn taken(taken: &[(&'static str, Value)]) -> Option<Message> {
    let each = |(label, value): &(&str, Value)| format!("{label}: {}", value.shown);
    let list: Vec<_> = taken.iter().map(each).collect();
    (!list.is_empty()).then(|| say!(words::TAKEN, list = list.join("; ")))
}
