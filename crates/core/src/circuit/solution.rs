//! Voltages and currents of a solved network.

use super::network::{Branch, Element, Node};
use super::pair::Pair;

/// Voltages and currents of a solved [`Network`](super::Network).
#[derive(Clone, Debug, Default)]
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
    /// Takes up the elements of a network, as yet without a current.
    pub(super) fn join(&mut self, branches: &[Branch]) {
        let element =
            |branch: &Branch| ElementState { from: branch.from, to: branch.to, current_a: 0.0 };
        self.elements.clear();
        self.elements.extend(branches.iter().map(element));
    }

    /// The currents of all elements.
    pub(super) fn currents(&self) -> impl Iterator<Item = f64> {
        self.elements.iter().map(|element| element.current_a)
    }

    /// The voltages of all nodes, each with the root of what it hangs together with.
    pub(super) fn nodes(&self) -> &[(Pair, Option<usize>)] {
        &self.nodes
    }

    /// Sets the current of an element.
    pub(super) fn put(&mut self, element: usize, current_a: f64) {
        if let Some(state) = self.elements.get_mut(element) {
            state.current_a = current_a;
        }
    }

    /// Sets the voltage of every node, and the root of what it hangs together with.
    pub(super) fn place(&mut self, nodes: impl Iterator<Item = (Pair, Option<usize>)>) {
        self.nodes.clear();
        self.nodes.extend(nodes);
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
