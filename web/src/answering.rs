//! What answers: the greater part of the program, which comes after the form is on the screen.
//!
//! The build cuts the program in two at [`answering`]: whatever only it leads to is put in a file of its own. Nothing
//! but this table of functions leads there, so nothing else of the page may call them by name.

#![expect(
    clippy::unnecessary_wraps,
    reason = "what fetches the function is put around it, and can fail"
)]

use quietpin_core::{
    plan::Plan,
    report::{Answer, Memory, Report, report_after},
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

/// Named by [`answering`] alone, and by tests.
pub(crate) const ALL: Answering = Answering { report: report_after, found, numbers };
