//! Angles of the crankshaft.

use std::ops::{Add, Sub};

/// An angle of the crankshaft in degrees.
///
/// Two turns of a four-stroke engine are 720 degrees, which an ordinary angle can't tell from none: hence
/// a type of its own.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct CrankAngle(f64);

impl CrankAngle {
    /// An angle of `degrees`.
    pub const fn new(degrees: f64) -> Self {
        Self(degrees)
    }

    /// The angle in degrees.
    pub const fn degrees(self) -> f64 {
        self.0
    }

    /// The same place in the cycle, from 0 up to but without `cycle`.
    ///
    /// Zero where `cycle` is not a positive number.
    #[must_use]
    pub fn within(self, cycle: Self) -> Self {
        if cycle.0 > 0.0 && self.0.is_finite() {
            let rest = self.0.rem_euclid(cycle.0);
            // a tiny negative angle rounds up to the cycle itself
            Self(if rest >= cycle.0 { 0.0 } else { rest })
        } else {
            Self(0.0)
        }
    }

    /// The same place in the cycle as an error: above `-cycle / 2`, up to and with `cycle / 2`.
    #[must_use]
    pub fn as_error(self, cycle: Self) -> Self {
        let within = self.within(cycle);
        if within.0 > cycle.0 / 2.0 { within - cycle } else { within }
    }

    /// One that is less than a turn of `cycle` below nought, counted from nought; any other as it is.
    #[must_use]
    pub fn from_nought(self, cycle: Self) -> Self {
        if self.0 < 0.0 && -self.0 < cycle.0 { self.within(cycle) } else { self }
    }

    /// Whether it is from nought up to but without a turn of `cycle`.
    pub fn is_in(self, cycle: Self) -> bool {
        (0.0..cycle.0).contains(&self.0)
    }

    /// Whether two angles are the same within a hundredth of a degree, finer than any engine is built.
    pub fn is_near(self, other: Self) -> bool {
        (self.0 - other.0).abs() < 0.01
    }
}

impl Add for CrankAngle {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for CrankAngle {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check_error(degrees: f64, expected: f64) {
        let error = CrankAngle::new(degrees).as_error(CrankAngle::new(720.0));
        assert!(error.is_near(CrankAngle::new(expected)), "{degrees} gave {error:?}");
    }

    #[test]
    fn errors_lie_above_minus_half_a_cycle_up_to_half() {
        check_error(0.0, 0.0);
        check_error(360.0, 360.0);
        check_error(-360.0, 360.0);
        check_error(361.0, -359.0);
        check_error(719.0, -1.0);
        check_error(-1e-17, 0.0);
    }
}
