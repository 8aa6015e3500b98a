//! Speed against time, of the start that shows most.

use crate::{
    cranking::{self, CrankingAnswer, CrankingInputs, StartCorner},
    quantity::{Measure, RotationalSpeed, rpm},
    questions::cranking::words,
    report::{Picture, picture::Timeline},
    say,
};

/// The corner that shows most: one that fails, or else the one that is latest.
fn corner(answer: &CrankingAnswer) -> usize {
    let badness = |corner: &StartCorner| {
        let lateness = corner.latest.map_or(0.0, |latest| latest.closed.base());
        (!corner.closes, corner.openings.count, corner.lost, lateness)
    };
    let mut worst = 0;
    for (at, one) in answer.corners.iter().enumerate() {
        let is_worse = answer.corners.get(worst).is_some_and(|it| badness(one) > badness(it));
        if is_worse {
            worst = at;
        }
    }
    worst
}

pub(super) fn picture(inputs: &CrankingInputs, answer: &CrankingAnswer) -> Option<Picture> {
    let threshold = inputs.threshold?;
    let at = corner(answer);
    let trace = cranking::trace(inputs, answer, at)?;
    let release: RotationalSpeed = inputs.release.of(threshold);
    let name = answer.corners.get(at).map_or("", |corner| corner.name.as_str());
    let mut marks = Vec::new();
    marks.extend(trace.closed.first().map(|closed| (closed.0, say!(words::MARK_POWER))));
    marks.extend(trace.sync_s.map(|at| (at, say!(words::MARK_SYNC))));
    marks.extend(trace.spark_s.map(|at| (at, say!(words::MARK_SPARK))));
    let end_s = trace.speed.last().map_or(0.0, |last| last.0);
    let openings = trace.closed.iter().map(|closed| closed.1).filter(|to| *to < end_s);
    marks.extend(openings.map(|at| (at, say!(words::MARK_OPENS))));
    crate::sorted::by(&mut marks, |one, other| one.0.total_cmp(&other.0));
    Some(Picture::Timeline(Timeline {
        caption: say!(words::PICTURE, corner = name, threshold = threshold, release = release),
        speed: trace.speed,
        measured: trace.measured,
        threshold_rpm: threshold.base(),
        release_rpm: rpm(release.base()).base(),
        closed: trace.closed,
        marks,
    }))
}
