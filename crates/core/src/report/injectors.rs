//! The answer to the question of injectors.

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
        id: "injectors",
        question: say!("injectors.question"),
        answers: vec![Answer::new("injectors", Tone::Open, say!("injectors.open"))],
    }
}
