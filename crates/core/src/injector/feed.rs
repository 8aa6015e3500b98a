//! The feed that all injectors hang on: its relay and its fuse.

use super::{Answer, Inputs, On, branch, controlled::Serves};
use crate::{
    quantity::{Current, Measure, amperes},
    tables::fuses,
    working::{Formula, Step, step},
};

const SHARE: Formula = Formula {
    symbols: "I_set = N × I",
    source: "Kirchhoff's current law; all on at once, which duty comes near to at the highest speed",
};
const HELD: Formula = Formula {
    symbols: "I_set = N_out × I_hold",
    source: "Kirchhoff's current law; every channel at its hold current, the peaks too short for a fuse to count",
};
const TOTAL: Formula = Formula { symbols: "I_feed = I_1 + I_2", source: "Kirchhoff's current law" };
const RATING: Formula = Formula {
    symbols: "I_rated = I_feed / 75%",
    source: "ISO 8820-3 ratings, from memory; loaded to 75%: common practice, no source",
};

/// What one set of injectors takes from the feed.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// How many.
    pub count: u32,
    /// The most that they take for long.
    pub current: Current,
    /// How it was found.
    pub working: Vec<Step>,
}

/// The feed of all injectors.
#[derive(Clone, Debug, PartialEq)]
pub struct Feed {
    /// What each set takes.
    pub shares: Vec<Share>,
    /// The most that flows for long.
    pub total: Current,
    /// The least rating that its relay's contact and its fuse must have.
    pub least: Current,
    /// The smallest blade fuse that carries it for long; none where none does.
    pub fuse: Option<Current>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl Share {
    /// What a set takes; nothing where it is not known how many there are.
    pub fn of(inputs: &Inputs, found: &Answer) -> Option<Self> {
        let (count, outputs) = (inputs.count?, found.outputs?);
        if let On::CurrentControlled(channel) = &found.on
            && channel.serves != Serves::AsPlainSwitch
        {
            let hold = inputs.output.hold.map_or(channel.hold_needed, |hold| hold.high);
            let current = hold * f64::from(outputs);
            let shown = [("N_out", outputs.into()), ("I_hold", hold.show())];
            return Some(Self { count, current, working: vec![step(&HELD, &shown, current)] });
        }
        let highest = found.corners.iter().map(|at| at.injector.high.base()).fold(0.0, f64::max);
        let one = amperes(highest);
        let current = one * f64::from(count);
        let mut working = branch::working_at(
            inputs,
            &found.highest.corner,
            branch::End::Most,
            &branch::Ballast::NONE,
        );
        working.push(step(&SHARE, &[("N", count.into()), ("I", one.show())], current));
        Some(Self { count, current, working })
    }
}

impl Feed {
    /// The feed of these sets.
    pub fn of(shares: Vec<Share>) -> Self {
        let total = amperes(shares.iter().map(|share| share.current.base()).sum());
        let mut working: Vec<Step> =
            shares.iter().flat_map(|share| share.working.iter().cloned()).collect();
        if let [one, other] = shares.as_slice() {
            let shown = [("I_1", one.current.show()), ("I_2", other.current.show())];
            working.push(step(&TOTAL, &shown, total));
        }
        let least = total / fuses::LASTING;
        working.push(step(&RATING, &[("I_feed", total.show())], least));
        Self { shares, total, least, fuse: fuses::for_long(total), working }
    }

    /// Whether a fuse or a contact of this rating carries it for long.
    pub fn is_carried_by(&self, rating: Current) -> bool {
        rating.base() >= self.least.base() * (1.0 - 1e-9)
    }
}
