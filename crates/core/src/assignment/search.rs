//! Branch and bound: what the easier problem leaves out is decided one thing at a time.

use core::cmp::Reverse;

use super::{
    Bank, Cost, Placement, Prices,
    matching::{Unmatched, matched},
    relaxed::{OpenPlacings, Relaxed, plain, relaxed},
};
use crate::budget::Budget;

/// A choice that keeps all rules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlacedJobs {
    /// The number of the placing of each job.
    pub chosen: Vec<usize>,
    /// What all of them cost.
    pub cost: Cost,
    /// What they cost at the least without the rules of pairs and banks; where it is the same, the prices prove the cost.
    pub least: Cost,
    /// The prices that prove `least`: of each place that a job takes, in the order of the jobs, and of the places.
    pub prices: Prices,
}

/// What came of a search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PlacementSearch {
    /// None costs less.
    Best(PlacedJobs),
    /// There is none.
    Impossible,
    /// It would take more steps than may be taken; the best so far, where there is one.
    Unsearched(Option<PlacedJobs>),
}

/// The best choice of a placing for each job.
///
/// Steps are taken as it goes: one for each place that is looked at.
pub fn placed(placement: &Placement, budget: &Budget) -> PlacementSearch {
    let jobs: Vec<usize> = (0..placement.jobs.len()).collect();
    let open = OpenPlacings::all(placement, &jobs);
    if let Some(table) = plain(placement, &open, &jobs) {
        return match matched(&table, budget) {
            Ok(found) => PlacementSearch::Best(of_places(placement, &open, found)),
            Err(Unmatched::TooFew) => PlacementSearch::Impossible,
            Err(Unmatched::Unsearched) => PlacementSearch::Unsearched(None),
        };
    }
    searched(placement, &jobs, Until::Best, budget)
}

/// What single places are as placings: of several at one place the cheapest, and of those the first.
fn of_places(
    placement: &Placement,
    open: &OpenPlacings,
    found: super::matching::Matched,
) -> PlacedJobs {
    let chosen = found.places.iter().enumerate().map(|(job, place)| {
        let there = open.of(placement, job).filter(|(_, it)| it.places.first() == Some(place));
        there.min_by_key(|(at, it)| (it.cost, *at)).map_or(0, |(at, _)| at)
    });
    PlacedJobs {
        chosen: chosen.collect(),
        cost: found.cost,
        least: found.cost,
        prices: found.prices,
    }
}

/// When a search may end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Until {
    /// Once none is better.
    Best,
    /// Once there is one.
    Any,
}

/// The search of some of the jobs; the others take no place.
pub(super) fn searched(
    placement: &Placement,
    jobs: &[usize],
    until: Until,
    budget: &Budget,
) -> PlacementSearch {
    let mut best: Option<PlacedJobs> = None;
    let mut root: Option<(Cost, Prices)> = None;
    let mut waiting = vec![OpenPlacings::all(placement, jobs)];
    while let Some(open) = waiting.pop() {
        let node = SearchNode { placement, jobs, open };
        if !node.is_open() {
            continue;
        }
        let found = match relaxed(placement, &node.open, jobs, budget) {
            Ok(found) => found,
            Err(Unmatched::TooFew) => continue,
            Err(Unmatched::Unsearched) => return PlacementSearch::Unsearched(best),
        };
        let cost = found.matched.cost;
        let (least, prices) = root.get_or_insert_with(|| (cost, found.matched.prices.clone()));
        if best.as_ref().is_some_and(|best| cost >= best.cost) {
            continue;
        }
        match node.decide(&found) {
            Decision::Keeps(chosen) => {
                let (least, prices) = (*least, prices.clone());
                best = Some(PlacedJobs { chosen, cost, least, prices });
                if until == Until::Any {
                    break;
                }
            }
            Decision::Dead => {}
            // the second of the two is searched first
            Decision::Split(first, second) => waiting.extend([first, second]),
        }
    }
    best.map_or(PlacementSearch::Impossible, PlacementSearch::Best)
}

/// What is decided of a solved relaxation.
enum Decision {
    /// It keeps all rules: the placing of each job.
    Keeps(Vec<usize>),
    /// Nothing that is left keeps them.
    Dead,
    /// Either this is so or that.
    Split(OpenPlacings, OpenPlacings),
}

/// What is left open, of some of the jobs.
struct SearchNode<'a> {
    placement: &'a Placement,
    jobs: &'a [usize],
    open: OpenPlacings,
}

impl SearchNode<'_> {
    /// Whether the banks can be kept with the fewest of their places that each job must take, each by itself and all together.
    fn is_open(&self) -> bool {
        self.carries_together()
            && self.placement.banks.iter().all(|bank| {
                let least = |job: &usize| {
                    let counts = self.open.of(self.placement, *job).map(|(_, it)| bank.count(it));
                    Some((self.placement.jobs.get(*job)?, counts.min()?))
                };
                let counted = || self.jobs.iter().filter_map(least);
                bank.carries(counted()) && bank.first_apart(counted()).is_none()
            })
    }

    /// Jobs that fit into each bank alone may be too many for all of them.
    fn carries_together(&self) -> bool {
        let banks = || self.placement.banks.iter().filter(|bank| bank.limit.is_some());
        let limit = banks().filter_map(|bank| bank.limit).fold(0_u64, u64::saturating_add);
        let drawn = self.jobs.iter().filter_map(|job| {
            let taken = |it: &super::Placing| banks().map(|bank| bank.count(it)).sum::<u64>();
            let least = self.open.of(self.placement, *job).map(|(_, it)| taken(it)).min()?;
            Some(self.placement.jobs.get(*job)?.draw.saturating_mul(least))
        });
        banks().next().is_none() || drawn.fold(0_u64, u64::saturating_add) <= limit
    }

    fn decide(&self, found: &Relaxed) -> Decision {
        let mut chosen = vec![0; self.placement.jobs.len()];
        for &job in self.jobs {
            let placing = found.placing(self.placement, &self.open, job);
            match (placing, chosen.get_mut(job)) {
                (Some(placing), Some(own)) => *own = placing,
                _ => return self.split_pair(found, job),
            }
        }
        let banks = self.placement.banks.iter();
        let mut broken = banks.filter_map(|bank| {
            let of = |job: usize| {
                let own = self.placement.jobs.get(job)?;
                Some((own, bank.count(own.placings.get(*chosen.get(job)?)?)))
            };
            let counted = || self.jobs.iter().filter_map(|job| of(*job));
            if let Some(pace) = bank.first_apart(counted()) {
                return Some(self.split_pace(bank, pace));
            }
            let numbered = || self.jobs.iter().filter_map(|job| Some((*job, of(*job)?.1)));
            (!bank.carries(counted())).then(|| self.split_bank(bank, numbered().collect()))
        });
        broken.next().unwrap_or(Decision::Keeps(chosen))
    }

    /// The places of a pair that don't belong together: it takes the cheapest that begins as the relaxation did, or it doesn't.
    fn split_pair(&self, found: &Relaxed, job: usize) -> Decision {
        let first = found.places(job).next();
        let placings = self.open.of(self.placement, job);
        let begins = placings.filter(|(_, it)| it.places.first().copied() == first);
        match begins.min_by_key(|(at, it)| (it.cost, *at)) {
            Some((placing, _)) => Decision::Split(
                self.open.only(|it, at| it != job || at != placing),
                self.open.only(|it, at| it != job || at == placing),
            ),
            None => Decision::Dead,
        }
    }

    /// How many places of a bank a placing of a job takes.
    fn takes(&self, bank: &Bank, job: usize, at: usize) -> u64 {
        let placing = self.placement.jobs.get(job).and_then(|job| job.placings.get(at));
        placing.map_or(0, |it| bank.count(it))
    }

    /// Two paces in a bank that has one: either it has this one, or it has not.
    fn split_pace(&self, bank: &Bank, pace: u64) -> Decision {
        let of = |job: usize| self.placement.jobs.get(job).and_then(|job| job.pace);
        let is_out = |job: usize, at: usize| self.takes(bank, job, at) == 0;
        Decision::Split(
            self.open.only(|job, at| of(job) != Some(pace) || is_out(job, at)),
            self.open.only(|job, at| of(job).is_none_or(|it| it == pace) || is_out(job, at)),
        )
    }

    /// A bank that carries less than its jobs draw: the one that draws most takes as many of its places, or fewer.
    fn split_bank(&self, bank: &Bank, counted: Vec<(usize, u64)>) -> Decision {
        let draw = |job: usize| self.placement.jobs.get(job).map_or(0, |job| job.draw);
        let inside = counted.into_iter().filter(|(job, count)| {
            let mut placings = self.open.of(self.placement, *job);
            placings.any(|(_, it)| bank.count(it) < *count)
        });
        let weight =
            |(job, count): &(usize, u64)| (draw(*job).saturating_mul(*count), Reverse(*job));
        let Some((job, count)) = inside.max_by_key(weight) else { return Decision::Dead };
        Decision::Split(
            self.open.only(|it, at| it != job || self.takes(bank, job, at) >= count),
            self.open.only(|it, at| it != job || self.takes(bank, job, at) < count),
        )
    }
}
