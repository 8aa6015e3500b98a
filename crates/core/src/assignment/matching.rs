//! The assignment problem: one place for each job, at the least cost.

use super::Cost;
use crate::budget::Budget;

/// What each job costs at each place; nothing where it may not stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CostTable {
    places: usize,
    cells: Vec<Option<Cost>>,
}

impl CostTable {
    /// So many jobs and places, all of them forbidden.
    pub fn new(jobs: usize, places: usize) -> Self {
        Self { places, cells: vec![None; jobs.saturating_mul(places)] }
    }

    /// Lets a job stand at a place for this cost, unless it stands there for less.
    pub fn allow(&mut self, job: usize, place: usize, cost: Cost) {
        let cell = self.cells.get_mut(job.saturating_mul(self.places).saturating_add(place));
        if let Some(cell) = cell.filter(|_| place < self.places) {
            *cell = Some(cell.map_or(cost, |known| known.min(cost)));
        }
    }

    /// What it costs there.
    pub fn at(&self, job: usize, place: usize) -> Option<Cost> {
        self.row(job).get(place).copied().flatten()
    }

    /// How many jobs there are.
    pub fn jobs(&self) -> usize {
        self.cells.len().checked_div(self.places).unwrap_or(0)
    }

    /// How many places there are.
    pub fn places(&self) -> usize {
        self.places
    }

    /// The costs of a job, place by place.
    pub(super) fn row(&self, job: usize) -> &[Option<Cost>] {
        let from = job.saturating_mul(self.places);
        self.cells.get(from..from.saturating_add(self.places)).unwrap_or_default()
    }
}

/// Prices that prove an assignment to cost the least: no job costs less at a place that it may stand at than its own price and that of
/// the place together, no place has a price above nought, and the prices of all jobs and places sum up to the cost.
///
/// Any other assignment costs the prices of the same jobs and of other places at the least; those have prices of nought or less, and all
/// that are below nought are in the sum already. Source: duality of linear programs (Kuhn 1955).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Prices {
    /// Of the jobs.
    pub jobs: Vec<i128>,
    /// Of the places, nought or less.
    pub places: Vec<i128>,
}

impl Prices {
    /// What they prove to be the least.
    pub fn sum(&self) -> i128 {
        self.jobs.iter().chain(&self.places).sum()
    }
}

/// An assignment of the least cost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Matched {
    /// The place of each job.
    pub places: Vec<usize>,
    /// What all of them cost.
    pub cost: Cost,
    /// What proves it.
    pub prices: Prices,
}

/// Why there is no assignment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unmatched {
    /// The places that some jobs may stand at are too few.
    TooFew,
    /// It would take more steps than may be taken.
    Unsearched,
}

/// A place while the assignment grows.
#[derive(Clone, Copy, Debug, Default)]
struct PlaceState {
    owner: Option<usize>,
    price: i128,
    /// The least that it takes to reach it, and the place before it on that way.
    reached: Option<(i128, Option<usize>)>,
    is_behind: bool,
}

/// The assignment of the least cost; of several the one in which the first job has the lowest place, then the second, and so on.
///
/// Steps are taken as it goes: one for each place that is looked at.
///
/// # Errors
/// Where there is none, or the budget ends.
pub fn matched(table: &CostTable, budget: &Budget) -> Result<Matched, Unmatched> {
    let mut growing = cheapest(table, budget)?;
    growing.first_of_equals(table, budget)?;
    Ok(growing.into_matched(table))
}

/// One of the least cost, whichever of several.
pub(super) fn any_matched(table: &CostTable, budget: &Budget) -> Result<Matched, Unmatched> {
    cheapest(table, budget).map(|it| it.into_matched(table))
}

fn cheapest(table: &CostTable, budget: &Budget) -> Result<Growing, Unmatched> {
    let mut growing = Growing {
        prices: vec![0; table.jobs()],
        places: vec![PlaceState::default(); table.places()],
    };
    for job in 0..table.jobs() {
        growing.add(table, job, budget)?;
    }
    Ok(growing)
}

struct Growing {
    /// Of the jobs.
    prices: Vec<i128>,
    places: Vec<PlaceState>,
}

impl Growing {
    fn price(&self, job: usize) -> i128 {
        self.prices.get(job).copied().unwrap_or(0)
    }

    fn steps(&self) -> u64 {
        u64::try_from(self.places.len()).unwrap_or(u64::MAX)
    }

    /// Gives one more job a place, others making way for it where that costs less: the shortest path to a free place.
    fn add(&mut self, table: &CostTable, job: usize, budget: &Budget) -> Result<(), Unmatched> {
        for place in &mut self.places {
            (place.reached, place.is_behind) = (None, false);
        }
        let (mut waiting, mut from) = (job, None);
        loop {
            budget.take(self.steps()).ok_or(Unmatched::Unsearched)?;
            let price = self.price(waiting);
            for (place, cost) in self.places.iter_mut().zip(table.row(waiting)) {
                let Some(cost) = cost.filter(|_| !place.is_behind) else { continue };
                let more = cost.number() - price - place.price;
                if place.reached.is_none_or(|(known, _)| more < known) {
                    place.reached = Some((more, from));
                }
            }
            let (at, more) = self.nearest().ok_or(Unmatched::TooFew)?;
            self.raise(job, more);
            let owner = self.places.get(at).and_then(|place| place.owner);
            let Some((owner, place)) = owner.zip(self.places.get_mut(at)) else {
                self.hand_on(job, at);
                return Ok(());
            };
            place.is_behind = true;
            (waiting, from) = (owner, Some(at));
        }
    }

    /// The place that takes the least to reach; of several the first.
    fn nearest(&self) -> Option<(usize, i128)> {
        let ahead = self.places.iter().enumerate().filter(|(_, place)| !place.is_behind);
        let reached = ahead.filter_map(|(at, place)| Some((at, place.reached?.0)));
        reached.min_by_key(|(at, more)| (*more, *at))
    }

    /// Raises the prices of all jobs on the way, and lowers those of their places.
    fn raise(&mut self, job: usize, more: i128) {
        if let Some(price) = self.prices.get_mut(job) {
            *price += more;
        }
        for place in &mut self.places {
            if place.is_behind {
                place.price -= more;
                let owner = place.owner.and_then(|owner| self.prices.get_mut(owner));
                if let Some(price) = owner {
                    *price += more;
                }
            } else if let Some((known, _)) = &mut place.reached {
                *known -= more;
            }
        }
    }

    /// Along the way back each job moves on by a place.
    fn hand_on(&mut self, job: usize, free: usize) {
        let mut at = free;
        while let Some(place) = self.places.get(at).copied() {
            let before = place.reached.and_then(|(_, before)| before);
            let owner = before.and_then(|before| self.places.get(before)?.owner);
            if let Some(place) = self.places.get_mut(at) {
                place.owner = owner.or(Some(job));
            }
            match before {
                Some(before) => at = before,
                None => return,
            }
        }
    }

    /// Whether a job may stand there in some assignment of the least cost.
    fn is_tight(&self, table: &CostTable, job: usize, place: usize) -> bool {
        let cost = table.at(job, place).map(Cost::number);
        let price = self.places.get(place).map(|place| place.price);
        cost.zip(price).is_some_and(|(cost, price)| cost == price + self.price(job))
    }

    fn place_of(&self, job: usize) -> Option<usize> {
        self.places.iter().position(|place| place.owner == Some(job))
    }

    /// Makes it the first of all that cost the same.
    fn first_of_equals(&mut self, table: &CostTable, budget: &Budget) -> Result<(), Unmatched> {
        let mut is_fixed = vec![false; self.places.len()];
        for job in 0..table.jobs() {
            let Some(own) = self.place_of(job) else { continue };
            let earlier = (0..own).filter(|place| {
                is_fixed.get(*place) == Some(&false) && self.is_tight(table, job, *place)
            });
            let earlier: Vec<_> = earlier.collect();
            let mut at = own;
            for place in earlier {
                if self.moved(table, (job, own, place), &is_fixed, budget)? {
                    at = place;
                    break;
                }
            }
            if let Some(fixed) = is_fixed.get_mut(at) {
                *fixed = true;
            }
        }
        Ok(())
    }

    /// Moves a job to another place, the others making way at no cost; false where they can't, and nothing is moved.
    fn moved(
        &mut self,
        table: &CostTable,
        (job, own, wanted): (usize, usize, usize),
        is_fixed: &[bool],
        budget: &Budget,
    ) -> Result<bool, Unmatched> {
        // a place that has a price is taken in each of them
        let may_fall_free = self.places.get(own).is_some_and(|place| place.price == 0);
        let is_end = |growing: &Self, at: usize| {
            let is_free = growing.places.get(at).is_some_and(|place| place.owner.is_none());
            at == own || may_fall_free && is_free
        };
        let mut before: Vec<Option<usize>> = vec![None; self.places.len()];
        let mut seen = is_fixed.to_vec();
        let mut waiting = vec![wanted];
        let mut see =
            |at: usize| seen.get_mut(at).is_some_and(|seen| !core::mem::replace(seen, true));
        see(wanted);
        let mut end = is_end(self, wanted).then_some(wanted);
        while let Some(place) = waiting.pop().filter(|_| end.is_none()) {
            budget.take(self.steps()).ok_or(Unmatched::Unsearched)?;
            let Some(owner) = self.places.get(place).and_then(|place| place.owner) else {
                continue;
            };
            for next in 0..self.places.len() {
                if !self.is_tight(table, owner, next) || !see(next) {
                    continue;
                }
                if let Some(before) = before.get_mut(next) {
                    *before = Some(place);
                }
                if is_end(self, next) {
                    end = Some(next);
                    break;
                }
                waiting.push(next);
            }
        }
        let Some(end) = end else { return Ok(false) };
        self.shift(&before, (job, own, wanted), end);
        Ok(true)
    }

    fn shift(
        &mut self,
        before: &[Option<usize>],
        (job, own, wanted): (usize, usize, usize),
        end: usize,
    ) {
        if let Some(place) = self.places.get_mut(own) {
            place.owner = None;
        }
        let mut at = end;
        while let Some(from) = before.get(at).copied().flatten() {
            let owner = self.places.get(from).and_then(|place| place.owner);
            if let Some(place) = self.places.get_mut(at) {
                place.owner = owner;
            }
            at = from;
        }
        if let Some(place) = self.places.get_mut(wanted) {
            place.owner = Some(job);
        }
    }

    fn into_matched(self, table: &CostTable) -> Matched {
        let mut places = vec![0; table.jobs()];
        for (at, place) in self.places.iter().enumerate() {
            if let Some(own) = place.owner.and_then(|owner| places.get_mut(owner)) {
                *own = at;
            }
        }
        let costs = places.iter().enumerate().filter_map(|(job, place)| table.at(job, *place));
        let cost = costs.fold(Cost::default(), |sum, cost| sum + cost);
        let prices = Prices {
            jobs: self.prices,
            places: self.places.iter().map(|place| place.price).collect(),
        };
        Matched { places, cost, prices }
    }
}
