//! One coil: its charge, and what it does when it is held on.

use super::CoilInputs;
use crate::{
    output::End,
    quantity::{
        Band, Current, Energy, Inductance, Measure, Power, Resistance, Temperature, Time, Voltage,
        amperes, celsius, joules, seconds, watts,
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
const LAST: Formula = Formula { symbols: "I_held = V / R", source: "Ohm's law" };
const HEAT: Formula = Formula { symbols: "P = I_held² R", source: "resistive heating" };
const RISES: Formula = Formula {
    symbols: "t_100 = 100 K × m c / P",
    source: "all heat stays in a primary of 50 to 150 g of copper (common practice, no source), 387 J/(kg K): University \
             Physics, vol. 2, table 1.3, from memory",
};

/// Specific heat of copper in J/(kg K): University Physics, vol. 2, table 1.3, from memory.
const COPPER_J_KG_K: f64 = 387.0;
/// Copper of a primary, in kg: common practice, no source.
const PRIMARY_KG: [f64; 3] = [0.05, 0.1, 0.15];
/// By so many kelvin it is certainly too hot.
const RISE_K: f64 = 100.0;

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

/// A coil that is held on.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// The current, lowest to highest: at the charging supply, from hot to cold.
    pub current: Band<Current>,
    /// Heat in the coil.
    pub in_coil: Band<Power>,
    /// Heat in the igniter, as meant.
    pub in_igniter: Power,
    /// Until the primary's copper is 100 K hotter, if no heat leaves it.
    pub rises_in: Band<Time>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl Held {
    /// At the charging supply.
    pub(super) fn new(inputs: &CoilInputs) -> Option<Self> {
        let (supply, temperature) = (inputs.conditions.supply.high, inputs.conditions.temperature);
        let nominal = CoilCorner::nominal(inputs, supply, celsius(20.0));
        let ends = [
            CoilCorner::slowest(inputs, supply, temperature.high),
            nominal,
            CoilCorner::fastest(inputs, supply, temperature.low),
        ];
        let last = |corner: &CoilCorner| Some(amperes(corner.charging()?.last_a()));
        let heat = |corner: &CoilCorner| {
            let current = last(corner)?.base();
            Some(watts(current * current * corner.resistance.base()))
        };
        let currents = band(ends.iter().map(last))?;
        let heats = band(ends.iter().map(heat))?;
        let current = currents.nominal;
        let shown = [("V", nominal.driving().show()), ("R", nominal.resistance.show())];
        let mut working = vec![step(&LAST, &shown, current)];
        let shown = [("I_held", current.show()), ("R", nominal.resistance.show())];
        working.push(step(&HEAT, &shown, heats.nominal));
        let rise = |kg: f64, power: Power| seconds(RISE_K * kg * COPPER_J_KG_K / power.base());
        let [least, usual, most] = PRIMARY_KG;
        let rises_in = Band {
            low: rise(least, heats.high),
            nominal: rise(usual, heats.nominal),
            high: rise(most, heats.low),
        };
        working.push(step(&RISES, &[("P", heats.nominal.show())], rises_in.nominal));
        let in_igniter =
            watts((supply.base() - current.base() * nominal.resistance.base()) * current.base());
        Some(Self { current: currents, in_coil: heats, in_igniter, rises_in, working })
    }
}

/// From the values at the slowest, the nominal and the fastest end: lowest to highest.
fn band<Q: Measure>(values: impl Iterator<Item = Option<Q>>) -> Option<Band<Q>> {
    let values: Option<Vec<Q>> = values.collect();
    let values = values?;
    let nominal = *values.get(1)?;
    Some(values.into_iter().fold(Band::exact(nominal), |band, it| band.widened_to(it)))
}
