//! What answers: the greater part of the program, which comes after the form is on the screen; and what explains, which
//! comes after that.
//!
//! The build cuts the program at [`answering`] and at [`explaining`]: whatever only one of them leads to is put in a file
//! of its own. Nothing but these leads there, so nothing else of the page may call such functions by name.

#![expect(
    clippy::unnecessary_wraps,
    reason = "what fetches the function is put around it, and can fail"
)]

use quietpin_core::{
    explained::explanation,
    plan::Plan,
    report::{Answer, Memory, Report, report_after},
    words::Explanation,
};
use wasm_split_helpers::{SplitLoaderError, wasm_split};

use crate::{
    components::{Page, found, numbers},
    element::View,
};

/// The functions of the second part.
#[derive(Debug)]
pub struct Answering {
    /// The report of a plan, after the one before.
    pub(crate) report: fn(&mut Memory, &Plan) -> Report,
    /// What stands out in a report.
    pub(crate) found: fn(&Page) -> View,
    /// The pictures, the numbers and the working of an answer.
    pub(crate) numbers: fn(&Answer) -> View,
}

/// Fetches the second part, unless it is there.
///
/// # Errors
/// It can't be had; the next call asks for it again.
#[wasm_split(answers, fallible)]
pub(crate) fn answering() -> Result<&'static Answering, SplitLoaderError> {
    Ok(&ALL)
}

/// Finds the explanation of a finding by its code: the third part, which is fetched when the page has answered.
pub(crate) type Explaining = fn(&str) -> Option<&'static Explanation>;

/// Fetches the third part, unless it is there.
///
/// # Errors
/// It can't be had; the next call asks for it again.
#[wasm_split(explanations, fallible)]
pub(crate) fn explaining() -> Result<Explaining, SplitLoaderError> {
    Ok(explanation)
}

/// Named by [`answering`] alone, and by tests.
pub(crate) const ALL: Answering = Answering { report: report_after, found, numbers };
