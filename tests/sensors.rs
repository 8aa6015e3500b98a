//! Sensors against tables, cases worked by hand, and laws.
//!
//! Source: named at each case; those of the files, and their tolerances, in `tests/reference/SOURCES.md`.
#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test that can't go on must end, and say where"
)]

mod bad_input;
mod cases;
mod laws;
pub(crate) mod tables;

use quietpin_core::{
    finding::Severity,
    plan::Plan,
    report::{Answer, Report, report},
};
use quietpin_tests::typed::{answers, planned};

/// A coolant sensor, a manifold sensor, a pedal and a switch that suit, and fields of them as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("today.temperature", "20 °C"),
        ("today.altitude", "0 m"),
        ("inputs.0.name", "T1 to T4"),
        ("inputs.0.takes", "analogue"),
        ("inputs.0.pull", "up"),
        ("inputs.0.pull_up", "2.49k"),
        ("inputs.0.range", "5 V"),
        ("inputs.1.name", "A1 to A8"),
        ("inputs.1.takes", "analogue"),
        ("inputs.1.pull", "none"),
        ("inputs.2.name", "F1 to F4"),
        ("inputs.2.takes", "digital"),
        ("inputs.2.pull", "up"),
        ("inputs.2.pull_up", "1k"),
        ("sensor_supplies.0.name", "5V-A"),
        ("sensor_supplies.0.others", "20 mA"),
        ("sensor_supplies.1.name", "5V-B"),
        ("sensors.0.name", "coolant"),
        ("sensors.0.purpose", "coolant"),
        ("sensors.0.kind", "ntc"),
        ("sensors.0.input", "T1"),
        (
            "sensors.0.points",
            "-20 16.52k, 0 6k, 20 2450, 40 1110, 60 540, 80 290, 100 160, 120 100",
        ),
        ("sensors.1.name", "manifold"),
        ("sensors.1.purpose", "manifold"),
        ("sensors.1.kind", "ratiometric"),
        ("sensors.1.input", "A1"),
        ("sensors.1.range_low", "20 kPa"),
        ("sensors.1.range_high", "250 kPa"),
        ("sensors.1.counted_from", "absolute"),
        ("sensors.1.feed", "supply"),
        ("sensors.1.supply", "5V-A"),
        ("sensors.1.draw", "10 mA"),
        ("sensors.1.entered", "manifold"),
        ("sensors.1.table_of", "volts"),
        ("sensors.1.table", "20 0.5, 250 4.5"),
        ("sensors.2.name", "pedal"),
        ("sensors.2.purpose", "pedal"),
        ("sensors.2.kind", "pot"),
        ("sensors.2.input", "A2"),
        ("sensors.2.stroke", "0.75 2.0 3.5 4.2"),
        ("sensors.2.second", "half"),
        ("sensors.2.second_input", "A3"),
        ("sensors.2.second_stroke", "0.38 1.0 1.75 2.1"),
        ("sensors.2.feed", "supply"),
        ("sensors.2.supply", "5V-A"),
        ("sensors.2.second_supply", "5V-B"),
        ("sensors.2.draw", "20 mA"),
        ("sensors.3.name", "clutch"),
        ("sensors.3.purpose", "switch"),
        ("sensors.3.kind", "switch"),
        ("sensors.3.input", "F1"),
        ("sensors.3.switched_to", "ground"),
        ("sensors.3.stands", "open"),
    ];
    planned(&usual, typed)
}

/// The answer about a sensor or a supply.
#[track_caller]
fn answer<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let all = answers(report, "sensors");
    all.into_iter().find(|it| it.subject == subject).expect("the answer")
}

/// The codes of what is found of sensors.
fn codes(plan: &Plan) -> Vec<&'static str> {
    let report = report(plan);
    let codes = report.findings.iter().map(|it| it.message.code);
    codes.filter(|it| it.starts_with("sensors.")).collect()
}

fn found(typed: &[(&str, &str)]) -> Vec<&'static str> {
    codes(&plan(typed))
}

/// How gravely something stands.
fn severities(typed: &[(&str, &str)], code: &str) -> Vec<Severity> {
    let report = report(&plan(typed));
    let found = report.findings.iter().filter(|it| it.message.code == code);
    found.map(|it| it.severity).collect()
}

/// What an answer says: its verdict, why, and what to do.
fn said(typed: &[(&str, &str)], subject: &str) -> String {
    let report = report(&plan(typed));
    let answer = answer(&report, subject);
    let all = [&answer.verdict.message].into_iter().chain(&answer.why).chain(&answer.to_do);
    all.map(|it| it.text.as_str()).collect::<Vec<_>>().join("\n")
}
