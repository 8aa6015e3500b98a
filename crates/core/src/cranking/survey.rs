//! All corners and all starts: what is worst, and which thresholds work everywhere.

use super::{
    CrankingInputs, Release,
    course::{Course, Values, courses},
    run::{Run, SpeedReading, commands, commands_with_gap_as_tooth},
    start::starts,
};
use crate::{
    quantity::{CrankAngle, Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Interval, Steps, Switch, SwitchChange, closures, without},
};

/// What happens at one corner, over every start.
#[derive(Clone, Debug, PartialEq)]
pub struct StartCorner {
    /// What the corner is called.
    pub name: String,
    /// Mean cranking speed there.
    pub mean: RotationalSpeed,
    /// Slowest true speed at full cranking speed.
    pub slowest: RotationalSpeed,
    /// Slowest reading at full cranking speed, wherever it begins.
    pub slowest_reading: RotationalSpeed,
    /// Fastest reading at full cranking speed, wherever it begins.
    pub fastest_reading: RotationalSpeed,
    /// Longest time between two teeth at full cranking speed.
    pub longest_interval: Time,
    /// Whether the relay closes from every start.
    pub closes: bool,
    /// Power, from the start that closes the relay last; none where it never closes from some start, or where no
    /// threshold was given.
    pub latest: Option<StartMoment>,
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
    /// How often the contact opens again while the starter turns, at most.
    pub openings: Openings,
    /// The longest time without a tooth that opens it, the time-out or longer; none where none does.
    pub silence: Option<Time>,
    /// Starts from which the contact closes, and those of them in which a cylinder is then on its compression stroke.
    pub closings: (usize, usize),
    /// The lowest reading after the relay was first switched on, silence left aside; none where it never is.
    pub lowest_once_on: Option<RotationalSpeed>,
    /// Openings of a controller that takes the gap for one slow tooth.
    pub openings_with_gap_as_tooth: Openings,
    pub(super) values: Values,
}

/// How often the contact opens again.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Openings {
    /// In a start that is followed until the speed has been at its full course for a cycle or two.
    pub count: usize,
    /// A second, for as long as the starter turns at full speed; nought where it only does so before.
    pub a_second: f64,
}

impl Openings {
    /// The more of both.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        Self { count: self.count.max(other.count), a_second: self.a_second.max(other.a_second) }
    }
}

/// A moment of a start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StartMoment {
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
    pub(super) corners: Vec<StartCorner>,
    pub(super) works: Option<Interval>,
    pub(super) prompt: Option<Interval>,
    pub(super) ends: Ends,
    pub(super) bounds: Bounds,
}

/// What bounds the thresholds that work, by the names of the corners; blank where none does.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bounds {
    /// The corner that bounds them below: there the relay lets go again after a start.
    pub low: String,
    /// The corner that bounds them above.
    pub high: String,
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
    /// Each with the place of its corner.
    unsteady: Vec<(Interval, usize)>,
    prompt: f64,
    /// The place of the corner whose slowest reading is the least.
    slowest_at: usize,
    corner: usize,
}

/// See [`super::outline`].
pub(super) fn outline(inputs: &CrankingInputs) -> Option<Survey> {
    let outlined = |course: Option<Course>| {
        let mut corner = StartCorner::new(inputs, &course?);
        // while the speed rises a reading is slower than it will be there
        corner.closes = inputs.threshold.is_none_or(|it| it <= corner.fastest_reading);
        Some(corner)
    };
    let corners = courses(inputs).map(outlined).collect::<Option<Vec<_>>>()?;
    let ends = Ends { lowest: f64::NEG_INFINITY, highest: f64::INFINITY, prompt: f64::INFINITY };
    Some(Survey { corners, works: None, prompt: None, ends, bounds: Bounds::default() })
}

pub(super) fn survey(inputs: &CrankingInputs, release: Release) -> Option<Survey> {
    let lowest = match release {
        Release::At(speed) => speed.base().max(inputs.rocking.high.base()),
        Release::Share(_) => inputs.rocking.high.base(),
    };
    let whole = Interval { low: lowest.max(0.0), high: f64::INFINITY };
    let mut thresholds =
        Thresholds { whole, unsteady: Vec::new(), prompt: f64::INFINITY, slowest_at: 0, corner: 0 };
    let mut readings = Vec::new();
    let mut surveyed = Vec::new();
    for course in courses(inputs) {
        let course = course?;
        let mut corner = StartCorner::new(inputs, &course);
        thresholds.narrow(&corner, inputs);
        for start_deg in starts(inputs, &course) {
            let run = Run::new(&course, start_deg);
            run.readings(inputs, &mut readings);
            thresholds.narrow_by_run(inputs, release, &run, &readings);
            corner.add(inputs, release, &run, &readings);
        }
        surveyed.push(corner);
        thresholds.corner += 1;
    }
    let works = thresholds.works(inputs.threshold);
    let prompt = works
        .map(|works| Interval { high: works.high.min(thresholds.prompt), ..works })
        .filter(|prompt| !prompt.is_empty());
    let ends =
        Ends { lowest: whole.low, highest: thresholds.whole.high, prompt: thresholds.prompt };
    let bounds = works.map_or_else(Bounds::default, |works| thresholds.bounds(works, &surveyed));
    Some(Survey { corners: surveyed, works, prompt, ends, bounds })
}

impl Thresholds {
    fn narrow(&mut self, corner: &StartCorner, inputs: &CrankingInputs) {
        let slowest = corner.slowest_reading.base();
        if slowest < self.whole.high {
            (self.whole.high, self.slowest_at) = (slowest, self.corner);
        }
        if corner.longest_interval > inputs.stall_timeout.low {
            self.whole.high = f64::NEG_INFINITY;
        }
    }

    fn narrow_by_run(
        &mut self,
        inputs: &CrankingInputs,
        release: Release,
        run: &Run<'_>,
        readings: &[SpeedReading],
    ) {
        let series: Vec<_> = readings.iter().map(|reading| reading.rpm).collect();
        let steps = Steps::new(&series, inputs.confirmation);
        let unsteady = steps.unsteady(release.let_go());
        self.unsteady.extend(unsteady.into_iter().map(|it| (it, self.corner)));
        let deadline_s = run.spark().map_or(f64::INFINITY, |spark| spark.first_s)
            - inputs.dwell.base()
            - inputs.relay.pull_in_time.high.base();
        let in_time = readings.partition_point(|reading| reading.time_s <= deadline_s);
        let highest = in_time.checked_sub(1).and_then(|last| steps.highest_by(last));
        self.prompt = self.prompt.min(highest.unwrap_or(f64::NEG_INFINITY));
    }

    /// The working thresholds about the one asked for, or else the widest.
    fn works(&self, asked: Option<RotationalSpeed>) -> Option<Interval> {
        let parts = without(self.whole, self.unsteady.iter().map(|it| it.0).collect());
        let about = asked.and_then(|asked| parts.iter().find(|part| part.holds(asked.base())));
        let widest = parts.iter().max_by(|one, other| one.ratio().total_cmp(&other.ratio()));
        about.or(widest).copied()
    }

    /// The corners at the ends of what works.
    fn bounds(&self, works: Interval, corners: &[StartCorner]) -> Bounds {
        let name = |at: usize| corners.get(at).map(|it| it.name.clone()).unwrap_or_default();
        let at = |end: fn(&Interval) -> f64, value: f64| {
            let same = |it: &&(Interval, usize)| (end(&it.0) - value).abs() <= 1e-9 * value;
            self.unsteady.iter().find(same).map(|it| name(it.1))
        };
        let is_slowest = works.high >= self.whole.high;
        let high = if is_slowest { None } else { at(|it| it.low, works.high) };
        let is_lowest = works.low <= self.whole.low;
        let low = if is_lowest { None } else { at(|it| it.high, works.low) };
        Bounds { low: low.unwrap_or_default(), high: high.unwrap_or_else(|| name(self.slowest_at)) }
    }
}

impl StartCorner {
    fn new(inputs: &CrankingInputs, course: &Course) -> Self {
        let values = course.values.clone();
        let (slowest, fastest) = course.extreme_readings(inputs.averaging);
        Self {
            name: values.name.clone(),
            mean: rpm(values.mean_rpm),
            slowest: rpm(values.mean_rpm * (1.0 - values.dip)),
            slowest_reading: rpm(slowest),
            fastest_reading: rpm(fastest),
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
            openings: Openings::default(),
            silence: None,
            closings: (0, 0),
            lowest_once_on: None,
            openings_with_gap_as_tooth: Openings::default(),
            values,
        }
    }

    fn add(
        &mut self,
        inputs: &CrankingInputs,
        release: Release,
        run: &Run<'_>,
        readings: &[SpeedReading],
    ) {
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
        self.openings = self.openings.max(openings(inputs, run, &changes, readings));
        self.silence = longer(self.silence, longest_silence(&changes, readings));
        if let Some(lowest) = lowest_once_on(&changes, readings) {
            self.lowest_once_on = Some(self.lowest_once_on.map_or(lowest, |it| it.min(lowest)));
        }
        let naive = commands_with_gap_as_tooth(switch, readings);
        self.openings_with_gap_as_tooth =
            self.openings_with_gap_as_tooth.max(openings(inputs, run, &naive, readings));
        let Some(reach) = reach(inputs, run, &changes, readings) else {
            self.closes = false;
            return;
        };
        if self.latest.is_none_or(|latest| reach.closed > latest.closed) {
            self.latest = Some(reach);
        }
        self.closings.0 += 1;
        if run.is_compressing(reach.turned.degrees()) {
            self.closings.1 += 1;
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
    inputs: &CrankingInputs,
    changes: &[SwitchChange],
    readings: &[SpeedReading],
) -> Vec<(f64, f64)> {
    let pull_in_s = inputs.relay.pull_in_time.high.base();
    let end_s = readings.last().map_or(0.0, |last| last.time_s);
    // a command given at the very end is still followed
    closures(changes, pull_in_s, inputs.relay.drop_out_time.low.base(), end_s + pull_in_s)
}

fn openings(
    inputs: &CrankingInputs,
    run: &Run<'_>,
    changes: &[SwitchChange],
    readings: &[SpeedReading],
) -> Openings {
    if changes.len() < 2 {
        return Openings::default();
    }
    let end_s = readings.last().map_or(0.0, |last| last.time_s);
    let laps_s = run.laps_s(inputs);
    let (mut count, mut in_laps) = (0, 0_u32);
    for (_, opens_s) in contact(inputs, changes, readings) {
        count += usize::from(opens_s < end_s);
        in_laps += u32::from(opens_s < end_s && opens_s >= end_s - laps_s);
    }
    Openings { count, a_second: f64::from(in_laps) / laps_s }
}

fn longer(one: Option<Time>, other: Option<Time>) -> Option<Time> {
    one.into_iter().chain(other).reduce(Time::max)
}

/// The longest time without a tooth that switches the relay off once it is on.
fn longest_silence(changes: &[SwitchChange], readings: &[SpeedReading]) -> Option<Time> {
    let offs = changes.iter().filter(|it| !it.is_on).map(|it| it.time_s);
    let silences = offs.filter_map(|off_s| {
        let at = readings.partition_point(|reading| reading.time_s < off_s);
        readings.get(at).map(|reading| reading.silence_s).filter(|it| *it > 0.0)
    });
    silences.map(seconds).reduce(Time::max)
}

fn lowest_once_on(changes: &[SwitchChange], readings: &[SpeedReading]) -> Option<RotationalSpeed> {
    let on_s = changes.first()?.time_s;
    let after = readings.iter().filter(|reading| reading.time_s > on_s);
    after.filter_map(|reading| reading.rpm).map(rpm).reduce(RotationalSpeed::min)
}

fn reach(
    inputs: &CrankingInputs,
    run: &Run<'_>,
    changes: &[SwitchChange],
    readings: &[SpeedReading],
) -> Option<StartMoment> {
    let closed_s = contact(inputs, changes, readings).first()?.0;
    Some(StartMoment {
        start: CrankAngle::new(run.start_deg),
        confirmed: seconds(closed_s - inputs.relay.pull_in_time.high.base()),
        closed: seconds(closed_s),
        turned: CrankAngle::new(run.turned_deg(closed_s)),
    })
}

/// See [`super::serves`].
pub(super) fn serves(inputs: &CrankingInputs, threshold: RotationalSpeed) -> bool {
    let release = inputs.release.of(threshold);
    if release > threshold || threshold <= inputs.rocking.high {
        return false;
    }
    let switch = Switch::new(threshold.base(), release.base(), inputs.confirmation);
    let mut readings = Vec::new();
    courses(inputs).all(|course| {
        let Some(course) = course else { return false };
        let waits_for_crest = threshold.base() > course.extreme_readings(inputs.averaging).0;
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

/// See [`super::releases`].
pub(super) fn releases(inputs: &CrankingInputs, threshold: RotationalSpeed) -> Option<Interval> {
    let mut readings = Vec::new();
    let mut high = threshold.base();
    for course in courses(inputs) {
        let course = course?;
        for start_deg in starts(inputs, &course) {
            Run::new(&course, start_deg).readings(inputs, &mut readings);
            let series: Vec<_> = readings.iter().map(|reading| reading.rpm).collect();
            let lowest = Steps::new(&series, inputs.confirmation).lowest_once_on(threshold.base());
            high = high.min(lowest.unwrap_or(f64::INFINITY));
        }
    }
    let band = Interval { low: inputs.rocking.high.base(), high };
    (!band.is_empty()).then_some(band)
}

/// See [`super::readings_at_corners`].
pub(super) fn fastest(inputs: &CrankingInputs) -> Vec<(String, RotationalSpeed)> {
    courses(inputs)
        .flatten()
        .map(|it| (it.values.name.clone(), rpm(it.extreme_readings(inputs.averaging).1)))
        .collect()
}
