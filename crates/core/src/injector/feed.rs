//! The feed that all injectors hang on: its relay and its fuse.

use super::{
    InjectorAnswer, InjectorInputs, On,
    branch::{self, Ballast, CurrentEnd, InjectorBranch},
    controlled::Serves,
};
use crate::{
    quantity::{Current, Holds, Measure, Ratio, amperes},
    tables::fuses,
    working::{Formula, Step, step},
};

const SHARE: Formula = Formula {
    symbols: "I_set = N × I × root of D",
    source: "RMS of pulses of duty D, all at once: however they are staggered it is no more (the RMS of a sum is at most the sum of the RMS); \
             the winding at 20 °C, which an engine that runs for long is not below",
};
const CURED: Formula = Formula {
    symbols: "I_set = N × I",
    source: "the sum of the currents; each as the best fix lets it, a driver at its hold current",
};
const HELD: Formula = Formula {
    symbols: "I_set = N_out × I_hold",
    source: "the sum of the currents; every channel at its hold current, the peaks too short for a fuse to count",
};
const TOTAL: Formula = Formula { symbols: "I_feed = I_1 + I_2", source: "the sum of the currents" };
const BESIDE: Formula = Formula {
    symbols: "I_feed = I_sets + I_others",
    source: "the sum of the RMS; the loads said to be on the same contact, all on at once",
};
const RATING: Formula = Formula { symbols: "I_rated = I_feed / 75%", source: fuses::SOURCE };

/// What one set of injectors takes from the feed.
#[derive(Clone, Debug, PartialEq)]
pub struct Share {
    /// How many.
    pub count: u32,
    /// The most that they take for long, RMS: what heats a fuse.
    pub current: Current,
    /// Whether that is with the remedy to take, since the outputs can't carry them as planned.
    pub is_cured: bool,
    /// How it was found.
    pub working: Vec<Step>,
}

/// The feed of all injectors.
#[derive(Clone, Debug, PartialEq)]
pub struct InjectorFeed {
    /// What each set takes.
    pub shares: Vec<Share>,
    /// What other loads behind the same contact take.
    pub others: Current,
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
    /// What a set takes, with the remedy to take where the outputs can't carry it; nothing where it is not known how many
    /// there are, or where nothing cures it. `duty` is the most of the time that they are open.
    pub fn of(inputs: &InjectorInputs, found: &InjectorAnswer, duty: Ratio) -> Option<Self> {
        let (count, outputs) = (inputs.count?, found.outputs?);
        if let On::CurrentControlled(channel) = &found.on
            && channel.serves != Serves::AsPlainSwitch
        {
            let hold = inputs.output.hold.map_or(channel.hold_needed, |hold| hold.high);
            let current = hold * f64::from(outputs);
            let shown = [("N_out", outputs.into()), ("I_hold", hold.show())];
            let working = vec![step(&HELD, &shown, current)];
            return Some(Self { count, current, is_cured: false, working });
        }
        if let On::PlainSwitch(carrying, cures) = &found.on
            && carrying.over != Holds::Never
        {
            let taken = cures.side_by_side.taken()?;
            let current = taken.each * f64::from(count);
            let shown = [("N", count.into()), ("I", taken.each.show())];
            let mut working = taken.working.clone();
            working.push(step(&CURED, &shown, current));
            return Some(Self { count, current, is_cured: true, working });
        }
        let (end, none) = (CurrentEnd::Most, Ballast::NONE);
        let warm = inputs.warm();
        let one = InjectorBranch::at(inputs, &warm, end, &none, &mut None).current(&mut None);
        let current = one * (f64::from(count) * duty.base().clamp(0.0, 1.0).sqrt());
        let mut working = branch::working_at(inputs, &warm, end, &none);
        let shown = [("N", count.into()), ("I", one.show()), ("D", duty.show())];
        working.push(step(&SHARE, &shown, current));
        Some(Self { count, current, is_cured: false, working })
    }
}

impl InjectorFeed {
    /// The feed of these sets, and of other loads behind the same contact.
    pub fn of(shares: Vec<Share>, others: Current) -> Self {
        let taken = shares.iter().map(|share| share.current.base()).chain([others.base()]);
        let total = amperes(taken.sum());
        let mut working: Vec<Step> =
            shares.iter().flat_map(|share| share.working.iter().cloned()).collect();
        if let [one, other] = shares.as_slice() {
            let shown = [("I_1", one.current.show()), ("I_2", other.current.show())];
            working.push(step(&TOTAL, &shown, total));
        }
        if others.base() > 0.0 {
            working.push(step(&BESIDE, &[("I_others", others.show())], total));
        }
        let least = total / fuses::LASTING;
        working.push(step(&RATING, &[("I_feed", total.show())], least));
        Self { shares, others, total, least, fuse: fuses::for_long(total), working }
    }

    /// Whether a fuse or a contact of this rating carries it for long.
    pub fn is_carried_by(&self, rating: Current) -> bool {
        rating.base() >= self.least.base() * (1.0 - 1e-9)
    }
}
