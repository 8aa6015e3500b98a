//! Parts that are put across a load, at its pin or into its feed, or taken off.

use std::ops::RangeInclusive;

use super::{Alternative, Change, search::Search};
use crate::{
    output::{
        FarEnd, KeyState, Load, LoadKind, Suppression, Wiring,
        clean::{RESTING, is_clean_in},
    },
    quantity::{Band, Measure, Power, Resistance, ohms, watts},
    tables::preferred::Series,
};

/// Tolerance of a usual resistor.
const TOLERANCE: f64 = 0.05;

/// Resistors that may serve as a pull-down.
const PULL_DOWN_OHM: RangeInclusive<f64> = 10.0..=8200.0;

/// A resistor that a fitter can splice into a loom gets no hotter than this: common practice, no source.
const MOST_PULL_DOWN_W: f64 = 2.0;

impl Search<'_> {
    /// The diode turned the right way round.
    pub(super) fn turned(&self) -> Vec<Alternative> {
        self.altered(Change::Turn, |load| {
            let suppression = match load.suppression {
                Suppression::Diode { is_right_way: false } => {
                    Suppression::Diode { is_right_way: true }
                }
                _ => return None,
            };
            Some(Load { suppression, ..load.clone() })
        })
    }

    /// No diode across a load that is driven both ways.
    pub(super) fn without_diode(&self) -> Vec<Alternative> {
        self.altered(Change::NoDiode, |load| {
            let has_diode = matches!(load.suppression, Suppression::Diode { .. });
            let is_turned = has_diode && load.far_end == FarEnd::Output;
            is_turned.then(|| Load { suppression: Suppression::None, ..load.clone() })
        })
    }

    /// The largest resistor to ground that keeps the load released.
    pub(super) fn pull_downs(&self) -> Vec<Alternative> {
        let output = &self.wiring.output;
        if output.pull_up.is_none() || output.pull_down.is_some() {
            return Vec::new();
        }
        self.at_levels(|wirings| {
            self.largest(wirings, Change::PullDown, |before, ohm| {
                let mut wiring = before.clone();
                wiring.output.pull_down = Some(Band::with_tolerance(ohms(ohm), TOLERANCE));
                wiring
            })
        })
    }

    /// The largest resistor across the load that keeps it released, where something pulls the pin down or leaks.
    pub(super) fn bleeders(&self) -> Vec<Alternative> {
        let output = &self.wiring.output;
        let is_held = output.pull_down.is_some() || output.leakage.is_some();
        if !is_held || !self.is_fed() {
            return Vec::new();
        }
        self.at_levels(|wirings| {
            self.largest(wirings, Change::Bleeder, |before, ohm| {
                let resistance = Band::with_tolerance(ohms(ohm), TOLERANCE);
                let beside =
                    Load { resistance, ..Load::usual(LoadKind::Resistor, self.load.far_end) };
                let mut wiring = before.clone();
                wiring.loads.push(beside);
                wiring
            })
        })
    }

    /// A diode across a winding whose kick the output can't bear. Where plus is depends on the level if the load's other
    /// end goes to an output: one diode can't then be right at both.
    pub(super) fn coil_diode(&self) -> Vec<Alternative> {
        let is_bare = matches!(self.load.suppression, Suppression::Unknown | Suppression::None);
        if !is_bare {
            return Vec::new();
        }
        self.at_levels(|wirings| {
            if wirings.len() > 1 && self.load.far_end == FarEnd::Output {
                return None;
            }
            self.solve_each(wirings, |before| {
                let suppression = Suppression::Diode { is_right_way: true };
                let now = self.with(before, Load { suppression, ..self.load_of(before)?.clone() });
                let time = self.turn_off(&now)?.lets_go?;
                Some((Change::CoilDiode(time), now))
            })
        })
    }

    /// A diode in the feed of a load that is driven backwards, or feeds something dead.
    pub(super) fn feed_diode(&self) -> Vec<Alternative> {
        let is_quiet = |state| {
            let search = (self.budget, self.borne);
            is_clean_in(state, self.wiring, self.subject, self.around, search)
        };
        let mut resting = RESTING.into_iter().chain([KeyState::Outlived]);
        if !self.is_fed() || self.load.is_one_way() || resting.all(is_quiet) {
            return Vec::new();
        }
        self.altered(Change::FeedDiode, |load| Some(Load { has_feed_diode: true, ..load.clone() }))
    }

    fn is_fed(&self) -> bool {
        matches!(self.load.far_end, FarEnd::Ignition | FarEnd::Relay | FarEnd::Battery)
    }

    /// The largest preferred resistor with which the load is released in every state at rest.
    ///
    /// The smaller it is, the less is left across the load: the first that serves is found by halving.
    fn largest(
        &self,
        wirings: &[&Wiring],
        change: impl Fn(Resistance, Power) -> Change,
        with: impl Fn(&Wiring, f64) -> Wiring,
    ) -> Option<Alternative> {
        let mut values: Vec<f64> = Series::E12.values().map(Measure::base).collect();
        values.retain(|ohm| PULL_DOWN_OHM.contains(ohm));
        values.reverse();
        let is_released = |ohm: f64| {
            wirings.iter().all(|before| {
                let now = with(before, ohm);
                RESTING.into_iter().all(|state| {
                    is_clean_in(state, &now, self.subject, self.around, (self.budget, self.borne))
                })
            })
        };
        let at = values.partition_point(|ohm| !is_released(*ohm));
        let ohm = *values.get(at)?;
        let power = self.most_power(ohm);
        let change = change(ohms(ohm), power);
        let found = self.solve_each(wirings, |before| Some((change, with(before, ohm))))?;
        (power <= watts(MOST_PULL_DOWN_W)).then_some(found)
    }

    /// With the highest supply across it, at the lower end of its tolerance.
    fn most_power(&self, ohm: f64) -> Power {
        let supplies = self.around.corners.iter().map(|at| at.supply.base());
        let most = supplies.fold(0.0, f64::max);
        watts(most * most / ((1.0 - TOLERANCE) * ohm))
    }
}
