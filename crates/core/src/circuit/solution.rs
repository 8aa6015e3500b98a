//! Voltages and currents of a solved network.

use super::network::{Branch, Element, Node};
use super::pair::Pair;

/// Voltages and currents of a solved [`Network`](super::Network).
#[derive(Clone, Debug)]
pub struct Solution {
    /// By node: its voltage, and the root of what it hangs together with (`None`: ground).
    nodes: Vec<(Pair, Option<usize>)>,
    elements: Vec<ElementState>,
}

/// The state of an element.
#[derive(Clone, Copy, Debug)]
struct ElementState {
    from: Node,
    to: Node,
    current_a: f64,
}

impl Solution {
    pub(super) fn new(
        nodes: Vec<(Pair, Option<usize>)>,
        branches: &[Branch],
        currents: Vec<f64>,
    ) -> Self {
        let elements = branches.iter().zip(currents);
        let elements = elements
            .map(|(branch, current_a)| ElementState { from: branch.from, to: branch.to, current_a })
            .collect();
        Self { nodes, elements }
    }

    /// The voltage of a node above ground, in volts. `None` where no resistor, ideal source or conducting diode links
    /// it to ground: such a node floats, and a meter would read whatever it brings along itself. `None` too for a node of
    /// another network.
    pub fn voltage(&self, node: Node) -> Option<f64> {
        self.nodes
            .get(node.0)
            .filter(|(_, root)| root.is_none())
            .map(|(voltage, _)| voltage.value())
    }

    /// How far node `a` lies above node `b`, in volts: defined too between two nodes that float together.
    pub fn between(&self, a: Node, b: Node) -> Option<f64> {
        let (a, a_root) = self.nodes.get(a.0)?;
        let (b, b_root) = self.nodes.get(b.0)?;
        (a_root == b_root).then(|| (*a - *b).value())
    }

    /// The current through an element from its first node to its second, in amperes. A battery that delivers current
    /// from its plus pole therefore has a negative one. Not a number for an element of another network.
    pub fn current(&self, element: Element) -> f64 {
        self.elements.get(element.0).map_or(f64::NAN, |across| across.current_a)
    }

    /// The voltage from an element's first node to its second, in volts; `None` where one end floats apart from the
    /// other.
    pub fn across(&self, element: Element) -> Option<f64> {
        self.elements.get(element.0).and_then(|across| self.between(across.from, across.to))
    }

    /// The power that an element takes up, in watts: positive in a resistor, negative in a source that delivers. `None`
    /// where a current source lies between parts that float apart.
    pub fn power(&self, element: Element) -> Option<f64> {
        let current = self.current(element);
        match self.across(element) {
            Some(voltage) => Some(voltage * current),
            // A blocking diode.
            None => (current == 0.0).then_some(0.0),
        }
    }
}
