//! Which jobs compete for too few places.

use super::{
    Placement,
    search::{PlacementSearch, Until, searched},
};
use crate::budget::Budget;

/// Jobs that can't all be placed, though any of them left out the others can: a set that violates Hall's condition and has none
/// within it that does. Nothing where all can be placed, or where the budget ends before it is sure.
///
/// Found by leaving out one job after the other, and keeping it out where the rest are still too many. Each that is left was needed when
/// it was tried among more than are left now, so that it is needed among these too. Where several sets compete, it is one
/// that has the latest of the jobs.
///
/// Source: P. Hall, On representatives of subsets, 1935.
pub fn competing(placement: &Placement, budget: &Budget) -> Option<Vec<usize>> {
    let mut jobs: Vec<usize> = (0..placement.jobs.len()).collect();
    if is_possible(placement, &jobs, budget)? {
        return None;
    }
    for job in 0..placement.jobs.len() {
        let others: Vec<usize> = jobs.iter().copied().filter(|it| *it != job).collect();
        if !is_possible(placement, &others, budget)? {
            jobs = others;
        }
    }
    Some(jobs)
}

/// Whether all of these can be placed.
fn is_possible(placement: &Placement, jobs: &[usize], budget: &Budget) -> Option<bool> {
    match searched(placement, jobs, Until::Any, budget) {
        PlacementSearch::Best(_) | PlacementSearch::Unsearched(Some(_)) => Some(true),
        PlacementSearch::Impossible => Some(false),
        PlacementSearch::Unsearched(None) => None,
    }
}
