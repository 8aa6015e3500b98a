//! Branch and bound: what the easier problem leaves out is decided one thing at a time.

use super::{
    Cost, Placement, Prices,
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
            // the first of the two is searched first
            Decision::Split(first, second) => waiting.extend([second, first]),
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
    /// Whether the banks can be kept with the fewest of their places that each job must take.
    fn is_open(&self) -> bool {
        self.placement.banks.iter().all(|bank| {
            let least = |job: &usize| {
                let counts = self.open.of(self.placement, *job).map(|(_, it)| bank.count(it));
                Some((self.placement.jobs.get(*job)?, counts.min()?))
            };
            let counted = || self.jobs.iter().filter_map(least);
            bank.carries(counted()) && bank.first_apart(counted()).is_none()
        })
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
        let broken = self.placement.banks.iter().find_map(|bank| {
            let of = |job: usize| {
                let own = self.placement.jobs.get(job)?;
                Some((own, bank.count(own.placings.get(*chosen.get(job)?)?)))
            };
            let counted = || self.jobs.iter().filter_map(|job| of(*job));
            let is_over = !bank.carries(counted());
            let is_apart = bank.first_apart(counted()).is_some();
            (is_over || is_apart).then(|| {
                let counted = self.jobs.iter().filter_map(|job| Some((*job, of(*job)?.1)));
                self.split_bank(bank, counted.collect(), is_over)
            })
        });
        broken.unwrap_or(Decision::Keeps(chosen))
    }

    /// The places of a pair that don't belong together: it takes the cheapest that begins as the relaxation did, or it doesn't.
    fn split_pair(&self, found: &Relaxed, job: usize) -> Decision {
        let first = found.places(job).next();
        let placings = self.open.of(self.placement, job);
        let begins = placings.filter(|(_, it)| it.places.first().copied() == first);
        match begins.min_by_key(|(at, it)| (it.cost, *at)) {
            Some((placing, _)) => Decision::Split(
                self.open.only(job, |at| at == placing),
                self.open.only(job, |at| at != placing),
            ),
            None => Decision::Dead,
        }
    }

    /// A bank whose rule is broken: a job of it stands there with as many places, or with fewer.
    fn split_bank(
        &self,
        bank: &super::Bank,
        counted: Vec<(usize, u64)>,
        is_over: bool,
    ) -> Decision {
        let draw = |job: usize| self.placement.jobs.get(job).map_or(0, |job| job.draw);
        let pace = |job: usize| self.placement.jobs.get(job).and_then(|job| job.pace);
        let inside = counted.into_iter().filter(|(job, count)| {
            let mut placings = self.open.of(self.placement, *job);
            let may_take_fewer = placings.any(|(_, it)| bank.count(it) < *count);
            *count > 0 && may_take_fewer && (is_over || pace(*job).is_some())
        });
        // what draws most decides most; of those alike the first
        let weight = |(job, count): &(usize, u64)| {
            (if is_over { draw(*job).saturating_mul(*count) } else { 0 }, core::cmp::Reverse(*job))
        };
        let Some((job, count)) = inside.max_by_key(weight) else { return Decision::Dead };
        let placings = self.placement.jobs.get(job).map_or(&[][..], |job| &job.placings);
        let takes = |at: usize| placings.get(at).map_or(0, |it| bank.count(it));
        Decision::Split(
            self.open.only(job, |at| takes(at) >= count),
            self.open.only(job, |at| takes(at) < count),
        )
    }
}
