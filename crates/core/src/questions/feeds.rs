//! The answer to the question of the feeds: is everything fed by a big enough relay, fuse and wire?

mod beside;
mod direct;
pub(crate) mod grounded;
mod grounds;
pub(crate) mod guarded;
mod guards;
pub(crate) mod judge;
mod numbers;
pub(crate) mod read;
mod thin;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    car::Car,
    finding::Findings,
    questions::Question,
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
    supply::{
        cable::{AlternatorAnswer, CableAnswer},
        ground::{GroundWires, SharedBolt, StrapInputs},
    },
};
use read::PlannedCircuit;

pub(crate) use read::Memory;

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    circuit: fn(&PlannedCircuit) -> Detail,
    cable: fn(&CableAnswer) -> Detail,
    alternator: fn(&AlternatorAnswer) -> Detail,
    strap: fn(&StrapInputs) -> Detail,
    ground: fn(&GroundWires) -> Detail,
    sensors: fn(&SharedBolt) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    circuit: numbers::of_circuit,
    cable: numbers::of_cable,
    alternator: numbers::of_alternator,
    strap: numbers::of_strap,
    ground: numbers::of_ground,
    sensors: numbers::of_sensors,
};

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "feeds",
    name: "Feeds",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Relays, Part::SwitchedFeeds, Part::Wiring, Part::Battery, Part::Grounds],
    subjects: |_| Vec::new(),
};

/// The answers: one of each circuit, then the battery's cable and the alternator where something is said of them.
pub(crate) fn answers(
    car: &Car<'_>,
    _: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let feeds = &car.feeds;
    let of_circuit = |circuit: &PlannedCircuit| {
        let mut answer = judge::answer(circuit, feeds.is_laid_known, findings);
        answer.show(details.map(|it| (it.circuit)(circuit)));
        answer
    };
    let mut answers: Vec<Answer> = feeds.circuits.iter().map(of_circuit).collect();
    if answers.is_empty() {
        answers.push(Answer::new("feeds", Tone::Open, say!(words::BLANK)));
    }
    answers.extend(beside::cable(feeds, details, findings));
    answers.extend(beside::alternator(feeds, details, findings));
    answers.extend(grounds::answers(feeds, details, findings));
    answers.extend(guards::answers(&feeds.guards, findings));
    answers.into_iter().map(Into::into).collect()
}
