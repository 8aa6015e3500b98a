//! The searches that an answer asks for, each begun only where it may still be spent.

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
    /// The answer itself.
    pub(super) fn answer(self) -> Searched {
        let stopping = self.inputs.threshold.map_or(0, |_| cost::stopping(self.inputs));
        let whole = self
            .budget
            .take(stopping + cost::weighing(self.starts))
            .and_then(|()| self.starts.answer(self.inputs, self.budget));
        whole.map_or_else(|| Searched::TooMuch(self.starts.outline(self.inputs)), Searched::Whole)
    }

    /// The fastest reading at each corner.
    pub(super) fn readings_at_corners(self) -> Vec<(String, RotationalSpeed)> {
        self.starts.readings_at_corners()
    }

    /// Whether a threshold is known to work with a release: what is too much is not known to.
    pub(super) fn serves(self, release: Release, threshold: RotationalSpeed) -> bool {
        let set = CrankingInputs { release, ..self.inputs.clone() };
        self.weigh().is_some() && self.starts.serves(&set, threshold)
    }

    /// The thresholds that are known to work with another release.
    pub(super) fn works_with(self, release: Release) -> Option<Interval> {
        self.weigh()?;
        self.starts.works_with(self.inputs, release)
    }

    /// The releases that are known to work at a threshold.
    pub(super) fn releases(self, threshold: RotationalSpeed) -> Option<Interval> {
        self.weigh()?;
        self.starts.releases(self.inputs, threshold)
    }

    fn weigh(self) -> Option<()> {
        self.budget.take(cost::weighing(self.starts))
    }

    /// What happens when the engine dies, with another release.
    pub(super) fn stop(self, release: RotationalSpeed) -> Option<StopAnswer> {
        self.budget.take(cost::stopping(self.inputs))?;
        Some(cranking::stop(self.inputs, release))
    }

    /// Starts that go otherwise; none where they are too much. They are told once, with the first relay: what is kept for the
    /// others is left.
    pub(super) fn events(self) -> Vec<Event> {
        let is_begun = self.budget.take(cost::happening(self.inputs)).is_some();
        if is_begun { cranking::events(self.inputs) } else { Vec::new() }
    }

    /// What false edges do at the threshold that is asked about.
    pub(super) fn noise(self) -> Option<Noise> {
        let threshold = self.inputs.threshold?;
        self.budget.take(cost::mistaking(self.inputs))?;
        Some(cranking::noise(self.inputs, threshold))
    }
}
