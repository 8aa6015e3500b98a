//! Whether a fuse blows before its wire overheats, at any fault.

use super::{blow, laid::LaidWire};
use crate::{
    math,
    quantity::{
        Area, Band, Current, Length, Measure, Resistance, Temperature, Time, Voltage, amperes,
        celsius,
    },
    tables::{copper, fuses, wires},
    working::{Formula, Step, step},
};

/// The formula of the least current of a short.
pub const FAR: Formula = Formula {
    symbols: "I_far = V_low / (R_before + R_w + R_back)",
    source: "Ohm's law: the weakest supply, the wire hot",
};

/// The formula of the greatest current of a short.
pub const BEHIND: Formula = Formula {
    symbols: "I_behind = V_high / R_before",
    source: "Ohm's law: the strongest supply, right behind the fuse; 10 kA at most, common practice, no source",
};

/// The formula of the margin.
pub const MARGIN: Formula = Formula {
    symbols: "m = t_w / t_f",
    source: "at the current at which it is least, between 110% of the fuse and the short right behind it",
};

/// No battery of a car pushes more through a short: common practice, no source.
const MOST_A: f64 = 10_000.0;

/// Places at which each piece of a fuse's line is tried, and steps about the least of them.
const PLACES: u32 = 24;
const NARROWINGS: u32 = 40;

/// A wire behind its fuse, up to where it ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FusedRun {
    /// Rating of the fuse.
    pub fuse: Current,
    /// The wire behind it.
    pub wire: LaidWire,
    /// Its length, one way.
    pub length: Length,
    /// The way back and its contacts: from the short to the battery.
    pub back: Resistance,
    /// Of the battery, without load.
    pub source: Band<Voltage>,
    /// What lies before the fuse: battery, leads, the contact of a relay.
    pub before: Band<Resistance>,
}

/// What a fuse does for its wire.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FuseOutcome {
    /// It blows before the wire overheats, whatever the fault.
    Protects,
    /// A dead short at the far end is less than it must blow at.
    NeverBlows,
    /// There is a fault at which the wire overheats before.
    Overheats,
}

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
    fn at(run: &FusedRun, current: Current) -> Self {
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
}

/// What a fuse does for its wire, and how it was found.
#[derive(Clone, Debug, PartialEq)]
pub struct Protection {
    /// In a word.
    pub outcome: FuseOutcome,
    /// The least current of a dead short at the far end.
    pub far: Current,
    /// The greatest current of a short: right behind the fuse.
    pub behind: Current,
    /// The fault at which the wire has the least margin, whatever the outcome.
    pub worst: FuseRace,
    /// How they were found.
    pub working: Vec<Step>,
}

impl FusedRun {
    /// As hot as the wire may be before the short.
    fn hot(&self) -> Temperature {
        celsius(self.wire.insulation.lasting().base().max(self.wire.ambient.base()))
    }

    /// The least current of a dead short at the far end. See [`FAR`].
    pub fn far(&self) -> Current {
        let wire = copper::wire_at_most(self.length, self.wire.copper(), self.hot());
        let ohm = self.before.high.base() + wire.base() + self.back.base();
        flows(self.source.low, ohm)
    }

    /// The greatest current of a short right behind the fuse. See [`BEHIND`].
    pub fn behind(&self) -> Current {
        flows(self.source.high, self.before.low.base())
    }

    /// The fault at which the wire has the least margin: between 110 % of the fuse and the greatest current.
    ///
    /// Between two gates the fuse's line is smooth, and the wire's falls throughout: it is tried at places that hang on the fuse alone, and
    /// about the least of them more closely, in steps of which there are always as many.
    fn worst(&self) -> FuseRace {
        let greatest = self.behind();
        let mut worst: Option<FuseRace> = None;
        let mut from: Option<Current> = None;
        let ends = blow::bends(self.fuse).chain(std::iter::once(greatest));
        for to in ends.filter(|to| to.base() <= greatest.base()) {
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
        let width = 1.0 / f64::from(PLACES);
        let mut worst = (0.0, FuseRace::at(self, from));
        for place in 1..=PLACES {
            let share = f64::from(place) * width;
            let found = if place == PLACES { FuseRace::at(self, to) } else { at(share) };
            if found.margin < worst.1.margin {
                worst = (share, found);
            }
        }
        let (mut low, mut high) = ((worst.0 - width).max(0.0), (worst.0 + width).min(1.0));
        let mut least = worst.1;
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
}

fn lesser(one: FuseRace, other: FuseRace) -> FuseRace {
    if other.margin < one.margin { other } else { one }
}

fn flows(voltage: Voltage, ohm: f64) -> Current {
    amperes((voltage.base().max(0.0) / ohm.max(1e-9)).min(MOST_A))
}

/// Whether the fuse of a run blows before its wire overheats.
pub fn check(run: &FusedRun) -> Protection {
    let (far, behind, worst) = (run.far(), run.behind(), run.worst());
    let blows = far.base() >= run.fuse.base() * blow::BLOWS;
    let outcome = match (blows, worst.is_lost()) {
        (false, _) => FuseOutcome::NeverBlows,
        (true, true) => FuseOutcome::Overheats,
        (true, false) => FuseOutcome::Protects,
    };
    Protection { outcome, far, behind, worst, working: working(run, far, behind, &worst) }
}

fn working(run: &FusedRun, far: Current, behind: Current, worst: &FuseRace) -> Vec<Step> {
    let wire = copper::wire_at_most(run.length, run.wire.copper(), run.hot());
    let of_wire = [("l", run.length.show()), ("A", run.wire.area.show()), ("T", run.hot().show())];
    let of_far = [
        ("V_low", run.source.low.show()),
        ("R_before", run.before.high.show()),
        ("R_w", wire.show()),
        ("R_back", run.back.show()),
    ];
    let of_behind = [("V_high", run.source.high.show()), ("R_before", run.before.low.show())];
    let mut steps = vec![
        step(&copper::WIRE_AT_MOST, &of_wire, wire),
        step(&FAR, &of_far, far),
        step(&BEHIND, &of_behind, behind),
        run.wire.bears_step(),
    ];
    steps.extend(blow::longest_step(run.fuse, worst.current));
    steps.extend(run.wire.bears_for_step(worst.current));
    if let (Some(fuse), Some(wire)) = (worst.fuse, worst.wire) {
        let margin: crate::quantity::Ratio = Measure::from_base(worst.margin);
        steps.push(step(&MARGIN, &[("t_w", wire.show()), ("t_f", fuse.show())], margin));
    }
    steps
}

fn is_protected(run: &FusedRun) -> bool {
    check(run).outcome == FuseOutcome::Protects
}

/// The largest blade fuse that protects the wire of a run; none where the smallest does not.
pub fn largest_fuse(run: &FusedRun) -> Option<Current> {
    let all = fuses::RATINGS_A.into_iter().map(amperes).rev();
    all.into_iter().find(|fuse| is_protected(&FusedRun { fuse: *fuse, ..*run }))
}

/// The smallest usual wire that the fuse of a run protects; none where the largest is too small.
pub fn least_area(run: &FusedRun) -> Option<Area> {
    let all = wires::SIZES.into_iter().map(|size| Area::from_base(size * 1e-6));
    all.into_iter()
        .find(|area| is_protected(&FusedRun { wire: LaidWire { area: *area, ..run.wire }, ..*run }))
}
