//! The search for the operating point: tangent steps down the co-content.

use super::known::{KnownNetworks, digest};
use super::network::{Element, Network};
use super::pair::Pair;
use super::solution::Solution;
use super::stride::stride;
use super::unsolvable::Unsolvable;
use super::wiring::NetworkLayout;

/// Far more than any network has been seen to need: a dozen for an output stage, under 80 among 160 thousand at random.
const MOST_STEPS: usize = 500;

/// Steps at least, and at most, after the currents balance to rounding at every group: where two groups share a large
/// current and a small one to the rest, their sum is right only then.
const POLISHING_STEPS: std::ops::Range<usize> = 2..20;

/// Relative to the largest voltage: a step after which none can matter, since the next would be its square.
const LAST_STEP: f64 = 1e-12;

/// Relative to the currents that cross the border of an unheld part: less is rounding, or diodes that leak alike.
const STRANDED: f64 = 1e-11;

/// So many layouts are kept.
const MOST_LAYOUTS: usize = 6;

/// Room to solve networks in, one after the other.
///
/// What the search needs is kept from one network to the next, and so is what is the same in both where the same is joined
/// to the same: a circuit at another corner has other values only. One that was solved before is not solved again. The
/// answers are those of [`Network::solve`], bit for bit.
#[derive(Clone, Debug, Default)]
pub struct Workspace {
    layout: NetworkLayout,
    /// Those of the networks before, the last one last: what leaks, or conducts one way, comes and goes from corner to corner.
    others: Vec<NetworkLayout>,
    potentials: Vec<Pair>,
    /// The way that is followed next, and how steeply the co-content falls there.
    direction: Vec<f64>,
    steepness: f64,
    inflow: Vec<f64>,
    /// Of what is pushed in each part that no conducting element holds: its currents, and the same without their signs.
    push: Vec<(Pair, f64)>,
    nets: Vec<f64>,
    leaving: Vec<Pair>,
    solution: Solution,
    /// Whether it has the elements that the layout was made for.
    is_joined: bool,
    known: KnownNetworks,
}

impl Workspace {
    /// Solves a network whose nodes exist and whose values are in range, if it has not been solved before.
    pub(super) fn recall(&mut self, network: &Network) -> Result<&Solution, Unsolvable> {
        let digest = digest(network);
        if self.known.find(digest, network, &mut self.solution) {
            self.is_joined = false;
        } else {
            self.solve(network)?;
            self.known.add(digest, network, &self.solution);
        }
        Ok(&self.solution)
    }

    /// Solves it.
    pub(super) fn solve(&mut self, network: &Network) -> Result<&Solution, Unsolvable> {
        #[cfg(test)]
        super::work::done(|work| work.networks += 1);
        if !self.layout.is_for(network) {
            self.change_layout(network);
        }
        self.layout.take(network)?;
        if !self.is_joined {
            self.solution.join(&network.branches);
            self.is_joined = true;
        }
        self.descend()?;
        self.conclude(network.names.len())?;
        Ok(&self.solution)
    }

    /// Puts the layout aside for one that was made for such a network, or for an empty one.
    fn change_layout(&mut self, network: &Network) {
        self.is_joined = false;
        let known = self.others.iter().position(|other| other.is_for(network));
        let other = known.map(|at| self.others.swap_remove(at)).unwrap_or_default();
        self.others.push(std::mem::replace(&mut self.layout, other));
        if self.others.len() > MOST_LAYOUTS {
            self.others.remove(0);
        }
    }

    /// The solution found last.
    pub(super) fn into_solution(self) -> Solution {
        self.solution
    }

    /// From all zero to the potentials at which the currents balance.
    fn descend(&mut self) -> Result<(), Unsolvable> {
        self.potentials.clear();
        self.potentials.resize(self.layout.groups.unknowns(), Pair::default());
        let (mut polished, mut last_step_v) = (0, f64::INFINITY);
        for step in 0..MOST_STEPS {
            self.layout.look(&self.potentials, step == 0);
            let scale_v = self.scale_v();
            let is_pushed = self.find_stranded();
            if !is_pushed && self.layout.flows.iter().all(|flow| flow.is_balanced(scale_v)) {
                let is_still = last_step_v <= LAST_STEP * scale_v;
                if polished >= POLISHING_STEPS.end || polished >= POLISHING_STEPS.start && is_still
                {
                    return Ok(());
                }
                polished += 1;
            }
            if !is_pushed {
                self.find_tangent();
            }
            let Some(t) = self.stride()? else {
                // Nothing is left to gain: as good as numbers can be.
                return if polished > 0 { Ok(()) } else { Err(Unsolvable::NotSettled) };
            };
            last_step_v = 0.0;
            for (potential, step) in self.potentials.iter_mut().zip(&self.direction) {
                let step = t * step;
                *potential = *potential + step;
                last_step_v = f64::max(last_step_v, step.abs());
            }
        }
        Err(Unsolvable::NotSettled)
    }

    /// How far to move along the direction; `None` if the co-content doesn't fall there.
    fn stride(&mut self) -> Result<Option<f64>, Unsolvable> {
        let steepness = self.steepness;
        if steepness <= 0.0 || !steepness.is_finite() {
            return Ok(None);
        }
        let (mut whole, mut is_straight) = (0.0, true);
        for leg in &mut self.layout.legs {
            let (change, follows) = leg.whole_turn(&self.direction);
            whole += change;
            is_straight &= follows;
        }
        // half a step then changes half as much, which is what `stride` would look at next
        if is_straight && (whole - steepness).abs() <= 0.1 * steepness {
            return Ok(Some(1.0));
        }
        let moving = self.layout.legs.iter().filter(|leg| leg.turn_v != 0.0);
        let slope_change = |t: f64| moving.clone().map(|leg| leg.turn(t)).sum();
        stride(steepness, slope_change).map(Some).ok_or_else(|| self.no_return())
    }

    /// The step that would balance all groups if every element kept its conductance, and how steeply the co-content
    /// falls that way.
    fn find_tangent(&mut self) {
        self.inflow.clear();
        self.inflow.extend(self.layout.flows.iter().map(|flow| flow.excess.value()));
        self.layout.tangent_step(&mut self.inflow, &mut self.direction);
        let inflow = self.layout.flows.iter().map(|flow| flow.excess.value());
        self.steepness = inflow.zip(&self.direction).map(|(excess, step)| excess * step).sum();
    }

    /// Where currents push on parts that no conducting element holds: those parts, moved by a volt the way they are
    /// pushed. A tangent step has nothing to say there. Whether there are any.
    fn find_stranded(&mut self) -> bool {
        if self.layout.is_whole {
            return false;
        }
        let (count, reach) = (self.potentials.len(), &self.layout.reach);
        self.push.clear();
        self.push.resize(count, (Pair::default(), 0.0));
        for leg in &self.layout.legs {
            let (from, to) = (reach.root(leg.from.unknown()), reach.root(leg.to.unknown()));
            if from == to {
                continue;
            }
            let current = leg.at.current_a;
            for (root, inward) in [(from, -current), (to, current)] {
                if let Some((sum, traffic)) = root.and_then(|k| self.push.get_mut(k)) {
                    *sum = *sum + inward;
                    *traffic += current.abs();
                }
            }
        }
        // A root speaks for its part; what rounding or diodes that leak alike leave is no push.
        let pushed = |(sum, traffic): &(Pair, f64)| {
            let net = sum.value();
            if net.abs() > STRANDED * traffic { net } else { 0.0 }
        };
        self.nets.clear();
        self.nets.extend(self.push.iter().map(pushed));
        let steepness: f64 = self.nets.iter().map(|net| net.abs()).sum();
        if steepness <= 0.0 || steepness.is_nan() {
            return false;
        }
        let way = |unknown: usize| {
            let net = reach.root(Some(unknown)).and_then(|root| self.nets.get(root)).copied();
            net.filter(|net| *net != 0.0).map_or(0.0, f64::signum)
        };
        self.direction.clear();
        self.direction.extend((0..count).map(way));
        self.steepness = steepness;
        true
    }

    /// Currents and voltages at the potentials found.
    fn conclude(&mut self, nodes: usize) -> Result<(), Unsolvable> {
        self.find_currents(nodes)?;
        let scale_v = self.scale_v();
        self.layout.settle(scale_v);
        let (reach, members) = (&self.layout.reach, self.layout.groups.members());
        let root = |unknown| if self.layout.is_whole { None } else { reach.root(unknown) };
        let nodes = self.layout.nodes.iter().zip(members);
        self.solution.place(nodes.map(|(voltage, member)| (*voltage, root(member.unknown))));
        Ok(())
    }

    /// The current in every element: by its own law, and in the ideal sources what the current law leaves them.
    fn find_currents(&mut self, nodes: usize) -> Result<(), Unsolvable> {
        self.leaving.clear();
        self.leaving.resize(nodes, Pair::default());
        for leg in &self.layout.legs {
            if leg.law.is_overdriven(leg.at.v) {
                return Err(Unsolvable::NoLimit { element: Element(leg.element) });
            }
            let current = leg.at.current_a;
            for (end, outward) in [(leg.from, current), (leg.to, -current)] {
                let sum = self.leaving.get_mut(end.node.0).filter(|_| end.is_led);
                if let Some(sum) = sum {
                    *sum = *sum + outward;
                }
            }
            self.solution.put(leg.element, current);
        }
        let solution = &mut self.solution;
        self.layout.groups.source_currents(&mut self.leaving, |element, current| {
            solution.put(element, current);
        });
        Ok(())
    }

    fn no_return(&self) -> Unsolvable {
        let steps = self.direction.iter().enumerate();
        let steepest = steps.max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
        let head = self.layout.groups.head(steepest.map_or(0, |(unknown, _)| unknown));
        Unsolvable::NoReturn { node: head }
    }

    fn scale_v(&self) -> f64 {
        let sizes = self.potentials.iter().map(|potential| potential.value().abs());
        sizes.fold(self.layout.brought_v, f64::max)
    }
}
