//! One start as a curve.

use super::{
    CrankingInputs,
    course::{Course, valleys},
    readings::StartReadings,
    run::{Run, SpeedReading},
    survey::{StartCorner, contact},
};
use crate::{quantity::Measure, timeline::Switch};

/// Points of the true speed.
const SPEED_POINTS: u32 = 300;

/// Most readings; of more, the lowest and the highest of each of these many groups are kept.
const READING_GROUPS: usize = 200;

/// Speed against time for one start, in seconds and rpm.
#[derive(Clone, Debug, PartialEq)]
pub struct Trace {
    /// True speed.
    pub speed: Vec<(f64, f64)>,
    /// The readings; nought in silence.
    pub measured: Vec<(f64, f64)>,
    /// When the contact is closed.
    pub closed: Vec<(f64, f64)>,
    /// When the controller knows where the engine is.
    pub sync_s: Option<f64>,
    /// The first firing top dead centre after that.
    pub spark_s: Option<f64>,
}

pub(super) fn trace(inputs: &CrankingInputs, corner: &StartCorner) -> Option<Trace> {
    let course = Course::new(inputs, &valleys(inputs), corner.values.clone())?;
    let start_deg = corner.latest.map_or(0.0, |latest| latest.start.degrees());
    let run = Run::new(&course, start_deg);
    let of_run = StartReadings::new(run, inputs);
    let readings: Vec<_> = of_run.all().collect();
    let spark = run.spark();
    let end_s = readings
        .last()
        .map_or(course.values.run_up_s + course.wave.period_s(), |last| last.time_s)
        .max(spark.map_or(0.0, |spark| spark.first_s));
    let closed = inputs.threshold.map_or_else(Vec::new, |threshold| {
        let off_below = inputs.release.of(threshold).base();
        let switch = Switch::new(threshold.base(), off_below, inputs.confirmation);
        let closed = contact(inputs, &of_run.commands(switch).heard, of_run.end_s());
        closed.into_iter().map(|(from, to)| (from, to.min(end_s))).collect()
    });
    let times = (0..=SPEED_POINTS).map(|n| end_s * f64::from(n) / f64::from(SPEED_POINTS));
    Some(Trace {
        speed: times.map(|time| (time, run.true_rpm(time))).collect(),
        measured: thinned(&readings),
        closed,
        sync_s: spark.map(|spark| spark.sync_s),
        spark_s: spark.map(|spark| spark.first_s),
    })
}

fn thinned(readings: &[SpeedReading]) -> Vec<(f64, f64)> {
    let points: Vec<_> =
        readings.iter().map(|reading| (reading.time_s, reading.rpm.unwrap_or(0.0))).collect();
    if points.len() <= 2 * READING_GROUPS {
        return points;
    }
    let mut kept = Vec::new();
    for group in points.chunks(points.len().div_ceil(READING_GROUPS)) {
        let low = group.iter().min_by(|one, other| one.1.total_cmp(&other.1));
        let high = group.iter().max_by(|one, other| one.1.total_cmp(&other.1));
        let (Some(&low), Some(&high)) = (low, high) else { continue };
        kept.extend(if low.0 < high.0 { [low, high] } else { [high, low] });
    }
    kept
}
