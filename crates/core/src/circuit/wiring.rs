//! The network as the search sees it: legs between groups, and what flows at given potentials.

use super::characteristic::{Characteristic, Tangent};
use super::elimination::Mesh;
use super::groups::{Groups, Member};
use super::network::{Branch, Law, Network, Node};
use super::pair::Pair;
use super::reach::Reach;
use super::unsolvable::Unsolvable;

/// An element that is no ideal source, between two groups.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leg {
    pub(super) element: usize,
    pub(super) from: LegEnd,
    pub(super) to: LegEnd,
    pub(super) law: Characteristic,
    /// What it does at the potentials that were looked at last.
    pub(super) at: Tangent,
    /// By how much a whole step changes the voltage across it.
    pub(super) turn_v: f64,
}

/// Where a leg ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct LegEnd {
    pub(super) node: Node,
    /// The number of the unknown potential; [`HELD`] in the group of ground.
    slot: usize,
    /// Whether the current that leaves there decides that of an ideal source.
    pub(super) is_led: bool,
}

/// In the place of the number of an unknown potential, where it is known: no list is so long.
const HELD: usize = usize::MAX;

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

/// What is joined to what, and what flows there. Networks in which the same is joined to the same share all but the values.
#[derive(Clone, Debug, Default)]
pub(super) struct NetworkLayout {
    pub(super) groups: Groups,
    pub(super) legs: Vec<Leg>,
    /// The nodes and elements that it was made for.
    made_for: (usize, Vec<Joint>),
    /// The voltage of every node at the potentials that were looked at last.
    pub(super) nodes: Vec<Pair>,
    pub(super) flows: Vec<Flow>,
    /// What hangs together through the legs that conduct, and whether that is all.
    pub(super) reach: Reach,
    pub(super) is_whole: bool,
    mesh: Mesh,
    is_eliminated: bool,
    /// The largest voltage that sources and diodes bring in.
    pub(super) brought_v: f64,
}

/// An element's nodes, and whether it ties them.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Joint {
    from: Node,
    to: Node,
    is_source: bool,
}

/// Relative to the currents at a group: what rounding leaves of a balance.
const ROUNDING: f64 = 1e-13;

/// Relative to the largest voltage: what the rounded currents of exponential diodes leave of a voltage that is zero. It
/// decides only where no current flows at all.
const NOTHING: f64 = 1e-17;

impl Leg {
    /// By how much the voltage across it changes along a direction in which the unknown potentials change.
    fn across_change_v(&self, direction: &[f64]) -> f64 {
        let change = |end: LegEnd| direction.get(end.slot).copied().unwrap_or(0.0);
        change(self.from) - change(self.to)
    }

    /// What it adds to the slope of the co-content after the whole step, and whether it follows its tangent all the way.
    pub(super) fn whole_turn(&mut self, direction: &[f64]) -> (f64, bool) {
        self.turn_v = self.across_change_v(direction);
        if self.turn_v == 0.0 {
            return (0.0, true);
        }
        let (change, is_straight) = self.law.whole_change_a(&self.at, self.turn_v);
        (change * self.turn_v, is_straight)
    }

    /// What it adds to the slope of the co-content after so many steps.
    pub(super) fn turn(&self, steps: f64) -> f64 {
        self.law.change_a(&self.at, steps * self.turn_v) * self.turn_v
    }

    /// Whether both ends move as one.
    pub(super) fn is_within_a_group(&self) -> bool {
        self.from.slot == self.to.slot
    }

    pub(super) fn conducts(&self) -> bool {
        self.at.siemens > 0.0
    }
}

impl LegEnd {
    /// The number of the unknown potential; `None` in the group of ground.
    pub(super) fn unknown(self) -> Option<usize> {
        (self.slot != HELD).then_some(self.slot)
    }
}

impl NetworkLayout {
    /// Whether it was made for a network in which the same is joined to the same.
    pub(super) fn is_for(&self, network: &Network) -> bool {
        let joints = network.branches.iter().map(Branch::joint);
        self.made_for.0 == network.names.len() && self.made_for.1.iter().copied().eq(joints)
    }

    /// Takes up a network whose nodes all exist: its values alone, where it was made for such a one.
    pub(super) fn take(&mut self, network: &Network) -> Result<(), Unsolvable> {
        if self.is_for(network) {
            self.groups.set(network);
        } else {
            self.make(network)?;
        }
        self.brought_v = 0.0;
        let mut legs = self.legs.iter_mut();
        for branch in &network.branches {
            self.brought_v = self.brought_v.max(branch.kind.scale_v());
            if !branch.joint().is_source
                && let Some(leg) = legs.next()
            {
                leg.law = branch.kind.into();
            }
        }
        self.nodes.clear();
        self.nodes.extend(self.groups.members().iter().map(|member| member.above));
        self.is_eliminated = false;
        Ok(())
    }

    fn make(&mut self, network: &Network) -> Result<(), Unsolvable> {
        #[cfg(test)]
        super::work::done(|work| work.layouts += 1);
        self.made_for = (0, Vec::new());
        self.groups = Groups::of(network)?;
        let end = |node: Node| {
            let Member { unknown, is_led, .. } = self.groups.member(node);
            LegEnd { node, slot: unknown.unwrap_or(HELD), is_led }
        };
        let elements = network.branches.iter().enumerate();
        let others = elements.filter(|(_, branch)| !branch.joint().is_source);
        let leg = |(element, branch): (usize, &Branch)| Leg {
            element,
            from: end(branch.from),
            to: end(branch.to),
            law: branch.kind.into(),
            at: Tangent::default(),
            turn_v: 0.0,
        };
        self.legs = others.map(leg).collect();
        self.made_for = (network.names.len(), network.branches.iter().map(Branch::joint).collect());
        Ok(())
    }

    /// Finds what flows at these potentials, and what hangs together.
    pub(super) fn look(&mut self, potentials: &[Pair], is_first: bool) {
        // what ground holds stays where it is
        for (node, member) in self.nodes.iter_mut().zip(self.groups.members()) {
            if let Some(base) = member.unknown.and_then(|k| potentials.get(k)) {
                *node = if member.is_led { *base + member.above } else { *base };
            }
        }
        self.flows.clear();
        self.flows.resize(potentials.len(), Flow::default());
        let (mut is_as_stiff, mut is_as_joined) = (!is_first, !is_first);
        for leg in &mut self.legs {
            let [from_v, to_v] = [leg.from, leg.to]
                .map(|end| self.nodes.get(end.node.0).copied().unwrap_or_default());
            let at = leg.law.tangent(from_v - to_v);
            is_as_stiff &= at.siemens.to_bits() == leg.at.siemens.to_bits();
            is_as_joined &= (at.siemens > 0.0) == leg.conducts();
            leg.at = at;
            let is_still = at.siemens <= 0.0 && at.current_a.abs() <= 0.0;
            if is_still || leg.is_within_a_group() {
                continue;
            }
            for (end, inward) in [(leg.from, -at.current_a), (leg.to, at.current_a)] {
                if let Some(flow) = self.flows.get_mut(end.slot) {
                    flow.excess = flow.excess + inward;
                    flow.traffic_a += at.current_a.abs();
                    flow.stiffness_s += at.siemens;
                }
            }
        }
        self.is_eliminated &= is_as_stiff;
        if !is_as_joined {
            self.join(|_, leg| leg.conducts());
        }
    }

    /// Finds what hangs together through the legs that count.
    fn join(&mut self, counts: impl Fn(&[Flow], &Leg) -> bool) {
        self.reach.clear(self.flows.len());
        for leg in self.legs.iter().filter(|leg| counts(&self.flows, leg)) {
            self.reach.join(leg.from.unknown(), leg.to.unknown());
        }
        self.is_whole = self.reach.is_whole();
    }

    /// What hangs together in the answer. A diode holds a potential only if it carries more than rounding: at its
    /// threshold without a current, its ends may as well drift apart.
    pub(super) fn settle(&mut self, scale_v: f64) {
        let holds = |flows: &[Flow], leg: &Leg| {
            let tolerance =
                |end: LegEnd| flows.get(end.slot).map_or(0.0, |flow| flow.tolerance_a(scale_v));
            let is_threshold = matches!(leg.law, Characteristic::Threshold { .. });
            let least = || tolerance(leg.from).max(tolerance(leg.to));
            leg.conducts() && (!is_threshold || leg.at.current_a > least())
        };
        if self.legs.iter().any(|leg| leg.conducts() && !holds(&self.flows, leg)) {
            self.join(holds);
        }
    }

    /// The step that would balance all groups with these inflows if every element kept its conductance.
    pub(super) fn tangent_step(&mut self, inflow: &mut [f64], step: &mut Vec<f64>) {
        if !self.is_eliminated {
            #[cfg(test)]
            super::work::done(|work| work.eliminations += 1);
            self.mesh.clear(self.flows.len());
            for leg in self.legs.iter().filter(|leg| !leg.is_within_a_group()) {
                self.mesh.join(leg.from.unknown(), leg.to.unknown(), leg.at.siemens);
            }
            self.mesh.eliminate();
            self.is_eliminated = true;
        }
        self.mesh.potentials(inflow, step);
    }
}

impl Branch {
    fn joint(&self) -> Joint {
        let is_source = matches!(self.kind, Law::Source { .. });
        Joint { from: self.from, to: self.to, is_source }
    }
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
