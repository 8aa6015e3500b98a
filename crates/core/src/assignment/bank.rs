//! What the places of a bank share.

use super::{Bank, PlacedJob, Placing};

impl Bank {
    /// How many of its places a placing takes.
    pub(super) fn count(&self, placing: &Placing) -> u64 {
        let own = placing.places.iter().filter(|it| self.places.contains(it)).count();
        u64::try_from(own).unwrap_or(u64::MAX)
    }

    /// Whether jobs that stand so keep its rules.
    pub(super) fn allows(&self, jobs: &[PlacedJob], placings: &[&Placing]) -> bool {
        let counted = || jobs.iter().zip(placings).map(|(job, placing)| (job, self.count(placing)));
        self.carries(counted()) && self.first_apart(counted()).is_none()
    }

    /// Whether jobs that take so many of its places each draw no more than its limit.
    pub(super) fn carries<'a>(&self, counted: impl Iterator<Item = (&'a PlacedJob, u64)>) -> bool {
        let Some(limit) = self.limit else { return true };
        let sum = counted
            .fold(0_u64, |sum, (job, count)| sum.saturating_add(job.draw.saturating_mul(count)));
        sum <= limit
    }

    /// The pace of the first, where another has another.
    pub(super) fn first_apart<'a>(
        &self,
        counted: impl Iterator<Item = (&'a PlacedJob, u64)>,
    ) -> Option<u64> {
        let inside = counted.filter(|(_, count)| *count > 0);
        let mut paces = inside.filter_map(|(job, _)| job.pace.filter(|_| self.is_one_pace));
        let first = paces.next()?;
        paces.any(|pace| pace != first).then_some(first)
    }
}
