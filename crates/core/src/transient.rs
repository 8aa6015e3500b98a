//! What a coil's current and a capacitor's voltage do in time, in closed form.
//!
//! Sources: [University Physics](https://openstax.org/details/books/university-physics-volume-2), vol. 2, sections 14.4 (RL
//! circuits) and 10.5 (RC circuits).
//!
//! Results are `None` where the question has no answer: a level that is never reached, a time before the start, a number
//! that is none.

mod capacitive;
mod inductive;
mod limited;
mod pulsed;

pub use capacitive::Capacitive;
pub use inductive::{Inductive, TurnOff, stored_energy_j};
pub use limited::Limited;
pub use pulsed::{Pulsed, Rhythm};

use crate::math;

/// `(1 - exp(-x)) / x`, which is 1 at zero.
fn relaxed(x: f64) -> f64 {
    if x == 0.0 { 1.0 } else { -math::exp_m1(-x) / x }
}

/// `ln(1 + x) / x`, which is 1 at zero.
fn logarithmic(x: f64) -> f64 {
    if x == 0.0 { 1.0 } else { math::ln_1p(x) / x }
}

/// `(x - ln(1 + x)) / x^2`, which is 1/2 at zero, for `x` above -1.
///
/// Near zero by its series 1/2 - x/3 + x^2/4 - ..., since the difference would cancel.
fn logarithmic_rest(x: f64) -> f64 {
    if x.abs() > 0.1 {
        return (1.0 - logarithmic(x)) / x;
    }
    // Nested multiplication from the term that 0.1 brings below the last digit.
    (2..20_u32).rev().fold(0.0, |sum, k| f64::from(k).recip() - x * sum)
}

/// A number, or nothing.
fn finite(x: f64) -> Option<f64> {
    x.is_finite().then_some(x)
}

/// A time that has not yet been, or nothing.
fn ahead(t_s: f64) -> Option<f64> {
    finite(t_s).filter(|t| *t >= 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_series_meets_the_difference() {
        for x in [-0.1, -0.05, 0.03, 0.1] {
            let difference = (x - math::ln_1p(x)) / (x * x);
            assert!((logarithmic_rest(x) - difference).abs() < 1e-13, "{x}");
        }
        assert!((logarithmic_rest(0.0) - 0.5).abs() < 1e-16, "the first term");
    }
}
