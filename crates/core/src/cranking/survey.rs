//! All corners and all starts: what is worst, and which thresholds work everywhere.

use super::{
    CrankingInputs, Release, cost,
    course::{Course, Values},
    follow::{CornerStarts, Starts},
    readings::StartReadings,
    run::Run,
};
use crate::{
    budget::Budget,
    counted,
    quantity::{CrankAngle, Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Interval, Switch, SwitchChange, closures, without},
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
}

/// See [`Starts::outline`].
pub(super) fn outline(starts: &Starts, inputs: &CrankingInputs) -> Survey {
    let outlined = |it: &CornerStarts| {
        let mut corner = StartCorner::new(&it.course);
        // while the speed rises a reading is slower than it will be there
        corner.closes = inputs.threshold.is_none_or(|it| it <= corner.fastest_reading);
        corner
    };
    let corners = starts.corners.iter().map(outlined).collect();
    let ends = Ends { lowest: f64::NEG_INFINITY, highest: f64::INFINITY, prompt: f64::INFINITY };
    Survey { corners, works: None, prompt: None, ends, bounds: Bounds::default() }
}

/// Nothing where that is more than may be spent.
pub(super) fn survey(
    starts: &Starts,
    inputs: &CrankingInputs,
    release: Release,
    budget: &Budget,
) -> Option<Survey> {
    let mut corners: Vec<_> =
        starts.corners.iter().map(|it| StartCorner::new(&it.course)).collect();
    let mut thresholds = Thresholds::new(starts, &corners, inputs, release);
    for (of_corner, corner) in starts.corners.iter().zip(&mut corners) {
        for run in of_corner.runs() {
            let readings = StartReadings::new(run, inputs);
            thresholds.hurry(inputs, &run, &readings);
            corner.add(inputs, release, &run, &readings);
            counted::count(|done| done.teeth += readings.timed());
            budget.take(cost::START + readings.timed().saturating_mul(cost::SINGLE_TOOTH))?;
        }
    }
    let works = thresholds.works(inputs.threshold);
    let prompt = works
        .map(|works| Interval { high: works.high.min(thresholds.prompt), ..works })
        .filter(|prompt| !prompt.is_empty());
    let ends = Ends {
        lowest: thresholds.whole.low,
        highest: thresholds.whole.high,
        prompt: thresholds.prompt,
    };
    let bounds = works.map_or_else(Bounds::default, |works| thresholds.bounds(works, &corners));
    Some(Survey { corners, works, prompt, ends, bounds })
}

/// See [`Starts::works_with`].
pub(super) fn works_with(
    starts: &Starts,
    inputs: &CrankingInputs,
    release: Release,
) -> Option<Interval> {
    let corners: Vec<_> = starts.corners.iter().map(|it| StartCorner::new(&it.course)).collect();
    Thresholds::new(starts, &corners, inputs, release).works(inputs.threshold)
}

impl Thresholds {
    fn new(
        starts: &Starts,
        corners: &[StartCorner],
        inputs: &CrankingInputs,
        release: Release,
    ) -> Self {
        let lowest = match release {
            Release::At(speed) => speed.base().max(inputs.rocking.high.base()),
            Release::Share(_) => inputs.rocking.high.base(),
        };
        let whole = Interval { low: lowest.max(0.0), high: f64::INFINITY };
        let mut thresholds =
            Self { whole, unsteady: Vec::new(), prompt: f64::INFINITY, slowest_at: 0 };
        for (at, (corner, starts)) in corners.iter().zip(&starts.corners).enumerate() {
            thresholds.narrow(at, corner, inputs);
            let unsteady = starts.reach.levels.unsteady(release.let_go());
            thresholds.unsteady.extend(unsteady.into_iter().map(|it| (it, at)));
        }
        thresholds
    }

    fn narrow(&mut self, at: usize, corner: &StartCorner, inputs: &CrankingInputs) {
        let slowest = corner.slowest_reading.base();
        if slowest < self.whole.high {
            (self.whole.high, self.slowest_at) = (slowest, at);
        }
        if corner.longest_interval > inputs.stall_timeout.low {
            self.whole.high = f64::NEG_INFINITY;
        }
    }

    /// The threshold must be confirmed in time for the first spark.
    fn hurry(&mut self, inputs: &CrankingInputs, run: &Run<'_>, readings: &StartReadings<'_>) {
        let deadline_s = run.spark().map_or(f64::INFINITY, |spark| spark.first_s)
            - inputs.dwell.base()
            - inputs.relay.pull_in_time.high.base();
        self.prompt = self.prompt.min(readings.highest_by(deadline_s, inputs.confirmation));
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
    fn new(course: &Course) -> Self {
        let (values, pace) = (course.values.clone(), course.pace);
        Self {
            name: values.name.clone(),
            mean: rpm(values.mean_rpm),
            slowest: rpm(values.mean_rpm * (1.0 - values.dip)),
            slowest_reading: rpm(pace.slowest),
            fastest_reading: rpm(pace.fastest),
            longest_interval: seconds(pace.longest_s),
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
        readings: &StartReadings<'_>,
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
        let (commands, end_s) = (readings.commands(switch), readings.end_s());
        self.openings = self.openings.max(openings(inputs, run, &commands.heard, end_s));
        if commands.silence_s > 0.0 {
            let silence = seconds(commands.silence_s);
            self.silence = Some(self.silence.map_or(silence, |it| it.max(silence)));
        }
        if let Some(lowest) = readings.lowest_once_on(&commands).map(rpm) {
            self.lowest_once_on = Some(self.lowest_once_on.map_or(lowest, |it| it.min(lowest)));
        }
        self.openings_with_gap_as_tooth =
            self.openings_with_gap_as_tooth.max(openings(inputs, run, &commands.with_gap, end_s));
        let Some(reach) = reach(inputs, run, &commands.heard, end_s) else {
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

/// The contact over a run whose last reading comes at `end_s`; its pull-in as slow, its drop-out as quick as it may be.
pub(super) fn contact(
    inputs: &CrankingInputs,
    changes: &[SwitchChange],
    end_s: f64,
) -> Vec<(f64, f64)> {
    let pull_in_s = inputs.relay.pull_in_time.high.base();
    // a command given at the very end is still followed
    closures(changes, pull_in_s, inputs.relay.drop_out_time.low.base(), end_s + pull_in_s)
}

fn openings(
    inputs: &CrankingInputs,
    run: &Run<'_>,
    changes: &[SwitchChange],
    end_s: f64,
) -> Openings {
    if changes.len() < 2 {
        return Openings::default();
    }
    let laps_s = run.laps_s(inputs);
    let (mut count, mut in_laps) = (0, 0_u32);
    for (_, opens_s) in contact(inputs, changes, end_s) {
        count += usize::from(opens_s < end_s);
        in_laps += u32::from(opens_s < end_s && opens_s >= end_s - laps_s);
    }
    Openings { count, a_second: f64::from(in_laps) / laps_s }
}

fn reach(
    inputs: &CrankingInputs,
    run: &Run<'_>,
    changes: &[SwitchChange],
    end_s: f64,
) -> Option<StartMoment> {
    let closed_s = contact(inputs, changes, end_s).first()?.0;
    Some(StartMoment {
        start: CrankAngle::new(run.start_deg),
        confirmed: seconds(closed_s - inputs.relay.pull_in_time.high.base()),
        closed: seconds(closed_s),
        turned: CrankAngle::new(run.turned_deg(closed_s)),
    })
}

/// See [`Starts::serves`].
///
/// On once and never off again: it goes on from every start, and no start takes the readings below its release then.
pub(super) fn serves(starts: &Starts, inputs: &CrankingInputs, threshold: RotationalSpeed) -> bool {
    let release = inputs.release.of(threshold);
    if release > threshold || threshold <= inputs.rocking.high {
        return false;
    }
    let threshold = threshold.base();
    starts.corners.iter().all(|corner| {
        let pace = corner.course.pace;
        threshold <= pace.slowest
            && pace.longest_s <= inputs.stall_timeout.low.base()
            && threshold <= corner.reach.highest
            && corner.reach.levels.at(threshold) >= release.base()
    })
}

/// See [`Starts::releases`].
pub(super) fn releases(
    starts: &Starts,
    inputs: &CrankingInputs,
    threshold: RotationalSpeed,
) -> Option<Interval> {
    let threshold = threshold.base();
    let each = starts.corners.iter().map(|corner| corner.reach.levels.at(threshold));
    let band = Interval { low: inputs.rocking.high.base(), high: each.fold(threshold, f64::min) };
    (!band.is_empty()).then_some(band)
}

/// See [`Starts::readings_at_corners`].
pub(super) fn fastest(starts: &Starts) -> Vec<(String, RotationalSpeed)> {
    let courses = starts.corners.iter().map(|it| &it.course);
    courses.map(|it| (it.values.name.clone(), rpm(it.pace.fastest))).collect()
}
