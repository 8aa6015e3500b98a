//! Do fuses, wires and relays suit? Held against cases worked by hand, bad input and laws.
//!
//! Source: Ohm's law and sums of currents; tables and standards as named at each test.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

mod bad_input;
mod cases;
pub(crate) mod fused;
pub(crate) mod grounds;
mod laws;

use quietpin_core::{
    finding::Finding,
    plan::Plan,
    report::{Answer, Report},
};
use quietpin_tests::typed::{self, planned};

/// A car with 12.6 V at rest and 14.8 V charging, at 20 °C, and fields over it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("battery.resting", "12.6 V"),
        ("battery.charging", "14.8 V"),
        ("battery.cold_cranking", "9 V"),
        ("temperatures.cold", "20"),
        ("temperatures.hot", "20"),
    ];
    planned(&usual, typed)
}

/// A feed with all that is asked of it, the fields over it as typed.
fn feed(typed: &[(&str, &str)]) -> Plan {
    let whole = [
        ("relays.0.name", "Pump relay"),
        ("relays.0.purpose", "pump"),
        ("relays.0.draws", "9 A"),
        ("relays.0.fuse", "15 A"),
        ("relays.0.rating", "30 A"),
        ("relays.0.lead_length", "3 m"),
        ("relays.0.lead_size", "2.5 mm2"),
    ];
    plan(&[&whole[..], typed].concat())
}

/// What is said about a feed, the cable or the alternator.
fn about<'a>(report: &'a Report, subject: &str) -> Option<&'a Answer> {
    typed::answers(report, "feeds").into_iter().find(|it| it.subject == subject)
}

/// The verdict about it.
fn verdict<'a>(report: &'a Report, subject: &str) -> &'a str {
    about(report, subject).expect(subject).verdict.message.code
}

/// The number of one of its figures in its base unit, as meant.
fn figure(report: &Report, subject: &str, code: &str) -> Option<f64> {
    let figures = &about(report, subject)?.figures;
    figures.iter().find(|it| it.label.code == code)?.value.number
}

/// The findings of this question.
fn found(report: &Report) -> Vec<&Finding> {
    let own = report.findings.iter().filter(|it| it.message.code.starts_with("feeds."));
    own.map(AsRef::as_ref).collect()
}

fn codes(report: &Report) -> Vec<&'static str> {
    found(report).iter().map(|it| it.message.code).collect()
}
