//! A capacitor charged through a resistance.

use super::{ahead, finite};
use crate::math;

/// A capacitor at a constant voltage through a resistance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capacitive {
    supply_v: f64,
    resistance_ohm: f64,
    capacitance_f: f64,
}

impl Capacitive {
    /// A voltage of any sign, a resistance and a capacitance above zero; `None` otherwise.
    pub fn new(supply_v: f64, resistance_ohm: f64, capacitance_f: f64) -> Option<Self> {
        let is_real = supply_v.is_finite()
            && [resistance_ohm, capacitance_f].iter().all(|x| x.is_finite() && *x > 0.0);
        is_real.then_some(Self { supply_v, resistance_ohm, capacitance_f })
    }

    /// A capacitor on the middle of a divider: `upper_ohm` to the supply, `lower_ohm` to ground. Seen from
    /// it the supply is `V Rl / (Ru + Rl)` behind `Ru Rl / (Ru + Rl)`.
    pub fn on_divider(
        supply_v: f64,
        upper_ohm: f64,
        lower_ohm: f64,
        capacitance_f: f64,
    ) -> Option<Self> {
        if ![upper_ohm, lower_ohm].iter().all(|x| x.is_finite() && *x > 0.0) {
            return None;
        }
        let share = lower_ohm / (upper_ohm + lower_ohm);
        Self::new(supply_v * share, upper_ohm * share, capacitance_f)
    }

    /// `R C` in seconds.
    pub fn time_constant_s(&self) -> f64 {
        self.resistance_ohm * self.capacitance_f
    }

    /// The voltage in volts that the capacitor nears.
    pub fn final_voltage_v(&self) -> f64 {
        self.supply_v
    }

    /// The voltage in volts at `t_s` seconds, having been `initial_v` at zero: `V + (V0 - V) exp(-t / (R C))`.
    ///
    /// `None` for a time before zero.
    pub fn voltage_at(&self, initial_v: f64, t_s: f64) -> Option<f64> {
        let t_s = ahead(t_s)?;
        let passed = -math::exp_m1(-t_s / self.time_constant_s());
        finite(initial_v + (self.supply_v - initial_v) * passed)
    }

    /// The time in seconds at which the voltage reaches `target_v`, having been `initial_v` at zero:
    /// `-R C ln(1 - (v - V0) / (V - V0))`.
    ///
    /// `None` if it never does.
    pub fn time_to(&self, initial_v: f64, target_v: f64) -> Option<f64> {
        let missing = finite(target_v - initial_v)?;
        if missing == 0.0 {
            return Some(0.0);
        }
        let share = missing / (self.supply_v - initial_v);
        ahead(-self.time_constant_s() * math::ln_1p(-share))
    }

    /// The energy in joules at a voltage: `C V^2 / 2` (University Physics, vol. 2, section 8.3).
    pub fn stored_energy_j(&self, voltage_v: f64) -> f64 {
        0.5 * self.capacitance_f * voltage_v * voltage_v
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[track_caller]
    fn check(found: Option<f64>, expected: f64) {
        let found = found.expect("there is an answer");
        assert!(
            (found - expected).abs() <= 1e-13 * expected.abs(),
            "{found} instead of {expected}"
        );
    }

    #[test]
    fn a_divider_charges_to_its_middle() {
        let node = Capacitive::on_divider(12.0, 1e3, 2e3, 3e-6).unwrap();
        check(Some(node.time_constant_s()), 2e-3);
        check(Some(node.final_voltage_v()), 8.0);
        check(node.voltage_at(0.0, 2e-3), 8.0 * (1.0 - math::exp(-1.0)));
        check(node.time_to(0.0, 4.0), 2e-3 * math::ln(2.0));
    }

    #[test]
    fn a_voltage_beyond_the_last_is_never_reached() {
        let node = Capacitive::new(5.0, 1e3, 1e-6).unwrap();
        for target in [5.0, 5.1, -0.1, f64::NAN] {
            assert_eq!(node.time_to(0.0, target), None, "{target}");
        }
        check(node.time_to(9.0, 7.0), 1e-3 * math::ln(2.0));
    }

    proptest! {
        #[test]
        fn time_and_voltage_agree(
            v in -20.0..20.0_f64, from in -20.0..20.0_f64, share in 0.0..0.99_f64, rc in 1e-9..1.0_f64,
        ) {
            let node = Capacitive::new(v, 1.0, rc).unwrap();
            let target = from + share * (v - from);
            let t = node.time_to(from, target).unwrap();
            prop_assert!((node.voltage_at(from, t).unwrap() - target).abs() <= 1e-12);
        }

        #[test]
        fn nothing_panics(v: f64, r: f64, r2: f64, c: f64, from: f64, x: f64) {
            for node in [Capacitive::new(v, r, c), Capacitive::on_divider(v, r, r2, c)].into_iter().flatten() {
                prop_assert!(node.voltage_at(from, x).is_none_or(f64::is_finite));
                prop_assert!(node.time_to(from, x).is_none_or(f64::is_finite));
            }
        }
    }
}
