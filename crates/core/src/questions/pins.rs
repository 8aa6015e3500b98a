//! The answer to the question of the pins: which output takes which load, and what if they are too few?

mod inputs;
mod jobs;
mod judge;
mod releases;
mod suited;
mod table;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    budget::{Allowance, Budget},
    car::Car,
    finding::Findings,
    questions::Question,
    report::{Answer, Tone},
    say, say_of,
    schema::Part,
};
use suited::KnownFits;

/// What all that is tried may cost together, in steps: some tenths of a second natively.
const MOST: u64 = 300_000_000;

/// What answers it. Nobody waits for it at the car: a page fetches it after the other answers.
pub(crate) type PinsAnswering = fn(&Car<'_>, &mut KnownFits, &mut Findings) -> Vec<Answer>;

/// What makes the answers, with their details.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    answers: PinsAnswering,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { answers: all };

/// What answers it, once that is there: a trial of what was found needs it too; and what suited what.
#[derive(Clone, Debug, Default)]
pub(crate) struct Memory {
    answering: Option<PinsAnswering>,
    known: KnownFits,
}

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "pins",
    name: "Pins",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Outputs, Part::Relays, Part::Loads, Part::Inputs, Part::Sensors],
    subjects: |_| Vec::new(),
};

/// One answer for loads, one for sensors.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    if let Some(details) = details {
        memory.answering = Some(details.answers);
    }
    let answers = match memory.answering {
        Some(answers) => answers(car, &mut memory.known, findings),
        None => vec![Answer::new("pins", Tone::Open, say_of!(words::PENDING))],
    };
    answers.into_iter().map(Into::into).collect()
}

fn all(car: &Car<'_>, known: &mut KnownFits, findings: &mut Findings) -> Vec<Answer> {
    let budget = Budget::new(Allowance { most: MOST, share: MOST });
    let sensors = inputs::answer(car, &budget, findings);
    let planned = &car.outputs;
    let open = |verdict| Answer::new("pins", Tone::Open, verdict);
    if planned.loads.is_empty() || planned.outputs.is_empty() {
        return sensors.map_or_else(|| vec![open(say!(words::BLANK))], |it| vec![it]);
    }
    if planned.is_unreadable() {
        return std::iter::once(open(say!(words::OPEN_MEND))).chain(sensors).collect();
    }
    let mut suiting = suited::Suiting::new(planned, &budget, known);
    let answers = std::iter::once(judge::answer(&mut suiting, findings)).chain(sensors).collect();
    suiting.forget_the_rest();
    answers
}
