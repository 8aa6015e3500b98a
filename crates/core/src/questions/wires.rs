//! The answer to the question of the wires: what is cut, crimped, labelled and bought?

mod cuts;
pub mod fields;
mod judge;
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
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
};
use read::{PlannedHarness, WireGroup};

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    group: fn(&PlannedHarness, WireGroup) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { group: tables::of_group };

/// Nothing is remembered: what it costs is less than what it would cost to compare.
pub(crate) type Memory = ();

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
    (): &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let harness = &car.harness;
    if harness.wires.is_empty() {
        return vec![Answer::new("wires", Tone::Open, say!(words::BLANK)).into()];
    }
    let mut answers = vec![judge::overview(harness)];
    judge::concerns(harness, findings);
    if harness.is_begun {
        for group in WireGroup::ALL {
            let Some(mut answer) = judge::group(harness, group) else { continue };
            answer.show(details.map(|it| (it.group)(harness, group)));
            answers.push(answer);
        }
        answers.extend(cuts::answer(harness));
        answers.push(shopping::answer(harness));
    }
    answers.into_iter().map(Into::into).collect()
}
