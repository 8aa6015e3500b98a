//! The answers about the bus between controllers: its ends, its wire, its levels, its load.

pub mod fields;
mod lines;
mod load;
mod numbers;
mod pair;
pub(crate) mod read;
mod wire;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    car::Car,
    finding::Findings,
    message::Message,
    questions::Question,
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
};
use read::PlannedBus;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "bus",
    name: "Bus",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Bus, Part::Frames],
    subjects: |_| Vec::new(),
};

/// Nothing is remembered.
pub(crate) type Memory = ();

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    pair: fn(&PlannedBus) -> Detail,
    wire: fn(&PlannedBus) -> Detail,
    load: fn(&PlannedBus) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details =
    Details { pair: numbers::of_pair, wire: numbers::of_wire, load: numbers::of_load };

/// The answers: its ends, its wire, its levels where one was read, its load where frames are typed.
pub(crate) fn answers(
    car: &Car<'_>,
    (): &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let Some(bus) = &car.bus else {
        return vec![Answer::new("bus", Tone::Open, say!(words::BLANK)).into()];
    };
    let mut pair = pair::answer(bus, findings);
    pair.show(details.map(|it| (it.pair)(bus)));
    let mut wire = wire::answer(bus, findings);
    wire.show(details.map(|it| (it.wire)(bus)));
    let mut answers = vec![pair, wire];
    answers.extend(lines::answer(bus, findings));
    answers.extend(load::answer(bus, findings).map(|mut load| {
        load.show(details.map(|it| (it.load)(bus)));
        load
    }));
    answers.into_iter().map(Into::into).collect()
}

/// An answer with its title; of several verdicts the worst.
fn titled(subject: &str, title: Message, said: Vec<(Tone, Message)>, open: Message) -> Answer {
    let worst = said.into_iter().min_by_key(|(tone, _)| *tone);
    let (tone, verdict) = worst.unwrap_or((Tone::Open, open));
    let mut answer = Answer::new(subject, tone, verdict);
    answer.title = Some(title);
    answer
}
