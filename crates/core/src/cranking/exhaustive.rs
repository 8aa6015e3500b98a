//! The starts looked at reading by reading, as nothing is left out: what is worked out with bounds must be the same, to the
//! last bit.

use std::collections::VecDeque;

use super::{
    Average, CrankingInputs, Openings, Release, StartCorner, StartMoment,
    course::{Course, Passing, courses},
    run::Run,
    start::starts,
    survey::{Bounds, Ends, Survey},
};
use crate::{
    quantity::{CrankAngle, Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Fall, Interval, LetGo, Switch, SwitchChange, closures, without},
};

/// One reading of the speed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Reading {
    time_s: f64,
    /// In rpm; none where no tooth came for the stall time-out.
    rpm: Option<f64>,
    /// What it would be if the gap were taken for one slow tooth.
    gap_as_tooth: Option<f64>,
    /// The time without a tooth in it that was the time-out or longer; nought where none was.
    silence_s: f64,
}

/// A threshold up to which a switch goes on at a reading, and not before.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Record {
    /// The place of the reading in the series.
    at: usize,
    /// The highest threshold that it reaches.
    threshold: f64,
}

/// The records of a series: the reading at which a switch goes on, for every threshold.
#[derive(Clone, Debug, PartialEq)]
struct Steps {
    /// The records, both rising.
    reaches: Vec<Record>,
    /// For each place in the series, the lowest reading that `agree` in a row from there on stay at or below;
    /// less than any where silence follows.
    lowest_after: Vec<f64>,
}

impl Steps {
    /// The records of a series, `None` being silence, for a switch that wants `agree` readings in a row.
    fn new(readings: &[Option<f64>], agree: u32) -> Self {
        let agree = usize::try_from(agree.max(1)).unwrap_or(usize::MAX);
        let mut reaches: Vec<Record> = Vec::new();
        for (at, window) in readings.windows(agree).enumerate() {
            let threshold = extreme(window, f64::INFINITY, f64::min);
            if threshold > reaches.last().map_or(f64::NEG_INFINITY, |last| last.threshold) {
                reaches.push(Record { at: at + agree - 1, threshold });
            }
        }
        Self { reaches, lowest_after: lowest_after(readings, agree) }
    }

    /// The highest threshold at which the switch is on by a reading; nothing where none is.
    fn highest_by(&self, at: usize) -> Option<f64> {
        let count = self.reaches.partition_point(|reach| reach.at <= at);
        self.reaches.get(count.checked_sub(1)?).map(|reach| reach.threshold)
    }

    /// The lowest reading that as many in a row as must agree stay at or below once a switch with this threshold is on;
    /// less than any where silence follows, nothing where it never goes on.
    fn lowest_once_on(&self, threshold: f64) -> Option<f64> {
        let reach = self.reaches.iter().find(|reach| reach.threshold >= threshold)?;
        Some(self.lowest_after.get(reach.at + 1).copied().unwrap_or(f64::INFINITY))
    }

    /// The thresholds at which the switch goes on and off again.
    fn unsteady(&self, let_go: LetGo) -> Vec<Interval> {
        let mut below = f64::NEG_INFINITY;
        let mut all = Vec::new();
        for reach in &self.reaches {
            let lowest = self.lowest_after.get(reach.at + 1).copied().unwrap_or(f64::INFINITY);
            let lets_go =
                if lowest == f64::NEG_INFINITY { lowest } else { lets_go_above(let_go, lowest) };
            let one = Interval { low: below.max(lets_go), high: reach.threshold };
            if !one.is_empty() {
                all.push(one);
            }
            below = reach.threshold;
        }
        all
    }
}

fn extreme(window: &[Option<f64>], start: f64, f: impl Fn(f64, f64) -> f64) -> f64 {
    window.iter().fold(start, |so_far, reading| f(so_far, reading.unwrap_or(f64::NEG_INFINITY)))
}

fn lowest_after(readings: &[Option<f64>], agree: usize) -> Vec<f64> {
    let mut lowest = f64::INFINITY;
    let mut all = vec![lowest; readings.len()];
    for (at, place) in all.iter_mut().enumerate().rev() {
        if let Some(window) = readings.get(at..at.saturating_add(agree)) {
            lowest = lowest.min(extreme(window, f64::NEG_INFINITY, f64::max));
        }
        if readings.get(at) == Some(&None) {
            lowest = f64::NEG_INFINITY;
        }
        *place = lowest;
    }
    all
}

/// The lowest threshold above which a reading lets go.
fn lets_go_above(let_go: LetGo, reading: f64) -> f64 {
    match let_go {
        LetGo::Share(share) if share > 0.0 => reading / share,
        LetGo::Below(level) if reading < level => f64::NEG_INFINITY,
        LetGo::Share(_) | LetGo::Below(_) => f64::INFINITY,
    }
}

/// The readings, until the speed has been at its full course long enough for anything to show.
fn readings_of(run: &Run<'_>, inputs: &CrankingInputs) -> Vec<Reading> {
    let mut readings = Vec::new();
    let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
    let confirmation = usize::try_from(inputs.confirmation.max(1)).unwrap_or(1);
    let laps = if averaging == 1 { 1 } else { 2 };
    let mut still = averaging * (confirmation + 1) + laps * run.teeth_of_cycle();
    let timeout_s = inputs.stall_timeout.low.base();
    let Some(first) = run.tooth(0) else { return readings };
    let mut last_s = run.time_s(first);
    // the teeth of the next reading, and the last of them that came after the time-out
    let mut window = VecDeque::from([(first, last_s)]);
    let (mut count, mut silent_at, mut silence_s) = (1, 0, 0.0_f64);
    while let Some(tooth) = run.tooth(count).filter(|_| still > 0) {
        let time_s = run.time_s(tooth);
        if count >= silent_at + averaging {
            silence_s = 0.0;
        }
        if time_s - last_s > timeout_s {
            (silent_at, silence_s) = (count, silence_s.max(time_s - last_s));
        }
        window.push_back((tooth, time_s));
        if window.len() > averaging {
            let from = window.pop_front().unwrap_or((first, last_s));
            readings.push(reading(inputs, from, (tooth, time_s), silence_s));
            if inputs.average == Average::Blocks {
                window.clear();
                window.push_back((tooth, time_s));
                silence_s = 0.0;
            }
        }
        if time_s > run.run_up_s() {
            still -= 1;
        }
        last_s = time_s;
        count += 1;
    }
    readings
}

fn reading(
    inputs: &CrankingInputs,
    (from, from_s): (Passing, f64),
    (to, to_s): (Passing, f64),
    silence_s: f64,
) -> Reading {
    let heard = |degrees: f64| (silence_s <= 0.0).then(|| degrees / 6.0 / (to_s - from_s));
    let pitch_deg = 360.0 / f64::from(inputs.wheel.positions.max(1));
    Reading {
        time_s: to_s,
        rpm: heard(to.angle_deg - from.angle_deg),
        gap_as_tooth: heard(pitch_deg * f64::from(inputs.averaging.max(1))),
        silence_s,
    }
}

/// The commands that follow from readings.
fn commands(switch: Switch, readings: &[Reading]) -> Vec<SwitchChange> {
    switch.changes(readings.iter().map(|reading| (reading.time_s, reading.rpm)))
}

/// The commands of a controller that takes the gap for one slow tooth.
fn commands_with_gap_as_tooth(switch: Switch, readings: &[Reading]) -> Vec<SwitchChange> {
    switch.changes(readings.iter().map(|reading| (reading.time_s, reading.gap_as_tooth)))
}

/// The slowest and the fastest reading over `count` tooth intervals at full cranking speed, in rpm, wherever they
/// begin.
fn extreme_readings(course: &Course, count: u32) -> (f64, f64) {
    let count = usize::try_from(count).unwrap_or(usize::MAX);
    let readings = (0..course.teeth.len()).filter_map(|at| {
        let (from, to) =
            (course.later(&course.teeth, at, 0)?, course.later(&course.teeth, at, count)?);
        Some((to.angle_deg - from.angle_deg) / (to.progress_s - from.progress_s) / 6.0)
    });
    readings.fold((f64::INFINITY, 0.0), |(low, high), it| (low.min(it), high.max(it)))
}

/// The longest time between two teeth at full cranking speed, in seconds.
fn longest_interval_s(course: &Course) -> f64 {
    let intervals = (0..course.teeth.len()).filter_map(|at| {
        let (from, to) = (course.later(&course.teeth, at, 0)?, course.later(&course.teeth, at, 1)?);
        Some(to.progress_s - from.progress_s)
    });
    intervals.fold(0.0, f64::max)
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

pub(super) fn survey(inputs: &CrankingInputs, release: Release) -> Option<Survey> {
    let lowest = match release {
        Release::At(speed) => speed.base().max(inputs.rocking.high.base()),
        Release::Share(_) => inputs.rocking.high.base(),
    };
    let whole = Interval { low: lowest.max(0.0), high: f64::INFINITY };
    let mut thresholds =
        Thresholds { whole, unsteady: Vec::new(), prompt: f64::INFINITY, slowest_at: 0, corner: 0 };
    let mut surveyed = Vec::new();
    for course in courses(inputs) {
        let course = course?;
        let mut corner = corner_of(inputs, &course);
        thresholds.narrow(&corner, inputs);
        for start_deg in starts(inputs, &course) {
            let run = Run::new(&course, start_deg);
            let readings = readings_of(&run, inputs);
            thresholds.narrow_by_run(inputs, release, &run, &readings);
            add(&mut corner, inputs, release, &run, &readings);
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
        readings: &[Reading],
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

fn corner_of(inputs: &CrankingInputs, course: &Course) -> StartCorner {
    let values = course.values.clone();
    let (slowest, fastest) = extreme_readings(course, inputs.averaging);
    StartCorner {
        name: values.name.clone(),
        mean: rpm(values.mean_rpm),
        slowest: rpm(values.mean_rpm * (1.0 - values.dip)),
        slowest_reading: rpm(slowest),
        fastest_reading: rpm(fastest),
        longest_interval: seconds(longest_interval_s(course)),
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
    corner: &mut StartCorner,
    inputs: &CrankingInputs,
    release: Release,
    run: &Run<'_>,
    readings: &[Reading],
) {
    let spark = run.spark();
    if let Some(spark) = spark {
        let at = seconds(spark.first_s);
        let (first, last) = corner.spark.unwrap_or((at, at));
        corner.spark = Some((first.min(at), last.max(at)));
        if corner.best_spark.is_none_or(|best| at < best.1) {
            corner.best_spark = Some((seconds(spark.sync_s), at));
        }
    }
    let Some(threshold) = inputs.threshold else { return };
    let off_below = release.of(threshold).base();
    let switch = Switch::new(threshold.base(), off_below, inputs.confirmation);
    let changes = commands(switch, readings);
    corner.openings = corner.openings.max(openings(inputs, run, &changes, readings));
    corner.silence = longer(corner.silence, longest_silence(&changes, readings));
    if let Some(lowest) = lowest_once_on(&changes, readings) {
        corner.lowest_once_on = Some(corner.lowest_once_on.map_or(lowest, |it| it.min(lowest)));
    }
    let naive = commands_with_gap_as_tooth(switch, readings);
    corner.openings_with_gap_as_tooth =
        corner.openings_with_gap_as_tooth.max(openings(inputs, run, &naive, readings));
    let Some(reach) = reach(inputs, run, &changes, readings) else {
        corner.closes = false;
        return;
    };
    if corner.latest.is_none_or(|latest| reach.closed > latest.closed) {
        corner.latest = Some(reach);
    }
    corner.closings.0 += 1;
    if run.is_compressing(reach.turned.degrees()) {
        corner.closings.1 += 1;
    }
    corner.earliest_power =
        Some(corner.earliest_power.map_or(reach.closed, |it| it.min(reach.closed)));
    let Some(spark) = spark else { return };
    let ready_s = reach.closed.base() + inputs.dwell.base();
    let margin = seconds(spark.first_s - ready_s);
    if corner.margin.is_none_or(|least| margin < least) {
        (corner.margin, corner.closest) =
            (Some(margin), Some((seconds(spark.first_s), reach.closed)));
    }
    let (lost, kept_s) = run.lost(spark, ready_s);
    corner.lost = corner.lost.max(lost);
    corner.delay = corner.delay.max(seconds(kept_s - spark.first_s));
}

/// The contact over a run; its pull-in as slow, its drop-out as quick as it may be.
fn contact(
    inputs: &CrankingInputs,
    changes: &[SwitchChange],
    readings: &[Reading],
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
    readings: &[Reading],
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
fn longest_silence(changes: &[SwitchChange], readings: &[Reading]) -> Option<Time> {
    let offs = changes.iter().filter(|it| !it.is_on).map(|it| it.time_s);
    let silences = offs.filter_map(|off_s| {
        let at = readings.partition_point(|reading| reading.time_s < off_s);
        readings.get(at).map(|reading| reading.silence_s).filter(|it| *it > 0.0)
    });
    silences.map(seconds).reduce(Time::max)
}

fn lowest_once_on(changes: &[SwitchChange], readings: &[Reading]) -> Option<RotationalSpeed> {
    let on_s = changes.first()?.time_s;
    let after = readings.iter().filter(|reading| reading.time_s > on_s);
    after.filter_map(|reading| reading.rpm).map(rpm).reduce(RotationalSpeed::min)
}

fn reach(
    inputs: &CrankingInputs,
    run: &Run<'_>,
    changes: &[SwitchChange],
    readings: &[Reading],
) -> Option<StartMoment> {
    let closed_s = contact(inputs, changes, readings).first()?.0;
    Some(StartMoment {
        start: CrankAngle::new(run.start_deg),
        confirmed: seconds(closed_s - inputs.relay.pull_in_time.high.base()),
        closed: seconds(closed_s),
        turned: CrankAngle::new(run.turned_deg(closed_s)),
    })
}

pub(super) fn serves(inputs: &CrankingInputs, threshold: RotationalSpeed) -> bool {
    let release = inputs.release.of(threshold);
    if release > threshold || threshold <= inputs.rocking.high {
        return false;
    }
    let switch = Switch::new(threshold.base(), release.base(), inputs.confirmation);
    courses(inputs).all(|course| {
        let Some(course) = course else { return false };
        let waits_for_crest = threshold.base() > extreme_readings(&course, inputs.averaging).0;
        let is_silent = longest_interval_s(&course) > inputs.stall_timeout.low.base();
        !waits_for_crest
            && !is_silent
            && starts(inputs, &course).into_iter().all(|start_deg| {
                let readings = readings_of(&Run::new(&course, start_deg), inputs);
                // on once, and never off again
                commands(switch, &readings).len() == 1
            })
    })
}

pub(super) fn releases(inputs: &CrankingInputs, threshold: RotationalSpeed) -> Option<Interval> {
    let mut high = threshold.base();
    for course in courses(inputs) {
        let course = course?;
        for start_deg in starts(inputs, &course) {
            let readings = readings_of(&Run::new(&course, start_deg), inputs);
            let series: Vec<_> = readings.iter().map(|reading| reading.rpm).collect();
            let lowest = Steps::new(&series, inputs.confirmation).lowest_once_on(threshold.base());
            high = high.min(lowest.unwrap_or(f64::INFINITY));
        }
    }
    let band = Interval { low: inputs.rocking.high.base(), high };
    (!band.is_empty()).then_some(band)
}

/// When the command goes off: as many readings as must agree are too low, or no tooth comes for the time-out.
pub(super) fn command_off_s(
    inputs: &CrankingInputs,
    fall: Fall,
    from_deg: f64,
    off_below_rpm: f64,
) -> f64 {
    let timeout_s = inputs.stall_timeout.high.base();
    let mut switch = Switch::new(f64::INFINITY, off_below_rpm, inputs.confirmation).turned_on();
    let mut last: Option<(f64, f64)> = None;
    let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
    let mut window: VecDeque<(f64, f64)> = VecDeque::new();
    for angle in teeth_deg(inputs, from_deg) {
        let Some(time_s) = fall.time_at(angle) else { break };
        if time_s - last.map_or(0.0, |last| last.0) > timeout_s {
            break;
        }
        last = Some((time_s, angle));
        window.push_back((time_s, angle));
        if window.len() > averaging {
            let (from_s, from_angle) = window.pop_front().unwrap_or_default();
            let reading = (angle - from_angle) / 6.0 / (time_s - from_s);
            if switch.take(Some(reading)) {
                return time_s;
            }
            if inputs.average == Average::Blocks {
                window.drain(..averaging - 1);
            }
        }
    }
    last.map_or(0.0, |last| last.0) + timeout_s
}

/// Angles from the beginning of the run-down to each tooth.
fn teeth_deg(inputs: &CrankingInputs, from_deg: f64) -> impl Iterator<Item = f64> {
    let wheel = inputs.wheel;
    let pitch_deg = 360.0 / f64::from(wheel.positions.max(1));
    let turns = (0_u32..).map(|turn| f64::from(turn) * 360.0);
    let teeth = turns
        .flat_map(move |turn| (0..wheel.teeth()).map(move |n| turn + pitch_deg * f64::from(n)));
    teeth.map(move |angle| angle - from_deg).filter(|angle| *angle > 0.0)
}

/// Whether the relay closes, wherever among the readings the false edges begin.
pub(super) fn closes(inputs: &CrankingInputs, threshold: RotationalSpeed, edges: u32) -> bool {
    let averaging = inputs.averaging.max(1);
    let rocking = inputs.rocking.high.base();
    // one at each tooth: wherever they begin, the same readings come
    let first = if inputs.average == Average::Sliding { averaging - 1 } else { 0 };
    let length = usize::try_from(averaging).unwrap_or(1);
    (first..averaging).any(|before| {
        // intervals in shares of the time from tooth to tooth
        let whole = |count: u32| (0..count).map(|_| 1.0);
        let halves = (0..2 * edges).map(|_| 0.5);
        let after = averaging.saturating_mul(inputs.confirmation);
        let intervals: Vec<f64> = whole(before).chain(halves).chain(whole(after)).collect();
        let mut switch = Switch::new(threshold.base(), 0.0, inputs.confirmation);
        let mut takes =
            |it: &[f64]| switch.take(Some(f64::from(averaging) * rocking / it.iter().sum::<f64>()));
        match inputs.average {
            Average::Blocks => intervals.chunks_exact(length).any(&mut takes),
            Average::Sliding => intervals.windows(length).any(&mut takes),
        }
    })
}

mod tests;
