//! The page's own words: all that is not said by the report.

use std::rc::Rc;

use quietpin_core::finding::{Finding, Severity};
use quietpin_core::report::Tone;

/// How much a finding matters, in a word that prints in black and white.
pub(crate) fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Danger => "Danger",
        Severity::Fault => "Fault",
        Severity::Doubt => "Check",
        Severity::Note => "Note",
    }
}

/// The name of a severity in the style sheet.
pub(crate) fn severity_class(severity: Severity) -> &'static str {
    match severity {
        Severity::Danger => "danger",
        Severity::Fault => "fault",
        Severity::Doubt => "doubt",
        Severity::Note => "note",
    }
}

/// How a verdict sounds, for the style sheet.
pub(crate) fn tone_class(tone: Tone) -> &'static str {
    match tone {
        Tone::Bad => "bad",
        Tone::Doubtful => "doubtful",
        Tone::Open => "open",
        Tone::Good => "good",
    }
}

/// The sign before a verdict: it says the same as the words, at a glance.
pub(crate) fn tone_sign(tone: Tone) -> &'static str {
    match tone {
        Tone::Bad => "✕",
        Tone::Doubtful => "!",
        Tone::Open => "…",
        Tone::Good => "✓",
    }
}

pub(crate) const UNNAMED: &str = "Plan without a name";

pub(crate) const REFUSED: &str = "This browser does not keep the plan (its storage is full or switched off). \
    Save the plan as a file before you close the page.";

pub(crate) const UNREADABLE: &str = "The plan that was open last can't be read, so a blank one is open. \
    The old text is untouched and stays in this browser; save it as a file to look at it.";

pub(crate) const COMING: &str = "One moment…";

pub(crate) const MISSED: &str = "The part of Quietpin that answers could not be loaded: there is no connection, or the server does not reply. \
    What you type is kept all the same.";

pub(crate) const DETAILS_MISSED: &str = "The part of Quietpin that shows pictures, numbers and reasons could not be loaded: there is no \
    connection, or the server does not reply. Every answer stands all the same.";

/// How many were found of each kind.
pub(crate) fn counted(findings: &[Rc<Finding>]) -> String {
    let kinds = [
        (Severity::Danger, "Danger", "Dangers"),
        (Severity::Fault, "Fault", "Faults"),
        (Severity::Doubt, "Check", "Checks"),
        (Severity::Note, "Note", "Notes"),
    ];
    let parts: Vec<_> = kinds
        .into_iter()
        .filter_map(|(kind, one, many)| {
            let count = findings.iter().filter(|it| it.severity == kind).count();
            (count > 0).then(|| format!("{count} {}", if count == 1 { one } else { many }))
        })
        .collect();
    if parts.is_empty() { "none".to_owned() } else { parts.join(", ") }
}

pub(crate) const MISPLACED: &str = "A part of Quietpin could not be loaded: a newer Quietpin was published meanwhile, or the server sends it broken. \
    “Try again” loads the whole page again; what you typed is kept.";

pub(crate) const CLASH: &str =
    "This plan is open on two pages, and both changed the same: what was typed last stays.";

pub(crate) const TAKEN_BACK: &str = "Undone";

pub(crate) const MADE_AGAIN: &str = "Redone";

pub(crate) const CHANGED: &str = "Changed";

pub(crate) const HELD: &str = "Quietpin did not finish answering this plan last time, so it is open without answers. What you type is kept.";

pub(crate) const REMOVED_ELSEWHERE: &str =
    "This plan was removed on another page. If you type here, it is kept again.";

pub(crate) const KEPT_BESIDE: &str = "Another page changed this plan, and what it kept can't be put together with this. \
    What stands here is kept beside it, as a plan of its own.";

pub(crate) const PLAN: &str = "The plan";

/// That a text was not taken.
pub(crate) fn refused(called: &str) -> String {
    format!(
        "{called}: this is more than a plan holds, so it was not kept. What stood there before still does."
    )
}
