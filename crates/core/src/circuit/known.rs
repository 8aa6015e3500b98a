//! Networks that were solved before.

use std::{collections::BTreeMap, ops::Range};

use super::diode::Diode;
use super::network::{Branch, Law, Network};
use super::pair::Pair;
use super::solution::Solution;

/// So many elements are remembered; then all is forgotten. A load's corners are some thousand circuits of ten elements.
const MOST: usize = 30_000;

/// Networks with their solutions.
#[derive(Clone, Debug, Default)]
pub(super) struct KnownNetworks {
    /// By what [`digest`] makes of it: one network each.
    places: BTreeMap<u64, KnownPlace>,
    /// Those of all networks, one after the other.
    branches: Vec<Branch>,
    currents: Vec<f64>,
    nodes: Vec<(Pair, Option<usize>)>,
}

/// Where a network stands in those lists.
#[derive(Clone, Debug)]
struct KnownPlace {
    branches: Range<usize>,
    nodes: Range<usize>,
}

impl KnownNetworks {
    /// Whether a network of which every bit is the same was solved before; then `solution` is made that one.
    pub(super) fn find(&self, digest: u64, network: &Network, solution: &mut Solution) -> bool {
        let place = self.places.get(&digest);
        let of = |place: &KnownPlace| {
            let branches = self.branches.get(place.branches.clone())?;
            let is_same = place.nodes.len() == network.names.len() && branches == network.branches;
            let currents = self.currents.get(place.branches.clone()).filter(|_| is_same)?;
            Some((currents, self.nodes.get(place.nodes.clone())?))
        };
        let Some((currents, nodes)) = place.and_then(of) else { return false };
        solution.join(&network.branches);
        for (element, current) in currents.iter().enumerate() {
            solution.put(element, *current);
        }
        solution.place(nodes.iter().copied());
        true
    }

    /// Remembers a solution.
    pub(super) fn add(&mut self, digest: u64, network: &Network, solution: &Solution) {
        if self.branches.len() > MOST {
            *self = Self::default();
        }
        let (branches, nodes) = (self.branches.len(), self.nodes.len());
        self.branches.extend_from_slice(&network.branches);
        self.currents.extend(solution.currents());
        self.nodes.extend_from_slice(solution.nodes());
        let place =
            KnownPlace { branches: branches..self.branches.len(), nodes: nodes..self.nodes.len() };
        self.places.insert(digest, place);
    }
}

/// A number that two networks seldom share: what is joined to what and every value, folded as in the hash "FNV-1a"
/// (from memory), a word at a time.
pub(super) fn digest(network: &Network) -> u64 {
    let fold = |sum: u64, word: u64| {
        let mixed = (sum ^ word).wrapping_mul(0x0000_0100_0000_01b3);
        mixed ^ (mixed >> 32)
    };
    network.branches.iter().fold(0xcbf2_9ce4_8422_2325, |sum, branch| {
        let (one, other) = match branch.kind {
            Law::Resistor { ohm: value } | Law::Source { v: value } | Law::Current { a: value } => {
                (value, 0.0)
            }
            Law::Diode(diode @ Diode::Exponential { saturation_current_a, .. }) => {
                (saturation_current_a, diode.scale_v())
            }
            Law::Diode(Diode::Threshold { forward_voltage_v, on_resistance_ohm }) => {
                (forward_voltage_v, on_resistance_ohm)
            }
        };
        let joint = u64::try_from((branch.from.0 << 16) ^ branch.to.0).unwrap_or_default();
        fold(fold(sum, joint ^ one.to_bits()), other.to_bits())
    })
}
