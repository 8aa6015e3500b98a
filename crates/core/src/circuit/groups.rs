//! Nodes that ideal voltage sources tie together.

use std::collections::VecDeque;

use super::network::{Element, GROUND, Law, Network, Node};
use super::pair::Pair;
use super::unsolvable::Unsolvable;

/// The groups of a network: each a tree of ideal voltage sources, or a single node.
#[derive(Debug)]
pub(super) struct Groups {
    /// By node: where it belongs.
    members: Vec<Option<Member>>,
    /// By unknown potential: the first node of the group.
    heads: Vec<Node>,
    /// The nodes in the order in which they were reached, each with the source that leads back.
    reached: Vec<(Node, Option<Link>)>,
}

/// A node's place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Member {
    pub(super) node: Node,
    /// The number of the unknown potential; `None` in the group of ground.
    pub(super) unknown: Option<usize>,
    /// How far the node lies above it, in volts.
    pub(super) above: Pair,
}

/// An ideal source as seen from one of its nodes.
#[derive(Clone, Copy, Debug)]
struct Link {
    element: usize,
    other: Node,
    /// How far the other node lies above this one, in volts.
    rise_v: f64,
}

impl Groups {
    /// Walks the sources of a network whose nodes all exist, from ground first.
    pub(super) fn of(network: &Network) -> Result<Self, Unsolvable> {
        let links = links(network);
        let count = network.names.len();
        let mut groups =
            Self { members: vec![None; count], heads: Vec::new(), reached: Vec::new() };
        for head in (0..count).map(Node) {
            if groups.members.get(head.0).is_some_and(Option::is_some) {
                continue;
            }
            let unknown = (head.0 > 0).then_some(groups.heads.len());
            if unknown.is_some() {
                groups.heads.push(head);
            }
            groups.walk(head, unknown, &links)?;
        }
        Ok(groups)
    }

    /// How many potentials are unknown.
    pub(super) fn unknowns(&self) -> usize {
        self.heads.len()
    }

    /// The place of a node.
    pub(super) fn member(&self, node: Node) -> Member {
        let nowhere = Member { node, unknown: None, above: Pair::default() };
        self.members.get(node.0).copied().flatten().unwrap_or(nowhere)
    }

    /// A node of the group with this unknown potential.
    pub(super) fn head(&self, unknown: usize) -> Node {
        self.heads.get(unknown).copied().unwrap_or(GROUND)
    }

    /// The current in each ideal source, when `leaving` is the current that leaves each node through all other
    /// elements: from the tips of each tree of sources to its root.
    pub(super) fn source_currents(
        &self,
        network: &Network,
        mut leaving: Vec<Pair>,
    ) -> Vec<(usize, f64)> {
        let mut currents = Vec::new();
        for &(node, link) in self.reached.iter().rev() {
            let Some(link) = link else { continue };
            let through = leaving.get(node.0).copied().unwrap_or_default();
            if let Some(other) = leaving.get_mut(link.other.0) {
                *other = *other + through;
            }
            // What leaves through the rest has come in through the source.
            let outward =
                network.branches.get(link.element).is_some_and(|source| source.to == node);
            let current = through.value();
            currents.push((link.element, if outward { current } else { -current }));
        }
        currents
    }

    fn walk(
        &mut self,
        head: Node,
        unknown: Option<usize>,
        links: &[Vec<Link>],
    ) -> Result<(), Unsolvable> {
        let mut waiting = VecDeque::from([(head, Pair::default(), None)]);
        while let Some((node, above, back)) = waiting.pop_front() {
            let from: Option<Link> = back;
            let Some(place) = self.members.get_mut(node.0) else { continue };
            if place.is_some() {
                // Reached twice: by two ways at once.
                let element = Element(from.map_or(0, |link| link.element));
                return Err(Unsolvable::SourceLoop { element });
            }
            *place = Some(Member { node, unknown, above });
            self.reached.push((node, from));
            let came_by = from.map(|link| link.element);
            for link in links.get(node.0).into_iter().flatten() {
                if Some(link.element) != came_by {
                    let back = Link { element: link.element, other: node, rise_v: -link.rise_v };
                    waiting.push_back((link.other, above + link.rise_v, Some(back)));
                }
            }
        }
        Ok(())
    }
}

/// By node: the ideal sources that end there.
fn links(network: &Network) -> Vec<Vec<Link>> {
    let mut links = vec![Vec::new(); network.names.len()];
    for (element, branch) in network.branches.iter().enumerate() {
        let Law::Source { v } = branch.kind else { continue };
        if let Some(at) = links.get_mut(branch.from.0) {
            at.push(Link { element, other: branch.to, rise_v: -v });
        }
        if let Some(at) = links.get_mut(branch.to.0) {
            at.push(Link { element, other: branch.from, rise_v: v });
        }
    }
    links
}
