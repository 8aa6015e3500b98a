//! How many steps the parts of an answer take: what a [`Budget`](crate::budget::Budget) is spent on.
//!
//! What grows with the inputs are the teeth that are followed: in each run those of the run-up, of a cycle or two at full
//! speed, and of as many readings as must agree; from every start, at every corner. They are followed once for all relays
//! ([`Starts`]), and counted before, as an upper bound. What one relay makes of them is worked out at few of the teeth, the
//! more the more often it opens: that is counted as it is done, start by start. What a tooth or a reading costs was measured
//! natively.

use super::{
    Average, CrankingInputs, Starts,
    course::{Values, corners, turns},
    events,
    noise::MOST_EDGES,
    pace::GROUP,
    start::{EVEN_STARTS, MOST_STARTS_FOR_MARK},
    stop::PLACES,
};

/// Following a tooth: when it passes.
const TOOTH: u64 = 10;
/// A reading that is followed: the speed, whether it is the fastest yet, and how slow those behind it are.
const READING: u64 = 12;
/// A tooth whose time is worked out by itself.
pub(super) const SINGLE_TOOTH: u64 = 14;
/// A start that is looked at for one relay, whatever is seen in it.
pub(super) const START: u64 = 500;
/// A step of the levels at which a relay would let go.
const LEVEL: u64 = 12;
/// A tooth of a cycle at a corner: when it passes, from where the gap can still be told, how fast and how slow it reads.
const TOOTH_OF_CYCLE: u64 = 300;
/// The speed curve of a corner, whatever its teeth.
const CURVE: u64 = 20_000;
/// A stop from one place: halved a few times, each time between two teeth.
const STOP: u64 = 5_000;

/// One start at one corner.
#[derive(Clone, Copy, Debug)]
struct RunCost {
    teeth: u64,
    readings: u64,
}

impl RunCost {
    fn new(inputs: &CrankingInputs, values: &Values) -> Self {
        let averaging = u64::from(inputs.averaging.max(1));
        let laps = if averaging == 1 { 1 } else { 2 };
        // at full speed, until nothing more can show
        let settling = averaging * (u64::from(inputs.confirmation.max(1)) + 1);
        let cycle = teeth_of_cycle(inputs);
        // the motion comes as far in the run-up as in half of it at full speed; of the lap that has begun all may pass
        let begun = u64::from(values.run_up_s > 0.0);
        let in_run_up = cycles(inputs, values, values.run_up_s / 2.0).saturating_add(begun);
        let teeth =
            (in_run_up.saturating_add(laps)).saturating_mul(cycle).saturating_add(settling + 1);
        let readings = match inputs.average {
            Average::Blocks => teeth / averaging,
            Average::Sliding => teeth,
        };
        Self { teeth, readings }
    }
}

/// Cycles in a time at full speed, rounded down.
fn cycles(inputs: &CrankingInputs, values: &Values, time_s: f64) -> u64 {
    let cycles = time_s * values.mean_rpm * 6.0 / inputs.cycle.degrees();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count; what is beyond is taken as the most"
    )]
    let whole = cycles as u64;
    whole
}

fn teeth_of_cycle(inputs: &CrankingInputs) -> u64 {
    u64::from(inputs.wheel.teeth()) * u64::from(turns(inputs))
}

/// The courses of all corners, and `of_run` for each run at each of them.
fn at_corners(inputs: &CrankingInputs, of_run: impl Fn(&RunCost) -> u64) -> u64 {
    let starts = u64::from(EVEN_STARTS + MOST_STARTS_FOR_MARK * turns(inputs));
    let corners = corners(inputs);
    let each = corners.iter().map(|values| {
        let runs = starts.saturating_mul(of_run(&RunCost::new(inputs, values)));
        runs.saturating_add(course(inputs))
    });
    each.fold(0, u64::saturating_add)
}

fn course(inputs: &CrankingInputs) -> u64 {
    CURVE + TOOTH_OF_CYCLE * teeth_of_cycle(inputs)
}

/// The teeth of all starts.
pub fn teeth_of_starts(inputs: &CrankingInputs) -> u64 {
    at_corners(inputs, |run| run.teeth).saturating_sub(at_corners(inputs, |_| 0))
}

/// [`Starts::follow`].
pub fn following(inputs: &CrankingInputs) -> u64 {
    at_corners(inputs, |run| {
        (run.teeth.saturating_mul(TOOTH)).saturating_add(run.readings.saturating_mul(READING))
    })
}

/// The most that an answer can take, with all that is asked beside it: what it takes is counted as it is done.
pub fn answering_at_most(inputs: &CrankingInputs) -> u64 {
    let (confirmation, averaging) = (inputs.confirmation.max(1), inputs.averaging.max(1));
    let group = u64::try_from(GROUP).unwrap_or(u64::MAX);
    let levels = teeth_of_starts(inputs).saturating_mul(WEIGHED * LEVEL);
    let looking = at_corners(inputs, |run| {
        let groups = run.teeth / group + 2 * run.teeth / teeth_of_cycle(inputs) + 2;
        // a tooth is passed, and is the first and the last of a reading: for what a relay is told, and for the lowest reading then
        let each = 3 * 2;
        // and for the highest threshold in time, there with as many readings before a group as must agree
        let again = u64::from(confirmation) + u64::from(averaging).div_ceil(group) + 1;
        START + SINGLE_TOOTH * (run.teeth * (each + 3 * again) + groups * 16 + 200)
    });
    looking
        .saturating_add(levels)
        .saturating_add(stopping(inputs) * STOPPED)
        .saturating_add(mistaking(inputs))
        .saturating_add(happening(inputs))
}

/// Most thresholds and releases that are weighed for one answer, and most stops.
const WEIGHED: u64 = 24;
const STOPPED: u64 = 5;

/// What is asked beside [`Starts::answer`] for one relay: other thresholds and releases, stops, and false edges.
pub fn asking_beside(inputs: &CrankingInputs, starts: &Starts) -> u64 {
    (weighing(starts).saturating_mul(WEIGHED))
        .saturating_add(stopping(inputs) * STOPPED)
        .saturating_add(mistaking(inputs))
}

/// [`Starts::works_with`], [`Starts::serves`] and [`Starts::releases`].
fn weighing(starts: &Starts) -> u64 {
    let levels = starts.corners.iter().map(|it| it.reach.levels.count());
    let levels =
        levels.fold(0_u64, |sum, it| sum.saturating_add(u64::try_from(it).unwrap_or(u64::MAX)));
    levels.saturating_mul(LEVEL).saturating_add(START)
}

/// [`super::events`].
pub fn happening(inputs: &CrankingInputs) -> u64 {
    if inputs.threshold.is_none() {
        return 0;
    }
    let each = corners(inputs).into_iter().map(|values| {
        let runs = u64::from(3 * events::STARTS);
        let teeth = runs.saturating_mul(teeth_of_happening(inputs, &values));
        course(inputs).saturating_add(teeth.saturating_mul(2 * TOOTH))
    });
    each.fold(0, u64::saturating_add)
}

/// The teeth of a start that goes otherwise: up to two cycles more, until the engine is thrown back or the starter sticks, and
/// those that pass backwards.
pub(super) fn teeth_of_happening(inputs: &CrankingInputs, values: &Values) -> u64 {
    let slow_s = values.run_up_s.max(events::slow_s(values));
    let slow = Values { run_up_s: slow_s, ..values.clone() };
    RunCost::new(inputs, &slow).teeth.saturating_add(3 * teeth_of_cycle(inputs))
}

/// [`super::noise`].
pub fn mistaking(inputs: &CrankingInputs) -> u64 {
    let averaging = u64::from(inputs.averaging.max(1));
    u64::from(MOST_EDGES + 1) * 2 * (averaging + 1) * 4
}

/// [`super::stop`].
pub fn stopping(inputs: &CrankingInputs) -> u64 {
    let is_spread = inputs.run_down.low != inputs.run_down.high;
    u64::from(PLACES) * (1 + u64::from(is_spread)) * STOP
}

#[cfg(test)]
pub(super) mod tests;
