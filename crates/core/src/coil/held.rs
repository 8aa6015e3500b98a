//! A coil that is held on: what it takes, and what burns first, it, its igniter or the fuse.

use super::{
    CoilInputs,
    charging::{Charged, CoilCorner},
};
use crate::{
    quantity::{Band, Current, Measure, Power, Time, amperes, celsius, seconds, watts},
    tables::fuses,
    working::{Formula, Step, step},
};

const LAST: Formula = Formula { symbols: "I_held = V / R", source: "Ohm's law" };
const HEAT: Formula = Formula { symbols: "P = I_held² R", source: "resistive heating" };
const IGNITER_HEAT: Formula = Formula {
    symbols: "P_igniter = N (V_supply − I_held R) I_held",
    source: "what the coil's resistance leaves of the supply stands across its igniter; N coils on it",
};
const RISES: Formula = Formula {
    symbols: "t_100 = 100 K × m c / P",
    source: "all heat stays in a primary of 50 to 150 g of copper (common practice, no source), 387 J/(kg K): University \
             Physics, vol. 2, table 1.3, from memory",
};
const IGNITER_RISES: Formula = Formula {
    symbols: "t_100 = 100 K × m c / P_igniter",
    source: "all heat stays in the metal about its chip, as much as 10 g of copper: common practice, no source",
};
const FUSE_HOLDS: Formula = Formula { symbols: "k = N I_held / I_fuse", source: fuses::GATES };

/// Specific heat of copper in J/(kg K): University Physics, vol. 2, table 1.3, from memory.
const COPPER_J_KG_K: f64 = 387.0;
/// Copper of a primary, in kg: common practice, no source.
const PRIMARY_KG: [f64; 3] = [0.05, 0.1, 0.15];
/// The metal about an igniter's chip, as so much copper, in kg: common practice, no source.
const IGNITER_KG: f64 = 0.01;
/// By so many kelvin it is certainly too hot.
const RISE_K: f64 = 100.0;
/// A controller takes as long to start at least, in seconds: common practice, no source.
const STARTING_S: f64 = 0.1;

/// What of a coil that is held on burns first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BurningPart {
    /// Its primary.
    Coil,
    /// Its igniter.
    Igniter,
}

/// A coil that is held on.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// The current, lowest to highest: at the charging supply, from hot to cold.
    pub current: Band<Current>,
    /// Heat in the coil.
    pub in_coil: Band<Power>,
    /// What those on one igniter take together, as meant.
    pub taken: Current,
    /// Heat in that igniter, as meant.
    pub in_igniter: Power,
    /// Until the primary's copper is 100 K hotter, if no heat leaves it.
    pub rises_in: Band<Time>,
    /// What burns first, as meant, and when it is 100 K hotter.
    pub first: (BurningPart, Time),
    /// How those of the coil were found.
    pub working: Vec<Step>,
    /// How those of the igniter were.
    of_igniter: Vec<Step>,
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
        let coils = f64::from(inputs.per_igniter.max(1));
        let left = supply.base() - current.base() * nominal.resistance.base();
        let in_igniter = watts(coils * left * current.base());
        let shown = [
            ("N", inputs.per_igniter.into()),
            ("V_supply", supply.show()),
            ("I_held", current.show()),
            ("R", nominal.resistance.show()),
        ];
        let mut of_igniter = vec![step(&IGNITER_HEAT, &shown, in_igniter)];
        let igniter = rise(IGNITER_KG, in_igniter);
        of_igniter.push(step(&IGNITER_RISES, &[("P_igniter", in_igniter.show())], igniter));
        let first = if igniter < rises_in.nominal {
            (BurningPart::Igniter, igniter)
        } else {
            (BurningPart::Coil, rises_in.nominal)
        };
        let taken = current * coils;
        Some(Self {
            current: currents,
            in_coil: heats,
            taken,
            in_igniter,
            rises_in,
            first,
            working,
            of_igniter,
        })
    }

    /// Whether coil and igniter are too hot before a fuse of this rating is sure to blow; with how long it may hold, which is
    /// nothing where that is for ever.
    pub fn outlasts(&self, fuse: Current) -> (bool, Option<Time>) {
        let holds = fuses::holds_for(fuse, self.taken);
        (holds.is_none_or(|holds| holds > self.first.1), holds)
    }

    /// How all that follows.
    pub fn against(&self, fuse: Current) -> Vec<Step> {
        let shown = [("N I_held", self.taken.show()), ("I_fuse", fuse.show())];
        let share: crate::quantity::Ratio = self.taken / fuse;
        let of_fuse = [step(&FUSE_HOLDS, &shown, share)];
        self.working.iter().chain(&self.of_igniter).chain(&of_fuse).cloned().collect()
    }
}

/// The charge of a coil that is held on while the controller starts, key just on: nothing where no current can flow.
pub fn while_starting(inputs: &CoilInputs) -> Option<Charged> {
    let at_rest = CoilCorner::nominal(inputs, inputs.conditions.supply.nominal, celsius(20.0));
    Charged::new(&at_rest, STARTING_S)
}

/// From the values at the slowest, the nominal and the fastest end: lowest to highest.
fn band<Q: Measure>(values: impl Iterator<Item = Option<Q>>) -> Option<Band<Q>> {
    let values: Option<Vec<Q>> = values.collect();
    let values = values?;
    let nominal = *values.get(1)?;
    Some(values.into_iter().fold(Band::exact(nominal), |band, it| band.widened_to(it)))
}
