//! Networks built around a chosen answer, which is then demanded back.
//!
//! Voltages are multiples of 1/64 V and resistances powers of two, so that the current in every resistor, and the sum of
//! such currents at a node, is an exact number: current sources make the chosen voltages the answer without rounding.

use proptest::prelude::*;

use super::super::network::Law;
use super::super::{Diode, Element, GROUND, Network, Node};
use crate::math;

/// One node to plant: its voltage in 64ths of a volt, what joins it to an earlier node, and the base-two logarithm of
/// the resistance.
type Seedling = (i32, usize, usize, i32);

/// One more element between two nodes.
type Extra = (usize, usize, bool, i32);

struct Planted {
    network: Network,
    nodes: Vec<(Node, f64)>,
    currents: Vec<(Element, f64)>,
    leaving: Vec<f64>,
}

impl Planted {
    fn new() -> Self {
        Self {
            network: Network::new(),
            nodes: vec![(GROUND, 0.0)],
            currents: Vec::new(),
            leaving: vec![0.0],
        }
    }

    fn node(&mut self, volts: f64) -> usize {
        self.nodes.push((self.network.node("planted"), volts));
        self.leaving.push(0.0);
        self.nodes.len() - 1
    }

    fn drop_v(&self, from: usize, to: usize) -> f64 {
        self.nodes[from].1 - self.nodes[to].1
    }

    fn expect(&mut self, element: Element, from: usize, to: usize, current: f64) {
        self.currents.push((element, current));
        self.leaving[from] += current;
        self.leaving[to] -= current;
    }

    fn resistor(&mut self, from: usize, to: usize, ohm: f64) {
        let element = self.network.resistor(self.nodes[from].0, self.nodes[to].0, ohm);
        self.expect(element, from, to, self.drop_v(from, to) / ohm);
    }

    fn source(&mut self, from: usize, to: usize, current: f64) {
        let (plus, minus) = (self.nodes[from].0, self.nodes[to].0);
        let element = self.network.source(plus, minus, self.drop_v(from, to));
        self.expect(element, from, to, current);
    }

    /// The current of an exponential diode is no exact number, and must not be added to others: a source of its own
    /// carries it back.
    fn diode(&mut self, from: usize, to: usize, model: Diode) {
        let (anode, cathode) = (self.nodes[from].0, self.nodes[to].0);
        let current = model.current_a(self.drop_v(from, to));
        let element = self.network.diode(anode, cathode, model);
        self.network.current(cathode, anode, current);
        self.currents.push((element, current));
    }

    /// Takes out of each node what the elements bring.
    fn balance(&mut self) {
        for (node, leaving) in self.nodes.iter().zip(&self.leaving).skip(1) {
            self.network.current(GROUND, node.0, *leaving);
        }
    }

    /// `tolerance` is relative to the largest voltage, and for each current to its own size; the current of an ideal
    /// source is a sum of others, and as good as those.
    fn check(&mut self, tolerance: f64) -> Result<(), TestCaseError> {
        self.balance();
        let solution = self
            .network
            .solve()
            .map_err(|error| TestCaseError::fail(format!("{error}: {:?}", self.network)))?;
        let largest = self.nodes.iter().map(|node| node.1.abs()).fold(1.0, f64::max);
        for &(node, expected) in &self.nodes {
            let found = solution.voltage(node).unwrap_or(f64::NAN);
            prop_assert!(
                (found - expected).abs() <= tolerance * largest,
                "{node:?} {found} {expected} {:?}",
                self.network
            );
        }
        let all: f64 = self.currents.iter().map(|(_, current)| current.abs()).sum();
        for &(element, expected) in &self.currents {
            let found = solution.current(element);
            let error = (found - expected).abs();
            let is_source = matches!(self.network.branches[element.0].kind, Law::Source { .. });
            let size = if is_source { all } else { expected.abs() };
            prop_assert!(
                error <= tolerance * size + 1e-16 * all,
                "{element:?} {found} {expected} {:?}",
                self.network
            );
        }
        Ok(())
    }
}

fn power_of_two(exponent: i32) -> f64 {
    math::pow(2.0, f64::from(exponent))
}

/// A tree of resistors and sources to ground.
fn tree(seedlings: &[Seedling]) -> Planted {
    let mut planted = Planted::new();
    for &(volts, earlier, kind, exponent) in seedlings {
        let node = planted.node(f64::from(volts) / 64.0);
        let earlier = earlier % node;
        match kind {
            0 => planted.source(node, earlier, f64::from(exponent)),
            1 => planted.source(earlier, node, f64::from(exponent)),
            _ => planted.resistor(node, earlier, power_of_two(exponent)),
        }
    }
    planted
}

fn seedlings(most_exponent: i32) -> impl Strategy<Value = Vec<Seedling>> {
    let volts = -20 * 64..20 * 64;
    prop::collection::vec((volts, 0..100_usize, 0..8_usize, -10..most_exponent), 1..9)
}

fn extras(most_exponent: i32) -> impl Strategy<Value = Vec<Extra>> {
    prop::collection::vec((0..100_usize, 0..100_usize, any::<bool>(), -10..most_exponent), 0..10)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    /// From 1 milliohm to 67 megohm.
    #[test]
    fn threshold_diodes(seedlings in seedlings(26), extras in extras(26)) {
        let mut planted = tree(&seedlings);
        let count = planted.nodes.len();
        for (from, to, is_diode, exponent) in extras {
            let (from, to) = (from % count, to % count);
            if is_diode {
                let model = Diode::Threshold {
                    forward_voltage_v: 0.75,
                    on_resistance_ohm: power_of_two(exponent),
                };
                planted.diode(from, to, model);
            } else {
                planted.resistor(from, to, power_of_two(exponent));
            }
        }
        planted.check(1e-12)?;
    }

    #[test]
    fn exponential_diodes(seedlings in seedlings(26), extras in extras(26)) {
        let mut planted = tree(&seedlings);
        let count = planted.nodes.len();
        for (from, to, is_diode, exponent) in extras {
            let (from, to) = (from % count, to % count);
            // A forward diode across volts carries more than all metal on earth would.
            if is_diode && planted.drop_v(from, to) < 0.8 {
                let model = Diode::Exponential {
                    saturation_current_a: 1e-12 * power_of_two(exponent),
                    emission_coefficient: 1.5,
                    thermal_voltage_v: 0.0258649,
                };
                planted.diode(from, to, model);
            } else {
                planted.resistor(from, to, power_of_two(exponent));
            }
        }
        planted.check(1e-11)?;
    }
}
