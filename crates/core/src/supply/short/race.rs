//! Fuse against wire: at one current, and at the one at which the wire has the least margin.

use super::FusedRun;
use crate::{
    math,
    quantity::{Current, Measure, Time, amperes},
    supply::blow,
};

/// How often a range is halved at most.
const HALVINGS: u32 = 12;

/// Places at which each piece of a fuse's line is tried, and steps about the least of them.
const PLACES: u32 = 24;
const NARROWINGS: u32 = 20;
/// A valley that is so much higher than the lowest place is not looked into.
const NEAR: f64 = 1.1;

/// Down to this margin a wire overheats first only because the heat in its insulation is left out: a thin-wall wire of 2.5 mm² is
/// 3.0 mm thick (a cable distributor's table), and its 4.6 mm² of plastic store 8 J/K by metre (1.7 J/(K·cm³), from memory), as much as its copper.
pub const BARELY: f64 = 0.5;

/// Fuse and wire at one current.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FuseRace {
    /// What flows.
    pub current: Current,
    /// How long the fuse holds at most; none where for ever.
    pub fuse: Option<Time>,
    /// How long the wire bears it; none where for ever.
    pub wire: Option<Time>,
    /// How many times as long the wire bears it as the fuse holds: below 1 it overheats, without limit where it bears it for ever.
    pub margin: f64,
}

impl FuseRace {
    pub(in crate::supply) fn at(run: &FusedRun, current: Current) -> Self {
        let (fuse, wire) = (blow::longest(run.fuse, current), run.wire.bears_for(current));
        let margin = match (fuse, wire) {
            (_, None) => f64::INFINITY,
            (None, Some(_)) => 0.0,
            // what a fuse that is gone at once lets through harms nothing
            (Some(fuse), Some(_)) if fuse.base() <= 0.0 => f64::INFINITY,
            (Some(fuse), Some(wire)) => wire.base() / fuse.base(),
        };
        Self { current, fuse, wire, margin }
    }

    /// Whether the wire overheats first.
    pub fn is_lost(&self) -> bool {
        self.margin < 1.0
    }

    /// Whether it overheats first by less than the heat that is left out: see [`BARELY`].
    pub fn is_barely_lost(&self) -> bool {
        self.is_lost() && self.margin >= BARELY
    }
}

impl FusedRun {
    /// Whether there is a fault at which the wire overheats before the fuse blows.
    ///
    /// Both lines fall with the current: where the wire bears the greater end of a range for longer than the fuse holds the lesser,
    /// nothing is lost between. What that does not settle is halved, down to a width that no meter tells.
    pub fn is_lost(&self) -> bool {
        let greatest = self.behind();
        let ends = blow::bends(self.fuse).chain(std::iter::once(greatest));
        let mut from: Option<Current> = None;
        for to in ends.filter(|to| to.base() <= greatest.base()) {
            if self.is_lost_between(from.unwrap_or(to), to, HALVINGS) {
                return true;
            }
            from = Some(to);
        }
        from.is_none() && FuseRace::at(self, greatest).is_lost()
    }

    fn is_lost_between(&self, from: Current, to: Current, left: u32) -> bool {
        let (first, last) = (FuseRace::at(self, from), FuseRace::at(self, to));
        if first.is_lost() || last.is_lost() {
            return true;
        }
        let is_settled = match (first.fuse, last.wire) {
            (_, None) => true,
            (None, Some(_)) => false,
            (Some(fuse), Some(wire)) => wire >= fuse,
        };
        if is_settled || left == 0 {
            return false;
        }
        let middle = amperes((from.base() * to.base()).sqrt());
        self.is_lost_between(from, middle, left - 1) || self.is_lost_between(middle, to, left - 1)
    }

    /// The fault at which the wire has the least margin: between 110 % of the fuse and the greatest current.
    ///
    /// Between two gates the fuse's line is smooth, and so is the wire's but where its overload begins; both fall throughout. Each such
    /// piece is tried at a number of places, and about the least of them more closely: always in as many steps.
    pub(super) fn worst(&self) -> FuseRace {
        let greatest = self.behind();
        let mut worst: Option<FuseRace> = None;
        let mut from: Option<Current> = None;
        let mut ends: Vec<_> = blow::bends(self.fuse).chain([greatest]).collect();
        let overloads = self.wire.overloaded_above();
        ends.extend(ends.first().filter(|first| **first < overloads).map(|_| overloads));
        crate::sorted::by(&mut ends, |one, other| one.base().total_cmp(&other.base()));
        for to in ends.into_iter().filter(|to| to.base() <= greatest.base()) {
            let found = self.worst_between(from.unwrap_or(to), to);
            worst = Some(worst.map_or(found, |worst| lesser(worst, found)));
            from = Some(to);
        }
        worst.unwrap_or_else(|| FuseRace::at(self, greatest))
    }

    /// The worst between two currents.
    fn worst_between(&self, from: Current, to: Current) -> FuseRace {
        let ratio = (to.base() / from.base()).max(1.0);
        let at = |share: f64| FuseRace::at(self, from * math::pow(ratio, share));
        let even = (0..=PLACES).map(|place| f64::from(place) / f64::from(PLACES));
        // closer where the piece begins: behind a cliff the wire's time falls most steeply
        let places = even.map(|share| share * share);
        // each end twice: it has a neighbour on one side alone
        let places = std::iter::once(0.0).chain(places).chain([1.0]);
        let tried: Vec<(f64, FuseRace)> = places.map(|share| (share, at(share))).collect();
        let mut least = tried.iter().fold(at(0.0), |least, (_, race)| lesser(least, *race));
        let near = NEAR * least.margin;
        for three in tried.windows(3) {
            let [low, here, high] = three else { continue };
            let [before, margin, after] = [low, here, high].map(|(_, race)| race.margin);
            let is_level = before.max(after) <= margin * (1.0 + 1e-9);
            if margin <= before && margin <= after && margin <= near && !is_level {
                least = lesser(least, narrowed(low.0, high.0, at));
            }
        }
        least
    }
}

/// The least of a valley between two places.
fn narrowed(mut low: f64, mut high: f64, at: impl Fn(f64) -> FuseRace) -> FuseRace {
    let mut least = at(f64::midpoint(low, high));
    for _ in 0..NARROWINGS {
        let third = (high - low) / 3.0;
        let (one, other) = (at(low + third), at(high - third));
        if one.margin <= other.margin {
            high -= third;
        } else {
            low += third;
        }
        least = lesser(least, lesser(one, other));
    }
    least
}

fn lesser(one: FuseRace, other: FuseRace) -> FuseRace {
    if other.margin < one.margin { other } else { one }
}
