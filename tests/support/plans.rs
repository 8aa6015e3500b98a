//! The example plans, and how their reports are held against one another on two machines.
//!
//! The same plan gives the same report, bit for bit, natively and in the browser. A browser can't run the
//! native program, so the native answers are written down, as hashes of the parts of each report. A part is
//!
//! - `name` or `findings`;
//! - a question by its id, as `coils`: its section;
//! - `fields-` and a part of the plan, as `fields-loads`: how the fields under it stand, if there are any.
//!
//! Each part has a file of its own, `tests/plans/hashes/PART.sha256`, with a line for each plan that has it:
//! the plan's name, a blank, and the first sixteen digits of the SHA-256 of the part's JSON, in which a number
//! has one text for each value and no two values share one. So a new question adds a file and touches none. The
//! native test in `tests/plans.rs` keeps the files current; `tests/browser/bits.test.mjs` holds the reports of the page
//! as it is shipped against them.

use std::collections::BTreeMap;

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
    /// Whether it stands in `points/`: it is there for one thing that is said of it, and a test in `tests/points/` says which.
    pub is_point: bool,
}

/// Every plan in `tests/plans/`, by name, and then those in its folder `points`.
pub const ALL: &[Example] = include!(concat!(env!("OUT_DIR"), "/plans.rs"));

/// The files in `tests/plans/hashes/`: the part, and the text.
pub const NATIVE: &[(&str, &str)] = include!(concat!(env!("OUT_DIR"), "/hashes.rs"));

/// The hash of each part of a report.
pub fn digest(report: &Report) -> BTreeMap<String, String> {
    let mut hashes = BTreeMap::from([
        ("name".to_owned(), hash(&report.name)),
        ("findings".to_owned(), hash(&report.findings)),
    ]);
    hashes.extend(report.sections.iter().map(|section| (section.id.to_owned(), hash(section))));
    let mut parts: BTreeMap<_, BTreeMap<_, _>> = BTreeMap::new();
    for (path, field) in &report.fields {
        let part = path.split('.').next().unwrap_or_default();
        parts.entry(part).or_default().insert(path, field);
    }
    hashes.extend(parts.iter().map(|(part, fields)| (format!("fields-{part}"), hash(fields))));
    hashes
}

fn hash(value: &impl Serialize) -> String {
    let json = serde_json::to_string(value).unwrap_or_default();
    // sixteen digits are more than an accident can match
    let hash =
        Sha256::digest(&json).iter().take(8).fold(0, |hash, byte| hash << 8 | u64::from(*byte));
    format!("{hash:016x}")
}
