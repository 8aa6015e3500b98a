//! What is easier and never costs more: each place of a pair by itself, and no banks.

use super::{
    Cost, Placement, Placing,
    matching::{CostTable, Matched, Unmatched, any_matched},
};
use crate::budget::Budget;

/// The placings that are still open to each job.
#[derive(Clone, Debug)]
pub(super) struct OpenPlacings(Vec<Vec<usize>>);

impl OpenPlacings {
    /// All that name places that there are; only for these jobs, the others need none.
    pub(super) fn all(placement: &Placement, jobs: &[usize]) -> Self {
        let open = |at: usize| {
            let placings = placement.jobs.get(at).filter(|_| jobs.contains(&at));
            let placings = placings.map_or(&[][..], |job| &job.placings).iter().enumerate();
            let is_there = |it: &Placing| {
                let is_once = |(at, place): (usize, &usize)| {
                    !it.places.iter().take(at).any(|other| other == place)
                };
                let mut places = it.places.iter().enumerate();
                !it.places.is_empty() && places.all(|it| *it.1 < placement.places && is_once(it))
            };
            placings.filter(|(_, it)| is_there(it)).map(|(at, _)| at).collect()
        };
        Self((0..placement.jobs.len()).map(open).collect())
    }

    /// Those of a job.
    pub(super) fn of<'a>(
        &'a self,
        placement: &'a Placement,
        job: usize,
    ) -> impl Iterator<Item = (usize, &'a Placing)> + Clone {
        let placings = placement.jobs.get(job).map_or(&[][..], |job| &job.placings);
        let open = self.0.get(job).map_or(&[][..], Vec::as_slice);
        open.iter().filter_map(|at| Some((*at, placings.get(*at)?)))
    }

    /// The same with only those that are kept, by job and number.
    pub(super) fn only(&self, is_kept: impl Fn(usize, usize) -> bool) -> Self {
        let mut open = self.clone();
        for (job, of_job) in open.0.iter_mut().enumerate() {
            of_job.retain(|at| is_kept(job, *at));
        }
        open
    }
}

/// A row of the relaxed problem: one of the places that a job takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct PlaceShare {
    job: usize,
    number: usize,
}

/// The relaxed problem, solved.
#[derive(Debug)]
pub(super) struct Relaxed {
    shares: Vec<PlaceShare>,
    table: CostTable,
    pub(super) matched: Matched,
}

/// What is reckoned for one of the places of a placing: its cost in equal parts, and what can't be parted with the first.
fn part(placing: &Placing, number: usize) -> Cost {
    let count = i128::try_from(placing.places.len()).unwrap_or(1).max(1);
    let each = placing.cost.number() / count;
    let rest = if number == 0 { placing.cost.number() % count } else { 0 };
    Cost(each + rest)
}

/// The table of the relaxed problem; nothing where a job has no placing that is open.
fn table(
    placement: &Placement,
    open: &OpenPlacings,
    jobs: &[usize],
) -> Option<(Vec<PlaceShare>, CostTable)> {
    let mut shares = Vec::new();
    for &job in jobs {
        // a placing of more places takes these of them at the least
        let least = open.of(placement, job).map(|(_, it)| it.places.len()).min()?;
        shares.extend((0..least).map(|number| PlaceShare { job, number }));
    }
    let mut table = CostTable::new(shares.len(), placement.places);
    for (row, share) in shares.iter().enumerate() {
        for (_, placing) in open.of(placement, share.job) {
            if let Some(place) = placing.places.get(share.number) {
                table.allow(row, *place, part(placing, share.number));
            }
        }
    }
    Some((shares, table))
}

/// Solves it: the cost is the least that the jobs can cost.
pub(super) fn relaxed(
    placement: &Placement,
    open: &OpenPlacings,
    jobs: &[usize],
    budget: &Budget,
) -> Result<Relaxed, Unmatched> {
    let (shares, table) = table(placement, open, jobs).ok_or(Unmatched::TooFew)?;
    let matched = any_matched(&table, budget)?;
    Ok(Relaxed { shares, table, matched })
}

/// The table of single places, where nothing else is asked for.
pub(super) fn plain(
    placement: &Placement,
    open: &OpenPlacings,
    jobs: &[usize],
) -> Option<CostTable> {
    let is_plain = placement.banks.is_empty()
        && jobs.iter().all(|job| open.of(placement, *job).all(|(_, it)| it.places.len() == 1));
    is_plain.then(|| table(placement, open, jobs))?.map(|(_, table)| table)
}

impl Relaxed {
    /// The placing of a job of which this is the whole, at the cost that was reckoned with.
    pub(super) fn placing(
        &self,
        placement: &Placement,
        open: &OpenPlacings,
        job: usize,
    ) -> Option<usize> {
        let places: Vec<usize> = self.places(job).collect();
        let same = open.of(placement, job).filter(|(_, it)| it.places == places);
        let (at, placing) = same.min_by_key(|(at, it)| (it.cost, *at))?;
        // parts of others that are there too may have been cheaper
        let rows = self.shares.iter().zip(&self.matched.places).enumerate();
        let own = rows.filter(|(_, (share, _))| share.job == job);
        let costs = own.filter_map(|(row, (_, place))| self.table.at(row, *place));
        let reckoned = costs.fold(Cost::default(), |sum, cost| sum + cost);
        (reckoned == placing.cost).then_some(at)
    }

    /// The places that were given to a job.
    pub(super) fn places(&self, job: usize) -> impl Iterator<Item = usize> {
        let rows = self.shares.iter().zip(&self.matched.places);
        rows.filter(move |(share, _)| share.job == job).map(|(_, place)| *place)
    }
}
