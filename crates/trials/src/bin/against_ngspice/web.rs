//! Networks without a plan: anything joined to anything.

use crate::circuit::{Circuit, Expected};
use crate::family::Diodes;
use quietpin_trials::random::Random;

/// From a milliohm to ten megohm.
pub(crate) fn any_ohm(random: &mut Random) -> f64 {
    random.log_even(1e-3, 1e7)
}

/// Of a vehicle's battery, at its lowest and highest.
pub(crate) fn supply_v(random: &mut Random) -> f64 {
    random.even(5.0, 16.0)
}

/// A tree of resistors and up to three ideal sources from ground to every node, so that nothing floats, and more
/// resistors, or diodes too, between any nodes.
pub(crate) fn web(random: &mut Random, diodes: Option<Diodes>, most_nodes: usize) -> Circuit {
    let mut circuit = Circuit::new();
    let nodes = random.between(3, most_nodes);
    let mut sources = 0;
    for number in 1..nodes {
        let (node, earlier) = (circuit.node(), random.below(number));
        let is_source = number == 1 || sources < 3 && random.percent(20);
        if is_source {
            sources += 1;
            let ends = if random.percent(50) { (node, earlier) } else { (earlier, node) };
            circuit.source(ends.0, ends.1, supply_v(random));
        } else {
            circuit.resistor(node, earlier, any_ohm(random));
        }
    }
    for _ in 0..random.between(1, nodes + 2) {
        let (from, to) = (random.below(nodes), random.below(nodes));
        match diodes {
            Some(diodes) if random.percent(65) => {
                circuit.diode(from, to, diodes.any(random));
            }
            _ => circuit.resistor(from, to, any_ohm(random)),
        }
    }
    if !circuit.is_limited() {
        circuit.answer = Expected::NoLimit;
    }
    circuit
}
