//! Whether an output bears the current.

use super::{
    CORNERS,
    branch::{self, AtCorner},
};
use crate::{
    conditions::Corner,
    quantity::{Current, Holds, Measure, Ratio, amperes},
    working::{Formula, Step, step},
};

/// The share of the limit that should be left at the worst corner: common practice, no source.
pub const MARGIN_WANTED: f64 = 0.10;

/// So little over the limit is within what the numbers are good for: the scale's rule for a hair, common practice, no source.
const HAIR: f64 = 0.03;

const MARGIN: Formula = Formula {
    symbols: "m = 1 − I_out / I_limit",
    source: "definition; 10% is common practice, no source",
};
const NEEDED: Formula = Formula {
    symbols: "I_limit = I_out / (1 − 10%)",
    source: "10% of margin: common practice, no source; rounded up to 0.1 A",
};

/// How well an output bears its injectors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carries {
    /// At every corner, with margin.
    WithMargin,
    /// At every corner, with too little left.
    NoMargin,
    /// Not at some corners.
    NotEverywhere,
    /// At no corner.
    Nowhere,
}

/// An output's limit held against its current.
#[derive(Clone, Debug, PartialEq)]
pub struct Carrying {
    /// The verdict.
    pub carries: Carries,
    /// The limit.
    pub limit: Current,
    /// The highest current at any corner.
    pub highest: Current,
    /// The corner where it flows.
    pub worst: Corner,
    /// What is left of the limit there, as a share of it; below zero where the current is over it.
    pub margin: Ratio,
    /// Where the current is over the limit.
    pub over: Holds,
    /// Whether it is over by a hair only: by 3 % at most, or by the tolerance of what was typed alone.
    pub is_hair: bool,
    /// How the margin was found.
    pub working: Vec<Step>,
}

impl Carrying {
    /// Holds the highest current of each corner against a limit.
    pub fn of(corners: &[AtCorner; CORNERS], limit: Current) -> Self {
        let worst = branch::highest(corners);
        let highest = worst.output.high;
        let margin = margin(highest, limit);
        let shown = [("I_out", highest.show()), ("I_limit", limit.show())];
        let over = Holds::from_corners(
            corners.iter().map(|at| (at.corner.name, is_over(at.output.high, limit))),
        );
        let carries = match over {
            Holds::Always => Carries::Nowhere,
            Holds::AtSome(_) => Carries::NotEverywhere,
            Holds::Never if margin.base() < MARGIN_WANTED - 1e-9 => Carries::NoMargin,
            Holds::Never => Carries::WithMargin,
        };
        let is_hair = matches!(over, Holds::AtSome(_))
            && (margin.base() >= -HAIR || !is_over(worst.output.nominal, limit));
        let working = vec![step(&MARGIN, &shown, margin)];
        Self { carries, limit, highest, worst: worst.corner, margin, over, is_hair, working }
    }

    /// Whether the output bears it with margin.
    pub fn has_margin(&self) -> bool {
        self.carries == Carries::WithMargin
    }
}

/// What a current leaves of a limit, as a share of it; below zero above it.
pub fn margin(current: Current, limit: Current) -> Ratio {
    Measure::from_base(1.0 - current.base() / limit.base())
}

/// Over the limit by more than rounding.
fn is_over(current: Current, limit: Current) -> bool {
    current.base() > limit.base() * (1.0 + 1e-9)
}

/// The limit that an output must have, and how it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitNeeded {
    /// The limit, rounded up to tenths of an ampere so that what is read can be bought.
    pub limit: Current,
    /// How it was found.
    pub working: Vec<Step>,
}

impl LimitNeeded {
    /// The smallest limit that leaves the margin wanted at every corner.
    pub fn of(corners: &[AtCorner; CORNERS]) -> Self {
        let highest = branch::highest(corners).output.high;
        let least = highest.base() / (1.0 - MARGIN_WANTED);
        let limit = amperes((least * 10.0 - 1e-9).ceil() / 10.0);
        let working = vec![step(&NEEDED, &[("I_out", highest.show())], limit)];
        Self { limit, working }
    }
}
