//! The example plans, and how their reports are held against one another on two machines.
//!
//! The same plan gives the same report, bit for bit, natively and in the browser. A browser can't run the
//! native program, so the native answers are written down: `tests/plans/reports.sha256` has a line for each
//! part of each plan's report with the start of the hash of its JSON, in which a number has one text for
//! each value and no two values share one. The native test in `tests/plans.rs` keeps that file current; the
//! test of `crates/wasm` works the same hashes out in the browser and compares the lines.

use quietpin_core::report::Report;
use serde::Serialize;
use sha2::{Digest, Sha256};

/// An example plan.
#[derive(Clone, Copy, Debug)]
pub struct Example {
    /// The name of its file, without its ending. It starts with the question that it is about.
    pub name: &'static str,
    /// Its text.
    pub text: &'static str,
}

/// Every plan in `tests/plans/`, by name.
pub const ALL: &[Example] = include!(concat!(env!("OUT_DIR"), "/plans.rs"));

/// What the native reports hash to: the lines of [`digest`] for all plans.
pub const NATIVE: &str = include_str!("../plans/reports.sha256");

/// A line for each part of a report: the plan's name, the part, and the hash of the part's JSON.
pub fn digest(name: &str, report: &Report) -> String {
    let mut lines = line(name, "name", &report.name) + &line(name, "findings", &report.findings);
    for section in &report.sections {
        lines += &line(name, section.id, section);
    }
    lines + &line(name, "fields", &report.fields)
}

fn line(plan: &str, part: &str, value: &impl Serialize) -> String {
    let json = serde_json::to_string(value).unwrap_or_default();
    // sixteen digits are more than an accident can match
    let hash =
        Sha256::digest(&json).iter().take(8).fold(0, |hash, byte| hash << 8 | u64::from(*byte));
    format!("{plan} {part} {hash:016x}\n")
}
