//! What holds for any network at all.

use proptest::prelude::*;

use super::super::characteristic::Characteristic;
use super::super::network::Law;
use super::super::{Diode, Element, GROUND, Network, Node, Solution, Unsolvable};
use crate::math;

/// An element to be built: kind, two nodes, and two numbers for its values.
type Recipe = (u8, usize, usize, f64, f64);

/// Kinds of recipes that are no diodes, and those that are no sources.
const LINEAR: std::ops::Range<u8> = 0..4;
const PASSIVE: std::ops::Range<u8> = 2..6;
const ANY: std::ops::Range<u8> = 0..6;

const NODES: usize = 6;

fn recipes(kinds: std::ops::Range<u8>) -> impl Strategy<Value = Vec<Recipe>> {
    let value = -1.0..1.0_f64;
    prop::collection::vec((kinds, 0..=NODES, 0..=NODES, value.clone(), value), 0..16)
}

/// A number between two, each ratio as likely, from one between -1 and 1.
fn between(low: f64, high: f64, x: f64) -> f64 {
    low * math::pow(high / low, 0.5 + 0.5 * x)
}

struct Built {
    network: Network,
    elements: Vec<(Element, Node, Node)>,
}

impl Built {
    /// Six nodes, each with 100 kilohm to ground, so that all currents can return.
    fn new() -> Self {
        let mut built = Self { network: Network::new(), elements: Vec::new() };
        for _ in 0..NODES {
            let node = built.network.node("node");
            built.resistor(node, GROUND, 1e5);
        }
        built
    }

    /// All recipes; the sources of the one with index `k` multiplied by `weight(k)`.
    fn of(recipes: &[Recipe], weight: impl Fn(usize) -> f64) -> Self {
        let mut built = Self::new();
        for (index, &recipe) in recipes.iter().enumerate() {
            built.add(recipe, weight(index), false);
        }
        built
    }

    /// All sources reversed and all diodes turned round.
    fn mirrored(recipes: &[Recipe]) -> Self {
        let mut built = Self::new();
        for &recipe in recipes {
            built.add(recipe, -1.0, true);
        }
        built
    }

    fn resistor(&mut self, from: Node, to: Node, ohm: f64) {
        self.elements.push((self.network.resistor(from, to, ohm), from, to));
    }

    fn add(&mut self, (kind, from, to, x, y): Recipe, weight: f64, turned: bool) {
        let (from, to) = (Node(from), Node(to));
        match kind {
            // With 0.1 ohm of its own, so that no sources make a loop.
            0 => {
                let inner = self.network.node("inner");
                self.elements.push((self.network.source(inner, to, 24.0 * x * weight), inner, to));
                self.resistor(from, inner, 0.1);
            }
            1 => {
                let current = x * x * x * weight;
                self.elements.push((self.network.current(from, to, current), from, to));
            }
            2 | 3 => self.resistor(from, to, between(1e-3, 1e8, x)),
            _ => {
                let (anode, cathode) = if turned { (to, from) } else { (from, to) };
                let element = self.network.diode(anode, cathode, diode(kind, x, y));
                self.elements.push((element, anode, cathode));
            }
        }
    }

    fn solve(&self) -> Result<Solution, TestCaseError> {
        let complain = |error| TestCaseError::fail(format!("{error}: {:?}", self.network));
        self.network.solve().map_err(complain)
    }

    fn nodes(&self) -> impl Iterator<Item = Node> {
        (0..self.network.names.len()).map(Node)
    }
}

fn diode(kind: u8, x: f64, y: f64) -> Diode {
    if kind == 4 {
        Diode::Threshold { forward_voltage_v: 1.0 + x, on_resistance_ohm: between(1e-3, 10.0, y) }
    } else {
        Diode::Exponential {
            saturation_current_a: between(1e-16, 1e-6, x),
            emission_coefficient: 1.5 + 0.5 * y,
            thermal_voltage_v: 0.0258649,
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(500))]

    /// The current law at every node.
    #[test]
    fn currents_sum_to_zero_at_every_node(recipes in recipes(ANY)) {
        let built = Built::of(&recipes, |_| 1.0);
        let solution = built.solve()?;
        for node in built.nodes() {
            let (mut sum, mut size) = (0.0, 0.0);
            for &(element, from, to) in &built.elements {
                let current = solution.current(element);
                if (from == node) != (to == node) {
                    sum += if from == node { current } else { -current };
                    size += current.abs();
                }
            }
            prop_assert!(sum.abs() <= 1e-12 * size + 1e-25, "{node:?} {sum} of {size}");
        }
    }

    /// The balance of powers: what some elements give others take.
    #[test]
    fn powers_sum_to_zero(recipes in recipes(ANY)) {
        let built = Built::of(&recipes, |_| 1.0);
        let solution = built.solve()?;
        let power = |part: &(Element, Node, Node)| solution.power(part.0).unwrap();
        let powers: Vec<f64> = built.elements.iter().map(power).collect();
        let size: f64 = powers.iter().map(|power| power.abs()).sum();
        prop_assert!(powers.iter().sum::<f64>().abs() <= 1e-12 * size, "{powers:?}");
    }

    /// Every element obeys its own law at the voltages reported.
    #[test]
    fn elements_obey_their_law(recipes in recipes(ANY)) {
        let built = Built::of(&recipes, |_| 1.0);
        let solution = built.solve()?;
        for &(element, ..) in &built.elements {
            let kind = built.network.branches[element.0].kind;
            if !matches!(kind, Law::Source { .. }) {
                let (v, current) = (solution.across(element).unwrap(), solution.current(element));
                let law = Characteristic::from(kind).current_a(v.into());
                // The voltage was rounded to be reported.
                let rounded = 1e-15 * v.abs() * Characteristic::from(kind).tangent((v + 1e-15).into()).siemens;
                let error = (law - current).abs();
                prop_assert!(error <= 1e-9 * current.abs() + rounded, "{kind:?} {law} {current}");
            }
        }
    }

    /// All sources reversed and all diodes turned round: the same answer with the other sign.
    #[test]
    fn the_mirrored_network_has_the_mirrored_answer(recipes in recipes(ANY)) {
        let built = Built::of(&recipes, |_| 1.0);
        let (solution, mirrored) = (built.solve()?, Built::mirrored(&recipes).solve()?);
        for node in built.nodes() {
            let (a, b) = (solution.voltage(node).unwrap(), mirrored.voltage(node).unwrap());
            prop_assert!((a + b).abs() <= 1e-12 * (1.0 + a.abs()), "{node:?} {a} {b}");
        }
    }

    /// Without diodes, the answers to two sets of sources add up.
    #[test]
    fn sources_superpose(
        recipes in recipes(LINEAR),
        weights in prop::collection::vec(-1.0..1.0_f64, 16),
    ) {
        let whole = Built::of(&recipes, |_| 1.0);
        let one = Built::of(&recipes, |k| weights[k]).solve()?;
        let other = Built::of(&recipes, |k| 1.0 - weights[k]).solve()?;
        let solution = whole.solve()?;
        for node in whole.nodes() {
            let (one, other) = (one.voltage(node).unwrap(), other.voltage(node).unwrap());
            let error = (solution.voltage(node).unwrap() - (one + other)).abs();
            prop_assert!(error <= 1e-12 * (1.0 + one.abs() + other.abs()), "{node:?} {error}");
        }
    }

    /// Turning the supply up in a network without other sources never lowers the current that it delivers.
    #[test]
    fn more_supply_is_never_less_current(
        recipes in recipes(PASSIVE),
        low in 0.0..20.0_f64,
        more in 0.0..20.0_f64,
    ) {
        let delivered = |volts: f64| {
            let mut built = Built::of(&recipes, |_| 1.0);
            let plus = built.network.node("plus");
            let supply = built.network.source(plus, GROUND, volts);
            built.network.resistor(plus, Node(1), 0.5);
            built.solve().map(|solution| -solution.current(supply))
        };
        let (less, more) = (delivered(low)?, delivered(low + more)?);
        prop_assert!(more >= less - 1e-12 * less.abs(), "{less} {more}");
    }

    /// Whatever is joined to whatever, floating or not: an answer or a reason, and the same bits twice.
    #[test]
    fn every_network_settles(recipes in recipes(ANY), supply in -30.0..30.0_f64) {
        let mut built = Built { network: Network::new(), elements: Vec::new() };
        for _ in 0..NODES {
            built.network.node("node");
        }
        built.network.source(Node(1), GROUND, supply);
        for &recipe in &recipes {
            built.add(recipe, 1.0, false);
        }
        let (once, twice) = (built.network.solve(), built.network.solve());
        prop_assert_eq!(format!("{once:?}"), format!("{twice:?}"));
        prop_assert!(!matches!(once, Err(Unsolvable::NotSettled)), "{:?}", built.network);
    }

    /// Any numbers, any nodes: no panic, and no answer that is not a number.
    #[test]
    fn nothing_panics(
        parts in prop::collection::vec((0..6_u8, 0..9_usize, 0..9_usize, wild(), wild()), 0..12),
    ) {
        let mut network = Network::new();
        for _ in 0..7 {
            network.node("node");
        }
        let mut elements = Vec::new();
        for (kind, from, to, x, y) in parts {
            let (from, to) = (Node(from), Node(to));
            elements.push(match kind {
                0 => network.source(from, to, x),
                1 => network.current(from, to, x),
                2 | 3 => network.resistor(from, to, x),
                4 => network.diode(from, to, Diode::Threshold { forward_voltage_v: x, on_resistance_ohm: y }),
                _ => network.diode(from, to, Diode::Exponential {
                    saturation_current_a: x,
                    emission_coefficient: y,
                    thermal_voltage_v: 0.025,
                }),
            });
        }
        if let Ok(solution) = network.solve() {
            for element in elements {
                prop_assert!(solution.current(element).is_finite(), "{network:?}");
            }
        }
    }
}

/// Any number at all, or one that lies in some range.
fn wild() -> impl Strategy<Value = f64> {
    let at_the_borders = [0.0, 1e-9, 1e9, 1e15, 1e-30, 1.0, -1e9, 1e-6];
    let numbers = [f64::NAN, f64::INFINITY, 1e300, 1e-300, -1.0];
    prop_oneof![
        40 => (-9.0..9.0_f64).prop_map(|x| math::pow(10.0, x)),
        20 => prop::sample::select(at_the_borders.to_vec()),
        1 => prop::sample::select(numbers.to_vec()),
        1 => any::<f64>(),
    ]
}
