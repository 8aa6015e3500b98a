//! The answer to the question of cranking.

use super::{Answer, Section, Tone};
use crate::{
    engine::Engine,
    finding::Findings,
    read::{Conditions, Reader},
    say,
};

pub(super) fn section(
    _reader: &mut Reader<'_>,
    _conditions: &Conditions,
    _engine: Option<&Engine>,
    _findings: &mut Findings,
) -> Section {
    Section {
        id: "cranking",
        question: say!("cranking.question"),
        answers: vec![Answer::new("cranking", Tone::Open, say!("cranking.open"))],
    }
}
