//! All corners and all starts: what is worst, and which thresholds work everywhere.

use super::{
    Inputs, Release,
    course::{Course, Values, corners},
    run::{Reading, Run, commands, commands_with_gap_as_tooth},
    start::starts,
};
use crate::{
    quantity::{CrankAngle, Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Change, Interval, Steps, Switch, closures, without},
};

/// What happens at one corner, over every start.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// What the corner is called.
    pub name: String,
    /// Mean cranking speed there.
    pub mean: RotationalSpeed,
    /// Slowest true speed at full cranking speed.
    pub slowest: RotationalSpeed,
    /// Slowest reading at full cranking speed, wherever it begins.
    pub slowest_reading: RotationalSpeed,
    /// Longest time between two teeth at full cranking speed.
    pub longest_interval: Time,
    /// Whether the relay closes from every start.
    pub closes: bool,
    /// Power, from the start that closes the relay last; none where it never closes from some start, or where no
    /// threshold was given.
    pub latest: Option<Reach>,
    /// Power, from the start that closes the relay first; as `latest`.
    pub earliest_power: Option<Time>,
    /// The first spark that can come: from the best start and from the worst. None where it can't come at all.
    pub spark: Option<(Time, Time)>,
    /// From the best start: when the controller knows where the engine is, and the first spark.
    pub best_spark: Option<(Time, Time)>,
    /// First spark and power, from the start with the least margin.
    pub closest: Option<(Time, Time)>,
    /// From power and dwell to the first spark, from that start; below zero where that spark is lost.
    pub margin: Option<Time>,
    /// Most sparks lost.
    pub lost: usize,
    /// Longest wait between the first spark that could come and the first that is not lost.
    pub delay: Time,
    /// Most times that the contact opens again while the starter turns.
    pub openings: usize,
    /// The lowest reading after the relay was first switched on; none where it never is.
    pub lowest_once_on: Option<RotationalSpeed>,
    /// Openings of a controller that takes the gap for one slow tooth.
    pub openings_with_gap_as_tooth: usize,
    pub(super) values: Values,
}

/// A moment of a start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Where in the cycle the engine stood, from the first firing top dead centre.
    pub start: CrankAngle,
    /// When the last reading of the confirmation comes.
    pub confirmed: Time,
    /// When the contact closes.
    pub closed: Time,
    /// How far the engine has turned by then.
    pub turned: CrankAngle,
}

/// All corners, and the thresholds that work.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Survey {
    pub(super) corners: Vec<Corner>,
    pub(super) works: Option<Interval>,
    pub(super) prompt: Option<Interval>,
    pub(super) ends: Ends,
}

/// The bounds found, each in rpm, before the thresholds at which the relay lets go are taken out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ends {
    /// A rocking engine must not close the relay, and the release lies below the threshold.
    pub(super) lowest: f64,
    /// Every reading at full cranking speed must meet the threshold; less than any where the stall time-out cuts
    /// power there.
    pub(super) highest: f64,
    /// The threshold must be confirmed before the first spark from every start.
    pub(super) prompt: f64,
}

/// Thresholds, as they are narrowed down run by run, in rpm.
#[derive(Debug)]
struct Thresholds {
    whole: Interval,
    unsteady: Vec<Interval>,
    prompt: f64,
}

pub(super) fn survey(inputs: &Inputs, release: Release) -> Option<Survey> {
    let lowest = match release {
        Release::At(speed) => speed.base().max(inputs.rocking.high.base()),
        Release::Share(_) => inputs.rocking.high.base(),
    };
    let whole = Interval { low: lowest.max(0.0), high: f64::INFINITY };
    let mut thresholds = Thresholds { whole, unsteady: Vec::new(), prompt: f64::INFINITY };
    let mut readings = Vec::new();
    let mut surveyed = Vec::new();
    for values in corners(inputs) {
        let course = Course::new(inputs, values)?;
        let mut corner = Corner::new(inputs, &course);
        thresholds.narrow(&corner, inputs);
        for start_deg in starts(inputs, &course) {
            let run = Run::new(&course, start_deg);
            run.readings(inputs, &mut readings);
            thresholds.narrow_by_run(inputs, release, &run, &readings);
            corner.add(inputs, release, &run, &readings);
        }
        surveyed.push(corner);
    }
    let works = thresholds.works(inputs.threshold);
    let prompt = works
        .map(|works| Interval { high: works.high.min(thresholds.prompt), ..works })
        .filter(|prompt| !prompt.is_empty());
    let ends =
        Ends { lowest: whole.low, highest: thresholds.whole.high, prompt: thresholds.prompt };
    Some(Survey { corners: surveyed, works, prompt, ends })
}

impl Thresholds {
    fn narrow(&mut self, corner: &Corner, inputs: &Inputs) {
        self.whole.high = self.whole.high.min(corner.slowest_reading.base());
        if corner.longest_interval > inputs.stall_timeout.low {
            self.whole.high = f64::NEG_INFINITY;
        }
    }

    fn narrow_by_run(
        &mut self,
        inputs: &Inputs,
        release: Release,
        run: &Run<'_>,
        readings: &[Reading],
    ) {
        let series: Vec<_> = readings.iter().map(|reading| reading.rpm).collect();
        let steps = Steps::new(&series, inputs.confirmation);
        self.unsteady.extend(steps.unsteady(release.let_go()));
        let deadline_s = run.spark().map_or(f64::INFINITY, |spark| spark.first_s)
            - inputs.dwell.base()
            - inputs.relay.pull_in_time.high.base();
        let in_time = readings.partition_point(|reading| reading.time_s <= deadline_s);
        let highest = in_time.checked_sub(1).and_then(|last| steps.highest_by(last));
        self.prompt = self.prompt.min(highest.unwrap_or(f64::NEG_INFINITY));
    }

    /// The working thresholds about the one asked for, or else the widest.
    fn works(&self, asked: Option<RotationalSpeed>) -> Option<Interval> {
        let parts = without(self.whole, self.unsteady.clone());
        let about = asked.and_then(|asked| parts.iter().find(|part| part.holds(asked.base())));
        let widest = parts.iter().max_by(|one, other| one.ratio().total_cmp(&other.ratio()));
        about.or(widest).copied()
    }
}

impl Corner {
    fn new(inputs: &Inputs, course: &Course) -> Self {
        let values = course.values.clone();
        Self {
            name: values.name.clone(),
            mean: rpm(values.mean_rpm),
            slowest: rpm(values.mean_rpm * (1.0 - values.dip)),
            slowest_reading: rpm(course.slowest_reading(inputs.averaging)),
            longest_interval: seconds(course.longest_interval_s()),
            closes: true,
            latest: None,
            earliest_power: None,
            spark: None,
            best_spark: None,
            closest: None,
            margin: None,
            lost: 0,
            delay: seconds(0.0),
            openings: 0,
            lowest_once_on: None,
            openings_with_gap_as_tooth: 0,
            values,
        }
    }

    fn add(&mut self, inputs: &Inputs, release: Release, run: &Run<'_>, readings: &[Reading]) {
        let spark = run.spark();
        if let Some(spark) = spark {
            let at = seconds(spark.first_s);
            let (first, last) = self.spark.unwrap_or((at, at));
            self.spark = Some((first.min(at), last.max(at)));
            if self.best_spark.is_none_or(|best| at < best.1) {
                self.best_spark = Some((seconds(spark.sync_s), at));
            }
        }
        let Some(threshold) = inputs.threshold else { return };
        let off_below = release.of(threshold).base();
        let switch = Switch::new(threshold.base(), off_below, inputs.confirmation);
        let changes = commands(switch, readings);
        self.openings = self.openings.max(openings(inputs, &changes, readings));
        if let Some(lowest) = lowest_once_on(&changes, readings) {
            self.lowest_once_on = Some(self.lowest_once_on.map_or(lowest, |it| it.min(lowest)));
        }
        let naive = commands_with_gap_as_tooth(switch, readings);
        self.openings_with_gap_as_tooth =
            self.openings_with_gap_as_tooth.max(openings(inputs, &naive, readings));
        let Some(reach) = reach(inputs, run, &changes, readings) else {
            self.closes = false;
            return;
        };
        if self.latest.is_none_or(|latest| reach.closed > latest.closed) {
            self.latest = Some(reach);
        }
        self.earliest_power =
            Some(self.earliest_power.map_or(reach.closed, |it| it.min(reach.closed)));
        let Some(spark) = spark else { return };
        let ready_s = reach.closed.base() + inputs.dwell.base();
        let margin = seconds(spark.first_s - ready_s);
        if self.margin.is_none_or(|least| margin < least) {
            (self.margin, self.closest) =
                (Some(margin), Some((seconds(spark.first_s), reach.closed)));
        }
        let (lost, kept_s) = run.lost(spark, ready_s);
        self.lost = self.lost.max(lost);
        self.delay = self.delay.max(seconds(kept_s - spark.first_s));
    }
}

/// The contact over a run; its pull-in as slow, its drop-out as quick as it may be.
pub(super) fn contact(
    inputs: &Inputs,
    changes: &[Change],
    readings: &[Reading],
) -> Vec<(f64, f64)> {
    let pull_in_s = inputs.relay.pull_in_time.high.base();
    let end_s = readings.last().map_or(0.0, |last| last.time_s);
    // a command given at the very end is still followed
    closures(changes, pull_in_s, inputs.relay.drop_out_time.low.base(), end_s + pull_in_s)
}

fn openings(inputs: &Inputs, changes: &[Change], readings: &[Reading]) -> usize {
    if changes.len() < 2 {
        return 0;
    }
    let end_s = readings.last().map_or(0.0, |last| last.time_s);
    contact(inputs, changes, readings).iter().filter(|closure| closure.1 < end_s).count()
}

fn lowest_once_on(changes: &[Change], readings: &[Reading]) -> Option<RotationalSpeed> {
    let on_s = changes.first()?.time_s;
    let after = readings.iter().filter(|reading| reading.time_s > on_s);
    after.map(|reading| rpm(reading.rpm.unwrap_or(0.0))).reduce(RotationalSpeed::min)
}

fn reach(
    inputs: &Inputs,
    run: &Run<'_>,
    changes: &[Change],
    readings: &[Reading],
) -> Option<Reach> {
    let closed_s = contact(inputs, changes, readings).first()?.0;
    Some(Reach {
        start: CrankAngle::new(run.start_deg),
        confirmed: seconds(closed_s - inputs.relay.pull_in_time.high.base()),
        closed: seconds(closed_s),
        turned: CrankAngle::new(run.turned_deg(closed_s)),
    })
}

/// See [`super::serves`].
pub(super) fn serves(inputs: &Inputs, threshold: RotationalSpeed) -> bool {
    let release = inputs.release.of(threshold);
    if release >= threshold || threshold <= inputs.rocking.high {
        return false;
    }
    let switch = Switch::new(threshold.base(), release.base(), inputs.confirmation);
    let mut readings = Vec::new();
    corners(inputs).into_iter().all(|values| {
        let Some(course) = Course::new(inputs, values) else { return false };
        let waits_for_crest = threshold.base() > course.slowest_reading(inputs.averaging);
        let is_silent = course.longest_interval_s() > inputs.stall_timeout.low.base();
        !waits_for_crest
            && !is_silent
            && starts(inputs, &course).into_iter().all(|start_deg| {
                Run::new(&course, start_deg).readings(inputs, &mut readings);
                // on once, and never off again
                commands(switch, &readings).len() == 1
            })
    })
}
