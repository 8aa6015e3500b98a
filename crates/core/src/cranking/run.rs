//! One start at one corner: readings, commands, contact, first spark.

use std::collections::VecDeque;

use super::{
    Average, CrankingInputs,
    course::{Course, Passing},
};
use crate::{
    quantity::Measure,
    timeline::{Switch, SwitchChange},
};

/// Most sparks that are counted as lost.
pub(super) const MOST_LOST: usize = 1000;

/// One reading of the speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct SpeedReading {
    pub(super) time_s: f64,
    /// In rpm; none where no tooth came for the stall time-out.
    pub(super) rpm: Option<f64>,
    /// What it would be if the gap were taken for one slow tooth.
    pub(super) gap_as_tooth: Option<f64>,
    /// The time without a tooth in it that was the time-out or longer; nought where none was.
    pub(super) silence_s: f64,
}

/// The start of a run and the teeth that pass in it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Run<'a> {
    course: &'a Course,
    pub(super) start_deg: f64,
    start_progress_s: f64,
    first_tooth: usize,
}

/// The first spark that could come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct FirstSpark {
    /// When the controller knows where the engine is.
    pub(super) sync_s: f64,
    /// The next firing top dead centre.
    pub(super) first_s: f64,
    firing: usize,
}

impl<'a> Run<'a> {
    pub(super) fn new(course: &'a Course, start_deg: f64) -> Self {
        let first_tooth = course.teeth.partition_point(|tooth| tooth.angle_deg <= start_deg);
        Self { course, start_deg, start_progress_s: course.wave.time_at(start_deg), first_tooth }
    }

    /// When something passes.
    pub(super) fn time_s(&self, passing: Passing) -> f64 {
        self.course.rise.time_at(passing.progress_s - self.start_progress_s)
    }

    pub(super) fn tooth(&self, count: usize) -> Option<Passing> {
        self.course.later(&self.course.teeth, self.first_tooth, count)
    }

    /// When an angle is passed, counted from that of the cycle.
    pub(super) fn time_at(&self, angle_deg: f64) -> f64 {
        self.course.rise.time_at(self.course.wave.time_at(angle_deg) - self.start_progress_s)
    }

    /// Time from rest to full cranking speed.
    pub(super) fn run_up_s(&self) -> f64 {
        self.course.values.run_up_s
    }

    /// How long the last cycles of a run take, all at full speed, and after which everything comes again.
    pub(super) fn laps_s(&self, inputs: &CrankingInputs) -> f64 {
        let laps = if inputs.averaging > 1 { 2.0 } else { 1.0 };
        laps * self.course.wave.period_s()
    }

    /// Teeth that pass in a cycle.
    pub(super) fn teeth_of_cycle(&self) -> usize {
        self.course.teeth.len()
    }

    /// The angle turned since the start, degrees.
    pub(super) fn turned_deg(&self, time_s: f64) -> f64 {
        let progress_s = self.start_progress_s + self.course.rise.progress_at(time_s);
        self.course.wave.angle_at(progress_s) - self.start_deg
    }

    /// Whether a cylinder is on its compression stroke after so much of a turn.
    pub(super) fn is_compressing(&self, turned_deg: f64) -> bool {
        let cycle = self.course.wave.period_deg();
        let at = (self.start_deg + turned_deg).rem_euclid(cycle);
        let before = |firing: &Passing| (firing.angle_deg - at).rem_euclid(cycle);
        self.course.firings.iter().any(|firing| (0.0..180.0).contains(&before(firing)))
    }

    /// The true speed, rpm.
    pub(super) fn true_rpm(&self, time_s: f64) -> f64 {
        let progress_s = self.start_progress_s + self.course.rise.progress_at(time_s);
        self.course.rise.rate_at(time_s) * self.course.wave.speed_at(progress_s) / 6.0
    }

    /// The readings, until the speed has been at its full course long enough for anything to show.
    pub(super) fn readings(&self, inputs: &CrankingInputs, readings: &mut Vec<SpeedReading>) {
        readings.clear();
        let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
        let confirmation = usize::try_from(inputs.confirmation.max(1)).unwrap_or(1);
        let laps = if averaging == 1 { 1 } else { 2 };
        let mut still = averaging * (confirmation + 1) + laps * self.course.teeth.len();
        let timeout_s = inputs.stall_timeout.low.base();
        let Some(first) = self.tooth(0) else { return };
        let mut last_s = self.time_s(first);
        // the teeth of the next reading, and the last of them that came after the time-out
        let mut window = VecDeque::from([(first, last_s)]);
        let (mut count, mut silent_at, mut silence_s) = (1, 0, 0.0_f64);
        while let Some(tooth) = self.tooth(count).filter(|_| still > 0) {
            let time_s = self.time_s(tooth);
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
            if time_s > self.course.values.run_up_s {
                still -= 1;
            }
            last_s = time_s;
            count += 1;
        }
    }

    /// The first spark that could come.
    pub(super) fn spark(&self) -> Option<FirstSpark> {
        let sync = self.tooth(self.course.teeth_to_sync(self.first_tooth)?)?;
        let firings = &self.course.firings;
        let cycle = self.course.wave.period_deg();
        let within = sync.angle_deg.rem_euclid(cycle);
        let laps = ((sync.angle_deg - within) / cycle).round();
        let next = firings.partition_point(|firing| firing.angle_deg <= within + 1e-9);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "laps until sync: 0 to 4"
        )]
        let firing = next + laps as usize * firings.len();
        let spark = self.course.later(firings, 0, firing)?;
        Some(FirstSpark { sync_s: self.time_s(sync), first_s: self.time_s(spark), firing })
    }

    /// Sparks that come before the coils have had power for a dwell, and when the first comes that does not.
    pub(super) fn lost(&self, spark: FirstSpark, ready_s: f64) -> (usize, f64) {
        let firing_s = |count: usize| {
            let firing = self.course.later(&self.course.firings, 0, spark.firing + count);
            firing.map_or(f64::INFINITY, |firing| self.time_s(firing))
        };
        let lost = (0..MOST_LOST).take_while(|count| firing_s(*count) < ready_s).count();
        (lost, firing_s(lost))
    }
}

fn reading(
    inputs: &CrankingInputs,
    (from, from_s): (Passing, f64),
    (to, to_s): (Passing, f64),
    silence_s: f64,
) -> SpeedReading {
    let heard = |degrees: f64| (silence_s <= 0.0).then(|| degrees / 6.0 / (to_s - from_s));
    let pitch_deg = 360.0 / f64::from(inputs.wheel.positions.max(1));
    SpeedReading {
        time_s: to_s,
        rpm: heard(to.angle_deg - from.angle_deg),
        gap_as_tooth: heard(pitch_deg * f64::from(inputs.averaging.max(1))),
        silence_s,
    }
}

/// The commands that follow from readings.
pub(super) fn commands(switch: Switch, readings: &[SpeedReading]) -> Vec<SwitchChange> {
    switch.changes(readings.iter().map(|reading| (reading.time_s, reading.rpm)))
}

/// The commands of a controller that takes the gap for one slow tooth.
pub(super) fn commands_with_gap_as_tooth(
    switch: Switch,
    readings: &[SpeedReading],
) -> Vec<SwitchChange> {
    switch.changes(readings.iter().map(|reading| (reading.time_s, reading.gap_as_tooth)))
}
