//! What flows out of the battery with the key off.

use proptest::prelude::*;
use quietpin_core::{
    output::{
        FarEnd, KeyState, LoadKind, OnLevel, Output, PullRail, Stage, Surroundings, Wiring, drain,
        rest,
    },
    quantity::{Band, Measure, amperes, ohms},
};

use super::{
    common::{bench, load, pulled_up, wiring},
    laws::{any_wiring, car},
};

fn most(wiring: &Wiring, around: &Surroundings) -> f64 {
    drain(wiring, around).expect("it is solved").current.high.base()
}

#[track_caller]
fn check(wiring: &Wiring, dead_ohm: f64, expected_a: f64) {
    let found = most(wiring, &bench(12.6, dead_ohm));
    assert!((found - expected_a).abs() < 1e-9, "{found} A instead of {expected_a} A");
}

/// By hand: 12.6 V, a relay of 90 ohm, a body diode of 0.7 V and 0.05 ohm, and 47 ohm of dead supply in a row:
/// 11.9 V / 137.05 ohm = 86.83 mA.
#[test]
fn what_flows_through_a_body_diode_is_drawn_from_the_battery() {
    let relay = load(LoadKind::RelayCoil, 90.0, FarEnd::Battery);
    check(&wiring(Stage::HalfBridge, OnLevel::Ground, relay.clone()), 47.0, 11.9 / 137.05);
    check(&wiring(Stage::OpenDrain, OnLevel::Ground, relay), 47.0, 0.0);
}

/// By hand: 12.6 V / (1000 + 2000) ohm = 4.2 mA, with nothing on the output at all.
#[test]
fn a_pull_up_draws_through_a_pull_down_with_no_load_there() {
    let mut output = Output::plain(Stage::OpenDrain);
    output.pull_down = Some(Band::exact(ohms(2000.0)));
    let bare = Wiring::alone(output, OnLevel::Ground, Vec::new());
    check(&pulled_up(bare.clone(), 1000.0, PullRail::Battery), 47.0, 4.2e-3);
    check(&pulled_up(bare, 1000.0, PullRail::Controller), 47.0, 0.0);
}

/// By hand: what leaks 5 mA at 12 V is 2400 ohm; 12.6 V / (90 + 2400) ohm = 5.060 mA.
#[test]
fn a_switch_that_leaks_draws_what_it_lets_pass() {
    let relay = load(LoadKind::RelayCoil, 90.0, FarEnd::Battery);
    let mut leaking = wiring(Stage::OpenDrain, OnLevel::Ground, relay);
    leaking.output.leakage = Some(Band::exact(amperes(5e-3)));
    check(&leaking, 47.0, 12.6 / 2490.0);
    check(&leaking.fed_by_the_key(), 47.0, 0.0);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    /// Every corner at which an output is solved with the key off draws no less than the least, and no more than the most.
    #[test]
    fn the_drain_holds_every_corner_with_the_key_off(wiring in any_wiring()) {
        let car = car();
        let found = drain(&wiring, &car).expect("it is solved").current;
        prop_assert!(found.low <= found.nominal && found.nominal <= found.high);
        let slack = 1e-9 + 1e-9 * found.high.base();
        for subject in 0..wiring.loads.len() {
            let rest = rest(&wiring, subject, &car).expect("it is solved");
            let state = rest.state(KeyState::KeyOff).expect("every load meets it");
            for corner in &state.corners {
                let drawn = corner.operating.from_battery.base();
                prop_assert!(drawn <= found.high.base() + slack, "{drawn} A above {found:?}");
                prop_assert!(drawn >= found.low.base() - slack, "{drawn} A below {found:?}");
            }
        }
    }

    /// Both resistors of a pin at their least draw more than any corner of one load on it.
    #[test]
    fn both_resistors_of_a_pin_may_be_at_their_least(up in 100.0..1e4, down in 100.0..1e4) {
        let mut output = Output::plain(Stage::OpenDrain);
        output.pull_up = Some((Band::with_tolerance(ohms(up), 0.1), PullRail::Battery));
        output.pull_down = Some(Band::with_tolerance(ohms(down), 0.1));
        let wiring = Wiring::alone(output, OnLevel::Ground, Vec::new());
        let found = most(&wiring, &bench(12.6, 47.0));
        let expected = 12.6 / (0.9 * (up + down));
        prop_assert!((found - expected).abs() <= 1e-9 * expected, "{found} instead of {expected}");
    }
}

/// A tenth of what a parked car takes, 5 mA, is told with its load: common practice, no source.
#[test]
fn a_drain_is_told_with_its_load_from_five_milliamperes_on() {
    for (milliamperes, is_told) in [(4.99, false), (5.0, true), (5.01, true)] {
        let current = amperes(milliamperes * 1e-3);
        assert_eq!(
            quietpin_core::output::is_told_of_its_load(current),
            is_told,
            "{milliamperes} mA"
        );
    }
}
