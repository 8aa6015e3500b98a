//! Whether a fuse blows before its wire overheats, at any fault.

mod race;

pub use race::{BARELY, FuseRace};

use super::{blow, laid::LaidWire};
use crate::{
    quantity::{
        Area, Band, Current, Length, Measure, Resistance, Temperature, Voltage, amperes, celsius,
    },
    tables::{copper, fuses, wires},
    working::{Formula, Step, step},
};

/// The formula of the least current of a short.
pub const FAR: Formula = Formula {
    symbols: "I_far = V_low / (R_before + R_w + R_back)",
    source: "Ohm's law: the weakest supply, the wire as hot as 135% of the fuse make it, 150 °C at most",
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

/// Beyond this no insulation lasts: class D of ISO 6722-1, from memory.
const HOTTEST_C: f64 = 150.0;

/// No battery of a car pushes more through a short: common practice, no source.
const MOST_A: f64 = 10_000.0;

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
    /// As hot as the wire is at the far short that just must blow the fuse: what it settles at under that, whatever its insulation.
    fn hot(&self) -> Temperature {
        let settled =
            self.wire.settles_at(self.fuse * blow::BLOWS).map_or(HOTTEST_C, Measure::base);
        celsius(settled.min(HOTTEST_C).max(self.wire.ambient.base()))
    }

    /// The least current of a dead short at the far end. See [`FAR`].
    pub fn far(&self) -> Current {
        let wire = copper::wire_at_most(self.length, self.wire.copper(), self.hot());
        let ohm = self.before.high.base() + wire.base() + self.back.base();
        flows(self.source.low, ohm)
    }

    /// Whether a dead short at the far end is enough to blow the fuse.
    pub fn is_blown(&self) -> bool {
        self.far().base() >= self.fuse.base() * blow::BLOWS
    }

    /// The greatest current of a short right behind the fuse. See [`BEHIND`].
    pub fn behind(&self) -> Current {
        flows(self.source.high, self.before.low.base())
    }
}

fn flows(voltage: Voltage, ohm: f64) -> Current {
    amperes((voltage.base().max(0.0) / ohm.max(1e-9)).min(MOST_A))
}

/// Whether the fuse of a run blows before its wire overheats.
pub fn check(run: &FusedRun) -> Protection {
    let (far, behind, worst) = (run.far(), run.behind(), run.worst());
    let blows = run.is_blown();
    let outcome = match (blows, run.is_lost()) {
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

/// Whether the fuse of a run blows before its wire overheats, and at a short at the far end.
pub fn is_protected(run: &FusedRun) -> bool {
    run.is_blown() && !run.is_lost()
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        quantity::{metres, ohms, volts},
        supply::laid::Insulation,
    };

    fn run(fuse: f64, mm2: f64, length: f64) -> FusedRun {
        FusedRun {
            fuse: amperes(fuse),
            wire: LaidWire {
                area: Measure::from_base(mm2 * 1e-6),
                insulation: Insulation::B,
                ambient: celsius(60.0),
                bundled: 1,
            },
            length: metres(length),
            back: ohms(0.005),
            source: Band::between(volts(12.0), volts(14.4)),
            before: Band::between(ohms(0.01), ohms(0.03)),
        }
    }

    #[track_caller]
    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() <= 1e-3 * expected, "{found} is not {expected}");
    }

    /// By hand, in parts of the resistance at 20 °C: 27 A, 135 % of the fuse, are 729 × 1.1572 = 843.6 at 60 °C and 2.865 more by kelvin;
    /// 29² × 1.33405 / 85 = 13.199 are given off by kelvin: 60 °C + 843.6 / 10.334 K = 141.63 °C. 1.16 × 5 m / (58 × 2.5 mm²) × 1.478 =
    /// 59.12 mΩ; 12 V / (30 + 59.12 + 5) mΩ = 127.5 A; 14.4 V / 10 mΩ = 1440 A.
    #[test]
    fn a_short_is_least_at_the_far_end_and_greatest_behind_the_fuse() {
        let found = check(&run(20.0, 2.5, 5.0));
        near(found.far.base(), 127.5);
        near(found.behind.base(), 1440.0);
        let shown: Vec<_> = found.working.iter().map(|it| &*it.result.shown).collect();
        assert_eq!(shown[..4], ["59.1 mΩ", "127 A", "1440 A", "20 A"]);
    }

    /// By hand, at 60 °C, a wire that bears 29 A × √(40 / 85 × 1.33405 / 1.3144) = 20.04 A: 22 A, 110 % of 20 A, are
    /// 1.205 times the heat: 48.2 K more than the air's 60 °C, or some more as copper gains: it ages for more than 100 hours. 33 A, 110 % of
    /// 30 A, are 2.7 times: 108 K and more, beyond the 150 °C of an overload.
    #[test]
    fn a_wire_is_protected_by_a_fuse_of_what_it_bears() {
        let good = check(&run(20.0, 2.5, 5.0));
        assert_eq!(good.outcome, FuseOutcome::Protects);
        let at_110 = FuseRace::at(&run(20.0, 2.5, 5.0), amperes(22.0));
        assert!((5.0..30.0).contains(&at_110.margin), "{at_110:?}");
        // just above what brings it to 150 °C, 20.04 A × √(90 / 40 × 1.3144 / 1.5109) = 28.04 A, it is nearest
        assert!((28.04..29.0).contains(&good.worst.current.base()), "{:?}", good.worst);
        assert!((1.0..5.0).contains(&good.worst.margin), "{:?}", good.worst);
        let burnt = check(&run(30.0, 2.5, 5.0));
        assert_eq!(burnt.outcome, FuseOutcome::Overheats);
        near(burnt.worst.current.base(), 33.0);
        assert!(burnt.worst.is_lost() && !burnt.worst.is_barely_lost());
        assert_eq!(largest_fuse(&run(30.0, 2.5, 5.0)), Some(amperes(20.0)));
        near(least_area(&run(20.0, 2.5, 5.0)).map_or(0.0, Measure::base), 2.5e-6);
    }

    /// By hand, as above: 6.75 A, 135 % of 5 A, bring 0.5 mm² to 60 °C + 52.725 / (1.8991 - 0.1791) K = 90.65 °C; 1.16 × 40 m /
    /// (58 × 0.5 mm²) × 1.2777 = 2.0443 Ω, and 12 V / 2.0793 Ω = 5.771 A: less than 6.75 A.
    #[test]
    fn a_long_thin_wire_never_blows_its_fuse() {
        let long = check(&run(5.0, 0.5, 40.0));
        near(long.far.base(), 5.771);
        assert_eq!(long.outcome, FuseOutcome::NeverBlows);
        assert!(!long.worst.is_lost(), "it bears what flows: {:?}", long.worst);
        assert_eq!(check(&run(4.0, 0.5, 40.0)).outcome, FuseOutcome::Protects);
        assert_eq!(largest_fuse(&run(5.0, 0.5, 40.0)), Some(amperes(4.0)));
    }

    /// Where not even the short behind the fuse blows it, what flows for ever is what counts.
    #[test]
    fn a_fuse_larger_than_any_short_leaves_the_wire_to_itself() {
        let mut weak = run(80.0, 1.0, 2.0);
        weak.before = Band::exact(ohms(0.5));
        let found = check(&weak);
        assert_eq!((found.outcome, found.worst.fuse), (FuseOutcome::NeverBlows, None));
        near(found.worst.current.base(), 28.8);
        assert!(found.worst.is_lost(), "28.8 A for ever in 1 mm²");
        weak.wire.area = Measure::from_base(10e-6);
        assert!(!check(&weak).worst.is_lost(), "but 10 mm² bear them");
    }

    #[test]
    fn nothing_known_is_answered_as_well() {
        let mut odd = run(0.0, 0.0, 0.0);
        odd.before = Band::exact(ohms(0.0));
        odd.source = Band::exact(volts(-1.0));
        assert_eq!(check(&odd).outcome, FuseOutcome::Protects, "nothing flows");
        odd.source = Band::exact(volts(12.0));
        near(check(&odd).behind.base(), MOST_A);
        near(least_area(&odd).map_or(0.0, Measure::base), wires::SIZES[0] * 1e-6);
        assert_eq!(largest_fuse(&FusedRun { length: metres(1e9), ..odd }), None);
    }
}
