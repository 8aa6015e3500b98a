//! Teeth in time, and time in degrees.

use core::f64::consts::PI;

use crate::{
    math,
    quantity::{CrankAngle, Frequency, Measure, Ratio, RotationalSpeed, Time, hertz, rpm, seconds},
    working::{Formula, Working},
};

const RATE: Formula = Formula {
    symbols: "f = n N / 60",
    source: "teeth of a turn by turns of a second, between neighbouring teeth",
};
const CAM_RATE: Formula = Formula {
    symbols: "f = n N / 120",
    source: "a four-stroke's cam turns once in two turns of the crank",
};
const PERIOD: Formula = Formula { symbols: "t = 60 / (n N)", source: "the time of one tooth" };
const RUNS_OUT: Formula =
    Formula { symbols: "n = 60 f / N", source: "the speed at which teeth come at that rate" };
const CAM_RUNS_OUT: Formula = Formula {
    symbols: "n = 120 f / N",
    source: "a four-stroke's cam turns once in two turns of the crank",
};
const PITCH: Formula =
    Formula { symbols: "p = 360 / N", source: "a turn, shared by its positions" };
const TURNED: Formula =
    Formula { symbols: "a = 6 n t", source: "a turn a minute is six degrees a second" };
const INTERPOLATED: Formula = Formula {
    symbols: "e = p_gap (exp(π d (p + p_gap) / (a √(1 − d²))) − 1)",
    source: "speed swings along a sine of the crank's angle by the dip d, once a firing a, at its steepest all the way; the \
        tooth before the gap is assumed to go on over it",
};

/// Degrees from a tooth to its neighbour. `positions` from 1.
pub fn pitch(working: &mut Working, positions: u32) -> CrankAngle {
    let angle = CrankAngle::new(360.0 / f64::from(positions.max(1)));
    working.step(&PITCH, &[("N", positions.into())], angle)
}

/// Degrees across the gap: from the tooth before it to the tooth behind.
pub fn across_gap(pitch: CrankAngle, missing: u32) -> CrankAngle {
    CrankAngle::new(pitch.degrees() * f64::from(missing + 1))
}

/// The rate of teeth of the crank's wheel at a speed, between neighbours, gaps left out.
pub fn frequency(working: &mut Working, positions: u32, speed: RotationalSpeed) -> Frequency {
    let found = hertz(speed.base() * f64::from(positions) / 60.0);
    working.step(&RATE, &[("n", speed.show()), ("N", positions.into())], found)
}

/// The rate of evenly spaced teeth of a cam's wheel at a speed of the crank.
pub fn cam_frequency(working: &mut Working, teeth: u32, speed: RotationalSpeed) -> Frequency {
    let found = hertz(speed.base() * f64::from(teeth) / 120.0);
    working.step(&CAM_RATE, &[("n", speed.show()), ("N", teeth.into())], found)
}

/// The time from a tooth to its neighbour. A speed above zero.
pub fn period(working: &mut Working, positions: u32, speed: RotationalSpeed) -> Time {
    let found = seconds(60.0 / (speed.base() * f64::from(positions.max(1))));
    working.step(&PERIOD, &[("n", speed.show()), ("N", positions.into())], found)
}

/// The speed at which teeth come at a rate.
pub fn speed_at(working: &mut Working, positions: u32, limit: Frequency) -> RotationalSpeed {
    let found = rpm(60.0 * limit.base() / f64::from(positions.max(1)));
    working.step(&RUNS_OUT, &[("f", limit.show()), ("N", positions.into())], found)
}

/// The speed of the crank at which teeth of a cam come at a rate.
pub fn cam_speed_at(working: &mut Working, teeth: u32, limit: Frequency) -> RotationalSpeed {
    let found = rpm(120.0 * limit.base() / f64::from(teeth.max(1)));
    working.step(&CAM_RUNS_OUT, &[("f", limit.show()), ("N", teeth.into())], found)
}

/// The most positions whose rate at a speed is no more than a limit; at least two, or nothing.
pub fn most_positions(limit: Frequency, speed: RotationalSpeed) -> Option<u32> {
    let most = (60.0 * limit.base() / speed.base() + 1e-9).floor();
    (2..=360_u32).rev().find(|it| f64::from(*it) <= most)
}

/// What the crank turns in a time.
pub fn turned(working: &mut Working, time: Time, speed: RotationalSpeed) -> CrankAngle {
    let found = CrankAngle::new(6.0 * speed.base() * time.base());
    working.step(&TURNED, &[("n", speed.show()), ("t", time.show())], found)
}

/// The most that is lost over `interval` degrees without a tooth, if the speed over the `last` degrees before is taken to
/// go on while it swings by `dip` of its mean once a firing interval.
///
/// Where the speed is n (1 − d sin x), it changes by no more than d / √(1 − d²) of itself a radian of x, and no faster
/// from the middle of the last interval to the middle of the next. `dip` from 0 to below 1.
///
/// Nothing where the teeth are more than a quarter of the swing apart: there they tell no more than that.
pub fn interpolation(
    working: &mut Working,
    last: CrankAngle,
    interval: CrankAngle,
    dip: Ratio,
    firing: CrankAngle,
) -> Option<CrankAngle> {
    let (p, gap, a, d) = (last.degrees(), interval.degrees(), firing.degrees(), dip.base());
    if p > a / 4.0 || d >= 1.0 {
        return None;
    }
    let steepest = PI * d * (p + gap) / (a * (1.0 - d * d).sqrt());
    let found = CrankAngle::new(gap * math::exp_m1(steepest));
    let shown =
        [("d", dip.show()), ("p_gap", interval.show()), ("p", last.show()), ("a", firing.show())];
    Some(working.step(&INTERPOLATED, &shown, found))
}
