//! Numbers of 32 digits.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A number as the unevaluated sum of two: T. J. Dekker, "A floating-point technique for extending the available
/// precision", Numerische Mathematik 18, 1971; the product with a fused multiply-add.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct DoubleDouble {
    high: f64,
    low: f64,
}

/// The natural logarithm of 2.
const LN_2: DoubleDouble =
    DoubleDouble { high: std::f64::consts::LN_2, low: 2.3190468138462996e-17 };

impl DoubleDouble {
    pub(crate) const ZERO: Self = Self { high: 0.0, low: 0.0 };

    pub(crate) fn value(self) -> f64 {
        self.high + self.low
    }

    pub(crate) fn abs(self) -> Self {
        if self.high < 0.0 { -self } else { self }
    }

    /// `exp(x) - 1`: the series of an argument reduced to 1/1500, then squared nine times, then by powers of two.
    pub(crate) fn exp_m1(self) -> Self {
        let halvings = (self.high / LN_2.high).round();
        let reduced = (self - LN_2 * halvings.into()).scaled(1.0 / 512.0);
        let (mut term, mut sum) = (reduced, reduced);
        for k in 2..12 {
            term = term * reduced / f64::from(k).into();
            sum = sum + term;
        }
        for _ in 0..9 {
            // (1 + s)^2 - 1
            sum = sum.scaled(2.0) + sum * sum;
        }
        // Far below -700 the power vanishes and leaves -1; far above, no answer lies.
        let power = halvings.exp2();
        sum.scaled(power) + (Self::from(power) - Self::from(1.0))
    }

    /// By a power of two, which is exact.
    fn scaled(self, power: f64) -> Self {
        Self { high: self.high * power, low: self.low * power }
    }
}

impl From<f64> for DoubleDouble {
    fn from(high: f64) -> Self {
        Self { high, low: 0.0 }
    }
}

/// The rounded sum, and what the rounding lost.
fn two_sum(a: f64, b: f64) -> (f64, f64) {
    let sum = a + b;
    let b_rounded = sum - a;
    (sum, (a - (sum - b_rounded)) + (b - b_rounded))
}

/// The same where the first is the larger.
fn quick_two_sum(a: f64, b: f64) -> DoubleDouble {
    let high = a + b;
    DoubleDouble { high, low: b - (high - a) }
}

impl Add for DoubleDouble {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        let (high, high_lost) = two_sum(self.high, other.high);
        let (low, low_lost) = two_sum(self.low, other.low);
        let sum = quick_two_sum(high, high_lost + low);
        quick_two_sum(sum.high, sum.low + low_lost)
    }
}

impl Neg for DoubleDouble {
    type Output = Self;

    fn neg(self) -> Self {
        Self { high: -self.high, low: -self.low }
    }
}

impl Sub for DoubleDouble {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl Mul for DoubleDouble {
    type Output = Self;

    fn mul(self, other: Self) -> Self {
        let product = self.high * other.high;
        let lost = self.high.mul_add(other.high, -product);
        quick_two_sum(product, lost + (self.high * other.low + self.low * other.high))
    }
}

impl Div for DoubleDouble {
    type Output = Self;

    fn div(self, other: Self) -> Self {
        let first = self.high / other.high;
        let rest = self - other * first.into();
        let second = rest.high / other.high;
        let rest = rest - other * second.into();
        quick_two_sum(first, second) + (rest.high / other.high).into()
    }
}
