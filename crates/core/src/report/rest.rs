//! The answer to the question of rest.

use super::{Answer, Section, Tone};
use crate::{
    finding::Findings,
    read::{Conditions, Reader},
    say,
};

pub(super) fn section(
    _reader: &mut Reader<'_>,
    _conditions: &Conditions,
    _findings: &mut Findings,
) -> Section {
    Section {
        id: "rest",
        question: say!("rest.question"),
        answers: vec![Answer::new("rest", Tone::Open, say!("rest.open"))],
    }
}
