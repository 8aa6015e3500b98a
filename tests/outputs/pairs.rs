//! Loads between outputs, worked by hand with Ohm's law: bridge pairs, and what hangs together through them.

use quietpin_core::{
    budget::Budget,
    output::{
        Change, FarEnd, KeyState, Load, LoadKind, OnLevel, Output, Partner, Pin, Prefer, Stage,
        Suppression, Trouble, Wiring, alternatives,
    },
    quantity::{Band, Measure, amperes, ohms, volts},
};

use super::common::{bench, check, check_verdict, load, solved, wiring};

/// A load between two half-bridges, the other one off while the first is on.
fn pair(kind: LoadKind, ohm: f64, level: OnLevel) -> Wiring {
    between((Stage::HalfBridge, level), (Stage::HalfBridge, level), load(kind, ohm, FarEnd::Output))
}

/// A load from one output to another.
fn between(own: (Stage, OnLevel), other: (Stage, OnLevel), mut load: Load) -> Wiring {
    load.partner = Some(Partner { pin: 1, level: own.1 });
    let mut wiring = wiring(own.0, own.1, load);
    wiring.beyond = vec![pin(other, Vec::new())];
    wiring
}

fn pin((stage, level): (Stage, OnLevel), loads: Vec<Load>) -> Pin {
    Pin { output: Output { on_level: Some(level), ..Output::plain(stage) }, level, loads }
}

#[test]
fn a_bridge_pair_drives_its_load_through_both_switches_and_rests_on_one_rail() {
    for (level, sign) in [(OnLevel::Battery, 1.0), (OnLevel::Ground, -1.0)] {
        let pair = pair(LoadKind::Solenoid, 6.0, level);
        // two switches of 0.1 ohm and 6 ohm in series
        check(&pair, 47.0, KeyState::On, sign * 12.6 * 6.0 / 6.2);
        for state in [KeyState::KeyOff, KeyState::Starting, KeyState::Off, KeyState::SupplyLost] {
            check(&pair, 47.0, state, 0.0);
        }
        // the other one on, this one at rest: the same the other way round
        check(&pair, 47.0, KeyState::OtherOn, -sign * 12.6 * 6.0 / 6.2);
        check_verdict(&pair, 47.0, None);
    }
}

#[test]
fn a_diode_across_a_load_that_is_turned_both_ways_shorts_one_of_them() {
    let mut pair = pair(LoadKind::Solenoid, 6.0, OnLevel::Battery);
    pair.loads[0].suppression = Suppression::Diode { is_right_way: true };
    check(&pair, 47.0, KeyState::On, 12.6 * 6.0 / 6.2);
    // backwards the two switches of 0.1 ohm are left to a diode of 0.7 V and 0.05 ohm, in parallel with 6 ohm: by
    // as one source: 12.6 V behind 0.2 ohm, 12.6 / 6.2 * 6 = 12.1935 V behind 0.193548 ohm seen from the diode
    let current = (12.6 * 6.0 / 6.2 - 0.7) / (0.2 * 6.0 / 6.2 + 0.05);
    check(&pair, 47.0, KeyState::OtherOn, -(0.7 + 0.05 * current));
    check_verdict(&pair, 47.0, Some(Trouble::ShortedByDiode));
    let found = alternatives(
        &[&pair],
        0,
        &[],
        &bench(12.6, 47.0),
        Prefer::LeastWork,
        (&Budget::unlimited(), &[]),
    );
    assert!(found.iter().any(|it| it.change == Change::NoDiode), "{found:?}");
    assert!(found.iter().all(|it| it.change != Change::Turn), "{found:?}");
}

#[test]
fn a_load_from_a_high_side_output_to_an_open_drain_one_acts_with_both_on() {
    let own = (Stage::HighSide, OnLevel::Battery);
    let other = (Stage::OpenDrain, OnLevel::Ground);
    for (own, other, sign) in [(own, other, 1.0), (other, own, -1.0)] {
        let pair = between(own, other, load(LoadKind::Solenoid, 6.0, FarEnd::Output));
        check(&pair, 47.0, KeyState::On, sign * 12.6 * 6.0 / 6.2);
        check(&pair, 47.0, KeyState::OtherOn, 0.0);
        check_verdict(&pair, 47.0, None);
    }
    // with a pull-down of 1 kohm at the low one the high one alone lights an indicator of 680 ohm
    let mut glows = between(
        own,
        other,
        Load {
            kind: LoadKind::Led,
            pull_in: Band::between(volts(1.7), volts(6.0)),
            ..load(LoadKind::Led, 680.0, FarEnd::Output)
        },
    );
    glows.beyond[0].output.pull_down = Some(Band::exact(ohms(1000.0)));
    check_verdict(&glows, 47.0, Some(Trouble::ActsWithOther));
}

#[test]
fn what_hangs_on_the_other_output_of_a_pair_is_worked_through_the_load_between() {
    // a lamp from an open-drain output to the ignition switch, and a motor of 2 ohm from there to a half-bridge that rests at
    // ground: the lamp burns through the motor
    let lamp = load(LoadKind::Lamp, 4.8, FarEnd::Ignition);
    let motor = Load {
        partner: Some(Partner { pin: 0, level: OnLevel::Battery }),
        ..load(LoadKind::Motor, 2.0, FarEnd::Output)
    };
    let mut wiring = wiring(Stage::OpenDrain, OnLevel::Ground, lamp);
    wiring.beyond = vec![pin((Stage::HalfBridge, OnLevel::Battery), vec![motor])];
    // running, the lamp has 48 ohm and the motor 13; the switch 0.1
    check(&wiring, 47.0, KeyState::Off, -12.6 * 48.0 / (48.0 + 13.0 + 0.1));
    check(&wiring, 47.0, KeyState::OtherOn, 0.0);
    check_verdict(&wiring, 47.0, Some(Trouble::LiveAtRest));
    // with that half-bridge the other way round it rests at battery, and works the lamp when it is on
    wiring.beyond[0].level = OnLevel::Ground;
    check(&wiring, 47.0, KeyState::Off, 0.0);
    check(&wiring, 47.0, KeyState::OtherOn, -12.6 * 48.0 / (48.0 + 13.0 + 0.1));
    check_verdict(&wiring, 47.0, Some(Trouble::ActsWithOther));
}

#[test]
fn three_half_bridges_of_a_motor_with_three_wires_are_one_circuit() {
    // three windings of 3 ohm from each output to each other; the first on, the others at ground
    let winding = |pin, level| Load {
        partner: Some(Partner { pin, level }),
        ..load(LoadKind::Solenoid, 3.0, FarEnd::Output)
    };
    let level = OnLevel::Battery;
    let mut wiring = wiring(Stage::HalfBridge, level, winding(1, level));
    wiring.loads.push(winding(2, level));
    let (second, third) = (vec![winding(2, level)], Vec::new());
    let half = (Stage::HalfBridge, level);
    wiring.beyond = vec![pin(half, second), pin(half, third)];
    // by symmetry the other two stand alike, nothing flows between them: 3.1 ohm twice in parallel, behind 0.1 ohm
    let through = 12.6 / (0.1 + 3.1 / 2.0) / 2.0;
    check(&wiring, 47.0, KeyState::On, 3.0 * through);
    // the second on: two windings to ground, one of them this one; with the third on as well nothing is different
    check(&wiring, 47.0, KeyState::OtherOn, -3.0 * through);
    check_verdict(&wiring, 47.0, None);
}

#[test]
fn a_pair_whose_other_output_rests_on_the_other_rail_is_live_at_rest() {
    let mut torn = pair(LoadKind::Solenoid, 6.0, OnLevel::Battery);
    torn.beyond[0].level = OnLevel::Ground;
    // one rests on ground, the other on battery
    check(&torn, 47.0, KeyState::Off, -12.6 * 6.0 / 6.2);
    check_verdict(&torn, 47.0, Some(Trouble::LiveAtRest));
}

#[test]
fn a_pair_carries_no_more_than_the_weaker_of_its_outputs() {
    let mut pair = pair(LoadKind::Solenoid, 6.0, OnLevel::Battery);
    pair.output.current_limit = Some(Band::exact(amperes(5.0)));
    check_verdict(&pair, 47.0, None);
    pair.beyond[0].output.current_limit = Some(Band::exact(amperes(1.0)));
    check_verdict(&pair, 47.0, Some(Trouble::TooMuchCurrent));
}

#[test]
fn what_the_other_output_of_a_pair_leaks_is_counted() {
    let output =
        Output { leakage: Some(Band::exact(amperes(0.012))), ..Output::plain(Stage::HighSide) };
    let own = (Stage::OpenDrain, OnLevel::Ground);
    let other = (Stage::HighSide, OnLevel::Battery);
    let mut pair = between(own, other, load(LoadKind::Gauge, 2000.0, FarEnd::Output));
    pair.beyond[0].output = output;
    // both on: 12.6 V over 2000 ohm and two switches of 0.1
    check(&pair, 47.0, KeyState::On, -12.6 * 2000.0 / 2000.2);
    check(&pair, 47.0, KeyState::Off, 0.0);
    // 12 mA at 12 V are 1000 ohm: 12.6 V over 0.1, 2000 and 1000 ohm in series, with the gauge's own output on alone
    let alone = &solved(&pair, &bench(12.6, 47.0));
    let corners = &alone.state(KeyState::OtherOn).expect("there is another output").corners;
    let across = corners.iter().filter_map(|it| Some(it.load()?.voltage.base().abs()));
    let most = across.fold(0.0, f64::max);
    assert!((most - 12.6 * 2000.0 / 3000.1).abs() < 1e-9, "{most} V");
}
