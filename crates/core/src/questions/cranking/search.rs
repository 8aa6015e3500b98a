//! The searches that an answer asks for, each begun only where it may still be spent.

use crate::{
    budget::Budget,
    cranking::{self, CrankingAnswer, CrankingInputs, Event, Noise, Release, StopAnswer, cost},
    quantity::RotationalSpeed,
    timeline::Interval,
};

/// The start that is asked about, and what may still be spent on it.
#[derive(Clone, Copy, Debug)]
pub(super) struct StartSearch<'a> {
    pub(super) inputs: &'a CrankingInputs,
    pub(super) budget: &'a Budget,
}

/// What became of it.
pub(super) enum Searched {
    /// Every start was followed.
    Whole(CrankingAnswer),
    /// That would be too much: what can be told without, where that is not too much as well.
    TooMuch(Option<CrankingAnswer>),
    /// The inputs can't be those of an engine that turns.
    NoEngine,
}

impl StartSearch<'_> {
    /// The answer itself.
    pub(super) fn answer(self) -> Searched {
        if self.budget.take(cost::cresting(self.inputs)).is_none() {
            return Searched::TooMuch(None);
        }
        if self.budget.take(cost::answering(self.inputs)).is_none() {
            return Searched::TooMuch(cranking::outline(self.inputs));
        }
        cranking::answer(self.inputs).map_or(Searched::NoEngine, Searched::Whole)
    }

    /// The fastest reading at each corner; nothing where that is too much.
    pub(super) fn readings_at_corners(self) -> Option<Vec<(String, RotationalSpeed)>> {
        self.budget.take(cost::cresting(self.inputs))?;
        Some(cranking::readings_at_corners(self.inputs))
    }

    /// Whether a threshold is known to work with a release: what is too much is not known to.
    pub(super) fn serves(self, release: Release, threshold: RotationalSpeed) -> bool {
        let set = CrankingInputs { release, ..self.inputs.clone() };
        self.spare(cost::serving(&set)).is_some() && cranking::serves(&set, threshold)
    }

    /// The thresholds that are known to work with another release.
    pub(super) fn works_with(self, release: Release) -> Option<Interval> {
        self.spare(cost::surveying(self.inputs))?;
        cranking::works_with(self.inputs, release)
    }

    /// The releases that are known to work at a threshold.
    pub(super) fn releases(self, threshold: RotationalSpeed) -> Option<Interval> {
        self.spare(cost::releasing(self.inputs))?;
        cranking::releases(self.inputs, threshold)
    }

    /// What happens when the engine dies, with another release.
    pub(super) fn stop(self, release: RotationalSpeed) -> Option<StopAnswer> {
        self.spare(cost::stopping(self.inputs))?;
        Some(cranking::stop(self.inputs, release))
    }

    /// Starts that go otherwise; none where they are too much.
    pub(super) fn events(self) -> Vec<Event> {
        let is_begun = self.spare(cost::happening(self.inputs)).is_some();
        if is_begun { cranking::events(self.inputs) } else { Vec::new() }
    }

    /// What false edges do at the threshold that is asked about.
    pub(super) fn noise(self) -> Option<Noise> {
        let threshold = self.inputs.threshold?;
        self.spare(cost::mistaking(self.inputs))?;
        Some(cranking::noise(self.inputs, threshold))
    }

    fn spare(self, steps: u64) -> Option<()> {
        self.budget.take_spare(steps)
    }
}
