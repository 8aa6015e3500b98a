//! One coil, and its charge.

use super::CoilInputs;
use crate::{
    output::End,
    quantity::{
        Current, Energy, Inductance, Measure, Resistance, Temperature, Time, Voltage, amperes,
        joules, seconds,
    },
    tables::copper,
    transient::{Limited, stored_energy_j},
    working::{Formula, Step, step},
};

const RL: &str = "University Physics, vol. 2, section 14.4";
const DRIVING: Formula =
    Formula { symbols: "V = V_supply − V_igniter", source: "voltages around a loop sum to zero" };
const DWELL: Formula = Formula { symbols: "t_dwell = −L / R ln(1 − I R / V)", source: RL };
const ENERGY: Formula =
    Formula { symbols: "E = L I² / 2", source: "University Physics, vol. 2, section 14.3" };

/// One coil with everything at one end of its band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilCorner {
    supply: Voltage,
    drop: Voltage,
    pub(super) resistance: Resistance,
    pub(super) inductance: Inductance,
    limit: Option<Current>,
    temperature: Temperature,
    resistance_at_20: Resistance,
}

impl CoilCorner {
    fn new(inputs: &CoilInputs, supply: Voltage, at: Temperature, end: End) -> Self {
        let resistance_at_20 = end.of(&inputs.resistance);
        Self {
            supply,
            drop: end.of(&inputs.drop),
            resistance: copper::at(at, resistance_at_20),
            inductance: end.of(&inputs.inductance),
            limit: inputs.limit.map(|limit| end.opposite().of(&limit)),
            temperature: at,
            resistance_at_20,
        }
    }

    /// As meant.
    pub fn nominal(inputs: &CoilInputs, supply: Voltage, at: Temperature) -> Self {
        Self::new(inputs, supply, at, End::Nominal)
    }

    /// Every end that makes the charge slow: where the temperature is the highest, the slowest there is.
    pub fn slowest(inputs: &CoilInputs, supply: Voltage, at: Temperature) -> Self {
        Self::new(inputs, supply, at, End::High)
    }

    /// Every end that makes it fast.
    pub fn fastest(inputs: &CoilInputs, supply: Voltage, at: Temperature) -> Self {
        Self::new(inputs, supply, at, End::Low)
    }

    pub(super) fn driving(&self) -> Voltage {
        self.supply - self.drop
    }

    /// The charge; nothing where the supply is no more than the igniter's drop.
    pub fn charging(&self) -> Option<Limited> {
        Limited::new(
            self.driving().base(),
            self.resistance.base(),
            self.inductance.base(),
            self.limit.map(Measure::base),
        )
    }

    /// The time until a current is reached, with how it was found; nothing where it never is.
    pub fn time_to(&self, current: Current) -> (Option<Time>, Vec<Step>) {
        let time = self.charging().and_then(|it| it.time_to(current.base())).map(seconds);
        let driving = self.driving();
        let mut working = vec![
            step(
                &DRIVING,
                &[("V_supply", self.supply.show()), ("V_igniter", self.drop.show())],
                driving,
            ),
            step(
                &copper::AT_TEMPERATURE,
                &[("R_20", self.resistance_at_20.show()), ("T", self.temperature.show())],
                self.resistance,
            ),
        ];
        let values = [
            ("L", self.inductance.show()),
            ("R", self.resistance.show()),
            ("I", current.show()),
            ("V", driving.show()),
        ];
        working.extend(time.map(|time| step(&DWELL, &values, time)));
        (time, working)
    }
}

/// One charge.
#[derive(Clone, Debug, PartialEq)]
pub struct Charged {
    /// How long it takes.
    pub time: Time,
    /// The current at its end.
    pub current: Current,
    /// The energy in the coil.
    pub energy: Energy,
    /// What has flowed, in coulombs.
    pub(super) charge_c: f64,
    /// Heat in the coil's resistance.
    pub in_coil: Energy,
    /// Heat in the igniter: its drop, and what it takes by holding the current.
    pub in_igniter: Energy,
    /// How the energy was found.
    pub working: Vec<Step>,
}

impl Charged {
    /// A charge of this many seconds; nothing where no current can flow.
    pub fn new(corner: &CoilCorner, time_s: f64) -> Option<Self> {
        let coil = corner.charging()?;
        let current = amperes(coil.current_at(time_s)?);
        let energy = joules(stored_energy_j(corner.inductance.base(), current.base()));
        let charge_c = coil.charge_at(time_s)?;
        let (_, mut working) = corner.time_to(current);
        let values = [("L", corner.inductance.show()), ("I", current.show())];
        working.push(step(&ENERGY, &values, energy));
        Some(Self {
            time: seconds(time_s),
            current,
            energy,
            charge_c,
            in_coil: joules(corner.resistance.base() * coil.square_at(time_s)?),
            in_igniter: joules(corner.drop.base() * charge_c + coil.held_j(time_s)?),
            working,
        })
    }
}
