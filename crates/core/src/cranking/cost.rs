//! How many steps the parts of an answer take, counted before they are done: what a [`Budget`](crate::budget::Budget) is
//! spent on.
//!
//! What grows with the inputs are the teeth that are followed: in each run those of the run-up, of a cycle or two at full
//! speed, and of as many readings as must agree; from every start, at every corner. Each count is an upper bound; what a
//! tooth or a reading costs was measured natively.

use super::{
    Average, CrankingInputs,
    course::{Values, corners, turns},
    events,
    noise::MOST_EDGES,
    run::MOST_LOST,
    start::{EVEN_STARTS, MOST_STARTS_FOR_MARK},
    stop::PLACES,
};
use crate::quantity::{Measure, Time};

/// Following a tooth: when it passes.
const TOOTH: u64 = 6;
/// A reading that is looked at: what a switch makes of it, once or twice.
const READING: u64 = 4;
/// Sorting the thresholds that a reading makes unsteady in among all others: each time that their number doubles.
const SORTING: u64 = 6;
/// A spark that is lost.
const SPARK: u64 = 30;
/// A tooth of a cycle at a corner: when it passes, from where the gap can still be told, how fast and how slow it reads.
const TOOTH_OF_CYCLE: u64 = 250;
/// The speed curve of a corner, whatever its teeth.
const CURVE: u64 = 20_000;

/// One start at one corner.
#[derive(Clone, Copy, Debug)]
struct RunCost {
    teeth: u64,
    readings: u64,
    sparks: u64,
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
        let closed_s = inputs.relay.pull_in_time.high.base() + inputs.dwell.base();
        let in_all = cycles(inputs, values, closed_s).saturating_add(2 + teeth / cycle);
        let firings = u64::try_from(inputs.firings.len()).unwrap_or(u64::MAX);
        let lost = u64::try_from(MOST_LOST).unwrap_or(u64::MAX);
        let sparks = firings.saturating_mul(in_all).min(lost);
        let readings = match inputs.average {
            Average::Blocks => teeth / averaging,
            Average::Sliding => teeth,
        };
        Self { teeth, readings, sparks }
    }
}

/// Cycles in a time at full speed, rounded down.
fn cycles(inputs: &CrankingInputs, values: &Values, time_s: f64) -> u64 {
    whole(time_s * values.mean_rpm * 6.0 / inputs.cycle.degrees())
}

fn whole(number: f64) -> u64 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count; what is beyond is taken as the most"
    )]
    let whole = number as u64;
    whole
}

fn teeth_of_cycle(inputs: &CrankingInputs) -> u64 {
    u64::from(inputs.wheel.teeth()) * u64::from(turns(inputs))
}

/// Everything that is looked at a reading: each is compared with as many as must agree, to find where a switch goes on
/// and where it goes off.
fn comparing(inputs: &CrankingInputs) -> u64 {
    3 * u64::from(inputs.confirmation.max(1)) / 2
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

/// [`super::answer`].
pub fn answering(inputs: &CrankingInputs) -> u64 {
    let stopping = if inputs.threshold.is_some() { stopping(inputs) } else { 0 };
    surveying(inputs).saturating_add(stopping)
}

/// [`super::works_with`].
pub fn surveying(inputs: &CrankingInputs) -> u64 {
    let doublings = u64::from(at_corners(inputs, |run| run.readings).max(1).ilog2());
    let reading = 2 * READING + SORTING * doublings + comparing(inputs);
    at_corners(inputs, |run| {
        (run.teeth.saturating_mul(TOOTH))
            .saturating_add(run.readings.saturating_mul(reading))
            .saturating_add(run.sparks * SPARK)
    })
}

/// [`super::serves`].
pub fn serving(inputs: &CrankingInputs) -> u64 {
    at_corners(inputs, |run| {
        (run.teeth.saturating_mul(TOOTH)).saturating_add(run.readings.saturating_mul(READING))
    })
}

/// [`super::releases`].
pub fn releasing(inputs: &CrankingInputs) -> u64 {
    let reading = READING + comparing(inputs);
    at_corners(inputs, |run| {
        (run.teeth.saturating_mul(TOOTH)).saturating_add(run.readings.saturating_mul(reading))
    })
}

/// [`super::readings_at_corners`].
pub fn cresting(inputs: &CrankingInputs) -> u64 {
    at_corners(inputs, |_| 0)
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
    let edges = u64::from(MOST_EDGES);
    let after = averaging * u64::from(inputs.confirmation.max(1));
    let in_burst = match inputs.average {
        Average::Blocks => edges,
        Average::Sliding => 2 * edges,
    };
    (edges + 1) * averaging * (averaging / 2 + in_burst + after)
}

/// [`super::stop`].
pub fn stopping(inputs: &CrankingInputs) -> u64 {
    teeth_of_stops(inputs).saturating_mul(TOOTH)
}

/// The teeth that pass until the engine stands, from every place and both ends of the run-down.
pub fn teeth_of_stops(inputs: &CrankingInputs) -> u64 {
    // losing its speed evenly it turns half as far as it would at that speed
    let teeth = |run_down: Time| {
        let turns = inputs.idle.base() / 60.0 * run_down.base() / 2.0;
        whole(turns * f64::from(inputs.wheel.teeth())) + u64::from(inputs.wheel.teeth())
    };
    let (low, high) = (inputs.run_down.low, inputs.run_down.high);
    let shorter = if low == high { 0 } else { teeth(low) };
    u64::from(PLACES).saturating_mul(teeth(high).saturating_add(shorter))
}

#[cfg(test)]
pub(super) mod tests;
