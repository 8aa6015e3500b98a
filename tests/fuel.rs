//! Flow, duty and power against tables, a published example, laws and bad input.
//!
//! Source: named at each case; those of the files, and their tolerances, in `tests/reference/SOURCES.md`.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a test that can't go on must end, and say where"
)]

mod bad_input;
mod cases;
mod laws;
pub(crate) mod tables;

use quietpin_core::{
    fuel::{
        FuelInputs, InjectionPace, Regulator,
        flow::{InjectorSet, Rated},
    },
    quantity::{Band, Measure, read},
};

/// A quantity as a person types it.
#[track_caller]
fn typed<Q: Measure>(text: &str) -> Q {
    read(text, "").unwrap_or_else(|misread| panic!("{text}: {misread:?}"))
}

fn exact<Q: Measure>(text: &str) -> Band<Q> {
    Band::exact(typed(text))
}

/// Four injectors of 31.25 lb/h, without a tolerance anywhere: each test sets what it is about.
fn bare() -> FuelInputs {
    FuelInputs {
        sets: vec![InjectorSet { count: 4, flow: Rated::Mass(exact("31.25 lb/h")) }],
        stated_at: exact("3 bar"),
        test_density: exact("0.745 kg/l"),
        density: exact("0.745 kg/l"),
        rail: exact("3 bar"),
        boost: exact("0 bar"),
        regulator: Regulator::Referenced,
        consumption: exact("0.5 lb/hph"),
        duty_limit: exact("80 %"),
        dead_time: exact("0 ms"),
        is_dead_time_given: true,
        pace: None,
        power: None,
    }
}

fn once_a_cycle(speed: &str) -> InjectionPace {
    InjectionPace { speed: exact(speed), turns: 2, turns_of_cycle: 2 }
}

#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    let apart = (found - expected).abs();
    assert!(apart <= tolerance * expected.abs().max(1e-12), "{what}: {found}, not {expected}");
}
