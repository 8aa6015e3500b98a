//! Starts that go otherwise: a slow first turn, a compression that throws the engine back, a starter that sticks.
//!
//! Each is simulated tooth by tooth at every corner, with the threshold that was asked about. They bound no threshold:
//! what they do to the relay is told.

use std::collections::VecDeque;

use super::{
    Average, CrankingInputs,
    course::{Course, Passing, Values, courses},
    run::{Run, SpeedReading, commands},
    survey::contact,
};
use crate::{
    counted,
    quantity::{CrankAngle, Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Fall, Switch},
};

/// Starting positions, spread over the cycle.
pub(super) const STARTS: u32 = 3;

/// A compression that throws the engine back is at least so far from the start, in degrees: it needs way to get there.
const RUN_TO_TOP_DEG: f64 = 60.0;

/// What goes otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Happening {
    /// The starter needs a whole turn to reach its speed, which then takes 120 / n seconds.
    SlowFirstTurn,
    /// The first compression is not passed: the engine is thrown back as fast as it came, slows down evenly over the angle
    /// of the kick-back, and is started anew. The sensor counts the teeth that pass backwards like any others.
    KickBack,
    /// After a turn the starter stops at once, stands, and starts anew.
    Sticks,
}

/// What the relay makes of it, the worst over corners and starts.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// What goes otherwise.
    pub happening: Happening,
    /// Whether the relay is closed in the end.
    pub closes: bool,
    /// When it closes for good.
    pub power: Time,
    /// Most times that it opens before.
    pub openings: usize,
    /// Longest time with power while the engine is stopped or turns back.
    pub powered: Time,
    /// Fastest reading while it turns back.
    pub fastest_back: RotationalSpeed,
    /// Most teeth counted that were no progress.
    pub teeth_too_many: usize,
    /// Corners at which the relay opens before it closes for good.
    pub opens_at: Vec<String>,
}

/// Tooth edges as the sensor sees them, and the span in which the engine stood or turned back.
#[derive(Debug, Default)]
struct Edges {
    /// Time in seconds, and the positions since the one before.
    all: Vec<(f64, u32)>,
    idle_s: (f64, f64),
    backwards: (usize, usize),
}

/// All three, in the order of [`Happening`]; none without a threshold.
pub fn events(inputs: &CrankingInputs) -> Vec<Event> {
    let Some(threshold) = inputs.threshold else { return Vec::new() };
    let off_below = inputs.release.of(threshold).base();
    let switch = Switch::new(threshold.base(), off_below, inputs.confirmation);
    let all = [Happening::SlowFirstTurn, Happening::KickBack, Happening::Sticks];
    let mut events: Vec<_> = all.into_iter().map(Event::new).collect();
    for course in courses(inputs).flatten() {
        for event in &mut events {
            event.add_corner(inputs, switch, &course);
        }
    }
    events
}

/// How long a whole turn from rest takes, in seconds: `120 / n`.
pub(super) fn slow_s(values: &Values) -> f64 {
    120.0 / values.mean_rpm
}

impl Event {
    fn new(happening: Happening) -> Self {
        Self {
            happening,
            closes: true,
            power: seconds(0.0),
            openings: 0,
            powered: seconds(0.0),
            fastest_back: rpm(0.0),
            teeth_too_many: 0,
            opens_at: Vec::new(),
        }
    }

    fn add_corner(&mut self, inputs: &CrankingInputs, switch: Switch, course: &Course) {
        let slow_s = match self.happening {
            Happening::SlowFirstTurn => slow_s(&course.values),
            Happening::KickBack | Happening::Sticks => 0.0,
        };
        let course = &course.with_run_up(course.values.run_up_s.max(slow_s));
        let cycle = inputs.cycle.degrees();
        let mut opens = false;
        for n in 0..STARTS {
            let run = Run::new(course, cycle * f64::from(n) / f64::from(STARTS));
            opens |= self.add(inputs, switch, &Edges::of(self.happening, course, &run, inputs));
        }
        if opens {
            self.opens_at.push(course.values.name.clone());
        }
    }

    /// Adds what one start shows; says whether the relay opens again in it.
    fn add(&mut self, inputs: &CrankingInputs, switch: Switch, edges: &Edges) -> bool {
        let passed = u64::try_from(edges.all.len()).unwrap_or(u64::MAX);
        counted::count(|done| done.teeth += passed);
        let readings = edges.readings(inputs);
        let end_s = readings.last().map_or(0.0, |last| last.time_s);
        let closed = contact(inputs, &commands(switch, &readings), end_s);
        let openings = closed.iter().filter(|it| it.1 < end_s).count();
        match closed.last() {
            Some(last) if last.1 >= end_s => self.power = self.power.max(seconds(last.0)),
            _ => self.closes = false,
        }
        let (from_s, to_s) = edges.idle_s;
        let shared = |it: &(f64, f64)| (it.1.min(to_s) - it.0.max(from_s)).max(0.0);
        self.powered = self.powered.max(seconds(closed.iter().map(shared).sum()));
        let back = readings.iter().filter(|it| it.time_s > from_s && it.time_s <= to_s);
        for reading in back.filter_map(|it| it.rpm) {
            self.fastest_back = self.fastest_back.max(rpm(reading));
        }
        let (from, to) = edges.backwards;
        self.teeth_too_many = self.teeth_too_many.max(2 * (to - from));
        self.openings = self.openings.max(openings);
        openings > 0
    }
}

impl Edges {
    /// What the sensor sees of a start that goes so.
    fn of(happening: Happening, course: &Course, run: &Run<'_>, inputs: &CrankingInputs) -> Self {
        match happening {
            Happening::SlowFirstTurn => {
                let mut edges = Self::default();
                edges.add(run, inputs, 0.0);
                edges
            }
            Happening::KickBack => kicked_back(course, run, inputs),
            Happening::Sticks => stuck(course, run, inputs),
        }
    }

    /// A whole start, from `offset_s` on, until the speed has been at its full course for long enough.
    fn add(&mut self, run: &Run<'_>, inputs: &CrankingInputs, offset_s: f64) {
        let settle = inputs.averaging.saturating_mul(inputs.confirmation.saturating_add(1));
        let mut still = run.teeth_of_cycle() + usize::try_from(settle).unwrap_or(0);
        let mut count = 0;
        while let Some(tooth) = run.tooth(count).filter(|_| still > 0) {
            let time_s = run.time_s(tooth);
            self.all.push((offset_s + time_s, tooth.positions));
            still -= usize::from(time_s > run.run_up_s());
            count += 1;
        }
    }

    /// The teeth of a start up to an angle, counted from that of the cycle.
    fn add_until(&mut self, run: &Run<'_>, angle_deg: f64) -> Vec<Passing> {
        let teeth = (0..).map_while(|count| run.tooth(count));
        let passed: Vec<_> = teeth.take_while(|tooth| tooth.angle_deg <= angle_deg).collect();
        self.all.extend(passed.iter().map(|tooth| (run.time_s(*tooth), tooth.positions)));
        passed
    }

    fn readings(&self, inputs: &CrankingInputs) -> Vec<SpeedReading> {
        let pitch_deg = 360.0 / f64::from(inputs.wheel.positions.max(1));
        let averaging = usize::try_from(inputs.averaging.max(1)).unwrap_or(1);
        let timeout_s = inputs.stall_timeout.high.base();
        let mut readings = Vec::new();
        let Some(&(mut from_s, _)) = self.all.first() else { return readings };
        let (mut last_s, mut positions) = (from_s, 0);
        let mut window: VecDeque<(f64, u32)> = VecDeque::new();
        for &(time_s, passed) in self.all.iter().skip(1) {
            let silence_s = time_s - last_s;
            last_s = time_s;
            if silence_s > timeout_s {
                let time_s = time_s - silence_s + timeout_s;
                readings.push(SpeedReading { time_s, rpm: None, gap_as_tooth: None });
                window.clear();
                (from_s, positions) = (last_s, 0);
                continue;
            }
            window.push_back((time_s, passed));
            positions += passed;
            if window.len() == averaging {
                let speed = Some(pitch_deg * f64::from(positions) / 6.0 / (time_s - from_s));
                readings.push(SpeedReading { time_s, rpm: speed, gap_as_tooth: speed });
                let gone = if inputs.average == Average::Blocks { averaging } else { 1 };
                for (at_s, passed) in window.drain(..gone) {
                    (from_s, positions) = (at_s, positions - passed);
                }
            }
        }
        readings
    }
}

fn kicked_back(course: &Course, run: &Run<'_>, inputs: &CrankingInputs) -> Edges {
    let mut edges = Edges::default();
    let back = inputs.kick_back.degrees();
    let least = run.start_deg + back.max(RUN_TO_TOP_DEG);
    let firings = (0..).map_while(|count| course.later(&course.firings, 0, count));
    let Some(top) = firings.take(64).find(|it| it.angle_deg >= least) else { return edges };
    let passed = edges.add_until(run, top.angle_deg);
    let top_s = run.time_s(top);
    let speed = run.true_rpm(top_s) * 6.0;
    let fall = Fall { from: speed, duration_s: 2.0 * back / speed };
    let first = edges.all.len();
    let mut positions = 1;
    for tooth in passed.iter().rev() {
        let Some(after_s) = fall.time_at(top.angle_deg - tooth.angle_deg) else { break };
        edges.all.push((top_s + after_s, positions));
        positions = tooth.positions;
    }
    let again_s = top_s + fall.duration_s;
    edges.backwards = (first, edges.all.len());
    edges.idle_s = (top_s, again_s);
    let again = Run::new(course, (top.angle_deg - back).rem_euclid(inputs.cycle.degrees()));
    edges.add(&again, inputs, again_s);
    edges
}

fn stuck(course: &Course, run: &Run<'_>, inputs: &CrankingInputs) -> Edges {
    let mut edges = Edges::default();
    let stop = CrankAngle::new(run.start_deg + 360.0);
    edges.add_until(run, stop.degrees());
    let stop_s = run.time_at(stop.degrees());
    let again_s = stop_s + inputs.stick.base();
    edges.idle_s = (stop_s, again_s);
    let again = Run::new(course, stop.within(inputs.cycle).degrees());
    edges.add(&again, inputs, again_s);
    edges
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cranking::cost::{self, tests::at_the_limits};

    #[test]
    fn no_start_that_goes_otherwise_passes_more_teeth_than_are_counted() {
        let all = [Happening::SlowFirstTurn, Happening::KickBack, Happening::Sticks];
        for inputs in at_the_limits() {
            for course in courses(&inputs).map(|it| it.expect("an engine that turns")) {
                let values = &course.values;
                let slow = course.with_run_up(values.run_up_s.max(slow_s(values)));
                let counted = cost::teeth_of_happening(&inputs, values);
                for (happening, course) in all.into_iter().zip([&slow, &course, &course]) {
                    let run = Run::new(course, 0.0);
                    let passed = Edges::of(happening, course, &run, &inputs).all.len();
                    let passed = u64::try_from(passed).unwrap();
                    assert!(passed <= counted, "{happening:?}: {passed} of {counted}, {inputs:?}");
                }
            }
        }
    }
}
