//! The search for the operating point: tangent steps down the co-content.

use super::diode::Diode;
use super::groups::Groups;
use super::network::{Element, Law, Network, Node};
use super::pair::Pair;
use super::reach::Reach;
use super::solution::Solution;
use super::stride::stride;
use super::unsolvable::Unsolvable;
use super::wiring::{Flow, Leg, flows, mesh, potential};

/// Far more than any network has been seen to need: a dozen for an output stage, under 80 among 160 thousand at random.
const MOST_STEPS: usize = 500;

/// Steps at least, and at most, after the currents balance to rounding at every group: where two groups share a large
/// current and a small one to the rest, their sum is right only then.
const POLISHING_STEPS: std::ops::Range<usize> = 2..20;

/// Relative to the largest voltage: a step after which none can matter, since the next would be its square.
const LAST_STEP: f64 = 1e-12;

/// Relative to the currents that cross the border of an unheld part: less is rounding, or diodes that leak alike.
const STRANDED: f64 = 1e-11;

/// Solves a network whose nodes exist and whose values are in range.
pub(super) fn solve(network: &Network) -> Result<Solution, Unsolvable> {
    let groups = Groups::of(network)?;
    let legs = Leg::all(network, &groups);
    let search = Descent { groups: &groups, legs: &legs, brought_v: brought_v(network) };
    let potentials = search.descend()?;
    search.conclude(network, &potentials)
}

/// The largest voltage that sources and diodes bring in.
fn brought_v(network: &Network) -> f64 {
    network.branches.iter().map(|branch| branch.kind.scale_v()).fold(0.0, f64::max)
}

struct Descent<'network> {
    groups: &'network Groups,
    legs: &'network [Leg],
    brought_v: f64,
}

impl Descent<'_> {
    /// From all zero to the potentials at which the currents balance.
    fn descend(&self) -> Result<Vec<Pair>, Unsolvable> {
        let mut potentials = vec![Pair::default(); self.groups.unknowns()];
        let (mut polished, mut last_step_v) = (0, f64::INFINITY);
        for _ in 0..MOST_STEPS {
            let flows = flows(self.legs, &potentials);
            let scale_v = self.scale_v(&potentials);
            let pushed = self.stranded_direction(&potentials);
            if pushed.is_none() && flows.iter().all(|flow| flow.is_balanced(scale_v)) {
                let is_still = last_step_v <= LAST_STEP * scale_v;
                if polished >= POLISHING_STEPS.end || polished >= POLISHING_STEPS.start && is_still
                {
                    return Ok(potentials);
                }
                polished += 1;
            }
            let (direction, steepness) =
                pushed.unwrap_or_else(|| self.tangent_direction(&potentials, &flows));
            let Some(t) = self.stride(&potentials, &direction, steepness)? else {
                // Nothing is left to gain: as good as numbers can be.
                return if polished > 0 { Ok(potentials) } else { Err(Unsolvable::NotSettled) };
            };
            for (potential, step) in potentials.iter_mut().zip(&direction) {
                *potential = *potential + t * step;
            }
            last_step_v = direction.iter().map(|step| (t * step).abs()).fold(0.0, f64::max);
        }
        Err(Unsolvable::NotSettled)
    }

    /// How far to move along a direction in which the co-content falls so steeply; `None` if it doesn't.
    fn stride(
        &self,
        potentials: &[Pair],
        direction: &[f64],
        steepness: f64,
    ) -> Result<Option<f64>, Unsolvable> {
        if steepness <= 0.0 || !steepness.is_finite() {
            return Ok(None);
        }
        let moving: Vec<(Law, Pair, f64)> = self
            .legs
            .iter()
            .map(|leg| (leg.kind, leg.across_v(potentials), leg.across_change_v(direction)))
            .filter(|&(_, _, change)| change != 0.0)
            .collect();
        let slope_change =
            |t: f64| moving.iter().map(|&(kind, v, dv)| kind.change_a(v, t * dv) * dv).sum();
        stride(steepness, slope_change).map(Some).ok_or_else(|| self.no_return(direction))
    }

    /// The step that would balance all groups if every element kept its conductance, and how steeply the co-content
    /// falls that way.
    fn tangent_direction(&self, potentials: &[Pair], flows: &[Flow]) -> (Vec<f64>, f64) {
        let inflow: Vec<f64> = flows.iter().map(|flow| flow.excess.value()).collect();
        let direction = mesh(self.legs, potentials).potentials(inflow.clone());
        let steepness = inflow.iter().zip(&direction).map(|(excess, step)| excess * step).sum();
        (direction, steepness)
    }

    /// Where currents push on parts that no conducting element holds: those parts, moved by a volt the way they are
    /// pushed. A tangent step has nothing to say there.
    fn stranded_direction(&self, potentials: &[Pair]) -> Option<(Vec<f64>, f64)> {
        let reach = self.reach(|leg| leg.kind.conductance_s(leg.across_v(potentials)) > 0.0);
        let mut push = vec![(Pair::default(), 0.0); potentials.len()];
        for leg in self.legs {
            let (from, to) = (reach.root(leg.from.unknown), reach.root(leg.to.unknown));
            if from == to {
                continue;
            }
            let current = leg.kind.current_a(leg.across_v(potentials));
            for (root, inward) in [(from, -current), (to, current)] {
                if let Some((sum, traffic)) = root.and_then(|k| push.get_mut(k)) {
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
        let nets: Vec<f64> = push.iter().map(pushed).collect();
        let steepness: f64 = nets.iter().map(|net| net.abs()).sum();
        let way = |unknown: usize| {
            let net = reach.root(Some(unknown)).and_then(|root| nets.get(root)).copied();
            net.filter(|net| *net != 0.0).map_or(0.0, f64::signum)
        };
        (steepness > 0.0).then(|| ((0..potentials.len()).map(way).collect(), steepness))
    }

    /// What hangs together through the legs that conduct.
    fn reach(&self, conducts: impl Fn(&Leg) -> bool) -> Reach {
        let mut reach = Reach::new(self.groups.unknowns());
        for leg in self.legs.iter().filter(|leg| conducts(leg)) {
            reach.join(leg.from.unknown, leg.to.unknown);
        }
        reach
    }

    /// Currents and voltages at the potentials found.
    fn conclude(&self, network: &Network, potentials: &[Pair]) -> Result<Solution, Unsolvable> {
        let currents = self.currents(network, potentials)?;
        let reach = self.final_reach(potentials);
        let nodes = (0..network.names.len()).map(|node| {
            let member = self.groups.member(Node(node));
            (potential(member, potentials), reach.root(member.unknown))
        });
        Ok(Solution::new(nodes.collect(), &network.branches, currents))
    }

    /// The current in every element: by its own law, and in the ideal sources what the current law leaves them.
    fn currents(&self, network: &Network, potentials: &[Pair]) -> Result<Vec<f64>, Unsolvable> {
        let mut currents = vec![0.0; network.branches.len()];
        let mut leaving = vec![Pair::default(); network.names.len()];
        for leg in self.legs {
            let v = leg.across_v(potentials);
            if matches!(leg.kind, Law::Diode(diode) if diode.is_overdriven(v)) {
                return Err(Unsolvable::NoLimit { element: Element(leg.element) });
            }
            let current = leg.kind.current_a(v);
            for (node, outward) in [(leg.from.node, current), (leg.to.node, -current)] {
                if let Some(sum) = leaving.get_mut(node.0) {
                    *sum = *sum + outward;
                }
            }
            put(&mut currents, leg.element, current);
        }
        for (element, current) in self.groups.source_currents(network, leaving) {
            put(&mut currents, element, current);
        }
        Ok(currents)
    }

    /// What hangs together in the answer. A diode holds a potential only if it carries more than rounding: at its
    /// threshold without a current, its ends may as well drift apart.
    fn final_reach(&self, potentials: &[Pair]) -> Reach {
        let flows = flows(self.legs, potentials);
        let scale_v = self.scale_v(potentials);
        let tolerance = |unknown: Option<usize>| {
            unknown.and_then(|k| flows.get(k)).map_or(0.0, |flow| flow.tolerance_a(scale_v))
        };
        self.reach(|leg| {
            let v = leg.across_v(potentials);
            let is_threshold = matches!(leg.kind, Law::Diode(Diode::Threshold { .. }));
            let least = if is_threshold {
                tolerance(leg.from.unknown).max(tolerance(leg.to.unknown))
            } else {
                f64::NEG_INFINITY
            };
            leg.kind.conductance_s(v) > 0.0 && leg.kind.current_a(v) > least
        })
    }

    fn no_return(&self, direction: &[f64]) -> Unsolvable {
        let steepest = direction.iter().enumerate().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
        Unsolvable::NoReturn { node: self.groups.head(steepest.map_or(0, |(unknown, _)| unknown)) }
    }

    fn scale_v(&self, potentials: &[Pair]) -> f64 {
        potentials.iter().map(|potential| potential.value().abs()).fold(self.brought_v, f64::max)
    }
}

fn put(values: &mut [f64], index: usize, value: f64) {
    if let Some(place) = values.get_mut(index) {
        *place = value;
    }
}
