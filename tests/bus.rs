//! The bus between controllers: frames bit by bit, the pair as resistors, reach, levels, bad input, laws.
//!
//! Source: ISO 11898 as data sheets of transceivers and manuals of field buses quote it (`can_bus.json`), Ohm's law; beside each.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

mod bad_input;
pub(crate) mod frames;
mod laws;
pub(crate) mod pair;
pub(crate) mod reach;

use quietpin_core::plan::Plan;
use quietpin_tests::{reference, typed::planned};

/// What data sheets and manuals quote of the standard.
fn json() -> serde_json::Value {
    serde_json::from_str(&reference("can_bus.json")).expect("data")
}

/// A bus that is right, and fields over it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("bus.bit_rate", "500 kbit/s"),
        ("bus.terminators", "2"),
        ("bus.terminated_at", "ends"),
        ("bus.length", "4 m"),
        ("bus.reading", "60 ohm"),
        ("bus.branch", "0.3 m"),
        ("bus.shape", "line"),
        ("bus.high", "2.6 V"),
        ("bus.low", "2.4 V"),
        ("frames.0.name", "engine speed"),
        ("frames.0.identifier", "5F0"),
        ("frames.0.bytes", "8"),
        ("frames.0.period", "10 ms"),
    ];
    planned(&usual, typed)
}
