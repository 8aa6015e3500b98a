//! What is joined to what.

use std::ops::RangeInclusive;

use super::diode::Diode;
use super::solution::Solution;
use super::solve::Workspace;
use super::unsolvable::Unsolvable;

/// A node of a [`Network`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Node(pub(super) usize);

/// The node whose voltage is zero, present in every network.
pub const GROUND: Node = Node(0);

/// An element of a [`Network`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Element(pub(super) usize);

/// A network of resistors, diodes and ideal sources between nodes.
///
/// A value outside the range that a method states is accepted here, and named by [`solve`](Self::solve).
#[derive(Clone, Debug)]
pub struct Network {
    pub(super) names: Vec<String>,
    pub(super) branches: Vec<Branch>,
}

/// An element and the nodes it lies between; its current counts from `from` to `to`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Branch {
    pub(super) from: Node,
    pub(super) to: Node,
    pub(super) kind: Law,
}

/// The law of an element.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Law {
    Resistor { ohm: f64 },
    Source { v: f64 },
    Current { a: f64 },
    Diode(Diode),
}

const OHM: RangeInclusive<f64> = 1e-9..=1e15;
const VOLT: RangeInclusive<f64> = -1e9..=1e9;
const AMPERE: RangeInclusive<f64> = -1e9..=1e9;
const SATURATION_AMPERE: RangeInclusive<f64> = 1e-30..=1.0;
const JUNCTION_VOLT: RangeInclusive<f64> = 1e-6..=1e3;
const FORWARD_VOLT: RangeInclusive<f64> = 0.0..=1e9;

impl Network {
    /// The most nodes that [`solve`](Self::solve) takes, ground among them: its effort grows with their cube.
    pub const MOST_NODES: usize = 500;

    /// A network of nothing but ground.
    pub fn new() -> Self {
        Self { names: vec!["ground".to_owned()], branches: Vec::new() }
    }

    /// One more node. The name is for people; two nodes may share one.
    pub fn node(&mut self, name: impl Into<String>) -> Node {
        self.names.push(name.into());
        Node(self.names.len() - 1)
    }

    /// What a node was called; empty for a node of another network.
    pub fn name(&self, node: Node) -> &str {
        self.names.get(node.0).map_or("", String::as_str)
    }

    /// A resistor of 1e-9 to 1e15 ohms: below, call it one node; above, leave it out.
    pub fn resistor(&mut self, from: Node, to: Node, ohm: f64) -> Element {
        self.join(from, to, Law::Resistor { ohm })
    }

    /// An ideal source that holds `plus` at `v` volts above `minus`, -1e9 to 1e9.
    pub fn source(&mut self, plus: Node, minus: Node, v: f64) -> Element {
        self.join(plus, minus, Law::Source { v })
    }

    /// A source that takes `a` amperes out of node `from` and puts them into node `to`, -1e9 to 1e9.
    pub fn current(&mut self, from: Node, to: Node, a: f64) -> Element {
        self.join(from, to, Law::Current { a })
    }

    /// A diode that conducts from anode to cathode; see [`Diode`] for the ranges.
    pub fn diode(&mut self, anode: Node, cathode: Node, model: Diode) -> Element {
        self.join(anode, cathode, Law::Diode(model))
    }

    /// The currents in all elements and the voltages of all nodes that have one.
    ///
    /// The same network gives the same bits on every machine.
    ///
    /// # Errors
    ///
    /// Where the network has no answer: see [`Unsolvable`]. A node that nothing holds is no error: see
    /// [`Solution::voltage`].
    pub fn solve(&self) -> Result<Solution, Unsolvable> {
        self.check()?;
        let mut workspace = Workspace::default();
        workspace.solve(self)?;
        Ok(workspace.into_solution())
    }

    /// The same, sooner where many networks are solved one after the other.
    ///
    /// # Errors
    ///
    /// The same.
    pub fn solve_in<'a>(&self, workspace: &'a mut Workspace) -> Result<&'a Solution, Unsolvable> {
        self.check()?;
        workspace.recall(self)
    }

    /// Whether all nodes exist and all values are in range.
    fn check(&self) -> Result<(), Unsolvable> {
        crate::counted::count(|done| done.networks += 1);
        if self.names.len() > Self::MOST_NODES {
            return Err(Unsolvable::TooLarge);
        }
        for (index, branch) in self.branches.iter().enumerate() {
            let element = Element(index);
            if branch.from.max(branch.to).0 >= self.names.len() {
                return Err(Unsolvable::ForeignNode { element });
            }
            if !branch.kind.is_in_range() {
                return Err(Unsolvable::OutOfRange { element });
            }
        }
        Ok(())
    }

    /// Takes everything off but ground.
    pub fn clear(&mut self) {
        self.names.truncate(1);
        self.branches.clear();
    }

    fn join(&mut self, from: Node, to: Node, kind: Law) -> Element {
        self.branches.push(Branch { from, to, kind });
        Element(self.branches.len() - 1)
    }
}

impl Default for Network {
    fn default() -> Self {
        Self::new()
    }
}

impl Law {
    /// Not a number is in no range.
    fn is_in_range(self) -> bool {
        match self {
            Self::Resistor { ohm } => OHM.contains(&ohm),
            Self::Source { v } => VOLT.contains(&v),
            Self::Current { a } => AMPERE.contains(&a),
            Self::Diode(diode) => match diode {
                Diode::Exponential { saturation_current_a, emission_coefficient: n, .. } => {
                    SATURATION_AMPERE.contains(&saturation_current_a)
                        && n > 0.0
                        && JUNCTION_VOLT.contains(&diode.scale_v())
                }
                Diode::Threshold { forward_voltage_v, on_resistance_ohm } => {
                    FORWARD_VOLT.contains(&forward_voltage_v) && OHM.contains(&on_resistance_ohm)
                }
            },
        }
    }

    /// The voltage that this element brings into the network.
    pub(super) fn scale_v(self) -> f64 {
        match self {
            Self::Source { v } => v.abs(),
            Self::Diode(diode) => diode.scale_v(),
            Self::Resistor { .. } | Self::Current { .. } => 0.0,
        }
    }
}
