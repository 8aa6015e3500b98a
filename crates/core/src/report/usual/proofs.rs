//! What is proved at the car.

use crate::{
    message::Message,
    questions::{outputs::words as outputs, trigger::words as trigger},
    report::Report,
};

use super::{
    Chosen, Line, gathered, names,
    step::{StepUse, shortened, without_ranges},
};

/// What is read at bare pins, the outputs that read alike together.
pub(super) fn at_pins(report: &Report, purpose: StepUse) -> Vec<Line> {
    let answers = report.sections.iter().flat_map(|section| &section.answers);
    gathered(answers.flat_map(|answer| {
        let output = names::in_gap(answer.title.as_ref(), "output").unwrap_or_default();
        answer.to_do.iter().filter_map(move |message| {
            let words = without_ranges(message, purpose)?;
            Some((pin(message, output).to_owned(), words))
        })
    }))
}

/// The output that is read: that of the answer, or the one at the other end of its load.
fn pin<'a>(message: &'a Message, output: &'a str) -> &'a str {
    let other = [outputs::DO_PROVE_OTHER, outputs::DO_PROVE_OTHER_FLOATS];
    let is_other = other.iter().any(|it| it.code == message.code);
    names::in_gap(Some(message), "output").filter(|_| is_other).unwrap_or(output)
}

/// Whether it was done before the answer was good.
fn is_done(it: &Chosen<'_>) -> bool {
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
