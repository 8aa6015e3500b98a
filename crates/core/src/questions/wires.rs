//! The answer to the question of the wires: what is cut, crimped, labelled and bought?

mod cuts;
pub mod fields;
mod judge;
pub(crate) mod planned;
pub(crate) mod read;
mod rows;
mod shopping;
pub(crate) mod tables;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    car::Car,
    finding::Findings,
    questions::Question,
    report::{Answer, Tone},
    say, say_of,
    schema::Part,
};
use planned::{PlannedHarness, WireGroup};

/// What answers it. Nobody waits for it at the car: a page fetches it after the other answers.
pub(crate) type Answering = fn(&Car<'_>, &mut Findings) -> Vec<Answer>;

/// What makes the answers, with their details.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    answers: Answering,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { answers: all };

/// What answers it, once that is there: a trial of what was found needs it too.
pub(crate) type Memory = Option<Answering>;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "wires",
    name: "Wires",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Harness, Part::Loads, Part::Relays],
    subjects: |_| Vec::new(),
};

/// The answers: whether all wires reach; once the harness is measured, each kind of wire, what is cut, and what is bought.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    if let Some(details) = details {
        *memory = Some(details.answers);
    }
    let answers = match memory {
        Some(answers) => answers(car, findings),
        None => vec![Answer::new("harness", Tone::Open, say_of!(words::PENDING))],
    };
    answers.into_iter().map(Into::into).collect()
}

fn all(car: &Car<'_>, findings: &mut Findings) -> Vec<Answer> {
    let harness: PlannedHarness<'_> = planned::planned(car);
    if harness.wires.is_empty() {
        return vec![Answer::new("harness", Tone::Open, say!(words::BLANK))];
    }
    let mut answers = vec![judge::overview(&harness)];
    judge::concerns(&harness, findings);
    if harness.is_begun {
        for group in WireGroup::ALL {
            let Some(mut answer) = judge::group(&harness, group) else { continue };
            answer.show(Some(tables::of_group(&harness, group)));
            answers.push(answer);
        }
        answers.extend(cuts::answer(&harness));
        answers.push(shopping::answer(&harness));
    }
    answers
}
