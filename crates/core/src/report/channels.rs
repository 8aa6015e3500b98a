//! The answer to the question of channels.

use super::{Answer, Section, Tone};
use crate::{engine::Engine, finding::Findings, read::Reader, say};

pub(super) fn section(
    _reader: &mut Reader<'_>,
    _engine: Option<&Engine>,
    _findings: &mut Findings,
) -> Section {
    Section {
        id: "channels",
        question: say!("channels.question"),
        answers: vec![Answer::new("channels", Tone::Open, say!("channels.open"))],
    }
}
