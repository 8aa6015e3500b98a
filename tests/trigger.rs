//! Sensors at crank and cam against a table, cases worked by hand, small steps of a swing, and laws.
//!
//! Source: named at each case; that of the file, and its tolerance, in `tests/reference/SOURCES.md`.
#![expect(
    clippy::expect_used,
    clippy::panic,
    reason = "a test that can't go on must end, and say where"
)]

mod bad_input;
mod by_hand;
pub(crate) mod cases;
mod laws;
mod lines;

use quietpin_core::{
    plan::Plan,
    quantity::{Band, Measure, celsius, ohms, read, rpm, volts},
    report::{Answer, Report, Tone, report},
    trigger::{hall::Hall, reluctance::Reluctance},
};
use quietpin_tests::typed::{self, planned};

/// A quantity as a person types it.
#[track_caller]
fn typed<Q: Measure>(text: &str) -> Q {
    read(text, "").unwrap_or_else(|misread| panic!("{text}: {misread:?}"))
}

fn exact<Q: Measure>(text: &str) -> Band<Q> {
    Band::exact(typed(text))
}

/// A coil of 1 kohm on an input of 9 kohm, 1 V at 100 a minute, without a tolerance anywhere.
fn coil() -> Reluctance {
    Reluctance {
        peak: Band::exact(volts(1.0)),
        measured_at: Band::exact(rpm(100.0)),
        coil: Band::exact(ohms(1000.0)),
        input: Band::exact(ohms(9000.0)),
        temperature: Band::exact(celsius(20.0)),
        series: ohms(0.0),
    }
}

/// An open collector with 1 kohm to 5 V on an input of 9 kohm, ideal but for what a test sets.
fn hall() -> Hall {
    Hall {
        drives_up: false,
        rail: Some(exact("5 V")),
        pull_up: exact("1 kohm"),
        saturation: exact("0 V"),
        contact: exact("0 ohm"),
        ground: exact("0 V"),
        input: exact("9 kohm"),
        capacitance: exact("1 nF"),
    }
}

/// A usual engine with a coil at the crank that suits, and fields of it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("engine.highest_speed", "7000 rpm"),
        ("cranking.speed", "200 rpm"),
        ("cranking.dip", "30 %"),
        ("wheels.crank_teeth", "60"),
        ("wheels.missing", "2"),
        ("crank_sensor.kind", "reluctance"),
        ("crank_sensor.amplitude", "2 V"),
        ("crank_sensor.amplitude_as", "peak"),
        ("crank_sensor.amplitude_speed", "200 rpm"),
        ("crank_sensor.resistance", "900 ohm"),
        ("trigger_input.highest_frequency", "10 kHz"),
        ("trigger_input.counts_from", "0.5 V"),
        ("trigger_input.bears", "100 V"),
    ];
    planned(&usual, typed)
}

fn answers(report: &Report) -> Vec<&Answer> {
    typed::answers(report, "trigger")
}

/// What is found at a usual engine with fields of it as typed.
fn found(typed: &[(&str, &str)]) -> Vec<&'static str> {
    let report = report(&plan(typed));
    report
        .findings
        .iter()
        .map(|it| it.message.code)
        .filter(|it| it.starts_with("trigger."))
        .collect()
}

/// Tone and verdict of each answer.
fn verdicts(typed: &[(&str, &str)]) -> Vec<(Tone, &'static str)> {
    let report = report(&plan(typed));
    answers(&report).iter().map(|it| (it.verdict.tone, it.verdict.message.code)).collect()
}

#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    let apart = (found - expected).abs();
    assert!(apart <= tolerance * expected.abs().max(1e-12), "{what}: {found}, not {expected}");
}
