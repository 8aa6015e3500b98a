//! How long power stays on when the engine dies.

use super::{Average, CrankingInputs};
use crate::{
    quantity::{Measure, RotationalSpeed, Time, rpm, seconds},
    timeline::Fall,
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
///
/// The speed falls evenly, so that the reading over any teeth is the speed midway in time between the first and the last of
/// them: each is lower than the one before, whether the gap is in it or not. So the first that is too low is found by halving,
/// and all that follow are too low as well. Likewise each time from tooth to tooth is longer than the one before, and each
/// time across the gap. From one tooth to the next they change by a millionth or more (an angle of a degree, of at most
/// 300 000 until it rests); rounding changes them by less than 1e-9 of themselves.
pub(super) fn command_off_s(
    inputs: &CrankingInputs,
    fall: Fall,
    from_deg: f64,
    off_below_rpm: f64,
) -> f64 {
    let timeout_s = inputs.stall_timeout.high.base();
    let teeth = FallingTeeth::new(inputs, fall, from_deg);
    let end = teeth.first_silent(timeout_s);
    let averaging = u64::from(inputs.averaging.max(1));
    let is_dense = averaging == 1 || inputs.average == Average::Sliding;
    let last_of = |at: u64| if is_dense { at + averaging } else { (at + 1) * averaging };
    let low = first_where(|at| {
        let last = last_of(at);
        let (Some(from), Some(to)) = (teeth.passed(last - averaging), teeth.passed(last)) else {
            return true;
        };
        (to.1 - from.1) / 6.0 / (to.0 - from.0) < off_below_rpm
    });
    let off = last_of(low + u64::from(inputs.confirmation.max(1)) - 1);
    if let Some((time_s, _)) = teeth.passed(off).filter(|_| off < end) {
        return time_s;
    }
    let last = end.checked_sub(1).and_then(|last| teeth.passed(last));
    last.map_or(0.0, |last| last.0) + timeout_s
}

/// The teeth that pass while the engine dies, counted from the first.
#[derive(Clone, Copy, Debug)]
struct FallingTeeth {
    fall: Fall,
    from_deg: f64,
    pitch_deg: f64,
    of_turn: u64,
    /// Teeth of the first turn that have passed before.
    before: u64,
}

impl FallingTeeth {
    fn new(inputs: &CrankingInputs, fall: Fall, from_deg: f64) -> Self {
        let of_turn = u64::from(inputs.wheel.teeth());
        let pitch_deg = inputs.wheel.pitch_deg();
        let mut teeth = Self { fall, from_deg, pitch_deg, of_turn, before: 0 };
        teeth.before = first_where(|tooth| teeth.angle_deg(tooth) > 0.0);
        teeth
    }

    /// The angle from the beginning of the run-down to a tooth, those before it counted too.
    fn angle_deg(&self, tooth: u64) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "turns until it rests, below 2^52")]
        let (turn, place) = ((tooth / self.of_turn) as f64, (tooth % self.of_turn) as f64);
        turn * 360.0 + self.pitch_deg * place - self.from_deg
    }

    /// When a tooth passes, and the angle until then; nothing where the engine rests before.
    fn passed(&self, tooth: u64) -> Option<(f64, f64)> {
        let angle_deg = self.angle_deg(self.before + tooth);
        Some((self.fall.time_at(angle_deg)?, angle_deg))
    }

    /// Whether a tooth comes later than the time-out after the one before, or not at all.
    fn is_silent(&self, tooth: u64, timeout_s: f64) -> bool {
        let before_s = tooth.checked_sub(1).and_then(|it| self.passed(it)).map_or(0.0, |it| it.0);
        self.passed(tooth).is_none_or(|it| it.0 - before_s > timeout_s)
    }

    /// The first tooth that is so: the very first, one of those after the gap, or one of the others.
    fn first_silent(&self, timeout_s: f64) -> u64 {
        if self.is_silent(0, timeout_s) {
            return 0;
        }
        // the first of a turn stands behind the gap
        let after_gap = |turn: u64| (turn + 1) * self.of_turn - self.before;
        let of_gap = after_gap(first_where(|turn| self.is_silent(after_gap(turn), timeout_s)));
        if self.of_turn == 1 {
            return of_gap;
        }
        let others = self.of_turn - 1;
        let passed = self.before - self.before / self.of_turn;
        let other = |at: u64| {
            let at = passed + at;
            at / others * self.of_turn + 1 + at % others - self.before
        };
        of_gap.min(other(first_where(|at| self.is_silent(other(at), timeout_s))))
    }
}

/// The first number from which on it is so.
fn first_where(is_so: impl Fn(u64) -> bool) -> u64 {
    let (mut low, mut high) = (0, 1);
    while !is_so(high - 1) && high < u64::MAX / 4 {
        (low, high) = (high, 2 * high);
    }
    let mut high = high - 1;
    while low < high {
        let middle = u64::midpoint(low, high);
        if is_so(middle) { high = middle } else { low = middle + 1 }
    }
    low
}
