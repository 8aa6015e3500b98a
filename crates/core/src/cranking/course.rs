//! One corner: the speed curve, and when each tooth and each firing comes in it.

use super::{
    CrankingInputs, Sync, Wheel, dip,
    pace::{ReadingPace, paces},
};
use crate::{
    quantity::Measure,
    timeline::{Rise, Valley, Valleys, Wave},
};

/// How far a compression is felt to either side of its top dead centre, in degrees: half a stroke each way.
const REACH_DEG: f64 = 90.0;

/// Teeth that must be seen before a gap can be told: one interval to compare it with.
const TEETH_BEFORE_GAP: usize = 2;

/// A corner's own values: mean speed in rpm, dip as a share, run-up in seconds.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Values {
    pub(super) name: String,
    pub(super) mean_rpm: f64,
    pub(super) dip: f64,
    pub(super) run_up_s: f64,
}

/// Something that passes: where in the cycle, and after how long at full speed from angle 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Passing {
    pub(super) angle_deg: f64,
    pub(super) progress_s: f64,
    /// Positions of the wheel since the tooth before.
    pub(super) positions: u32,
}

/// The events of one cycle at one corner.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Course {
    pub(super) values: Values,
    pub(super) wave: Wave,
    pub(super) rise: Rise,
    pub(super) teeth: Vec<Passing>,
    pub(super) firings: Vec<Passing>,
    /// Places in `teeth` of the teeth that tell where the engine is.
    marks: Vec<usize>,
    needed_before_mark: usize,
    /// What bounds the readings that begin at each group of teeth.
    pub(super) paces: Vec<ReadingPace>,
    /// What bounds all of them.
    pub(super) pace: ReadingPace,
}

impl Course {
    /// The course of one corner; `valleys` are those of [`valleys`].
    pub(super) fn new(inputs: &CrankingInputs, valleys: &[Valley], values: Values) -> Option<Self> {
        let wave = Wave::new(&Valleys {
            each: valleys,
            period_deg: inputs.cycle.degrees(),
            mean: values.mean_rpm * 6.0,
            depth: values.dip,
            reach_deg: REACH_DEG,
        })?;
        let passing = |(angle_deg, positions): (f64, u32)| Passing {
            angle_deg,
            progress_s: wave.time_at(angle_deg),
            positions,
        };
        let teeth: Vec<_> = teeth_deg(inputs).into_iter().map(passing).collect();
        let firings = valleys.iter().map(|valley| passing((valley.at_deg, 0))).collect();
        let marks = marks(inputs, &teeth);
        let seen =
            if inputs.wheel.missing > 0 && inputs.wheel.teeth() > 1 { TEETH_BEFORE_GAP } else { 0 };
        let rise = Rise { duration_s: values.run_up_s };
        let mut course = Self {
            values,
            wave,
            rise,
            teeth,
            firings,
            marks,
            needed_before_mark: seen,
            paces: Vec::new(),
            pace: ReadingPace::NONE,
        };
        let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
        (course.paces, course.pace) = paces(&course, inputs.wheel.pitch_deg(), averaging);
        Some(course)
    }

    /// The same with another run-up.
    pub(super) fn with_run_up(&self, duration_s: f64) -> Self {
        let mut other = self.clone();
        other.values.run_up_s = duration_s;
        other.rise = Rise { duration_s };
        other
    }

    /// The passing after `count` others from place `at` in a cycle's list, laps counted.
    pub(super) fn later(&self, list: &[Passing], at: usize, count: usize) -> Option<Passing> {
        let place = at + count;
        let each = list.len().max(1);
        Some(self.in_lap(list.get(place % each)?, place / each))
    }

    /// A tooth of the cycle so many laps later.
    pub(super) fn lap(&self, at: usize, laps: usize) -> Option<Passing> {
        Some(self.in_lap(self.teeth.get(at)?, laps))
    }

    fn in_lap(&self, passing: &Passing, laps: usize) -> Passing {
        #[expect(clippy::cast_precision_loss, reason = "laps of one simulation, below 2^52")]
        let laps = laps as f64;
        Passing {
            angle_deg: passing.angle_deg + laps * self.wave.period_deg(),
            progress_s: passing.progress_s + laps * self.wave.period_s(),
            ..*passing
        }
    }

    /// Teeth passed before the one that tells where the engine is, from the first that passes, `first`.
    pub(super) fn teeth_to_sync(&self, first: usize) -> Option<usize> {
        let turn = self.teeth.len();
        let laps = (0..4).map(|lap| lap * turn);
        let places = laps.flat_map(|lap| self.marks.iter().map(move |mark| mark + lap));
        places
            .filter_map(|place| place.checked_sub(first))
            .filter(|n| *n >= self.needed_before_mark)
            .min()
    }
}

/// The courses of all corners; nothing for one that can't be.
pub(super) fn courses(inputs: &CrankingInputs) -> impl Iterator<Item = Option<Course>> {
    let valleys = valleys(inputs);
    corners(inputs).into_iter().map(move |values| Course::new(inputs, &valleys, values))
}

/// The valleys of the speed at the firings: two cylinders that fire together dip once, and deeper.
pub(super) fn valleys(inputs: &CrankingInputs) -> Vec<Valley> {
    let first = inputs.firings.first().copied().unwrap_or_default();
    let within =
        |angle: &crate::quantity::CrankAngle| (*angle - first).within(inputs.cycle).degrees();
    let mut firings: Vec<f64> = inputs.firings.iter().map(within).collect();
    crate::sorted::by(&mut firings, f64::total_cmp);
    dip::valleys(&firings, inputs.cycle.degrees())
}

/// The corners: the nominal one, then each combination of the ends of what is spread. The slowest is called by what makes
/// it slow.
pub(super) fn corners(inputs: &CrankingInputs) -> Vec<Values> {
    let nominal = Values {
        name: "nominal".to_owned(),
        mean_rpm: inputs.speed.nominal.base(),
        dip: inputs.dip.nominal.base(),
        run_up_s: inputs.run_up.nominal.base(),
    };
    let mut corners = vec![Values { name: String::new(), ..nominal.clone() }];
    let ends = |low: f64, high: f64, [one, other]: [&'static str; 2]| {
        if low < high { vec![(one, low), (other, high)] } else { Vec::new() }
    };
    let (dip, run_up) = (inputs.dip, inputs.run_up);
    split(&mut corners, &speeds(inputs), |it, to| it.mean_rpm = to);
    let dips = ends(dip.low.base(), dip.high.base(), ["shallow dips", "deep dips"]);
    split(&mut corners, &dips, |it, to| it.dip = to);
    let run_ups = ends(run_up.low.base(), run_up.high.base(), ["quick run-up", "slow run-up"]);
    split(&mut corners, &run_ups, |it, to| it.run_up_s = to);
    if corners.len() == 1 {
        return vec![nominal];
    }
    corners.insert(0, nominal);
    corners
}

/// The mean speeds to look at, where there is more than one.
fn speeds(inputs: &CrankingInputs) -> Vec<(&'static str, f64)> {
    let (low, high) = (inputs.speed.low.base(), inputs.speed.high.base());
    let mut all: Vec<_> = inputs.slow.iter().map(|it| (it.name, it.speed.base())).collect();
    if low < high || !all.is_empty() {
        let is_slowest = all.iter().all(|it| low < it.1);
        let name = if is_slowest { "cold, thick oil" } else { "as typed" };
        if low < high {
            all.push((name, low));
        }
        all.push(("warm, thin oil", high));
    }
    all
}

fn split(corners: &mut Vec<Values>, ends: &[(&'static str, f64)], set: impl Fn(&mut Values, f64)) {
    if ends.is_empty() {
        return;
    }
    let parts = corners.iter().flat_map(|corner| {
        let set = &set;
        ends.iter().map(move |(name, end)| {
            let mut part = corner.clone();
            let gap = if part.name.is_empty() { "" } else { ", " };
            part.name = format!("{}{gap}{name}", part.name);
            set(&mut part, *end);
            part
        })
    });
    *corners = parts.collect();
}

/// The teeth of a cycle by rising angle, each with the positions since the one before.
fn teeth_deg(inputs: &CrankingInputs) -> Vec<(f64, u32)> {
    let wheel: &Wheel = &inputs.wheel;
    let pitch_deg = wheel.pitch_deg();
    let mut teeth = Vec::new();
    for turn in 0..turns(inputs) {
        for tooth in 0..wheel.teeth() {
            let angle = 360.0 * f64::from(turn) + pitch_deg * f64::from(tooth);
            let at = crate::quantity::CrankAngle::new(angle - wheel.mark_to_first.degrees());
            let positions = if tooth == 0 { wheel.missing + 1 } else { 1 };
            teeth.push((at.within(inputs.cycle).degrees(), positions));
        }
    }
    crate::sorted::by(&mut teeth, |one, other| one.0.total_cmp(&other.0));
    teeth
}

/// Turns of the crank in a cycle.
pub(super) fn turns(inputs: &CrankingInputs) -> u32 {
    if inputs.cycle.degrees() > 540.0 { 2 } else { 1 }
}

/// The teeth that tell where the engine is: the one after the gap, with a cam only in the turn before the first
/// firing.
fn marks(inputs: &CrankingInputs, teeth: &[Passing]) -> Vec<usize> {
    if inputs.sync == Sync::Gap && !inputs.wheel.has_mark() {
        return Vec::new();
    }
    let step = match inputs.sync {
        Sync::Gap => 360.0,
        Sync::Cam => inputs.cycle.degrees(),
    };
    let mark = inputs.wheel.mark_to_first.degrees();
    let is_mark = |tooth: &Passing| {
        let off = (tooth.angle_deg + mark).rem_euclid(step);
        off.min(step - off) < 1e-6
    };
    (0..teeth.len()).filter(|at| teeth.get(*at).is_some_and(is_mark)).collect()
}
