//! The resistor that keeps a load released: the largest that does, where it stays cool. Worked by hand.
//!
//! Resistors of the series E12 from 10 ohm to 8.2 kilohm, good to 5 %, that get no hotter than 2 W where they are spliced into a
//! loom: common practice, no source.

use quietpin_core::{
    budget::Budget,
    output::{
        Change, FarEnd, Load, LoadKind, OnLevel, Prefer, PullRail, Stage, Wiring, alternatives,
    },
    quantity::{Band, Measure, Power, Resistance, henries, ohms, volts},
};

use super::common::{bench, load, pulled_up, wiring};

/// A load without a winding that counts: below `drop_out` it has let go, and it acts from twice that on.
fn released_below(drop_out: f64, ohm: f64, far_end: FarEnd) -> Load {
    Load {
        drop_out: Band::exact(volts(drop_out)),
        pull_in: Band::exact(volts(2.0 * drop_out)),
        inductance: Band::exact(henries(0.0)),
        ..load(LoadKind::Solenoid, ohm, far_end)
    }
}

fn offered(wiring: &Wiring, supply: f64) -> Vec<Change> {
    let around = bench(supply, 47.0);
    let search = (&Budget::unlimited(), [].as_slice());
    let found = alternatives(&[wiring], 0, &[], &around, Prefer::LeastWork, search);
    found.into_iter().map(|it| it.change).collect()
}

fn pull_down(found: &[Change]) -> Option<(Resistance, Power)> {
    found.iter().find_map(|it| match it {
        Change::PullDown(ohm, power) => Some((*ohm, *power)),
        _ => None,
    })
}

fn bleeder(found: &[Change]) -> Option<(Resistance, Power)> {
    found.iter().find_map(|it| match it {
        Change::Bleeder(ohm, power) => Some((*ohm, *power)),
        _ => None,
    })
}

/// Supply, what holds the load, the load itself, where it lets go, and the resistor that does: the next larger one leaves too much
/// where it is 5 % more than it says, beside the load. By hand: 13.2 V · 103.9 / 1103.9 = 1.24 V with 100 ohm, 1.46 V with 120; at
/// 12.6 V 0.99 V with 82 ohm, which would get 12.6² / 77.9 = 2.04 W; from 4.2 V through 100 ohm 0.40 V with 10 ohm, 0.47 V with 12;
/// from 12.6 V through 100 kilohm 0.99 V with 8.2 kilohm, and 1.19 V with the 10 kilohm that are not looked at.
const CASES: [(f64, f64, f64, f64, Option<f64>); 5] = [
    (13.2, 1e3, 10e3, 1.35, Some(100.0)),
    (12.6, 1e3, 10e3, 1.1, None),
    (4.2, 100.0, 10e3, 0.43, Some(10.0)),
    (12.6, 100e3, 1e6, 1.1, Some(8200.0)),
    (12.6, 100e3, 1e6, 1.3, Some(8200.0)),
];

#[track_caller]
fn check(found: Option<(Resistance, Power)>, supply: f64, expected: Option<f64>) {
    let shown = format!("{found:?} at {supply} V");
    assert_eq!(found.map(|it| it.0.base().round()), expected, "{shown}");
    if let Some((ohm, power)) = found {
        // all of the supply across the least that it may be
        let most = supply * supply / (0.95 * ohm.base());
        assert!((power.base() - most).abs() <= 1e-9 * most, "{shown}, not {most} W");
    }
}

#[test]
fn the_largest_pull_down_that_releases_is_offered_where_it_stays_cool() {
    for (supply, up, ohm, drop_out, expected) in CASES {
        let load = released_below(drop_out, ohm, FarEnd::Ground);
        let wiring =
            pulled_up(wiring(Stage::HighSide, OnLevel::Battery, load), up, PullRail::Controller);
        let found = offered(&wiring, supply);
        check(pull_down(&found), supply, expected);
        // one way alone leaves no choice
        let is_other = found.iter().any(|it| matches!(it, Change::Stage(..)));
        assert!(is_other, "at {supply} V: {found:?}");
        // one that is there already is not doubled
        let mut two = wiring;
        two.output.pull_down = Some(Band::exact(ohms(1e6)));
        assert_eq!(pull_down(&offered(&two, supply)), None, "at {supply} V");
        // and what lies at ground is no feed, so that nothing is put across the load
        assert_eq!(bleeder(&offered(&two, supply)), None, "at {supply} V");
    }
}

#[test]
fn the_largest_resistor_across_a_load_that_releases_it_is_offered_where_it_stays_cool() {
    for (supply, down, ohm, drop_out, expected) in CASES {
        let load = released_below(drop_out, ohm, FarEnd::Ignition);
        let mut wiring = wiring(Stage::OpenDrain, OnLevel::Ground, load);
        assert_eq!(bleeder(&offered(&wiring, supply)), None, "nothing holds the pin");
        wiring.output.pull_down = Some(Band::exact(ohms(down)));
        check(bleeder(&offered(&wiring, supply)), supply, expected);
    }
}
