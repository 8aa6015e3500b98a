//! What is taken of a load of which little is known.
//!
//! Source: `reference/relay_facts.json` for relays; the others are common practice without a source, and follow here by hand from
//! what such a part is at 12 V: a share of its power, a time constant, the colour of a light.

use quietpin_core::{
    output::{
        DIODE_FORWARD_V, DIODE_ON_OHM, End, FarEnd, KeyState, LEAKAGE_AT_V, Load, LoadFlow,
        LoadKind, LoadState, METER_OHM, OnLevel, Output, Phase, PullRail, Stage, probe,
    },
    quantity::{Band, Measure, amperes, celsius, ohms, volts},
};
use serde_json::Value;

use super::common::{bench, check as check_across, load, pulled_up, solved, wiring};
use LoadKind::{
    Gauge, Lamp, Led, LogicInput, Motor, ProportionalValve, RelayCoil, Resistor, RevCounter,
    Solenoid, SolidState,
};

/// What such a part is made for.
const NOMINAL_V: f64 = 12.0;
/// No part is known better.
const WITHIN: f64 = 0.04;

#[track_caller]
fn check<Q: Measure>(kind: LoadKind, found: Band<Q>, expected: [f64; 2]) {
    let found = [found.low.base(), found.high.base()];
    for (found, expected) in found.into_iter().zip(expected) {
        let is_near = (found - expected).abs() <= WITHIN * expected;
        assert!(is_near, "{kind:?}: {found} instead of {expected}");
    }
}

fn nominal_ohm(kind: LoadKind) -> f64 {
    kind.usual_resistance().nominal.base()
}

/// Source: `reference/relay_facts.json`, shares of 12 V and ohms of data sheets.
#[test]
fn a_relay_is_as_data_sheets_have_it() {
    let facts: Value =
        serde_json::from_str(&quietpin_tests::reference("relay_facts.json")).expect("a table");
    let both = |name: &str, times: f64| {
        [0, 1].map(|at| facts[name][at].as_f64().expect("a number") * times)
    };
    let operates = both("typical_operate_fraction", NOMINAL_V);
    check(RelayCoil, RelayCoil.usual_pull_in(), operates);
    check(RelayCoil, RelayCoil.usual_drop_out(), both("typical_release_fraction", NOMINAL_V));
    check(RelayCoil, RelayCoil.usual_resistance(), both("typical_coil_ohm_40A_plug_in", 1.0));
    assert!((nominal_ohm(RelayCoil) - 90.0).abs() < 1.0, "the weaker coil, which less holds");
}

/// By hand, common practice: a lamp of 5 to 21 W runs at 144 V² / P = 28.8 to 6.9 Ω, and has a tenth of it cold; 12 W between. A
/// heater of 12 to 48 W, 24 between; a small valve takes 0.3 to 1.2 A, 0.6 between, one whose plunger follows 0.4 to 2.4 A, 1 between; a motor is blocked at 6 to 24 A, 12 between.
#[test]
fn a_resistance_follows_from_watts_or_amperes() {
    let of_power = |watt: f64| NOMINAL_V * NOMINAL_V / watt;
    let of_current = |ampere: f64| NOMINAL_V / ampere;
    for (kind, [most, usual, least]) in [
        (Lamp, [21.0, 12.0, 5.0].map(|watt| of_power(watt) / 10.0)),
        (Resistor, [48.0, 24.0, 12.0].map(of_power)),
        (Solenoid, [1.2, 0.6, 0.3].map(of_current)),
        (Motor, [24.0, 12.0, 6.0].map(of_current)),
        (ProportionalValve, [2.4, 1.0, 0.4].map(of_current)),
    ] {
        check(kind, kind.usual_resistance(), [most, least]);
        let nominal = nominal_ohm(kind);
        assert!((nominal - usual).abs() <= WITHIN * usual, "{kind:?}: {nominal} of {usual}");
    }
}

/// Common practice: 8 to 25 mA through a light that drops 2 V of 14, 680 Ω in the usual one; 5 to 20 mA, 10 between, into a
/// solid-state relay of 10 V; an input has 10 kΩ, of 1 to 47, a rev counter up to 50; a gauge 5 kΩ, of 1 to 20.
#[test]
fn what_takes_milliamperes_has_the_resistors_that_are_built_in() {
    for (kind, [low, nominal, high]) in [
        (Led, [470.0, 680.0, 1500.0]),
        (SolidState, [500.0, 1000.0, 2000.0]),
        (LogicInput, [1e3, 1e4, 4.7e4]),
        (Gauge, [1e3, 5e3, 2e4]),
        (RevCounter, [1e3, 1e4, 5e4]),
    ] {
        check(kind, kind.usual_resistance(), [low, high]);
        assert!((nominal_ohm(kind) - nominal).abs() <= WITHIN * nominal, "{kind:?}");
    }
}

/// By hand: a tenth of a heater's power is at 12 V √0.1 = 3.8 V, half of it at 8.5 V; a hundredth at 1.2 V, three hundredths at
/// 2.1 V. TTL is low at 0.8 V and switches by 1.2; CMOS of 5 V is high at 0.7 × 5 V = 3.5 V. A red light drops 1.6 V, a white one
/// 3.3; an infrared one 1.0 to 1.5. The others are common practice alone.
#[test]
fn where_a_part_acts_and_lets_go_follows_from_what_it_is() {
    let of_power = |share: f64| NOMINAL_V * share.sqrt();
    for (kind, pull_in, drop_out) in [
        (Resistor, [of_power(0.1), of_power(0.5)], [of_power(0.01), of_power(0.028)]),
        (Solenoid, [5.0, 9.0], [0.6, 1.5]),
        (Motor, [2.0, 5.0], [0.5, 1.0]),
        (Lamp, [1.5, 8.0], [0.5, 1.0]),
        (Led, [1.7, 6.0], [1.5, 1.6]),
        (SolidState, [1.5, 4.0], [1.0, 1.2]),
        (LogicInput, [1.5, 0.7 * 5.0], [0.8, 1.2]),
        (Gauge, [1.0, 8.0], [0.5, 0.8]),
        (ProportionalValve, [1.0, 5.0], [0.5, 1.0]),
        (RevCounter, [3.0, 8.0], [0.8, 2.0]),
    ] {
        check(kind, kind.usual_pull_in(), pull_in);
        check(kind, kind.usual_drop_out(), drop_out);
    }
    check(Led, Led.forward(), [1.6, 3.3]);
    check(SolidState, SolidState.forward(), [1.0, 1.5]);
    let nominal = [Led, SolidState].map(|kind| kind.forward().nominal.base());
    for (found, expected) in nominal.into_iter().zip([2.0, 1.2]) {
        assert!((found - expected).abs() <= WITHIN * expected, "{found} of {expected} V");
    }
    for kind in [RelayCoil, Solenoid, Motor, Lamp, Resistor, LogicInput, Gauge] {
        assert!(kind.forward().high.base().abs() <= 0.0, "{kind:?} conducts both ways");
    }
}

/// By hand, common practice: L = R t. A relay of 90 Ω charges in 1.1 to 7.8 ms, 3.3 between; a valve of 20 Ω in 0.5 to 5 ms, 1.5
/// between, one of 12 Ω whose plunger follows in 0.42 to 4.2, 1.25 between; a motor of 1 Ω in 0.1 to 2 ms, 0.5 between.
#[test]
fn an_inductance_follows_from_the_time_a_winding_charges_in() {
    for (kind, [low, nominal, high]) in [
        (RelayCoil, [1.11e-3, 3.33e-3, 7.78e-3]),
        (Solenoid, [0.5e-3, 1.5e-3, 5e-3]),
        (ProportionalValve, [0.42e-3, 1.25e-3, 4.2e-3]),
        (Motor, [0.1e-3, 0.5e-3, 2e-3]),
    ] {
        let ohm = nominal_ohm(kind);
        check(kind, kind.usual_inductance(), [low * ohm, high * ohm]);
        let found = kind.usual_inductance().nominal.base();
        assert!((found - nominal * ohm).abs() <= WITHIN * found, "{kind:?}: {found} H");
    }
    for kind in [Lamp, Resistor, Led, SolidState, LogicInput, Gauge] {
        assert!(kind.usual_inductance().high.base().abs() <= 0.0, "{kind:?} has no winding");
    }
}

/// Common practice: a cold filament takes ten times what it takes hot, a motor that stands six to seven times what it takes running.
#[test]
fn what_stands_or_is_cold_takes_several_times_as_much() {
    for (kind, times) in [(Lamp, 10.0), (Motor, 6.5), (RelayCoil, 1.0), (Resistor, 1.0)] {
        let found = kind.running_ratio();
        assert!((found - times).abs() <= WITHIN * times, "{kind:?}: {found}");
    }
}

/// Common practice: a silicon diode drops 0.7 V and 0.05 Ω at some amperes; leakage is stated at the battery's 12 V; a meter of
/// today has 10 MΩ.
#[test]
fn a_diode_and_a_meter_are_as_they_are_everywhere() {
    for (found, expected) in
        [(DIODE_FORWARD_V, 0.7), (DIODE_ON_OHM, 0.05), (LEAKAGE_AT_V, 12.0), (METER_OHM, 10e6)]
    {
        assert!((found - expected).abs() <= WITHIN * expected, "{found} instead of {expected}");
    }
}

/// Common practice: a switch of power has 0.1 Ω, a logic output 20 to 200, 50 between; a field-effect transistor gains 0.6 % a
/// kelvin from 20 °C on: at 120 °C it has 1.6 times as much, and never less than half.
#[test]
fn a_closed_switch_is_as_transistors_are() {
    for stage in [Stage::OpenDrain, Stage::HighSide, Stage::HalfBridge] {
        let found = stage.usual_on_resistance();
        assert!((found.low.base() - 0.1).abs() < 1e-9 && found.low == found.high, "{stage:?}");
    }
    let logic = Stage::Logic.usual_on_resistance();
    let found = [logic.low, logic.nominal, logic.high].map(Measure::base);
    for (found, expected) in found.into_iter().zip([20.0, 50.0, 200.0]) {
        assert!((found - expected).abs() < 1e-9, "{found} instead of {expected} Ω");
    }
    let output =
        Output { on_resistance: Band::exact(ohms(1.0)), ..Output::plain(Stage::OpenDrain) };
    for (temperature, factor) in
        [(20.0, 1.0), (120.0, 1.6), (-30.0, 0.7), (-70.0, 0.5), (-200.0, 0.5)]
    {
        let found = output.on_resistance_at(End::Nominal, celsius(temperature)).base();
        assert!((found - factor).abs() < 1e-9, "{found} at {temperature} °C");
    }
}

/// By hand: two equal resistors halve 3.3 V, and 5 V.
#[test]
fn a_pull_up_goes_to_the_volts_of_its_rail() {
    for (rail, half) in [(PullRail::ThreeVolt, 1.65), (PullRail::FiveVolt, 2.5)] {
        let resistor = load(Resistor, 1000.0, FarEnd::Ground);
        let wiring = pulled_up(wiring(Stage::OpenDrain, OnLevel::Ground, resistor), 1000.0, rail);
        check_across(&wiring, 47.0, KeyState::Off, half);
    }
}

/// Common practice: nobody sees a light of less than half a milliampere.
#[test]
fn a_light_is_lit_from_half_a_milliampere_on() {
    let light = Load::usual(Led, FarEnd::Battery);
    let state = |milliampere: f64| {
        let flow = LoadFlow {
            voltage: volts(-2.5),
            current: amperes(-milliampere * 1e-3),
            far: None,
            resistance: ohms(680.0),
            forward: volts(-2.0),
        };
        light.effect(&flow, celsius(20.0))
    };
    assert_eq!(state(0.48), LoadState::Released);
    assert_eq!(state(0.52), LoadState::Energised);
}

/// Common practice: a 12 V lamp glows from 4 V on. By hand, 1.2 Ω cold and 12 Ω as it runs, behind 0.1 Ω: 4.15 V give 343 mA, and
/// 3.95 V a cold one 3.04 A.
#[test]
fn a_filament_is_cold_below_four_volts() {
    let lamp = wiring(Stage::OpenDrain, OnLevel::Ground, load(Lamp, 1.2, FarEnd::Battery));
    for (supply, ampere) in [(4.15, 4.15 / 12.1), (3.95, 3.95 / 1.3)] {
        let rest = solved(&lamp, &bench(supply, 47.0));
        let on = rest.state(KeyState::On).expect("it is met");
        let runs = on.corners.iter().find(|it| it.point.phase == Phase::Running).expect("it runs");
        let found = runs.load().expect("it is solved").current.base().abs();
        assert!((found - ampere).abs() < 1e-3, "{found} A at {supply} V");
    }
}

/// By hand: 12.6 V over 1000.1 Ω leave 1.26 mV at the pin; a test lamp of 12 V and 3 W has 48 Ω lit, a tenth of it cold.
#[test]
fn a_floating_pin_is_proved_with_a_kilohm_or_a_test_lamp() {
    let pin = wiring(Stage::OpenDrain, OnLevel::Ground, load(RelayCoil, 90.0, FarEnd::Battery));
    let found = probe(&pin, &bench(12.6, 47.0)).expect("it floats");
    assert!((found.resistor.base() - 1000.0).abs() < 1e-9, "{found:?}");
    let on = found.on.nominal.base();
    assert!((on - 12.6 * 0.1 / 1000.1).abs() < 1e-9, "{on} V");
    for (found, expected) in [(found.lamp, 12.6 / 48.1), (found.lamp_inrush, 12.6 / 4.9)] {
        assert!((found.base() - expected).abs() < 1e-9, "{found:?}, not {expected} A");
    }
}
