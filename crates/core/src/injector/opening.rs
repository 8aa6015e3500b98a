//! The current that opens an injector, and whether it comes.

use super::{
    CORNERS, InjectorInputs,
    branch::{AtCorner, Ballast, CurrentEnd, InjectorBranch, note},
};
use crate::{
    quantity::{Band, Current, Holds, Measure, Power, Resistance, Voltage, watts},
    working::{Formula, Step, Working},
};

/// What an injector's winding takes when it just opens, where nothing better is known.
///
/// Injectors of one size have the same room for copper and want the same ampere-turns, whatever their
/// resistance: the power I²R at opening is alike, not the current. Common practice, no source: a 12 Ω
/// injector that still opens at 6 V when hot, and a 2.4 Ω one that does so behind a 6 Ω resistor at 8 V,
/// both come to about this.
pub const POWER_W: f64 = 1.5;

/// Some want twice the watts, √2 times the current: where what is taken decides, it must be found out. Common practice, no
/// source.
const SPREAD: f64 = std::f64::consts::SQRT_2;

/// Why that is taken.
pub const USUAL: &str =
    "common practice, no source: 1.5 W in the winding opens an injector of the usual size";

const ASSUMED: Formula = Formula { symbols: "I_o = √(P_o / R_20)", source: USUAL };
const GIVEN: Formula = Formula { symbols: "I_o", source: "as given" };
const FROM: Formula = Formula {
    symbols: "V_o = I_o × (R_T + R_w + R_c + R_b + n × R_on)",
    source: "Ohm's law, resistances in series",
};
const FROM_ONE_BALLAST: Formula = Formula {
    symbols: "V_o = I_o × (R_T + R_w + R_c + n × (R_b + R_on))",
    source: "Ohm's law, resistances in series",
};
const FROM_PLAIN: Formula = Formula {
    symbols: "V_o = I_o × (R_T + R_w + R_c + n × R_on)",
    source: "Ohm's law, resistances in series",
};

/// The current that opens one.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// The current.
    pub current: Band<Current>,
    /// Whether it was given; else it is the usual one for the resistance.
    pub is_given: bool,
    /// How it was found.
    pub working: Vec<Step>,
}

impl Opening {
    /// The current given, or the usual one: see [`POWER_W`].
    pub fn of(inputs: &InjectorInputs) -> Self {
        let mut working = Working::new();
        if let Some(current) = inputs.opening_current {
            let shown = [("I_o", current.high.show())];
            working.step(&GIVEN, &shown, current.high);
            return Self { current, is_given: true, working: working.into_steps() };
        }
        let (power, resistance) = (watts(POWER_W), inputs.resistance.nominal);
        let shown = [("P_o", power.show()), ("R_20", resistance.show())];
        let current = working.step(&ASSUMED, &shown, usual(power, resistance));
        Self { current: Band::exact(current), is_given: false, working: working.into_steps() }
    }

    /// The current that is enough even where what is taken is too little; that of [`Self::current`] where it was given.
    pub fn surely(&self) -> Current {
        if self.is_given { self.current.high } else { self.current.high * SPREAD }
    }

    /// Whether the current may stay below what opens an injector, by more than rounding.
    pub fn is_missed(&self, at: &AtCorner) -> bool {
        at.injector.low.base() < self.current.high.base() * (1.0 - 1e-9)
    }

    /// Where the current may stay below what opens an injector.
    pub fn missed_at(&self, corners: &[AtCorner; CORNERS]) -> Holds {
        Holds::from_corners(corners.iter().map(|at| (at.corner.name, self.is_missed(at))))
    }
}

fn usual(power: Power, resistance: Resistance) -> Current {
    Measure::from_base((power.base() / resistance.base()).sqrt())
}

/// The battery voltage from which on an injector is sure to open.
#[derive(Clone, Debug, PartialEq)]
pub struct OpensFrom {
    /// The voltage.
    pub supply: Voltage,
    /// How it was found.
    pub working: Vec<Step>,
}

impl OpensFrom {
    /// The battery voltage that opens an injector at the temperature that asks most, all tolerances at their
    /// worse end.
    pub fn of(inputs: &InjectorInputs, opening: &Opening, ballast: &Ballast) -> Self {
        let [first, rest @ ..] = inputs.corners.map(|corner| {
            let mut working = Some(Working::new());
            let branch =
                InjectorBranch::at(inputs, &corner, CurrentEnd::Least, ballast, &mut working);
            let formula = match (branch.each.base() > 0.0, branch.shared.base() > 0.0) {
                (false, false) => &FROM_PLAIN,
                (true, _) => &FROM,
                (false, true) => &FROM_ONE_BALLAST,
            };
            let current = opening.current.high;
            let supply = note(&mut working, formula, current * branch.total(), || {
                let mut values = branch.values();
                values.push(("I_o", current.show()));
                values
            });
            Self { supply, working: working.map(Working::into_steps).unwrap_or_default() }
        });
        let higher = |one: Self, other: Self| {
            if other.supply.base() > one.supply.base() { other } else { one }
        };
        rest.into_iter().fold(first, higher)
    }
}
