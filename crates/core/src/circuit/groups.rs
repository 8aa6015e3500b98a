//! Nodes that ideal voltage sources tie together.

use std::collections::VecDeque;

use super::network::{Branch, Element, GROUND, Law, Network, Node};
use super::pair::Pair;
use super::unsolvable::Unsolvable;

/// The groups of a network: each a tree of ideal voltage sources, or a single node.
#[derive(Clone, Debug, Default)]
pub(super) struct Groups {
    /// By node: where it belongs.
    members: Vec<Member>,
    /// By unknown potential: the first node of the group.
    heads: Vec<Node>,
    /// The ideal sources, each after the one by which its nearer end was reached.
    links: Vec<Link>,
}

/// A node's place.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Member {
    /// The number of the unknown potential; `None` in the group of ground.
    pub(super) unknown: Option<usize>,
    /// How far the node lies above it, in volts.
    pub(super) above: Pair,
    /// Whether an ideal source leads back from it to the first node of its group.
    pub(super) is_led: bool,
}

/// An ideal source on the way from the first node of a group to another one.
#[derive(Clone, Copy, Debug)]
struct Link {
    element: usize,
    near: Node,
    far: Node,
    /// Whether its plus pole is the far one.
    is_rising: bool,
}

impl Groups {
    /// Walks the sources of a network whose nodes all exist, from ground first.
    pub(super) fn of(network: &Network) -> Result<Self, Unsolvable> {
        let sources = sources(network);
        let count = network.names.len();
        let mut groups = Self::default();
        let mut members = vec![None; count];
        for head in (0..count).map(Node) {
            if members.get(head.0).is_some_and(Option::is_some) {
                continue;
            }
            let unknown = (head.0 > 0).then_some(groups.heads.len());
            if unknown.is_some() {
                groups.heads.push(head);
            }
            groups.walk(&mut members, head, unknown, &sources)?;
        }
        groups.members = members.into_iter().map(Option::unwrap_or_default).collect();
        groups.set(network);
        Ok(groups)
    }

    /// How many potentials are unknown.
    pub(super) fn unknowns(&self) -> usize {
        self.heads.len()
    }

    /// The places of all nodes.
    pub(super) fn members(&self) -> &[Member] {
        &self.members
    }

    /// The place of a node.
    pub(super) fn member(&self, node: Node) -> Member {
        self.members.get(node.0).copied().unwrap_or_default()
    }

    /// A node of the group with this unknown potential.
    pub(super) fn head(&self, unknown: usize) -> Node {
        self.heads.get(unknown).copied().unwrap_or(GROUND)
    }

    /// Takes the voltages of the sources from a network in which the same is joined to the same.
    pub(super) fn set(&mut self, network: &Network) {
        for link in &self.links {
            let v = match network.branches.get(link.element) {
                Some(Branch { kind: Law::Source { v }, .. }) => *v,
                _ => 0.0,
            };
            let near = self.members.get(link.near.0).copied().unwrap_or_default();
            if let Some(far) = self.members.get_mut(link.far.0) {
                far.above = near.above + if link.is_rising { v } else { -v };
            }
        }
    }

    /// Puts the current in each ideal source where `put` says, when `leaving` is the current that leaves each node through
    /// all other elements: from the tips of each tree of sources to its root.
    pub(super) fn source_currents(&self, leaving: &mut [Pair], mut put: impl FnMut(usize, f64)) {
        for link in self.links.iter().rev() {
            let through = leaving.get(link.far.0).copied().unwrap_or_default();
            if let Some(near) = leaving.get_mut(link.near.0) {
                *near = *near + through;
            }
            // What leaves through the rest has come in through the source.
            let current = through.value();
            put(link.element, if link.is_rising { -current } else { current });
        }
    }

    fn walk(
        &mut self,
        members: &mut [Option<Member>],
        head: Node,
        unknown: Option<usize>,
        sources: &[Vec<Link>],
    ) -> Result<(), Unsolvable> {
        let mut waiting = VecDeque::from([(head, None)]);
        while let Some((node, back)) = waiting.pop_front() {
            let came_by: Option<Link> = back;
            let Some(place) = members.get_mut(node.0) else { continue };
            if place.is_some() {
                // Reached twice: by two ways at once.
                let element = Element(came_by.map_or(0, |link| link.element));
                return Err(Unsolvable::SourceLoop { element });
            }
            *place = Some(Member { unknown, above: Pair::default(), is_led: came_by.is_some() });
            self.links.extend(came_by);
            let came_by = came_by.map(|link| link.element);
            for link in sources.get(node.0).into_iter().flatten() {
                if Some(link.element) != came_by {
                    waiting.push_back((link.far, Some(*link)));
                }
            }
        }
        Ok(())
    }
}

/// By node: the ideal sources that end there, each as the way to its other end.
fn sources(network: &Network) -> Vec<Vec<Link>> {
    let mut sources = vec![Vec::new(); network.names.len()];
    for (element, branch) in network.branches.iter().enumerate() {
        if !matches!(branch.kind, Law::Source { .. }) {
            continue;
        }
        let ends = [(branch.from, branch.to, false), (branch.to, branch.from, true)];
        for (near, far, is_rising) in ends {
            if let Some(at) = sources.get_mut(near.0) {
                at.push(Link { element, near, far, is_rising });
            }
        }
    }
    sources
}
