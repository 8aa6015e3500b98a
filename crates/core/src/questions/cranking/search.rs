//! The searches that an answer asks for, begun only where they may be spent.

use crate::{
    budget::Budget,
    cranking::{
        self, CrankingAnswer, CrankingInputs, Event, Noise, Release, Starts, StopAnswer, cost,
    },
    quantity::RotationalSpeed,
    timeline::Interval,
};

/// The start that is asked about, and what may still be spent on it.
#[derive(Clone, Copy, Debug)]
pub(super) struct StartSearch<'a> {
    pub(super) inputs: &'a CrankingInputs,
    /// All starts of the engine.
    pub(super) starts: &'a Starts,
    pub(super) budget: &'a Budget,
}

/// What became of it.
pub(super) enum Searched {
    /// Every start was looked at.
    Whole(CrankingAnswer),
    /// That would be too much: what can be told without.
    TooMuch(CrankingAnswer),
}

impl StartSearch<'_> {
    /// The answer itself. What is asked beside it is paid with it, with other starts (`with_events`) where those are told:
    /// where there is an answer, all that could be said is said.
    pub(super) fn answer(self, with_events: bool) -> Searched {
        let events = if with_events { cost::happening(self.inputs) } else { 0 };
        let beside = cost::asking_beside(self.inputs, self.starts).saturating_add(events);
        let whole = self.budget.take(beside);
        let whole = whole.and_then(|()| self.starts.answer(self.inputs, self.budget));
        whole.map_or_else(|| Searched::TooMuch(self.starts.outline(self.inputs)), Searched::Whole)
    }

    /// The fastest reading at each corner.
    pub(super) fn readings_at_corners(self) -> Vec<(String, RotationalSpeed)> {
        self.starts.readings_at_corners()
    }

    /// Whether a threshold works with a release.
    pub(super) fn serves(self, release: Release, threshold: RotationalSpeed) -> bool {
        let set = CrankingInputs { release, ..self.inputs.clone() };
        self.starts.serves(&set, threshold)
    }

    /// The thresholds that work with another release.
    pub(super) fn works_with(self, release: Release) -> Option<Interval> {
        self.starts.works_with(self.inputs, release)
    }

    /// The releases that work at a threshold.
    pub(super) fn releases(self, threshold: RotationalSpeed) -> Option<Interval> {
        self.starts.releases(self.inputs, threshold)
    }

    /// What happens when the engine dies, with another release.
    pub(super) fn stop(self, release: RotationalSpeed) -> StopAnswer {
        cranking::stop(self.inputs, release)
    }

    /// Starts that go otherwise.
    pub(super) fn events(self) -> Vec<Event> {
        cranking::events(self.inputs)
    }

    /// What false edges do at the threshold that is asked about.
    pub(super) fn noise(self) -> Option<Noise> {
        Some(cranking::noise(self.inputs, self.inputs.threshold?))
    }
}
