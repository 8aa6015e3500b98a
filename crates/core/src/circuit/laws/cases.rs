//! Small networks with answers worked out by hand.

use super::super::{Diode, GROUND, Network, Unsolvable};
use crate::math;

const SILICON: Diode = Diode::Threshold { forward_voltage_v: 0.7, on_resistance_ohm: 0.1 };
const JUNCTION: Diode = Diode::Exponential {
    saturation_current_a: 1e-10,
    emission_coefficient: 1.5,
    thermal_voltage_v: 0.0258649,
};

#[track_caller]
fn check(found: Option<f64>, expected: f64) {
    let found = found.expect("a voltage is defined");
    assert!((found - expected).abs() <= 1e-12 * expected.abs(), "{found} instead of {expected}");
}

#[test]
fn a_divider_divides() {
    let mut network = Network::new();
    let (top, middle) = (network.node("top"), network.node("middle"));
    let battery = network.source(top, GROUND, 12.0);
    network.resistor(top, middle, 1000.0);
    let lower = network.resistor(middle, GROUND, 2000.0);
    let solution = network.solve().unwrap();
    check(solution.voltage(middle), 8.0);
    check(Some(solution.current(battery)), -0.004);
    check(solution.power(battery), -0.048);
    check(solution.power(lower), 0.032);
}

#[test]
fn a_node_that_nothing_holds_floats() {
    let mut network = Network::new();
    let (rail, out, bare) = (network.node("rail"), network.node("out"), network.node("bare"));
    network.source(rail, GROUND, 12.0);
    let upper = network.diode(out, rail, SILICON);
    let lower = network.diode(GROUND, out, SILICON);
    let solution = network.solve().unwrap();
    assert_eq!(solution.voltage(out), None, "both diodes block");
    assert_eq!(solution.voltage(bare), None, "joined to nothing");
    assert_eq!((solution.current(upper), solution.current(lower)), (0.0, 0.0), "both block");
    assert_eq!(solution.power(upper), Some(0.0), "no current, no power");
    check(solution.voltage(rail), 12.0);
}

#[test]
fn a_floating_loop_still_has_its_current() {
    let mut network = Network::new();
    let (plus, minus) = (network.node("plus"), network.node("minus"));
    network.source(plus, minus, 9.0);
    let lamp = network.resistor(plus, minus, 3.0);
    let solution = network.solve().unwrap();
    check(Some(solution.current(lamp)), 3.0);
    check(solution.between(plus, minus), 9.0);
    assert_eq!(solution.voltage(plus), None, "nothing ties it to ground");
}

#[test]
fn a_diode_at_its_threshold_without_a_current_holds_nothing() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, -12.0);
    network.diode(out, rail, SILICON);
    let solution = network.solve().unwrap();
    assert_eq!(solution.voltage(out), None, "anything up to -11.3 V is an answer");
}

#[test]
fn a_leak_is_carried_by_the_diode_that_can() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, 12.0);
    let upper = network.diode(out, rail, SILICON);
    network.diode(GROUND, out, SILICON);
    network.current(rail, out, 1e-6);
    let solution = network.solve().unwrap();
    check(solution.voltage(out), 12.7 + 1e-7);
    check(Some(solution.current(upper)), 1e-6);
}

#[test]
fn a_leak_without_a_return_has_no_answer() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, 12.0);
    network.diode(rail, out, SILICON);
    network.current(rail, out, 1e-6);
    assert_eq!(network.solve().unwrap_err(), Unsolvable::NoReturn { node: out }, "it charges out");
}

#[test]
fn a_junction_alone_has_no_voltage() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, 12.0);
    network.diode(out, rail, JUNCTION);
    let solution = network.solve().unwrap();
    check(solution.voltage(out), 12.0);
}

#[test]
fn of_two_blocking_junctions_the_leakier_holds_the_node() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, 12.0);
    let leaky = Diode::Exponential {
        saturation_current_a: 2e-10,
        emission_coefficient: 1.0,
        thermal_voltage_v: 0.025,
    };
    network.diode(out, rail, leaky);
    network.diode(GROUND, out, JUNCTION);
    let solution = network.solve().unwrap();
    // It carries half of its saturation current: exp(v / 0.025) = 1/2.
    check(solution.voltage(out), 12.0 - 0.025 * math::ln(2.0));
}

#[test]
fn two_equal_blocking_junctions_leave_the_node_open() {
    let mut network = Network::new();
    let (rail, out) = (network.node("rail"), network.node("out"));
    network.source(rail, GROUND, 12.0);
    network.diode(out, rail, JUNCTION);
    network.diode(GROUND, out, JUNCTION);
    let solution = network.solve().unwrap();
    assert_eq!(solution.voltage(out), None, "any voltage well between the rails balances");
}

#[test]
fn a_chain_of_junctions_across_a_supply_settles() {
    let mut network = Network::new();
    let mut node = network.node("supply");
    network.source(node, GROUND, 48.0);
    let mut last = network.node("first");
    network.resistor(node, last, 1e-3);
    for _ in 0..8 {
        node = last;
        last = network.node("next");
        network.diode(node, last, JUNCTION);
    }
    let resistor = network.resistor(last, GROUND, 1e3);
    let solution = network.solve().unwrap();
    let current = solution.current(resistor);
    let drop = 1.5 * 0.0258649 * math::ln_1p(current / 1e-10);
    check(Some(current * 1000.001 + 8.0 * drop), 48.0);
}

#[test]
fn a_junction_straight_across_a_battery_is_refused() {
    let mut network = Network::new();
    let plus = network.node("plus");
    network.source(plus, GROUND, 12.0);
    let diode = network.diode(plus, GROUND, JUNCTION);
    assert_eq!(network.solve().unwrap_err(), Unsolvable::NoLimit { element: diode }, "exp(309)");
}

#[test]
fn batteries_in_parallel_are_refused() {
    let mut network = Network::new();
    let plus = network.node("plus");
    network.source(plus, GROUND, 12.0);
    let second = network.source(plus, GROUND, 12.0);
    assert_eq!(network.solve().unwrap_err(), Unsolvable::SourceLoop { element: second }, "loop");
    let mut network = Network::new();
    let shorted = network.source(GROUND, GROUND, 12.0);
    assert_eq!(network.solve().unwrap_err(), Unsolvable::SourceLoop { element: shorted }, "short");
}

#[test]
fn values_out_of_range_are_named() {
    for ohm in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e300, 1e-300] {
        let mut network = Network::new();
        let out = network.node("out");
        network.resistor(out, GROUND, 1.0);
        let element = network.resistor(out, GROUND, ohm);
        assert_eq!(network.solve().unwrap_err(), Unsolvable::OutOfRange { element }, "{ohm}");
    }
}

#[test]
fn a_node_of_another_network_is_named() {
    let mut other = Network::new();
    other.node("one");
    let foreign = other.node("two");
    let mut network = Network::new();
    let element = network.resistor(foreign, GROUND, 1.0);
    assert_eq!(network.solve().unwrap_err(), Unsolvable::ForeignNode { element }, "not ours");
}

#[test]
fn too_many_nodes_are_refused() {
    let mut network = Network::new();
    for _ in 0..Network::MOST_NODES {
        network.node("one more");
    }
    assert_eq!(network.solve().unwrap_err(), Unsolvable::TooLarge, "ground is one too");
}

/// 0.12 nanovolt across a wire at 12 V, where neighbouring numbers are a hundred-thousandth of that apart.
#[test]
fn a_milliohm_wire_shows_a_nanoampere() {
    let mut network = Network::new();
    let (rail, far) = (network.node("rail"), network.node("far"));
    network.source(rail, GROUND, 12.0);
    let wire = network.resistor(rail, far, 1e-3);
    network.resistor(far, GROUND, 1e8);
    let solution = network.solve().unwrap();
    check(Some(solution.current(wire)), 12.0 / (1e8 + 1e-3));
    check(solution.across(wire), 12.0 / (1e8 + 1e-3) * 1e-3);
}
