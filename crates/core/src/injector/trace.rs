//! The courses of current and voltage, for the eye: after an output closes, and when it opens again.
//!
//! All that is meant, none of the tolerances: the figures tell the ends.

use super::{
    InjectorInputs,
    branch::{Ballast, CurrentEnd, InjectorBranch},
    controlled::Controlled,
    turn_off::TurningOff,
    winding::Winding,
};
use crate::{
    conditions::Corner,
    quantity::{Current, Measure, Time, seconds},
    transient::Inductive,
};

/// The forward voltage of the diode through which a driver lets the current fall from its peak: common practice, no source.
const FREEWHEEL_V: f64 = 0.7;

/// Parts into which a course is divided.
const PARTS: u32 = 48;

/// A course in time: seconds, and amperes of one injector or volts.
pub type TimeCourse = Vec<(f64, f64)>;

/// The current of one injector after its output closed, at a corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Closing {
    /// The corner.
    pub corner: Corner,
    /// The current of one injector.
    pub current: TimeCourse,
}

/// What happens when an output opens.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened {
    /// The corner.
    pub corner: Corner,
    /// The current of one injector.
    pub current: TimeCourse,
    /// The output's pin against ground.
    pub voltage: TimeCourse,
}

/// One injector's current at a supply, as a driver lets it flow.
struct Driven {
    corner: Corner,
    coil: Inductive,
    /// When the peak ends, the current then, and how it falls; nothing where nothing ends it.
    falls: Option<(f64, f64, Inductive)>,
    hold_a: f64,
}

impl Driven {
    fn of(
        inputs: &InjectorInputs,
        winding: &Winding,
        channel: Option<&Controlled>,
        ballast: &Ballast,
        corner: Corner,
    ) -> Option<Self> {
        let branch = InjectorBranch::at(inputs, &corner, CurrentEnd::Nominal, ballast, &mut None);
        let inductance = winding.inductance.nominal.base();
        let coil = Inductive::new(corner.supply.base(), branch.total().base(), inductance)?;
        let n = branch.n();
        let falls = channel.and_then(|channel| {
            let peak = inputs.peak_of_one(CurrentEnd::Nominal)?;
            let reached = coil.time_to(0.0, peak.base());
            let limit = channel.time_limit.map(|limit| limit.nominal.base());
            let end = match (reached, limit) {
                (Some(reached), Some(limit)) => reached.min(limit),
                (one, other) => one.or(other)?,
            };
            let off = branch.without_output().base();
            let fall = Inductive::new(-FREEWHEEL_V, off, inductance)?;
            Some((end, coil.current_at(0.0, end)?, fall))
        });
        let hold = |channel: &Controlled| -> Current {
            inputs.output.hold.map_or(channel.hold_needed, |hold| hold.nominal) / n
        };
        Some(Self { corner, coil, falls, hold_a: channel.map_or(0.0, |it| hold(it).base()) })
    }

    /// Until all that is worth seeing has happened.
    fn lasts(&self) -> f64 {
        let fallen = self.falls.and_then(|(end, current, fall)| {
            Some(1.3 * (end + fall.time_to(current, self.hold_a.min(current))?))
        });
        fallen.or(self.coil.time_constant_s().map(|constant| 4.0 * constant)).unwrap_or(0.0)
    }

    fn current(&self, t: f64) -> f64 {
        let found = match self.falls {
            Some((end, current, fall)) if t > end => {
                // a peak ended before the hold current was reached rises no further than to that
                let floor = self.hold_a.min(current);
                fall.current_at(current, t - end).map(|current| current.max(floor))
            }
            _ => self.coil.current_at(0.0, t),
        };
        found.unwrap_or(0.0)
    }
}

/// The current of one injector at three supplies: cranking hot, at rest, charging in the cold.
pub fn closing(
    inputs: &InjectorInputs,
    winding: &Winding,
    channel: Option<&Controlled>,
    ballast: &Ballast,
) -> Vec<Closing> {
    let [_, cranking, rest, charging, _] = inputs.corners;
    let driven: Vec<_> = [cranking, rest, charging]
        .into_iter()
        .filter_map(|corner| Driven::of(inputs, winding, channel, ballast, corner))
        .collect();
    let lasts = driven.iter().map(Driven::lasts).fold(0.0, f64::max);
    driven
        .iter()
        .map(|it| {
            let mut times: Vec<f64> = divided(lasts).collect();
            times.extend(it.falls.map(|(end, ..)| end).filter(|end| *end < lasts));
            times.sort_by(f64::total_cmp);
            let current = times.into_iter().map(|t| (t, it.current(t))).collect();
            Closing { corner: it.corner, current }
        })
        .collect()
}

/// Current and voltage when the output opens at rest; nothing where the clamp never ends the current.
pub fn opened(inputs: &InjectorInputs, winding: &Winding, ballast: &Ballast) -> Option<Opened> {
    let [_, _, corner, _, _] = inputs.corners;
    let branch = InjectorBranch::at(inputs, &corner, CurrentEnd::Nominal, ballast, &mut None);
    let running =
        TurningOff { inputs, winding, ballast }.running(&branch, CurrentEnd::Nominal, &mut None);
    let course = running.solved()?;
    let ends = course.time_to_zero_s();
    let (before, after) = (-0.2 * ends, 1.3 * ends);
    let starts = running.current.base();
    let mut current = vec![(before, starts)];
    current.extend(divided(ends).map(|t| (t, course.current_at(t).unwrap_or(0.0))));
    current.push((after, 0.0));
    let on = starts * branch.n() * branch.on.base();
    let (clamp, supply) = (running.clamp.base(), corner.supply.base());
    let voltage =
        vec![(before, on), (0.0, on), (0.0, clamp), (ends, clamp), (ends, supply), (after, supply)];
    Some(Opened { corner, current, voltage })
}

fn divided(end: f64) -> impl Iterator<Item = f64> {
    (0..=PARTS).map(move |part| end * f64::from(part) / f64::from(PARTS))
}

impl Opened {
    /// Until the current is gone.
    pub fn ends(&self) -> Time {
        let last = self.current.iter().rev().nth(1);
        seconds(last.map_or(0.0, |(t, _)| *t))
    }
}
