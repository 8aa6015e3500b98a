//! What burns, won't run or won't stop, and what is advised wrongly: a test for each thing, on both sides of its line.
//!
//! The plans stand in `tests/plans/points/`; each test says where its numbers come from.
//!
//! Source: beside each test.

#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by them")]

mod bus;
mod coils;
mod cranking;
mod feeds;
mod firing;
pub(crate) mod injectors;
mod outputs;
mod pins;
mod proving;
mod reading;
mod sensors;
mod standing;
mod trigger;
mod wires;

use quietpin_core::{
    finding::Severity,
    plan::{self, Plan},
    report::{Report, report},
};
use quietpin_tests::plans;

/// An example plan, with these texts typed over it.
fn planned(name: &str, texts: &[(&str, &str)]) -> Plan {
    let example = plans::ALL.iter().find(|it| it.name == name);
    let mut plan = plan::parse(example.expect(name).text).expect(name);
    for (path, text) in texts {
        assert!(plan.set(path, text), "{path} is no place");
    }
    plan
}

/// How often and how gravely a finding stands in a report, gravest first.
fn graded(report: &Report, code: &str) -> Vec<Severity> {
    let findings = report.findings.iter().filter(|it| it.message.code == code);
    findings.map(|it| it.severity).collect()
}

/// The same of a plan of `tests/plans/points/`, with these texts typed over it.
fn told(name: &str, texts: &[(&str, &str)], code: &str) -> Vec<Severity> {
    graded(&report(&planned(name, texts)), code)
}

/// What a finding says, with all its cures, where it stands once.
fn words(name: &str, texts: &[(&str, &str)], code: &str) -> String {
    let report = report(&planned(name, texts));
    let found: Vec<_> = report.findings.iter().filter(|it| it.message.code == code).collect();
    let [found] = found.as_slice() else { panic!("{code} stands {} times", found.len()) };
    let cures = found.remedies.iter().map(|it| it.text.as_str());
    std::iter::once(found.message.text.as_str()).chain(cures).collect::<Vec<_>>().join("\n")
}
