//! How long power stays on when the engine dies.

use std::collections::VecDeque;

use super::{Average, CrankingInputs};
use crate::{
    quantity::{Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::{Fall, Switch},
};

/// Places of the wheel from which the engine begins to die.
pub(super) const PLACES: u32 = 24;

/// What happens when the engine dies: it loses its speed evenly (common practice, no source), and does not rock.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StopAnswer {
    /// From the last firing to the opening of the contact, from the worst place.
    pub off_after: Time,
    /// From the last firing to standstill, in the same run.
    pub rests_after: Time,
    /// From standstill to the opening of the contact; nought where it opens while the engine still turns.
    pub on_at_rest: Time,
    /// Speed at which the contact opens.
    pub speed: RotationalSpeed,
}

/// The worst over the places of the wheel and the ends of the run-down: the longest time on.
pub(super) fn stop(inputs: &CrankingInputs, release: RotationalSpeed) -> StopAnswer {
    let mut ends = vec![inputs.run_down.low, inputs.run_down.high];
    ends.dedup();
    let places = ends.into_iter().flat_map(|run_down| (0..PLACES).map(move |n| (run_down, n)));
    let answers = places.map(|(run_down, n)| {
        let from_deg = 360.0 * f64::from(n) / f64::from(PLACES);
        let fall = Fall { from: inputs.idle.base() * 6.0, duration_s: run_down.base() };
        let off_s = command_off_s(inputs, fall, from_deg, release.base())
            + inputs.relay.drop_out_time.high.base();
        StopAnswer {
            off_after: seconds(off_s),
            rests_after: run_down,
            on_at_rest: seconds((off_s - run_down.base()).max(0.0)),
            speed: rpm(fall.speed_at(off_s) / 6.0),
        }
    });
    let none = StopAnswer {
        off_after: seconds(0.0),
        rests_after: inputs.run_down.nominal,
        on_at_rest: seconds(0.0),
        speed: rpm(0.0),
    };
    answers.fold(none, |worst, one| {
        let key = |it: &StopAnswer| (it.on_at_rest.base(), it.off_after.base());
        if key(&one) > key(&worst) { one } else { worst }
    })
}

/// When the command goes off: as many readings as must agree are too low, or no tooth comes for the time-out.
fn command_off_s(inputs: &CrankingInputs, fall: Fall, from_deg: f64, off_below_rpm: f64) -> f64 {
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
pub(super) fn teeth_deg(inputs: &CrankingInputs, from_deg: f64) -> impl Iterator<Item = f64> {
    let wheel = inputs.wheel;
    let pitch_deg = 360.0 / f64::from(wheel.positions.max(1));
    let turns = (0_u32..).map(|turn| f64::from(turn) * 360.0);
    let teeth = turns
        .flat_map(move |turn| (0..wheel.teeth()).map(move |n| turn + pitch_deg * f64::from(n)));
    teeth.map(move |angle| angle - from_deg).filter(|angle| *angle > 0.0)
}
