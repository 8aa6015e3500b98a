//! Cases worked by hand with Ohm's law. A conducting body diode is 0.7 V and 0.05 ohm: common practice, no source.

use quietpin_core::{
    output::{
        FarEnd, KeyState, Load, LoadKind, LoadState, OnLevel, PullRail, Stage, Trouble, Wiring,
        judge, probe,
    },
    quantity::{Band, Measure, amperes, celsius, ohms, volts},
};
use quietpin_tests::{Checked, Worst};

use super::common::{at, bench, check, check_verdict, load, pulled_up, solved, wiring};

const COIL: LoadKind = LoadKind::RelayCoil;

#[test]
fn an_output_that_switches_to_ground_when_on_keeps_a_grounded_solenoid_live_at_rest() {
    let valve = load(LoadKind::Solenoid, 12.0, FarEnd::Ground);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, valve);
    // 12.6 V over 0.1 and 12 ohm in series
    check(&wiring, 47.0, KeyState::Off, 12.6 * 12.0 / 12.1);
    check(&wiring, 47.0, KeyState::On, 0.0);
    check(&wiring, 47.0, KeyState::Starting, 0.0);
    check(&wiring, 47.0, KeyState::KeyOff, 0.0);
    check_verdict(&wiring, 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn its_mirror_image_is_live_at_rest_too() {
    let valve = load(LoadKind::Solenoid, 12.0, FarEnd::Battery);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Battery, valve);
    check(&wiring, 47.0, KeyState::Off, -12.6 * 12.0 / 12.1);
    check(&wiring, 47.0, KeyState::On, 0.0);
    check_verdict(&wiring, 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn an_output_that_switches_to_ground_when_on_may_carry_a_load_to_the_ignition_switch() {
    let valve = load(LoadKind::Solenoid, 12.0, FarEnd::Ignition);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, valve);
    for state in [KeyState::KeyOff, KeyState::Starting, KeyState::Off] {
        check(&wiring, 47.0, state, 0.0);
    }
    check(&wiring, 47.0, KeyState::On, -12.6 * 12.0 / 12.1);
    check_verdict(&wiring, 47.0, None);
}

#[test]
fn with_the_key_off_a_load_to_battery_feeds_the_dead_supply_87_milliamperes() {
    // (12.6 - 0.7) V over 90 ohm of coil, 0.05 ohm of diode, 47 ohm of other consumers
    let coil = load(COIL, 90.0, FarEnd::Battery);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, coil);
    let current = 11.9 / 137.05;
    assert!((current - 0.087_f64).abs() < 0.0005, "the 87 mA of this case");
    check(&wiring, 47.0, KeyState::KeyOff, -90.0 * current);
    // 7.81 V is above the least at which a 12 V relay acts (0.57 of nominal)
    check_verdict(&wiring, 47.0, Some(Trouble::LiveKeyOff));
    // a coil that surely acts from 8 V on only may stay in, and the controller is fed all the same
    let mut late = load(COIL, 90.0, FarEnd::Battery);
    late.pull_in = Band::exact(volts(8.0));
    let wiring = Wiring { loads: vec![late], ..wiring };
    let found = judge(&solved(&wiring, &bench(12.6, 47.0)), |_| true).found;
    let troubles: Vec<_> = found.iter().map(|it| it.trouble).collect();
    assert!(troubles.contains(&Trouble::MayStayInKeyOff), "{troubles:?}");
    assert!(troubles.contains(&Trouble::WakesController), "{troubles:?}");
}

#[test]
fn with_the_key_off_18_ohm_of_dead_supply_leave_a_relay_9_9_volts() {
    let coil = load(COIL, 90.0, FarEnd::Battery);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, coil);
    let across = 11.9 * 90.0 / 108.05;
    assert!((across - 9.9_f64).abs() < 0.05, "the 9.9 V of this case");
    check(&wiring, 18.0, KeyState::KeyOff, -across);
    check_verdict(&wiring, 18.0, Some(Trouble::LiveKeyOff));
}

#[test]
fn an_open_drain_output_may_carry_a_load_to_permanent_battery() {
    let wiring = wiring(Stage::OpenDrain, OnLevel::Ground, load(COIL, 90.0, FarEnd::Battery));
    check(&wiring, 47.0, KeyState::KeyOff, 0.0);
    check(&wiring, 47.0, KeyState::Off, 0.0);
    check_verdict(&wiring, 47.0, None);
}

#[test]
fn a_grounded_load_on_an_open_drain_output_never_acts() {
    let wiring = wiring(Stage::OpenDrain, OnLevel::Ground, load(COIL, 90.0, FarEnd::Ground));
    check_verdict(&wiring, 47.0, Some(Trouble::NeverActs));
}

#[test]
fn a_high_side_output_may_carry_a_grounded_load_and_no_load_to_battery() {
    let grounded = wiring(Stage::HighSide, OnLevel::Battery, load(COIL, 90.0, FarEnd::Ground));
    check_verdict(&grounded, 47.0, None);
    let fed = wiring(Stage::HighSide, OnLevel::Battery, load(COIL, 90.0, FarEnd::Battery));
    check_verdict(&fed, 18.0, Some(Trouble::LiveKeyOff));
}

#[test]
fn a_pull_up_to_battery_can_hold_a_relay_in() {
    // 12.6 V over 1 kilohm and 90 ohm: 1.04 V, and a relay may stay in down to 0.04 of nominal
    let coil = load(COIL, 90.0, FarEnd::Ground);
    let wiring = wiring(Stage::HighSide, OnLevel::Battery, coil);
    let wiring = pulled_up(wiring, 1000.0, PullRail::Battery);
    check(&wiring, 47.0, KeyState::Off, 12.6 * 90.0 / 1090.0);
    check_verdict(&wiring, 47.0, Some(Trouble::MayStayIn));
}

#[test]
fn a_pull_up_to_5_volts_is_dead_with_the_key_off() {
    let coil = load(COIL, 90.0, FarEnd::Ground);
    let wiring = wiring(Stage::HighSide, OnLevel::Battery, coil);
    let wiring = pulled_up(wiring, 1000.0, PullRail::FiveVolt);
    check(&wiring, 47.0, KeyState::KeyOff, 0.0);
    check(&wiring, 47.0, KeyState::Starting, 5.0 * 90.0 / 1090.0);
}

#[test]
fn a_half_bridge_feeds_a_dead_relay_contact_backwards() {
    // the pin rests on battery, the contact is open: 12.6 V over 0.1, 90 and 10 ohm
    let coil = load(COIL, 90.0, FarEnd::Relay);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, coil);
    check(&wiring, 10.0, KeyState::Off, 12.6 * 90.0 / 100.1);
    check_verdict(&wiring, 10.0, Some(Trouble::LiveAtRest));
}

#[test]
fn loads_to_both_sides_of_one_pin_lie_in_series() {
    let to_battery = load(COIL, 90.0, FarEnd::Battery);
    let to_ground = load(COIL, 90.0, FarEnd::Ground);
    let mut wiring = wiring(Stage::OpenDrain, OnLevel::Ground, to_battery);
    wiring.loads.push(to_ground);
    check(&wiring, 47.0, KeyState::Off, -6.3);
    check(&wiring, 47.0, KeyState::KeyOff, -6.3);
}

#[test]
fn a_bare_pin_reads_what_holds_it() {
    let coil = || load(COIL, 90.0, FarEnd::Ground);
    let read = |wiring: &Wiring, state| {
        let rest = solved(wiring, &bench(12.6, 47.0));
        let bare = &rest.state(state).expect("solved").bare;
        (bare.floats, bare.band.nominal.base())
    };
    let open_drain = wiring(Stage::OpenDrain, OnLevel::Ground, coil());
    assert_eq!(read(&open_drain, KeyState::Off), (true, 0.0), "a plain open drain reads 0 V");
    assert_eq!(read(&open_drain, KeyState::On), (false, 0.0), "and 0 V when it is on");
    let half_bridge = wiring(Stage::HalfBridge, OnLevel::Ground, coil());
    let (floats, volts) = read(&half_bridge, KeyState::Off);
    assert!(
        !floats && (volts - 12.6).abs() < 1e-6,
        "one that is on at ground rests on battery: {volts}"
    );
    // 47 kilohm and the 10 megohm of the meter share 12.6 V
    let pulled =
        pulled_up(wiring(Stage::OpenDrain, OnLevel::Ground, coil()), 47e3, PullRail::Battery);
    let (floats, volts) = read(&pulled, KeyState::Off);
    assert!(!floats && (volts - 12.6 * 10e6 / 10.047e6).abs() < 1e-9, "{volts}");
}

/// Source: data sheets of five generic 12 V relays, in `reference/relays.csv`.
pub(crate) fn relays() -> Checked {
    let mut worst = Worst::default();
    let effect = |coil: &Load, v: f64| coil.effect_at(volts(v), celsius(20.0));
    let rows = quietpin_tests::rows("relays.csv");
    assert_eq!(rows.len(), 5, "all are read");
    for row in rows {
        let place = row.place();
        let mut coil = load(COIL, row.number("coil_ohm_20C"), FarEnd::Ground);
        if let Some(operates) = row.maybe("operate_max_V") {
            // what is taken for a relay without a data sheet must not promise more than the worst of these
            assert!(operates <= coil.pull_in.high.base() + 0.05, "{place}");
            coil.pull_in = Band::exact(volts(operates));
            assert_eq!(effect(&coil, operates), LoadState::Energised, "{place}");
            assert_eq!(effect(&coil, operates * 0.999), LoadState::MayHold, "{place}");
        }
        if let Some(releases) = row.maybe("release_min_V") {
            // nor that it lets go sooner than they do
            assert!(coil.drop_out.low.base() <= releases, "{place}");
            coil.drop_out = Band::exact(volts(releases));
            assert_eq!(effect(&coil, releases * 0.999), LoadState::Released, "{place}");
            assert_eq!(effect(&coil, releases * 1.001), LoadState::MayHold, "{place}");
        }
        let mut wiring = wiring(Stage::HighSide, OnLevel::Battery, coil);
        wiring.output.on_resistance = Band::exact(ohms(0.0));
        let (_, current) = at(&solved(&wiring, &bench(12.0, 47.0)), KeyState::On);
        // the file holds five decimals; a switch of 0 ohm is taken as a micro-ohm
        worst.check(&place, Some(current), row.number("i_nominal_A"), 6e-6);
    }
    let against = "data sheets of five generic 12 V relays";
    worst.checked("outputs", "Current, pull-in and drop-out of relays", against, "A")
}

#[test]
fn every_relay_of_the_data_sheets_acts_holds_and_lets_go_where_it_says() {
    relays();
}

/// What is found beyond the verdict.
#[track_caller]
fn check_fault(wiring: &Wiring, expected: &[Trouble]) {
    let judgement = judge(&solved(wiring, &bench(12.6, 47.0)), |_| true);
    let faults = judgement.found.iter().filter(|found| found.state.is_fault());
    let found: Vec<_> = faults.map(|found| found.trouble).collect();
    assert_eq!(found, expected, "{:?}", judgement.found);
}

#[test]
fn without_its_ground_the_controller_works_a_grounded_relay_through_a_body_diode() {
    let coil = load(COIL, 90.0, FarEnd::Ground);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Battery, coil);
    // 12.6 V over 47 ohm of the controller's own consumption, 0.7 V and 0.05 ohm of diode, 90 ohm of coil
    check(&wiring, 47.0, KeyState::GroundLost, (12.6 - 0.7) * 90.0 / (47.0 + 0.05 + 90.0));
    check_verdict(&wiring, 47.0, None);
    check_fault(&wiring, &[Trouble::ActsWithoutGround]);
}

#[test]
fn without_its_supply_the_controller_is_kept_half_alive_by_a_load_to_the_ignition_switch() {
    let coil = load(COIL, 90.0, FarEnd::Ignition);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, coil);
    // the mirror image: the upper diode, into the dead supply
    check(&wiring, 47.0, KeyState::SupplyLost, -(12.6 - 0.7) * 90.0 / (47.0 + 0.05 + 90.0));
    // off, it holds the pin at battery: 0.1 ohm, the coil, and 47 ohm of what else hangs on the feed whose fuse is out
    check(&wiring, 47.0, KeyState::FeedLost, 12.6 * 90.0 / (0.1 + 90.0 + 47.0));
    check_verdict(&wiring, 47.0, None);
    check_fault(&wiring, &[Trouble::ActsWithoutFeed, Trouble::ActsWithoutSupply]);
}

#[test]
fn an_open_drain_output_bears_every_single_fault() {
    for far_end in [FarEnd::Battery, FarEnd::Ignition] {
        let wiring = wiring(Stage::OpenDrain, OnLevel::Ground, load(COIL, 90.0, far_end));
        for state in [KeyState::FeedLost, KeyState::GroundLost, KeyState::SupplyLost] {
            check(&wiring, 47.0, state, 0.0);
        }
        check_fault(&wiring, &[]);
    }
}

#[test]
fn a_grounded_load_has_no_feed_to_lose() {
    let wiring = wiring(Stage::HighSide, OnLevel::Battery, load(COIL, 90.0, FarEnd::Ground));
    let rest = solved(&wiring, &bench(12.6, 47.0));
    assert!(rest.state(KeyState::FeedLost).is_none(), "there is no fuse to pull");
    assert!(rest.state(KeyState::GroundLost).is_some(), "but a ground to lose");
}

#[test]
fn a_pull_up_makes_a_grounded_led_glow() {
    // data sheet values of a red indicator: 2 V, 680 ohm in series
    let led = load(LoadKind::Led, 680.0, FarEnd::Ground);
    let wiring =
        pulled_up(wiring(Stage::OpenDrain, OnLevel::Ground, led), 10_000.0, PullRail::Battery);
    // 12.6 V less 2 V over 10 kilohm and 680 ohm: 0.99 mA, and 2 V plus what that makes in 680 ohm
    check(&wiring, 47.0, KeyState::Off, 2.0 + 10.6 * 680.0 / 10_680.0);
    check_verdict(&wiring, 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn an_led_does_not_conduct_backwards() {
    let led = load(LoadKind::Led, 680.0, FarEnd::Ignition);
    let wiring = wiring(Stage::HalfBridge, OnLevel::Ground, led);
    // on, the pin is at ground: 12.6 V less 2 V over 680.1 ohm
    check(&wiring, 47.0, KeyState::On, -(2.0 + 10.6 * 680.0 / 680.1));
    // the fuse of its feed out, the pin at battery: a coil would pass current backwards, a diode doesn't
    let (_, current) = at(&solved(&wiring, &bench(12.6, 47.0)), KeyState::FeedLost);
    assert!(current.abs() <= 0.0, "it blocks, and {current} A pass");
    check_verdict(&wiring, 47.0, None);
}

#[test]
fn a_logic_output_drives_an_igniter_and_no_relay() {
    let igniter = load(LoadKind::LogicInput, 10_000.0, FarEnd::Ground);
    let logic = wiring(Stage::Logic, OnLevel::Battery, igniter);
    // 5 V over 50 ohm of switch and 10 kilohm of input
    check(&logic, 47.0, KeyState::On, 5.0 * 10_000.0 / 10_050.0);
    check(&logic, 47.0, KeyState::Off, 0.0);
    check_verdict(&logic, 47.0, None);
    let coil = load(COIL, 90.0, FarEnd::Ground);
    let relay = wiring(Stage::Logic, OnLevel::Battery, coil);
    check(&relay, 47.0, KeyState::On, 5.0 * 90.0 / 140.0);
    check_verdict(&relay, 47.0, Some(Trouble::NeverActs));
}

#[test]
fn a_logic_output_that_is_on_at_ground_charges_a_coil_at_rest() {
    let igniter = load(LoadKind::LogicInput, 10_000.0, FarEnd::Ground);
    check_verdict(&wiring(Stage::Logic, OnLevel::Ground, igniter), 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn leakage_of_an_open_switch_sets_off_a_logic_input() {
    let igniter = load(LoadKind::LogicInput, 10_000.0, FarEnd::Ground);
    let mut leaky = wiring(Stage::HighSide, OnLevel::Battery, igniter);
    leaky.output.leakage = Some(Band::exact(amperes(0.0003)));
    // 0.3 mA at 12 V is 40 kilohm: with 10 kilohm in series a fifth of 12.6 V
    check(&leaky, 47.0, KeyState::Off, 12.6 / 5.0);
    check_verdict(&leaky, 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn a_load_to_12_volts_lifts_the_5_volts_that_its_pull_up_hangs_on() {
    let lamp = load(LoadKind::Resistor, 20.0, FarEnd::Ignition);
    let wiring =
        pulled_up(wiring(Stage::OpenDrain, OnLevel::Ground, lamp), 1_000.0, PullRail::FiveVolt);
    // 7.6 V over 1020 ohm into a rail that takes nothing back: 7.45 mA
    check(&wiring, 47.0, KeyState::Off, -7.6 * 20.0 / 1_020.0);
    check_verdict(&wiring, 47.0, Some(Trouble::LiftsLogicRail));
}

#[test]
fn a_pull_up_to_3_volts_3_leaves_a_load_to_5_volts_what_lies_between() {
    let input = load(LoadKind::Gauge, 5_000.0, FarEnd::FiveVolt);
    let wiring =
        pulled_up(wiring(Stage::OpenDrain, OnLevel::Ground, input), 5_000.0, PullRail::ThreeVolt);
    check(&wiring, 47.0, KeyState::Off, -(5.0 - 3.3) / 2.0);
}

#[test]
fn a_floating_pin_is_proved_by_a_resistor_and_a_lamp() {
    let low = wiring(Stage::OpenDrain, OnLevel::Ground, load(COIL, 90.0, FarEnd::Ignition));
    let found = probe(&low, &bench(12.6, 47.0)).expect("it floats");
    // 1 kilohm to battery: all of it while open; over 1000 and 0.1 ohm while on
    assert!((found.off.nominal.base() - 12.6).abs() < 1e-9, "{found:?}");
    assert!((found.on.nominal.base() - 12.6 * 0.1 / 1000.1).abs() < 1e-12, "{found:?}");
    // a lamp of 12 V, 3 W has 48 ohm lit: 12.6 V over 48.1 ohm; cold a tenth of it
    assert!((found.lamp.base() - 12.6 / 48.1).abs() < 1e-9, "{found:?}");
    assert!((found.lamp_inrush.base() - 12.6 / 4.9).abs() < 1e-9, "{found:?}");
    let high = wiring(Stage::HighSide, OnLevel::Battery, load(COIL, 90.0, FarEnd::Ground));
    let found = probe(&high, &bench(12.6, 47.0)).expect("it floats");
    assert_eq!(found.end, FarEnd::Ground);
    assert!(found.off.nominal.base().abs() < 1e-9, "{found:?}");
    assert!((found.on.nominal.base() - 12.6 * 1000.0 / 1000.1).abs() < 1e-9, "{found:?}");
    let both = wiring(Stage::HalfBridge, OnLevel::Ground, load(COIL, 90.0, FarEnd::Ignition));
    assert_eq!(probe(&both, &bench(12.6, 47.0)), None, "it holds its pin");
}
