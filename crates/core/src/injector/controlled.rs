//! Outputs and drivers that control the current: a peak to open the injector, then less to hold it.
//!
//! The peak must be enough to open each injector that shares the channel, which limits their *sum*; and the
//! battery must be able to push it through them, or the driver waits for a peak that never comes, stays fully on
//! through the whole pulse, and driver and injector run hot.

use super::{
    Class, Inputs,
    branch::{self, AtCorner, Ballast, End},
    opening::Opening,
};
use crate::{
    conditions::Corner,
    quantity::{Band, Current, Holds, Measure},
    working::{Formula, Step, step},
};

/// The share of its opening current that keeps an open injector open: common practice, no source.
pub const HOLD_SHARE: f64 = 0.5;

const LEAST_PEAK: Formula = Formula {
    symbols: "I_peak = n × I_o",
    source: "Kirchhoff's current law: the channel limits the sum",
};
const SHARE: Formula =
    Formula { symbols: "I = I_peak / n", source: "Kirchhoff's current law, injectors alike" };
const HOLD: Formula = Formula {
    symbols: "I_hold = 50% × n × I_o",
    source: "half of the opening current holds: common practice, no source",
};

/// What is true of a channel that controls the current.
#[derive(Clone, Debug, PartialEq)]
pub struct Controlled {
    /// The verdict.
    pub serves: Serves,
    /// The peak it is set to.
    pub peak: Option<Band<Current>>,
    /// What each injector gets of it.
    pub share: Option<Current>,
    /// The peaks that work.
    pub window: Window,
    /// Where the peak may not be reached; at no corner where none is set.
    pub not_reached: Holds,
    /// The hold current it should have at least.
    pub hold_needed: Current,
    /// Whether the hold current that was given is less.
    pub hold_too_small: bool,
    /// How share and hold were found.
    pub working: Vec<Step>,
}

/// How well a channel that controls the current serves its injectors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Serves {
    /// Its peak is not known.
    UnknownPeak,
    /// Opens them all, and reaches its peak at every corner.
    Always,
    /// Opens them all, and may not reach its peak at some corners.
    PeakNotEverywhere,
    /// High-impedance injectors whose resistance keeps the current below the peak: the channel works as a plain switch.
    AsPlainSwitch,
    /// The peak is never reached.
    PeakNowhere,
    /// The peak, shared, is not enough to open each.
    TooSmall,
}

/// The peaks that open the injectors and are reached.
#[derive(Clone, Debug, PartialEq)]
pub struct Window {
    /// The least that opens them all.
    pub least: Current,
    /// The most that the battery is sure to reach at every corner.
    pub most: Current,
    /// The corner that allows no more.
    pub most_at: Corner,
    /// How both were found.
    pub working: Vec<Step>,
}

impl Window {
    /// Whether any peak works at every corner.
    pub fn is_open(&self) -> bool {
        self.least.base() <= self.most.base()
    }
}

impl Controlled {
    /// What a channel set to `peak` does with these injectors; what it would need where that is not known.
    pub fn of(inputs: &Inputs, opening: &Opening, peak: Option<Band<Current>>) -> Self {
        let corners = branch::at_corners(inputs, &Ballast::NONE);
        let n = f64::from(inputs.per_output.max(1));
        let shown = ("n", inputs.per_output.into());
        let mut working = Vec::new();
        let share = peak.map(|peak| peak.low / n);
        if let (Some(peak), Some(share)) = (peak, share) {
            working.push(step(&SHARE, &[("I_peak", peak.low.show()), shown.clone()], share));
        }
        let hold_needed = opening.current.high * n * HOLD_SHARE;
        working.push(step(&HOLD, &[shown, ("I_o", opening.current.high.show())], hold_needed));
        let not_reached = peak.map_or(Holds::Never, |peak| not_reached(&corners, peak));
        Self {
            serves: serves(inputs, opening, &corners, peak),
            peak,
            share,
            window: window(inputs, opening, &corners),
            not_reached,
            hold_needed,
            hold_too_small: inputs
                .output
                .hold
                .is_some_and(|hold| hold.low.base() < hold_needed.base()),
            working,
        }
    }
}

fn not_reached(corners: &[AtCorner; super::CORNERS], peak: Band<Current>) -> Holds {
    Holds::from_corners(
        corners.iter().map(|at| (at.corner.name, at.output.low.base() < peak.high.base())),
    )
}

fn serves(
    inputs: &Inputs,
    opening: &Opening,
    corners: &[AtCorner; super::CORNERS],
    peak: Option<Band<Current>>,
) -> Serves {
    let Some(peak) = peak else { return Serves::UnknownPeak };
    let n = f64::from(inputs.per_output.max(1));
    if peak.low.base() < n * opening.current.high.base() * (1.0 - 1e-9) {
        return Serves::TooSmall;
    }
    let ever = corners.iter().any(|at| at.output.high.base() >= peak.low.base());
    match (not_reached(corners, peak), ever) {
        (Holds::Never, _) => Serves::Always,
        (_, true) => Serves::PeakNotEverywhere,
        (_, false) if Class::of(inputs.resistance.nominal) == Class::HighImpedance => {
            Serves::AsPlainSwitch
        }
        (_, false) => Serves::PeakNowhere,
    }
}

fn window(inputs: &Inputs, opening: &Opening, corners: &[AtCorner; super::CORNERS]) -> Window {
    let n = f64::from(inputs.per_output.max(1));
    let least = opening.current.high * n;
    let shown = [("n", inputs.per_output.into()), ("I_o", opening.current.high.show())];
    let mut working = vec![step(&LEAST_PEAK, &shown, least)];
    let weakest = branch::lowest(corners);
    working.extend(branch::working_at(inputs, &weakest.corner, End::Least, &Ballast::NONE));
    Window { least, most: weakest.output.low, most_at: weakest.corner, working }
}
