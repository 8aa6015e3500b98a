//! The readings of a start, each worked out where it is looked at.
//!
//! A start has as many readings as teeth pass in it, and most decide nothing. Those of a group of teeth are left out where the
//! bounds on all of them ([`pace`](super::pace)) show that none can change a switch, or be the one that is looked for; what is
//! looked at is worked out exactly. So the same comes out as if every reading had been worked out, to the last bit.

use std::{cell::Cell, ops::Range};

use super::{
    Average, CrankingInputs,
    pace::{GROUP, ReadingPace},
    run::{Run, SpeedReading},
};
use crate::{
    counted,
    quantity::Measure,
    timeline::{Switch, SwitchChange, highest},
};

/// The readings of one start, until the speed has been at its full course long enough for anything to show.
#[derive(Clone, Debug)]
pub(super) struct StartReadings<'a> {
    run: Run<'a>,
    averaging: usize,
    /// Whether one begins at every tooth.
    is_dense: bool,
    /// The angle of a reading that takes its teeth for neighbours.
    with_gap_deg: f64,
    timeout_s: f64,
    count: usize,
    last_tooth: usize,
    /// Teeth whose times were worked out, each by itself.
    timed: Cell<u64>,
}

/// What a relay is told in one start.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Commands {
    /// The changes.
    pub(super) heard: Vec<SwitchChange>,
    /// Those of a controller that takes the gap for one slow tooth.
    pub(super) with_gap: Vec<SwitchChange>,
    /// The longest time without a tooth that switches it off, in seconds; nought where none does.
    pub(super) silence_s: f64,
    /// The reading at which it is first switched on.
    on: Option<usize>,
}

/// A tooth, and when it passes.
#[derive(Clone, Copy, Debug)]
struct TimedTooth {
    tooth: usize,
    angle_deg: f64,
    time_s: f64,
}

/// Teeth that were passed one by one, to hear of each time without one.
#[derive(Clone, Copy, Debug)]
struct Walk {
    tooth: usize,
    time_s: f64,
    /// The last tooth of the reading before.
    before: Option<TimedTooth>,
    /// The last tooth that came after the time-out.
    silent_at: usize,
}

impl<'a> StartReadings<'a> {
    pub(super) fn new(run: Run<'a>, inputs: &CrankingInputs) -> Self {
        let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
        let confirmation = usize::try_from(inputs.confirmation.max(1)).unwrap_or(1);
        let laps = if averaging == 1 { 1 } else { 2 };
        let still = averaging * (confirmation + 1) + laps * run.teeth_of_cycle();
        let last_tooth = run.last_tooth_in_run_up() + still;
        let is_dense = averaging == 1 || inputs.average == Average::Sliding;
        Self {
            run,
            averaging,
            is_dense,
            with_gap_deg: inputs.wheel.pitch_deg() * f64::from(inputs.averaging.max(1)),
            timeout_s: inputs.stall_timeout.low.base(),
            count: if is_dense { last_tooth + 1 - averaging } else { last_tooth / averaging },
            last_tooth,
            timed: Cell::new(0),
        }
    }

    /// How many there are.
    #[cfg(test)]
    pub(super) fn count(&self) -> usize {
        self.count
    }

    /// Teeth whose times were worked out so far, each by itself.
    pub(super) fn timed(&self) -> u64 {
        self.timed.get()
    }

    /// When the last comes.
    pub(super) fn end_s(&self) -> f64 {
        self.count.checked_sub(1).map_or(0.0, |last| self.at_s(last))
    }

    /// All of them in their order.
    pub(super) fn all(&self) -> impl Iterator<Item = SpeedReading> {
        let mut walk = self.walk();
        (0..self.count).map(move |at| self.walked(at, &mut walk))
    }

    /// The speeds of all of them, less than any in silence; `times_s` and `angles_deg` are room for what it needs.
    pub(super) fn speeds(
        &self,
        speeds: &mut Vec<f64>,
        (times_s, angles_deg): (&mut Vec<f64>, &mut Vec<f64>),
    ) {
        for list in [&mut *speeds, times_s, angles_deg] {
            list.clear();
        }
        counted::count(|done| done.teeth += u64::try_from(self.last_tooth).unwrap_or(u64::MAX));
        for tooth in self.run.teeth().take(self.last_tooth + 1) {
            times_s.push(self.run.time_s(tooth));
            angles_deg.push(tooth.angle_deg);
        }
        let step = if self.is_dense { 1 } else { self.averaging };
        let places = || (0..).zip(times_s.iter().zip(angles_deg.iter()));
        let ends = places().skip(self.averaging).step_by(step);
        let mut intervals = (1..).zip(times_s.windows(2)).peekable();
        let mut silent_at = 0;
        for ((from, (from_s, from_deg)), (to, (to_s, to_deg))) in places().step_by(step).zip(ends) {
            while let Some((at, pair)) = intervals.next_if(|it| it.0 <= to) {
                if let [one, next] = pair
                    && next - one > self.timeout_s
                {
                    silent_at = at;
                }
            }
            let is_silent = silent_at > from;
            let speed = (to_deg - from_deg) / 6.0 / (to_s - from_s);
            speeds.push(if is_silent { f64::NEG_INFINITY } else { speed });
        }
    }

    /// What a switch makes of them.
    pub(super) fn commands(&self, switch: Switch) -> Commands {
        let (mut heard, mut with_gap) = (switch, switch);
        let mut commands = Commands::default();
        let mut walk = self.walk();
        let mut group = self.first_group();
        let end = self.end_group();
        while group < end {
            let (bounds, of_all) = self.bounds(group);
            let is_off = !heard.is_on() && !with_gap.is_on();
            // no reading this early is fast enough
            if is_off && of_all.fastest < switch.on_at {
                let next = self.first_fast(group + 1..end, switch.on_at);
                if self.of_group(group).start < self.of_group(next).start {
                    heard.pass();
                    with_gap.pass();
                }
                group = next;
                continue;
            }
            let stays = |bounds: &ReadingPace, switch: &Switch, slowest: f64| {
                if switch.is_on() {
                    slowest >= switch.off_below && bounds.longest_s <= self.timeout_s
                } else {
                    bounds.fastest < switch.on_at
                }
            };
            let both_stay = |it: &ReadingPace| {
                stays(it, &heard, it.slowest) && stays(it, &with_gap, it.slowest_with_gap)
            };
            // nor is any later one slow enough
            if heard.is_on() && with_gap.is_on() && both_stay(&of_all) {
                break;
            }
            let readings = self.of_group(group);
            group += 1;
            if both_stay(&bounds) {
                if !readings.is_empty() {
                    heard.pass();
                    with_gap.pass();
                }
                continue;
            }
            let is_heard = bounds.longest_s <= self.timeout_s;
            for at in readings {
                let reading = self.reading(at, is_heard, &mut walk);
                if heard.take(reading.rpm) {
                    if !heard.is_on() && reading.rpm.is_none() {
                        commands.silence_s = commands.silence_s.max(self.silence_s(at));
                    }
                    commands.on = commands.on.or(Some(at));
                    let is_on = heard.is_on();
                    commands.heard.push(SwitchChange { time_s: reading.time_s, is_on });
                }
                if with_gap.take(reading.gap_as_tooth) {
                    let is_on = with_gap.is_on();
                    commands.with_gap.push(SwitchChange { time_s: reading.time_s, is_on });
                }
            }
        }
        commands
    }

    /// The lowest of those after the first command, silence left aside; nothing where there is no command or none after it.
    pub(super) fn lowest_once_on(&self, commands: &Commands) -> Option<f64> {
        let first = commands.on? + 1;
        let mut lowest = f64::INFINITY;
        let mut walk = self.walk();
        for group in self.group_of(first)..self.end_group() {
            let (bounds, of_all) = self.bounds(group);
            // none that comes later is slower
            if of_all.slowest > lowest {
                break;
            }
            if bounds.slowest > lowest {
                continue;
            }
            let is_heard = bounds.longest_s <= self.timeout_s;
            let readings = self.of_group(group);
            for at in readings.start.max(first)..readings.end {
                let reading = self.reading(at, is_heard, &mut walk);
                lowest = lowest.min(reading.rpm.unwrap_or(f64::INFINITY));
            }
        }
        lowest.is_finite().then_some(lowest)
    }

    /// The highest threshold at which a switch that wants `agree` readings in a row is on by a time; less than any where
    /// none is.
    pub(super) fn highest_by(&self, time_s: f64, agree: u32) -> f64 {
        let mut highest_yet = f64::NEG_INFINITY;
        let in_time = first_where(0..self.count, |at| self.at_s(at) > time_s);
        let Some(last) = in_time.checked_sub(1) else { return highest_yet };
        let before = usize::try_from(agree.max(1) - 1).unwrap_or(0);
        for group in (self.first_group()..=self.group_of(last)).rev() {
            let (bounds, of_all) = self.bounds(group);
            // none that comes earlier is faster
            if of_all.fastest <= highest_yet {
                break;
            }
            if bounds.fastest <= highest_yet {
                continue;
            }
            let readings = self.of_group(group);
            let from = readings.start.saturating_sub(before);
            let is_heard = self.bounds(self.group_of(from)).1.longest_s <= self.timeout_s;
            let mut walk = self.walk();
            let reading = |at| self.reading(at, is_heard, &mut walk);
            let speeds: Vec<_> = (from..readings.end.min(in_time))
                .map(reading)
                .map(|it| it.rpm.unwrap_or(f64::NEG_INFINITY))
                .collect();
            highest_yet = highest_yet.max(highest(&speeds, agree));
        }
        highest_yet
    }

    fn walk(&self) -> Walk {
        Walk { tooth: 0, time_s: self.tooth_s(0), before: None, silent_at: 0 }
    }

    /// A reading; `is_heard` where it surely has no silence in it.
    fn reading(&self, at: usize, is_heard: bool, walk: &mut Walk) -> SpeedReading {
        if is_heard { self.heard(at, &mut walk.before) } else { self.walked(at, walk) }
    }

    /// The first and the last tooth of a reading.
    fn ends(&self, at: usize) -> (usize, usize) {
        let from = if self.is_dense { at } else { at * self.averaging };
        (from, from + self.averaging)
    }

    fn tooth_s(&self, tooth: usize) -> f64 {
        self.timed.set(self.timed.get() + 1);
        self.run.tooth(tooth).map_or(f64::INFINITY, |it| self.run.time_s(it))
    }

    /// When a reading comes.
    fn at_s(&self, at: usize) -> f64 {
        self.tooth_s(self.ends(at).1)
    }

    fn timed_tooth(&self, tooth: usize) -> TimedTooth {
        self.timed.set(self.timed.get() + 1);
        let none = TimedTooth { tooth, angle_deg: f64::INFINITY, time_s: f64::INFINITY };
        self.run.tooth(tooth).map_or(none, |it| TimedTooth {
            tooth,
            angle_deg: it.angle_deg,
            time_s: self.run.time_s(it),
        })
    }

    /// A reading that has no silence in it; the last tooth of the one before is often its first.
    fn heard(&self, at: usize, before: &mut Option<TimedTooth>) -> SpeedReading {
        let (from, to) = self.ends(at);
        let from = before.filter(|it| it.tooth == from).unwrap_or_else(|| self.timed_tooth(from));
        let to = self.timed_tooth(to);
        *before = Some(to);
        let took_s = to.time_s - from.time_s;
        SpeedReading {
            time_s: to.time_s,
            rpm: Some((to.angle_deg - from.angle_deg) / 6.0 / took_s),
            gap_as_tooth: Some(self.with_gap_deg / 6.0 / took_s),
        }
    }

    /// A reading, its teeth passed one by one; none before one that was so worked out.
    fn walked(&self, at: usize, walk: &mut Walk) -> SpeedReading {
        let (from, to) = self.ends(at);
        if walk.tooth < from {
            (walk.tooth, walk.time_s) = (from, self.tooth_s(from));
        }
        while walk.tooth < to {
            walk.tooth += 1;
            let time_s = self.tooth_s(walk.tooth);
            if time_s - walk.time_s > self.timeout_s {
                walk.silent_at = walk.tooth;
            }
            walk.time_s = time_s;
        }
        let reading = self.heard(at, &mut walk.before);
        if walk.silent_at > from {
            return SpeedReading { rpm: None, gap_as_tooth: None, ..reading };
        }
        reading
    }

    /// The longest time between two teeth of a reading.
    fn silence_s(&self, at: usize) -> f64 {
        let (from, to) = self.ends(at);
        let each = (from..to).map(|tooth| self.tooth_s(tooth + 1) - self.tooth_s(tooth));
        each.fold(0.0, f64::max)
    }

    /// The first tooth of a group of the run, counted from the first that passes. Groups begin anew with each cycle.
    fn group_tooth(&self, group: usize) -> usize {
        let (groups, teeth) = (self.run.groups_of_cycle(), self.run.teeth_of_cycle());
        let tooth = group / groups * teeth + group % groups * GROUP;
        tooth.saturating_sub(self.run.first_tooth)
    }

    /// The group of a tooth, so counted.
    fn group_of_tooth(&self, tooth: usize) -> usize {
        let (groups, teeth) = (self.run.groups_of_cycle(), self.run.teeth_of_cycle());
        let tooth = self.run.first_tooth + tooth;
        tooth / teeth * groups + tooth % teeth / GROUP
    }

    fn first_group(&self) -> usize {
        self.group_of_tooth(0)
    }

    /// The one after the last.
    fn end_group(&self) -> usize {
        self.count.checked_sub(1).map_or(0, |last| self.group_of(last) + 1)
    }

    /// The group in which a reading begins.
    fn group_of(&self, at: usize) -> usize {
        self.group_of_tooth(self.ends(at).0)
    }

    /// The readings that begin in a group.
    fn of_group(&self, group: usize) -> Range<usize> {
        let [from, to] = [group, group + 1].map(|it| {
            let tooth = self.group_tooth(it);
            let at = if self.is_dense { tooth } else { tooth.div_ceil(self.averaging) };
            at.min(self.count)
        });
        from..to
    }

    /// Bounds on the readings that begin in a group, and on any reading of the cycle at its rates: slower than the slowest is none
    /// that begins later, faster than the fastest none that ends earlier.
    fn bounds(&self, group: usize) -> (ReadingPace, ReadingPace) {
        let first = self.run.rate_at(self.tooth_s(self.group_tooth(group)));
        let last = self.run.rate_at(self.last_s(group));
        let (of_group, of_all) = self.run.paces(group);
        (of_group.at(first, last), of_all.at(first, last))
    }

    /// When the last reading that begins in a group ends, at the latest.
    fn last_s(&self, group: usize) -> f64 {
        self.tooth_s(self.group_tooth(group + 1) + self.averaging - 1)
    }

    /// The first of the groups in which a reading may be so fast.
    fn first_fast(&self, groups: Range<usize>, speed: f64) -> usize {
        first_where(groups, |group| {
            let last = self.run.rate_at(self.last_s(group));
            self.run.paces(group).1.at(last, last).fastest >= speed
        })
    }
}

/// The first place from which on it is so, or the end.
fn first_where(places: Range<usize>, is_so: impl Fn(usize) -> bool) -> usize {
    let Range { start: mut low, end: mut high } = places;
    while low < high {
        let middle = usize::midpoint(low, high);
        if is_so(middle) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    low
}
