//! A number kept as the sum of two, for twice the digits.

use std::ops::{Add, Sub};

/// The unevaluated sum of a number and what its rounding lost.
///
/// Two nodes joined by a milliohm differ by nanovolts at 12 V: in one `f64` their difference would have six digits.
/// The sum of two numbers and its exact rounding error: *The Art of Computer Programming*, vol. 2, 4.2.2, theorem B.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Pair {
    high: f64,
    low: f64,
}

impl Pair {
    /// Not where the number surely lies below another one, by its first digits.
    pub(super) fn may_reach(self, other: Self) -> bool {
        self.high >= other.high
    }

    /// The number rounded to the usual digits.
    pub(super) fn value(self) -> f64 {
        self.high + self.low
    }
}

impl From<f64> for Pair {
    fn from(value: f64) -> Self {
        Self { high: value, low: 0.0 }
    }
}

impl Add<f64> for Pair {
    type Output = Self;

    fn add(self, other: f64) -> Self {
        self + Self::from(other)
    }
}

impl Add for Pair {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        let (sum, lost) = two_sum(self.high, other.high);
        let (high, low) = two_sum(sum, lost + (self.low + other.low));
        Self { high, low }
    }
}

impl Sub for Pair {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self + Self { high: -other.high, low: -other.low }
    }
}

/// The rounded sum, and exactly what the rounding lost.
fn two_sum(a: f64, b: f64) -> (f64, f64) {
    let sum = a + b;
    let b_rounded = sum - a;
    (sum, (a - (sum - b_rounded)) + (b - b_rounded))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_below_the_last_digit_survives() {
        let raised = Pair::from(12.6) + 1e-25;
        let difference = (raised - Pair::from(12.6)).value();
        assert_eq!(difference.to_bits(), 1e-25_f64.to_bits(), "one f64 would have lost it");
    }
}
