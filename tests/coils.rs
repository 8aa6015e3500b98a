//! Coils against computed tables, cases worked by hand, small steps of their differential equation, and laws.
//!
//! Source: named at each case; those of the files, and their tolerances, in `tests/reference/SOURCES.md`.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a test that can't go on must end, and say where"
)]

mod bad_input;
pub(crate) mod cases;
mod laws;

use quietpin_core::{
    channels::Ignition,
    coil::{CoilInputs, pattern::Pattern},
    conditions::Conditions,
    engine::{Engine, EngineKind, Spacing},
    quantity::{Band, Measure, amperes, celsius, read, rpm, volts},
};

/// A quantity as a person types it.
#[track_caller]
fn typed<Q: Measure>(text: &str) -> Q {
    read(text, "").unwrap_or_else(|misread| panic!("{text}: {misread:?}"))
}

fn exact<Q: Measure>(text: &str) -> Band<Q> {
    Band::exact(typed(text))
}

/// An engine that fires evenly.
fn even(kind: EngineKind, order: &[u32]) -> Engine {
    let cylinders = u32::try_from(order.len()).expect("few cylinders");
    Engine::new(kind, cylinders, order, &Spacing::Even).expect("there is such an engine")
}

/// Coils of 4 mH and 0.5 ohm without a tolerance anywhere, at one supply and 20 °C: each test sets what it is about.
fn bare(supply_v: f64) -> CoilInputs {
    CoilInputs {
        resistance: exact("0.5 ohm"),
        inductance: exact("4 mH"),
        wanted: amperes(7.5),
        drop: exact("0 V"),
        limit: None,
        per_igniter: 1,
        spark: exact("0 ms"),
        duty_limit: None,
        pattern: None,
        banks: Vec::new(),
        speed: None,
        entered: None,
        entered_cranking: None,
        conditions: Conditions::between(Band::exact(volts(supply_v)), Band::exact(celsius(20.0))),
    }
}

/// The same on an engine at a speed.
fn running(supply_v: f64, engine: &Engine, mode: Ignition, speed_rpm: f64) -> CoilInputs {
    CoilInputs {
        pattern: Some(Pattern::new(engine, mode)),
        speed: Some(rpm(speed_rpm)),
        ..bare(supply_v)
    }
}

#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    let apart = (found - expected).abs();
    assert!(apart <= tolerance * expected.abs().max(1e-12), "{what}: {found}, not {expected}");
}
