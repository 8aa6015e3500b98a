//! Question 8: crank and cam sensors against computed tables, cases worked by hand, and laws.
//!
//! Source: named at each case; those of the files, and their tolerances, in `tests/reference/SOURCES.md`.
#![expect(clippy::expect_used, reason = "a test that can't go on must end, and say where")]

#[path = "trigger/bad_input.rs"]
mod bad_input;
#[path = "trigger/cases.rs"]
mod cases;
#[path = "trigger/laws.rs"]
mod laws;

use quietpin_core::{
    quantity::{Band, Measure, celsius, ohms, rpm, volts},
    trigger::{hall::Hall, reluctance::Reluctance},
};

#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    let apart = (found - expected).abs();
    assert!(apart <= tolerance * expected.abs().max(1e-9), "{what}: {found}, not {expected}");
}

/// A coil of 1 kilohm that gives 2 V at 200 rpm, on an input of 9 kilohm: nine tenths reach it.
fn coil() -> Reluctance {
    Reluctance {
        peak: Band::exact(volts(2.0)),
        measured_at: Band::exact(rpm(200.0)),
        coil: Band::exact(ohms(1000.0)),
        input: Band::exact(ohms(9000.0)),
        temperature: Band::exact(celsius(20.0)),
        series: ohms(0.0),
    }
}

/// An open collector of 0.2 V on 1 kilohm to 5 V, an input of 9 kilohm and 1 nF, grounds alike, a contact of 1 ohm.
fn hall() -> Hall {
    Hall {
        drives_up: false,
        rail: Some(Band::exact(volts(5.0))),
        pull_up: Band::exact(ohms(1000.0)),
        saturation: Band::exact(volts(0.2)),
        contact: Band::exact(ohms(1.0)),
        ground: Band::exact(volts(0.0)),
        input: Band::exact(ohms(9000.0)),
        capacitance: Band::exact(Measure::from_base(1e-9)),
    }
}
