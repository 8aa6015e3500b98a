//! The inductance of an injector's winding: as given, or the usual one for its resistance.

use super::InjectorInputs;
use crate::{
    quantity::{Band, Inductance, Measure, henries, seconds},
    working::{Formula, Step, Working},
};

/// The time constant L/R of a winding of the usual size, where its inductance is not known: least, usual and most, in
/// seconds. Injectors of one size have the same room for iron and copper, and both L and R go with the square of the
/// number of turns. Common practice, no source: 12 mH at 12 Ω, 2 to 3 mH at 2.4 Ω.
pub const TIME_CONSTANT_S: [f64; 3] = [0.5e-3, 1.0e-3, 1.5e-3];

const ASSUMED: Formula = Formula {
    symbols: "L = R_20 × τ",
    source: "common practice, no source: an L/R of 0.5 to 1.5 ms is usual for an injector",
};
const GIVEN: Formula = Formula { symbols: "L", source: "as given" };

/// The inductance of one injector.
#[derive(Clone, Debug, PartialEq)]
pub struct Winding {
    /// The inductance.
    pub inductance: Band<Inductance>,
    /// Whether it was given; else it is the usual one for the resistance.
    pub is_given: bool,
    /// How it was found.
    pub working: Vec<Step>,
}

impl Winding {
    /// The inductance given, or the usual one: see [`TIME_CONSTANT_S`].
    pub fn of(inputs: &InjectorInputs) -> Self {
        let mut working = Working::new();
        if let Some(inductance) = inputs.inductance {
            working.step(&GIVEN, &[("L", inductance.nominal.show())], inductance.nominal);
            return Self { inductance, is_given: true, working: working.into_steps() };
        }
        let resistance = inputs.resistance.nominal;
        let [low, nominal, high] = TIME_CONSTANT_S.map(|constant| {
            let shown = [("R_20", resistance.show()), ("τ", seconds(constant).show())];
            working.step(&ASSUMED, &shown, henries(resistance.base() * constant))
        });
        let inductance = Band { low, nominal, high };
        Self { inductance, is_given: false, working: working.into_steps() }
    }
}
