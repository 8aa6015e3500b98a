//! A circuit as both programs are given it, and an answer as both give it back.

use quietpin_core::circuit::{Diode, Element, GROUND, Network, Node, Unsolvable};

/// In amperes: where our solver says that nothing limits the current in a diode ([`Unsolvable::NoLimit`]).
const MOST_A: f64 = 1e6;

/// Nodes by number; 0 is ground.
#[derive(Clone, Debug)]
pub(crate) struct Circuit {
    pub(crate) parts: Vec<Part>,
    /// By node: whether nothing holds it, by the way it was made.
    pub(crate) floats: Vec<bool>,
    /// A voltage for a node of each part that floats, at which the diodes that lead there block: whoever needs one may
    /// put it there, and changes nothing elsewhere.
    pub(crate) pins: Vec<(usize, f64)>,
    pub(crate) answer: Expected,
}

/// Whether there is an answer, by the way the circuit was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Expected {
    Answer,
    /// Ideal sources form a loop.
    SourceLoop,
    /// A current has no way back.
    NoReturn,
    /// Nothing keeps the current in a diode below [`MOST_A`].
    NoLimit,
}

/// An element; its current counts from `from` (plus, anode) to `to`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Part {
    pub(crate) from: usize,
    pub(crate) to: usize,
    pub(crate) kind: Kind,
}

/// The law of an element.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Kind {
    Resistor { ohm: f64 },
    Source { v: f64 },
    Current { a: f64 },
    Diode(Diode),
}

/// Voltages by node, currents by part; `None` where a program gives none.
#[derive(Clone, Debug)]
pub(crate) struct Answer {
    pub(crate) voltages: Vec<Option<f64>>,
    pub(crate) currents: Vec<Option<f64>>,
}

impl Answer {
    /// Whether any node but ground has a voltage.
    pub(crate) fn has_volts(&self) -> bool {
        self.voltages.iter().skip(1).any(Option::is_some)
    }
}

impl Circuit {
    /// Nothing but ground.
    pub(crate) fn new() -> Self {
        Self { parts: Vec::new(), floats: vec![false], pins: Vec::new(), answer: Expected::Answer }
    }

    /// How many nodes there are, ground among them.
    pub(crate) fn nodes(&self) -> usize {
        self.floats.len()
    }

    /// One more node.
    pub(crate) fn node(&mut self) -> usize {
        self.floats.push(false);
        self.floats.len() - 1
    }

    pub(crate) fn add(&mut self, from: usize, to: usize, kind: Kind) {
        self.parts.push(Part { from, to, kind });
    }

    pub(crate) fn resistor(&mut self, from: usize, to: usize, ohm: f64) {
        self.add(from, to, Kind::Resistor { ohm });
    }

    pub(crate) fn source(&mut self, plus: usize, minus: usize, v: f64) {
        self.add(plus, minus, Kind::Source { v });
    }

    pub(crate) fn diode(&mut self, anode: usize, cathode: usize, model: Diode) {
        self.add(anode, cathode, Kind::Diode(model));
    }

    /// Whether there are voltages at which every exponential diode carries less than [`MOST_A`], resistors aside. A ring
    /// of diodes and ideal sources may leave none: then no resistor helps, and otherwise even a milliohm does.
    ///
    /// Each element bounds a difference of two voltages, and bounds contradict each other where they sum to less than
    /// zero along a ring: R. Bellman, "On a routing problem", Quarterly of Applied Mathematics 16, 1958.
    pub(crate) fn is_limited(&self) -> bool {
        let mut bounds = Vec::new();
        for part in &self.parts {
            match part.kind {
                Kind::Source { v } => {
                    bounds.extend([(part.from, part.to, v), (part.to, part.from, -v)]);
                }
                Kind::Diode(Diode::Exponential {
                    saturation_current_a,
                    emission_coefficient,
                    thermal_voltage_v,
                }) => {
                    let exponent = (MOST_A / saturation_current_a).ln_1p();
                    let most_v = exponent * emission_coefficient * thermal_voltage_v;
                    bounds.push((part.from, part.to, most_v));
                }
                _ => {}
            }
        }
        let mut volts = vec![0.0; self.nodes()];
        (0..self.nodes()).any(|_| {
            let mut is_still = true;
            for &(upper, lower, most_v) in &bounds {
                let bound: f64 = volts[lower] + most_v;
                // Less is rounding.
                if volts[upper] > bound + 1e-9 {
                    (volts[upper], is_still) = (bound, false);
                }
            }
            is_still
        })
    }

    /// By node: whether it is an end of the part, or ideal sources lead there from one.
    pub(crate) fn tied_by_sources(&self, part: Part) -> Vec<bool> {
        let mut tied = vec![false; self.nodes()];
        (tied[part.from], tied[part.to]) = (true, true);
        for _ in 0..self.nodes() {
            for Part { from, to, kind } in &self.parts {
                if matches!(kind, Kind::Source { .. }) && (tied[*from] || tied[*to]) {
                    (tied[*from], tied[*to]) = (true, true);
                }
            }
        }
        tied
    }

    /// The same for our own solver.
    pub(crate) fn network(&self) -> Ours {
        let mut network = Network::new();
        let mut nodes = vec![GROUND];
        nodes.extend((1..self.nodes()).map(|number| network.node(number.to_string())));
        let add = |part: &Part| {
            let (from, to) = (nodes[part.from], nodes[part.to]);
            match part.kind {
                Kind::Resistor { ohm } => network.resistor(from, to, ohm),
                Kind::Source { v } => network.source(from, to, v),
                Kind::Current { a } => network.current(from, to, a),
                Kind::Diode(model) => network.diode(from, to, model),
            }
        };
        let elements = self.parts.iter().map(add).collect();
        Ours { network, nodes, elements }
    }
}

/// A circuit in our own solver's terms.
#[derive(Debug)]
pub(crate) struct Ours {
    network: Network,
    nodes: Vec<Node>,
    elements: Vec<Element>,
}

impl Ours {
    pub(crate) fn solve(&self) -> Result<Answer, Unsolvable> {
        let solution = self.network.solve()?;
        let currents = self.elements.iter().map(|element| Some(solution.current(*element)));
        Ok(Answer {
            voltages: self.nodes.iter().map(|node| solution.voltage(*node)).collect(),
            currents: currents.collect(),
        })
    }
}
