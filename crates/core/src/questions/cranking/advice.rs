//! A threshold and a release that work: solved before they are offered.

use super::search::StartSearch;
use crate::{
    cranking::{self, CrankingAnswer, CrankingInputs, Release, USUAL_THRESHOLD_RPM},
    message::Message,
    quantity::{Measure, RotationalSpeed, rpm, share},
    questions::cranking::words,
    read::Known,
    say, say_of,
    timeline::Interval,
};

/// What to enter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Advice {
    pub(super) threshold: RotationalSpeed,
    pub(super) release: RotationalSpeed,
}

impl Advice {
    /// As a step: to be kept where it is what was typed.
    pub(super) fn step(&self, known: &Known, inputs: &CrankingInputs) -> Message {
        let is_typed = inputs.threshold == Some(self.threshold)
            && inputs.release.of(self.threshold) == self.release;
        let wording = if is_typed { words::DO_KEEP } else { words::DO_SET };
        say_of!(
            wording,
            threshold = self.threshold,
            release = self.release,
            agree = inputs.confirmation
        )
        .done_by(known.set_to(self.threshold, self.release))
    }

    /// As a remedy.
    pub(super) fn remedy(&self, known: &Known) -> Message {
        say!(words::SET_THRESHOLD, threshold = self.threshold, release = self.release)
            .done_by(known.set_to(self.threshold, self.release))
    }
}

/// What works: the threshold asked for where it does, and no false edge passes for it or is told of (`is_quiet`), or else the best, or else one that does with the release asked for,
/// or with one that lies further below. Each is simulated before it is offered.
pub(super) fn advice(
    search: StartSearch<'_>,
    answer: &CrankingAnswer,
    is_quiet: bool,
) -> Option<Advice> {
    let inputs = search.inputs;
    let serves = |release: Release, threshold| {
        search
            .serves(release, threshold)
            .then(|| Advice { threshold, release: release.of(threshold) })
    };
    let sure = cranking::above_false_edges(inputs.rocking.high);
    let asked = inputs.threshold.and_then(|asked| serves(inputs.release, asked));
    let least = if is_quiet { inputs.rocking.high } else { sure };
    if asked.is_some_and(|it| it.threshold > least) {
        return asked;
    }
    if let Some(best) = best(search, answer).filter(|it| asked.is_none() || it.threshold > sure) {
        return Some(Advice { threshold: best.threshold, release: best.release });
    }
    if asked.is_some() {
        return asked;
    }
    let in_band = [answer.prompt, answer.works].into_iter().flatten();
    let rocking = inputs.rocking.high;
    let within = |band| within(above_false_edges(band, rocking));
    let in_band = in_band.map(|band| (inputs.release, within(band)));
    let further = [0.6, 0.5, 0.4, 0.3].into_iter().filter_map(|below| {
        let release = Release::Share(share(below));
        Some((release, within(search.works_with(release)?)))
    });
    let mut tries = in_band.chain(further);
    tries.find_map(|(release, threshold)| serves(release, threshold))
}

/// A threshold in a band that a person would enter: 100 rpm where it lies inside, or else a round one near the
/// middle, where a factor up or down still works.
fn within(band: Interval) -> RotationalSpeed {
    let middle = (band.low.max(1.0) * band.high).sqrt();
    let round = |step: f64| (middle / step).round() * step;
    let tries = [USUAL_THRESHOLD_RPM, round(10.0), round(5.0), round(1.0), middle];
    rpm(tries.into_iter().find(|threshold| band.holds(*threshold)).unwrap_or(band.high))
}

/// The threshold from which a factor up or down works as far as it can, and a release midway between what must let go and
/// what must not; simulated before it is offered.
pub(super) fn best(search: StartSearch<'_>, answer: &CrankingAnswer) -> Option<Best> {
    let works = above_false_edges(answer.works?, search.inputs.rocking.high);
    let middle = (works.low.max(1.0) * works.high).sqrt();
    let tries = [10.0, 5.0, 1.0].map(|step| (middle / step).round() * step);
    let threshold = rpm(tries.into_iter().find(|it| works.holds(*it)).unwrap_or(works.high));
    let releases = search.releases(threshold)?;
    let middle = (releases.low.max(1.0) * releases.high).sqrt();
    let tries = [5.0, 1.0].map(|step| (middle / step).round() * step);
    let release = rpm(tries.into_iter().find(|it| releases.holds(*it)).unwrap_or(middle));
    search.serves(Release::At(release), threshold).then_some(Best {
        threshold,
        release,
        works,
        releases,
    })
}

/// That part of a band in which no false edge between teeth closes the relay while the engine rocks; all of it where there
/// is no such part.
fn above_false_edges(band: Interval, rocking: RotationalSpeed) -> Interval {
    let low = cranking::above_false_edges(rocking).base().max(band.low);
    let above = Interval { low, ..band };
    if above.is_empty() { band } else { above }
}

/// The best to enter, and the bands about it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Best {
    pub(super) threshold: RotationalSpeed,
    pub(super) release: RotationalSpeed,
    pub(super) works: Interval,
    pub(super) releases: Interval,
}

/// The ends of a band in whole rpm, both inside; as they are where less than one fits.
pub(super) fn ends(band: Interval) -> (RotationalSpeed, RotationalSpeed) {
    let (low, high) = (band.low.floor() + 1.0, band.high.floor());
    if low <= high { (rpm(low), rpm(high)) } else { (rpm(band.low), rpm(band.high)) }
}

/// A band in words.
pub(super) fn shown(band: Interval) -> String {
    let (low, high) = ends(band);
    format!("{} to {}", low.show().shown, high.show().shown)
}
