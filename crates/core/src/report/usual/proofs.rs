//! What is proved at the car.

use crate::{
    finding::{Finding, Severity},
    message::Message,
    questions::{outputs::words as outputs, trigger::words as trigger},
    report::{Answer, Report},
};

use super::{
    Chosen, Line, gathered, names,
    step::{StepUse, shortened, without_ranges},
};

/// What is read at bare pins, the outputs that read alike together; first those at which something can hurt someone.
pub(super) fn at_pins(report: &Report, purpose: StepUse) -> Vec<Line> {
    let answers = report.sections.iter().flat_map(|section| &section.answers);
    let read = answers.flat_map(|answer| {
        let output = names::in_gap(answer.title.as_ref(), "output").unwrap_or_default();
        let is_danger = is_danger(report, answer, output);
        answer.to_do.iter().filter_map(move |message| {
            let words = without_ranges(message, purpose)?;
            Some((is_danger, (pin(message, output).to_owned(), words)))
        })
    });
    let (first, others): (Vec<_>, Vec<_>) = read.partition(|(is_danger, _)| *is_danger);
    let first: Vec<_> = first.into_iter().map(|it| it.1).collect();
    // a pin that is read already is not read again for what else hangs on it
    let is_read = |(about, words): &(String, Message)| {
        first.iter().any(|it| it.0 == *about && it.1.text == words.text)
    };
    let others: Vec<_> = others.into_iter().map(|it| it.1).filter(|it| !is_read(it)).collect();
    gathered(first).into_iter().chain(gathered(others)).collect()
}

/// Whether a Danger was found of the load of an answer, or of its output.
fn is_danger(report: &Report, answer: &Answer, output: &str) -> bool {
    // an answer about a relay's coil tells of its record
    let record = answer.subject.strip_suffix(".coil").unwrap_or(&answer.subject);
    let is_of_it = |it: &Finding| {
        let rest = it.subject.strip_prefix(record);
        let is_load = rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.'));
        let named = names::in_gap(Some(&it.message), "output");
        // the same may be said of several loads at once
        let also = names::in_gap(Some(&it.message), "also").unwrap_or_default();
        let load = names::in_gap(answer.title.as_ref(), "load").unwrap_or_default();
        let is_named = also.split(", ").any(|it| !load.is_empty() && it == load);
        is_load || is_named || !output.is_empty() && named == Some(output)
    };
    report.findings.iter().any(|it| it.severity == Severity::Danger && is_of_it(it))
}

/// The output that is read: that of the answer, or the one at the other end of its load.
fn pin<'a>(message: &'a Message, output: &'a str) -> &'a str {
    let other = [outputs::DO_PROVE_OTHER, outputs::DO_PROVE_OTHER_FLOATS];
    let is_other = other.iter().any(|it| it.code == message.code);
    names::in_gap(Some(message), "output").filter(|_| is_other).unwrap_or(output)
}

/// Whether it was done before the answer was good.
pub(super) fn is_done(it: &Chosen<'_>) -> bool {
    let once = [trigger::DO_STAND, trigger::DO_LIGHT];
    it.is_there() && once.iter().any(|once| once.code == it.message.code)
}

/// What else is proved, in the order of the questions.
pub(super) fn proofs(chosen: &[Chosen<'_>]) -> Vec<Line> {
    gathered(chosen.iter().filter(|it| !is_done(it)).filter_map(|it| {
        let words = shortened(it.message, StepUse::Prove)?;
        Some((it.about.clone(), words))
    }))
}
