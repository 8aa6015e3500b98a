//! Where top dead centre lies behind the first tooth: from the engine standing there, and from a timing light.
//!
//! An advance before top dead centre is positive. The offset is the angle that the crank turns from the first tooth after
//! the gap, at the sensor, to top dead centre. A controller that is told too small an offset fires too early.

use crate::{
    quantity::{Band, CrankAngle, Measure, RotationalSpeed, Time, seconds},
    working::{Formula, Step, Working},
};

/// What an eye reads off a timing mark, in degrees: common practice, no source.
const READING_DEG: f64 = 0.5;

const STANDING: Formula = Formula {
    symbols: "a = (k − 1) 360 / N",
    source: "the crank has turned by that many teeth since the first",
};
const DELAY: Formula = Formula {
    symbols: "t = (s_low − s_high) / (6 (n_high − n_low))",
    source: "two readings, s = advance + error − 6 n t, solved for the delay",
};
const CONSTANT: Formula = Formula {
    symbols: "e = s_low − advance + 6 n_low t",
    source: "the same, solved for the error that is there at any speed",
};
const ENTER: Formula =
    Formula { symbols: "a = offset + e", source: "too early by e: TDC is e later" };
const AT_ONCE: Formula = Formula {
    symbols: "e = s − advance",
    source: "one reading: offset and delay together, at that speed alone",
};

/// The offset of a tooth that stands at the sensor at top dead centre; `tooth` from 1.
pub fn standing(working: &mut Working, positions: u32, tooth: u32) -> CrankAngle {
    let turned = f64::from(tooth.saturating_sub(1)) * 360.0 / f64::from(positions.max(1));
    working.step(
        &STANDING,
        &[("k", tooth.into()), ("N", positions.into())],
        CrankAngle::new(turned),
    )
}

/// One reading of the light.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LightReading {
    /// Advance that it shows.
    pub seen: Band<CrankAngle>,
    /// At that speed.
    pub speed: RotationalSpeed,
}

/// What readings at two speeds say.
#[derive(Clone, Debug, PartialEq)]
pub struct SolvedOffset {
    /// Too early by so much at any speed.
    pub error: Band<CrankAngle>,
    /// Later by so much, at any speed.
    pub delay: Band<Time>,
    /// How they were found.
    pub working: Vec<Step>,
}

/// The ends between which a reading lies: those typed, or what an eye can tell.
fn ends(seen: Band<CrankAngle>) -> [f64; 2] {
    if seen.is_spread() {
        return [seen.low.degrees(), seen.high.degrees()];
    }
    [seen.nominal.degrees() - READING_DEG, seen.nominal.degrees() + READING_DEG]
}

/// Solves both readings for the constant error and the delay. Nothing where both are at one speed.
pub fn solve(
    commanded: CrankAngle,
    one: LightReading,
    other: LightReading,
) -> Option<SolvedOffset> {
    let (low, high) = if one.speed <= other.speed { (one, other) } else { (other, one) };
    let apart = 6.0 * (high.speed.base() - low.speed.base());
    if apart < 1e-6 {
        return None;
    }
    let delay = |s_low: f64, s_high: f64| (s_low - s_high) / apart;
    let error = |s_low: f64, s_high: f64| {
        s_low - commanded.degrees() + 6.0 * low.speed.base() * delay(s_low, s_high)
    };
    let (s_low, s_high) = (low.seen.nominal.degrees(), high.seen.nominal.degrees());
    let ([l0, l1], [h0, h1]) = (ends(low.seen), ends(high.seen));
    let found_delay = Band {
        nominal: seconds(delay(s_low, s_high)),
        low: seconds(delay(l0, h1)),
        high: seconds(delay(l1, h0)),
    };
    let found_error = Band {
        nominal: CrankAngle::new(error(s_low, s_high)),
        low: CrankAngle::new(error(l0, h1)),
        high: CrankAngle::new(error(l1, h0)),
    };
    let mut working = Working::new();
    let shown = [
        ("s_low", low.seen.nominal.show()),
        ("s_high", high.seen.nominal.show()),
        ("n_high", high.speed.show()),
        ("n_low", low.speed.show()),
        ("advance", commanded.show()),
        ("t", found_delay.nominal.show()),
    ];
    working.step(&DELAY, &shown, found_delay.nominal);
    working.step(&CONSTANT, &shown, found_error.nominal);
    Some(SolvedOffset { error: found_error, delay: found_delay, working: working.into_steps() })
}

/// What a single reading says: offset and delay together.
pub fn at_once(working: &mut Working, commanded: CrankAngle, seen: CrankAngle) -> CrankAngle {
    let error = seen - commanded;
    working.step(&AT_ONCE, &[("s", seen.show()), ("advance", commanded.show())], error)
}

/// The offset to enter.
pub fn to_enter(working: &mut Working, offset: CrankAngle, error: CrankAngle) -> CrankAngle {
    working.step(&ENTER, &[("offset", offset.show()), ("e", error.show())], offset + error)
}
