//! Circuits of which a part, by the way it is made, hangs on nothing, carries nothing or contradicts itself.

use crate::circuit::{Circuit, Expected, Kind};
use crate::family::Diodes;
use crate::web::{any_ohm, supply_v, web};
use quietpin_trials::random::Random;

/// A sound circuit of up to seven nodes, to which something odd is added.
fn sound(random: &mut Random, thermal_v: f64) -> Circuit {
    loop {
        let diodes = [None, Some(Diodes::Threshold), Some(Diodes::Exponential { thermal_v })];
        let diodes = random.one_of(&diodes);
        let circuit = web(random, diodes, 7);
        if circuit.answer == Expected::Answer {
            return circuit;
        }
    }
}

/// With an island that hangs on nothing, or on threshold diodes that can't conduct.
pub(crate) fn floating(random: &mut Random, thermal_v: f64) -> Circuit {
    let mut circuit = sound(random, thermal_v);
    match random.below(3) {
        0 => {
            let first = island(random, &mut circuit, true);
            circuit.pins.push((first, 0.0));
        }
        count => behind_diodes(random, &mut circuit, count),
    }
    circuit
}

/// With an island on an exponential diode: that conducts, if little, at zero volts, so that the island is held, and no
/// current flows.
pub(crate) fn idle(random: &mut Random, thermal_v: f64) -> Circuit {
    let mut circuit = sound(random, thermal_v);
    let held = any_node(random, &circuit);
    let first = island(random, &mut circuit, false);
    let (anode, cathode) = if random.percent(50) { (held, first) } else { (first, held) };
    let model = Diodes::Exponential { thermal_v }.any(random);
    circuit.diode(anode, cathode, model);
    circuit
}

/// With parts that change nothing.
pub(crate) fn needless(random: &mut Random, thermal_v: f64) -> Circuit {
    let mut circuit = sound(random, thermal_v);
    if random.percent(50) {
        dead_end(random, &mut circuit);
    } else {
        short_circuited(random, &mut circuit);
    }
    circuit
}

/// With a contradiction.
pub(crate) fn impossible(random: &mut Random, thermal_v: f64) -> Circuit {
    let mut circuit = sound(random, thermal_v);
    if random.percent(50) {
        charged_without_end(random, &mut circuit);
    } else {
        source_loop(random, &mut circuit);
    }
    circuit
}

/// Up to three nodes joined among themselves, perhaps with a battery of their own. Gives its first node.
fn island(random: &mut Random, circuit: &mut Circuit, floats: bool) -> usize {
    let first = circuit.nodes();
    let count = random.between(1, 3);
    for offset in 0..count {
        let node = circuit.node();
        circuit.floats[node] = floats;
        if offset > 0 {
            let earlier = first + random.below(offset);
            if random.percent(30) {
                circuit.source(node, earlier, supply_v(random));
            }
            circuit.resistor(node, earlier, any_ohm(random));
        }
    }
    first
}

fn any_node(random: &mut Random, circuit: &Circuit) -> usize {
    random.below(circuit.nodes())
}

/// In volts: more than three supplies in series.
const OUT_OF_REACH: f64 = 64.0;

/// A threshold diode from a held node into an island, or out of it.
fn one_way(random: &mut Random, circuit: &mut Circuit, held: usize, island: usize, inward: bool) {
    let (anode, cathode) = if inward { (held, island) } else { (island, held) };
    circuit.diode(anode, cathode, Diodes::Threshold.any(random));
}

/// No current can return through a single diode, nor through two that face each other: whatever the island's voltage,
/// they hold nothing.
fn behind_diodes(random: &mut Random, circuit: &mut Circuit, count: usize) {
    let held: Vec<usize> = (0..count).map(|_| any_node(random, circuit)).collect();
    let first = island(random, circuit, true);
    let inward = random.percent(50);
    for node in held {
        one_way(random, circuit, node, first, inward);
    }
    circuit.pins.push((first, if inward { OUT_OF_REACH } else { -OUT_OF_REACH }));
}

/// Resistors that lead nowhere.
fn dead_end(random: &mut Random, circuit: &mut Circuit) {
    for _ in 0..random.between(1, 3) {
        let (held, node) = (any_node(random, circuit), circuit.node());
        circuit.resistor(held, node, any_ohm(random));
    }
}

/// Parts with both ends at one node, and resistors straight across a source.
fn short_circuited(random: &mut Random, circuit: &mut Circuit) {
    let node = any_node(random, circuit);
    circuit.resistor(node, node, any_ohm(random));
    circuit.diode(node, node, Diodes::Threshold.any(random));
    let sources = circuit.parts.clone().into_iter();
    for part in sources.filter(|part| matches!(part.kind, Kind::Source { .. })) {
        circuit.resistor(part.from, part.to, any_ohm(random));
    }
}

/// A current into an island that nothing leads out of.
fn charged_without_end(random: &mut Random, circuit: &mut Circuit) {
    let held = any_node(random, circuit);
    let first = island(random, circuit, true);
    let a = random.log_even(1e-6, 1.0);
    circuit.add(held, first, Kind::Current { a });
    circuit.answer = Expected::NoReturn;
}

/// A second source between the ends of one.
fn source_loop(random: &mut Random, circuit: &mut Circuit) {
    let source =
        circuit.parts.iter().find(|part| matches!(part.kind, Kind::Source { .. })).copied();
    if let Some(source) = source {
        circuit.source(source.from, source.to, supply_v(random));
        circuit.answer = Expected::SourceLoop;
    }
}
