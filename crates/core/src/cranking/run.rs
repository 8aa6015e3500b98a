//! One start at one corner: readings, commands, contact, first spark.

use super::{
    CrankingInputs,
    course::{Course, Passing},
    pace::ReadingPace,
};
use crate::timeline::{Switch, SwitchChange};

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
}

/// The start of a run and the teeth that pass in it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Run<'a> {
    course: &'a Course,
    pub(super) start_deg: f64,
    start_progress_s: f64,
    /// The place of the first tooth that passes, in the cycle.
    pub(super) first_tooth: usize,
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

    /// All teeth in their order.
    pub(super) fn teeth(&self) -> impl Iterator<Item = Passing> {
        let course = self.course;
        let each = move |lap| (0..course.teeth.len()).map_while(move |at| course.lap(at, lap));
        (0..).flat_map(each).skip(self.first_tooth)
    }

    /// The last tooth that passes before the full cranking speed, or the first of all.
    pub(super) fn last_tooth_in_run_up(&self) -> usize {
        let is_later =
            |at: usize| self.tooth(at).is_none_or(|tooth| self.time_s(tooth) > self.run_up_s());
        let (mut low, mut high) = (0, 1);
        while !is_later(high) {
            (low, high) = (high, 2 * high);
        }
        while high - low > 1 {
            let middle = usize::midpoint(low, high);
            if is_later(middle) { high = middle } else { low = middle }
        }
        low
    }

    /// The rate of the motion at a time, 0 to 1.
    pub(super) fn rate_at(&self, time_s: f64) -> f64 {
        self.course.rise.rate_at(time_s)
    }

    /// Groups of teeth in a cycle.
    pub(super) fn groups_of_cycle(&self) -> usize {
        self.course.paces.len().max(1)
    }

    /// The paces of a group, and of all teeth.
    pub(super) fn paces(&self, group: usize) -> (ReadingPace, ReadingPace) {
        let of_all = self.course.pace;
        let of_group = self.course.paces.get(group % self.groups_of_cycle());
        (of_group.copied().unwrap_or(of_all), of_all)
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
        // they come in their order
        let (mut lost, mut kept) = (0, MOST_LOST);
        while lost < kept {
            let middle = usize::midpoint(lost, kept);
            if firing_s(middle) < ready_s { lost = middle + 1 } else { kept = middle }
        }
        (lost, firing_s(lost))
    }
}

/// The commands that follow from readings.
pub(super) fn commands(switch: Switch, readings: &[SpeedReading]) -> Vec<SwitchChange> {
    switch.changes(readings.iter().map(|reading| (reading.time_s, reading.rpm)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        cranking::{cost::tests::at_the_limits, course::courses},
        quantity::CrankAngle,
    };

    /// Any textbook: of the four strokes of a cycle of two turns the one that ends at the firing top compresses.
    #[test]
    fn a_cylinder_compresses_for_half_a_turn_before_its_top() {
        for inputs in at_the_limits() {
            let firings = vec![CrankAngle::new(0.0)];
            let inputs = CrankingInputs { firings, cycle: CrankAngle::new(720.0), ..inputs };
            let course = courses(&inputs).flatten().next().expect("an engine that turns");
            let run = Run::new(&course, 0.0);
            let does = |angle: &u32| run.is_compressing(f64::from(*angle));
            let found: Vec<u32> = (0..720).filter(does).collect();
            let expected: Vec<u32> = (0..=0).chain(541..720).collect();
            assert_eq!(found, expected, "degrees from the firing top");
        }
    }
}
