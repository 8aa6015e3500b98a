//! Injectors against standards, textbooks, hand-worked cases, laws and bad input.
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
mod limits;
mod plans;
pub(crate) mod remedies;
mod second;
mod sharing;
pub(crate) mod tables;
mod turn_off;

use quietpin_core::{
    conditions::Conditions,
    injector::{DriverKind, InjectorInputs, InjectorOutput, Wire, turn_off::Clamp},
    quantity::{Area, Band, Measure, amperes, celsius, metres, ohms, volts},
};

/// One injector alone on an output without resistance, without wire: each test sets what it is about.
fn bare(resistance_ohm: f64) -> InjectorInputs {
    let zero = Band::exact(ohms(0.0));
    InjectorInputs {
        resistance: Band::exact(ohms(resistance_ohm)),
        inductance: None,
        opening_current: None,
        per_output: 1,
        count: None,
        outputs_there: None,
        output: InjectorOutput {
            stage: DriverKind::PlainSwitch,
            limit: None,
            hold: None,
            peak_time: None,
            on_resistance: zero,
            clamp: Clamp::at(Band::exact(volts(50.0))),
        },
        wire: Wire {
            length: Band::exact(metres(0.0)),
            area: Band::exact(Area::from_base(1e-6)),
            contacts: zero,
        },
        resistor: zero,
        resistor_rating: None,
        has_diode: false,
        pulses: None,
        corners: usual().corners(),
    }
}

/// 8 to 14.8 V and -20 to 100 °C: common practice, no source.
fn usual() -> Conditions {
    Conditions::between(
        Band { low: volts(8.0), nominal: volts(12.6), high: volts(14.8) },
        Band { low: celsius(-20.0), nominal: celsius(20.0), high: celsius(100.0) },
    )
}

/// The same with a limit and an opening current.
fn limited(resistance_ohm: f64, limit_a: f64, opening_a: f64) -> InjectorInputs {
    let mut inputs = bare(resistance_ohm);
    inputs.output.limit = Some(Band::exact(amperes(limit_a)));
    inputs.opening_current = Some(Band::exact(amperes(opening_a)));
    inputs
}
