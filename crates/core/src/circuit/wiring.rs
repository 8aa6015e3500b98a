//! The network as the search sees it: legs between groups, and what flows at given potentials.

use super::elimination::Mesh;
use super::groups::{Groups, Member};
use super::network::{Law, Network};
use super::pair::Pair;

/// An element that is no ideal source, between two groups.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leg {
    pub(super) element: usize,
    pub(super) from: Member,
    pub(super) to: Member,
    pub(super) kind: Law,
}

/// How the currents of one group balance.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Flow {
    /// What flows in beyond what flows out, in amperes: zero in the answer.
    pub(super) excess: Pair,
    /// The sum of all currents without their signs, in amperes.
    traffic_a: f64,
    /// The sum of all conductances, in siemens.
    stiffness_s: f64,
}

/// Relative to the currents at a group: what rounding leaves of a balance.
const ROUNDING: f64 = 1e-13;

/// Relative to the largest voltage: what the rounded currents of exponential diodes leave of a voltage that is zero. It
/// decides only where no current flows at all.
const NOTHING: f64 = 1e-17;

impl Leg {
    /// All elements of a network but the ideal sources.
    pub(super) fn all(network: &Network, groups: &Groups) -> Vec<Self> {
        let elements = network.branches.iter().enumerate();
        let others = elements.filter(|(_, branch)| !matches!(branch.kind, Law::Source { .. }));
        others
            .map(|(element, branch)| Self {
                element,
                from: groups.member(branch.from),
                to: groups.member(branch.to),
                kind: branch.kind,
            })
            .collect()
    }

    /// The voltage across the leg.
    pub(super) fn across_v(&self, potentials: &[Pair]) -> Pair {
        potential(self.from, potentials) - potential(self.to, potentials)
    }

    /// By how much that voltage changes along a direction in which the unknown potentials change.
    pub(super) fn across_change_v(&self, direction: &[f64]) -> f64 {
        let change =
            |end: Member| end.unknown.and_then(|k| direction.get(k)).copied().unwrap_or(0.0);
        change(self.from) - change(self.to)
    }

    /// Whether both ends move as one.
    pub(super) fn is_within_a_group(&self) -> bool {
        self.from.unknown == self.to.unknown
    }
}

/// A node's voltage, from those of the groups.
pub(super) fn potential(member: Member, potentials: &[Pair]) -> Pair {
    let base = member.unknown.and_then(|k| potentials.get(k)).copied().unwrap_or_default();
    base + member.above
}

/// What flows into and out of each group.
pub(super) fn flows(legs: &[Leg], potentials: &[Pair]) -> Vec<Flow> {
    let mut flows = vec![Flow::default(); potentials.len()];
    for leg in legs.iter().filter(|leg| !leg.is_within_a_group()) {
        let v = leg.across_v(potentials);
        let current = leg.kind.current_a(v);
        let conductance = leg.kind.conductance_s(v);
        for (end, inward) in [(leg.from, -current), (leg.to, current)] {
            if let Some(flow) = end.unknown.and_then(|k| flows.get_mut(k)) {
                flow.excess = flow.excess + inward;
                flow.traffic_a += current.abs();
                flow.stiffness_s += conductance;
            }
        }
    }
    flows
}

/// The conductances at the given potentials.
pub(super) fn mesh(legs: &[Leg], potentials: &[Pair]) -> Mesh {
    let mut mesh = Mesh::new(potentials.len());
    for leg in legs.iter().filter(|leg| !leg.is_within_a_group()) {
        mesh.join(
            leg.from.unknown,
            leg.to.unknown,
            leg.kind.conductance_s(leg.across_v(potentials)),
        );
    }
    mesh
}

impl Flow {
    /// The current that rounding alone may leave over where voltages go up to `scale_v`.
    pub(super) fn tolerance_a(&self, scale_v: f64) -> f64 {
        ROUNDING * self.traffic_a + NOTHING * scale_v * self.stiffness_s
    }

    /// Whether the currents balance.
    pub(super) fn is_balanced(&self, scale_v: f64) -> bool {
        self.excess.value().abs() <= self.tolerance_a(scale_v)
    }
}
