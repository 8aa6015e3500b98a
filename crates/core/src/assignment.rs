//! Each job to a place, or a group of places, of its own at the least cost; and where that can't be, which jobs compete.
//!
//! A job names where it may stand, each with a cost: one place, or several that it takes together. A bank is a set of places that
//! share a limit: the sum of what its jobs draw, one pace for all of them. Without pairs and banks it is the assignment problem, solved
//! by shortest paths with prices (Kuhn 1955, Munkres 1957); the prices prove it ([`Prices`]). With them it is searched by branch and
//! bound: what is left out gives a bound that is never too high, so that nothing better is passed over.
//!
//! The same problem gives the same answer, bit by bit. Of assignments that cost the same, where nothing but single places is asked for,
//! the first job has the lowest place that it has in any of them, then the second, and so on.

mod bank;
mod competing;
#[cfg(test)]
mod laws;
mod matching;
mod relaxed;
mod search;

pub use competing::competing;
pub use matching::{CostTable, Matched, Prices, Unmatched, matched};
pub use search::{PlacedJobs, PlacementSearch, placed};

/// A cost of three ranks: a higher one counts more than any sum of lower ones, for 64 jobs at the most.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Cost(i128);

/// Bits of a rank: 2^32 for each of 64 jobs, and two to spare.
const RANK_BITS: u32 = 40;

impl Cost {
    /// Its ranks, the highest first.
    pub fn new([first, second, third]: [u32; 3]) -> Self {
        let [first, second, third] = [first, second, third].map(i128::from);
        Self((first << (2 * RANK_BITS)) + (second << RANK_BITS) + third)
    }

    /// Of one rank, the lowest.
    pub fn of(cost: u32) -> Self {
        Self::new([0, 0, cost])
    }

    /// The ranks of a sum of costs.
    pub fn ranks(self) -> [u64; 3] {
        let rank = |at: u32| {
            let rank = self.0 >> (at * RANK_BITS) & ((1 << RANK_BITS) - 1);
            u64::try_from(rank).unwrap_or(0)
        };
        [rank(2), rank(1), rank(0)]
    }

    /// All ranks in one number, which adds and compares as costs do.
    pub fn number(self) -> i128 {
        self.0
    }
}

impl core::ops::Add for Cost {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

/// The places that a job would take together, and what that costs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placing {
    /// Each once; none that there isn't.
    pub places: Vec<usize>,
    /// What it costs.
    pub cost: Cost,
}

/// What is to be placed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PlacedJob {
    /// Where it may stand.
    pub placings: Vec<Placing>,
    /// What it draws from the bank of each place that it takes.
    pub draw: u64,
    /// Its pace, where it has one: in a bank of one pace it stands with its like, and with those that have none.
    pub pace: Option<u64>,
}

/// Places that share a limit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bank {
    /// The places.
    pub places: Vec<usize>,
    /// The most that all jobs in it may draw.
    pub limit: Option<u64>,
    /// Whether all jobs in it that have a pace have the same.
    pub is_one_pace: bool,
}

/// All jobs, all places, all banks.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Placement {
    /// The jobs.
    pub jobs: Vec<PlacedJob>,
    /// How many places there are.
    pub places: usize,
    /// The banks; a place may be in several.
    pub banks: Vec<Bank>,
}

impl Placement {
    /// Whether a choice of a placing for each job keeps all rules.
    pub fn allows(&self, chosen: &[usize]) -> bool {
        let mut is_taken = vec![false; self.places];
        let placings = self.jobs.iter().zip(chosen).map(|(job, at)| job.placings.get(*at));
        let placings: Option<Vec<&Placing>> = placings.collect();
        let Some(placings) = placings.filter(|it| it.len() == self.jobs.len()) else {
            return false;
        };
        for place in placings.iter().flat_map(|it| &it.places) {
            match is_taken.get_mut(*place) {
                Some(taken) if !*taken => *taken = true,
                _ => return false,
            }
        }
        placings.iter().all(|it| !it.places.is_empty())
            && self.banks.iter().all(|bank| bank.allows(&self.jobs, &placings))
    }

    /// What such a choice costs.
    pub fn cost(&self, chosen: &[usize]) -> Cost {
        let placings = self.jobs.iter().zip(chosen).filter_map(|(job, at)| job.placings.get(*at));
        placings.fold(Cost::default(), |sum, it| sum + it.cost)
    }
}
