//! A coil that is charged at a constant voltage, up to the current that its switch holds.

use super::{Inductive, ahead, finite};
use crate::math;

/// A coil charged from no current on; at a limit its switch holds the current and takes the voltage that is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limited {
    coil: Inductive,
    supply_v: f64,
    resistance_ohm: f64,
    inductance_h: f64,
    limit_a: Option<f64>,
}

impl Limited {
    /// A voltage above zero, a resistance and an inductance above zero, and a limit above zero where there is one; `None`
    /// otherwise.
    pub fn new(
        supply_v: f64,
        resistance_ohm: f64,
        inductance_h: f64,
        limit_a: Option<f64>,
    ) -> Option<Self> {
        let is_real = supply_v > 0.0 && resistance_ohm > 0.0 && limit_a.is_none_or(|it| it > 0.0);
        let coil = Inductive::new(supply_v, resistance_ohm, inductance_h).filter(|_| is_real)?;
        Some(Self { coil, supply_v, resistance_ohm, inductance_h, limit_a })
    }

    /// What the current nears: the limit, or `V / R` where that is less, in amperes.
    pub fn last_a(&self) -> f64 {
        let free = self.supply_v / self.resistance_ohm;
        self.limit_a.map_or(free, |limit| limit.min(free))
    }

    /// The time in seconds at which the limit is reached; `None` where it never is.
    pub fn limited_from_s(&self) -> Option<f64> {
        self.coil.time_to(0.0, self.limit_a?)
    }

    /// The time in seconds until a current is reached, `-L/R ln(1 - I R / V)`; `None` where it never is.
    pub fn time_to(&self, current_a: f64) -> Option<f64> {
        let is_held = self.limit_a.is_some_and(|limit| current_a > limit);
        self.coil.time_to(0.0, current_a).filter(|_| !is_held)
    }

    /// The current in amperes after `t_s` seconds; `None` for a time before zero.
    pub fn current_at(&self, t_s: f64) -> Option<f64> {
        let free = self.coil.current_at(0.0, t_s)?;
        Some(self.limit_a.map_or(free, |limit| limit.min(free)))
    }

    /// The charge in coulombs that has flowed after `t_s` seconds: `V/R (t - L/R (1 - exp(-t R/L)))`, and `I t` at the
    /// limit.
    pub fn charge_at(&self, t_s: f64) -> Option<f64> {
        let (rising, held) = self.parts(t_s)?;
        let x = rising * self.resistance_ohm / self.inductance_h;
        let tau = self.inductance_h / self.resistance_ohm;
        finite(self.supply_v / self.resistance_ohm * tau * first_rest(x) + held * self.last_a())
    }

    /// The integral of the current's square after `t_s` seconds, in A² s: times a resistance it is the heat in it.
    ///
    /// `(V/R)^2 (t - 2 L/R (1 - exp(-t R/L)) + L/(2 R) (1 - exp(-2 t R/L)))`, and `I^2 t` at the limit.
    pub fn square_at(&self, t_s: f64) -> Option<f64> {
        let (rising, held) = self.parts(t_s)?;
        let x = rising * self.resistance_ohm / self.inductance_h;
        let (last, tau) =
            (self.supply_v / self.resistance_ohm, self.inductance_h / self.resistance_ohm);
        finite(last * last * tau * second_rest(x) + held * self.last_a() * self.last_a())
    }

    /// The energy in joules that the switch takes by holding the current after `t_s` seconds: `(V - I R) I t` at the
    /// limit. What the switch drops while it conducts fully is not in it.
    pub fn held_j(&self, t_s: f64) -> Option<f64> {
        let (_, held) = self.parts(t_s)?;
        let last = self.last_a();
        finite(held * last * (self.supply_v - last * self.resistance_ohm).max(0.0))
    }

    /// The part of a time in which the current rises, and the part at the limit.
    fn parts(&self, t_s: f64) -> Option<(f64, f64)> {
        let t_s = ahead(t_s)?;
        let rising = self.limited_from_s().map_or(t_s, |from| from.min(t_s));
        Some((rising, t_s - rising))
    }
}

/// `x - (1 - exp(-x))`, by its series near zero, where the difference would cancel.
fn first_rest(x: f64) -> f64 {
    if x > 0.1 {
        return x + math::exp_m1(-x);
    }
    series(x, |_| 1.0)
}

/// `x - 2 (1 - exp(-x)) + (1 - exp(-2 x)) / 2`, likewise.
fn second_rest(x: f64) -> f64 {
    if x > 0.1 {
        return x + 2.0 * math::exp_m1(-x) - math::exp_m1(-2.0 * x) / 2.0;
    }
    // the k-th term of exp(-2 x) has 2^k times that of exp(-x)
    series(x, |two_to_k| 2.0 - two_to_k / 2.0)
}

/// The terms of `exp(-x)` from the second power on, each with a weight by `2^k`.
fn series(x: f64, weight: impl Fn(f64) -> f64) -> f64 {
    let (mut sum, mut term, mut two_to_k) = (0.0, -x, 2.0);
    for k in 2..16_u32 {
        term *= -x / f64::from(k);
        two_to_k *= 2.0;
        sum += term * weight(two_to_k);
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(got: Option<f64>, expected: f64) {
        let got = got.expect("it has an answer");
        assert!(
            (got - expected).abs() <= 1e-12 * expected.abs().max(1e-12),
            "{got} is not {expected}"
        );
    }

    #[test]
    fn the_series_meet_the_differences() {
        let x = 0.1;
        check(Some(first_rest(x)), x + math::exp_m1(-x));
        let difference = x + 2.0 * math::exp_m1(-x) - math::exp_m1(-2.0 * x) / 2.0;
        assert!((second_rest(x) - difference).abs() < 1e-15, "{}", second_rest(x));
        // the first terms
        check(Some(first_rest(1e-7) / 0.5e-14), 1.0 - 1e-7 / 3.0);
        check(Some(second_rest(1e-7) / (1e-21 / 3.0)), 1.0 - 0.75e-7);
    }

    #[test]
    fn at_the_limit_the_current_stands_and_the_switch_takes_the_rest() {
        // 10 V, 0.5 ohm, 5 mH: 20 A at last; 10 A after 10 ms ln 2
        let coil = Limited::new(10.0, 0.5, 5e-3, Some(10.0)).expect("it is real");
        let from = 10e-3 * math::ln(2.0);
        check(coil.limited_from_s(), from);
        check(coil.current_at(1.0), 10.0);
        check(coil.time_to(10.0), from);
        assert_eq!(coil.time_to(10.1), None, "the switch holds it");
        check(coil.held_j(from + 2e-3), 2e-3 * 10.0 * (10.0 - 5.0));
        let free = Limited::new(10.0, 0.5, 5e-3, None).expect("it is real");
        check(coil.charge_at(from + 2e-3), free.charge_at(from).expect("ahead") + 20e-3);
        check(coil.square_at(from + 2e-3), free.square_at(from).expect("ahead") + 0.2);
        check(free.held_j(1.0), 0.0);
    }

    #[test]
    fn what_no_coil_can_have_is_none() {
        assert_eq!(Limited::new(0.0, 0.5, 5e-3, None), None);
        assert_eq!(Limited::new(10.0, 0.0, 5e-3, None), None);
        assert_eq!(Limited::new(10.0, 0.5, 0.0, None), None);
        assert_eq!(Limited::new(10.0, 0.5, 5e-3, Some(0.0)), None);
        let coil = Limited::new(10.0, 0.5, 5e-3, None).expect("it is real");
        assert_eq!(coil.charge_at(-1.0), None);
    }
}
