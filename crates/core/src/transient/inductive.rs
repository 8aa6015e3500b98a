//! A coil with resistance at a constant voltage.

use super::{ahead, finite, logarithmic, logarithmic_rest, relaxed};
use crate::math;

/// A coil with all the resistance in its loop, at a constant voltage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inductive {
    supply_v: f64,
    resistance_ohm: f64,
    inductance_h: f64,
}

/// A coil whose switch has opened: the current runs on against a clamp until it is zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnOff {
    current_a: f64,
    net_v: f64,
    resistance_ohm: f64,
    inductance_h: f64,
}

/// The energy in a coil that carries a current, in joules: `L I^2 / 2` (University Physics, vol. 2, section 14.3).
pub fn stored_energy_j(inductance_h: f64, current_a: f64) -> f64 {
    0.5 * inductance_h * current_a * current_a
}

impl Inductive {
    /// A voltage of any sign, a resistance from zero, an inductance above zero; `None` otherwise.
    pub fn new(supply_v: f64, resistance_ohm: f64, inductance_h: f64) -> Option<Self> {
        let is_real = supply_v.is_finite()
            && (0.0..f64::INFINITY).contains(&resistance_ohm)
            && inductance_h.is_finite()
            && inductance_h > 0.0;
        is_real.then_some(Self { supply_v, resistance_ohm, inductance_h })
    }

    /// `L / R` in seconds; `None` without resistance.
    pub fn time_constant_s(&self) -> Option<f64> {
        finite(self.inductance_h / self.resistance_ohm)
    }

    /// `V / R` in amperes, which the current nears; `None` without resistance.
    pub fn final_current_a(&self) -> Option<f64> {
        finite(self.supply_v / self.resistance_ohm)
    }

    /// The current in amperes at `t_s` seconds, having been `initial_a` at zero: `V/R + (I0 - V/R) exp(-t R/L)`, without
    /// resistance `I0 + V t/L`.
    ///
    /// `None` for a time before zero.
    pub fn current_at(&self, initial_a: f64, t_s: f64) -> Option<f64> {
        let t_s = ahead(t_s)?;
        let decay = t_s * self.resistance_ohm / self.inductance_h;
        if self.resistance_ohm > 0.0 && decay > 1.0 {
            let last = self.supply_v / self.resistance_ohm;
            return finite(last + (initial_a - last) * math::exp(-decay));
        }
        let risen = self.supply_v * t_s / self.inductance_h * relaxed(decay);
        finite(initial_a * math::exp(-decay) + risen)
    }

    /// The voltage across the inductance itself in volts at `t_s` seconds: `(V - I0 R) exp(-t R/L)`.
    ///
    /// `None` for a time before zero.
    pub fn inductor_voltage_at(&self, initial_a: f64, t_s: f64) -> Option<f64> {
        let t_s = ahead(t_s)?;
        let decay = t_s * self.resistance_ohm / self.inductance_h;
        finite((self.supply_v - initial_a * self.resistance_ohm) * math::exp(-decay))
    }

    /// The time in seconds at which the current reaches `target_a`, having been `initial_a` at zero:
    /// `-L/R ln(1 - (I - I0) R / (V - I0 R))`, without resistance `L (I - I0) / V`.
    ///
    /// `None` if it never does: at `V/R` or beyond, or on the other side of where it starts.
    pub fn time_to(&self, initial_a: f64, target_a: f64) -> Option<f64> {
        let missing = finite(target_a - initial_a)?;
        if missing == 0.0 {
            return Some(0.0);
        }
        let push_v = self.supply_v - initial_a * self.resistance_ohm;
        let share = missing * self.resistance_ohm / push_v;
        if share >= 1.0 {
            return None;
        }
        ahead(self.inductance_h * missing / push_v * logarithmic(-share))
    }

    /// The energy in the coil at `t_s` seconds, in joules.
    pub fn energy_at(&self, initial_a: f64, t_s: f64) -> Option<f64> {
        finite(stored_energy_j(self.inductance_h, self.current_at(initial_a, t_s)?))
    }
}

impl TurnOff {
    /// The current when the switch opens (from zero), the voltage against which it runs on (above zero: the clamp's
    /// voltage less the supply's for a clamp from the switched end to ground, the diode's drop for a freewheel diode),
    /// the resistance in the loop (from zero) and the inductance (above zero). `None` otherwise.
    pub fn new(current_a: f64, net_v: f64, resistance_ohm: f64, inductance_h: f64) -> Option<Self> {
        let is_real = (0.0..f64::INFINITY).contains(&current_a)
            && net_v.is_finite()
            && net_v > 0.0
            && (0.0..f64::INFINITY).contains(&resistance_ohm)
            && inductance_h.is_finite()
            && inductance_h > 0.0;
        is_real.then_some(Self { current_a, net_v, resistance_ohm, inductance_h })
    }

    /// `I R / Vn`: the resistance's share of the braking.
    fn braking(&self) -> f64 {
        self.current_a * self.resistance_ohm / self.net_v
    }

    /// The time in seconds until the current is zero: `L/R ln(1 + I R / Vn)`, without resistance `L I / Vn`.
    pub fn time_to_zero_s(&self) -> f64 {
        self.inductance_h * self.current_a / self.net_v * logarithmic(self.braking())
    }

    /// The current in amperes at `t_s` seconds: `(I + Vn/R) exp(-t R/L) - Vn/R`, and zero from
    /// [`time_to_zero_s`](Self::time_to_zero_s) on.
    ///
    /// `None` for a time before zero.
    pub fn current_at(&self, t_s: f64) -> Option<f64> {
        let t_s = ahead(t_s)?;
        if t_s >= self.time_to_zero_s() {
            return Some(0.0);
        }
        let running = Inductive {
            supply_v: -self.net_v,
            resistance_ohm: self.resistance_ohm,
            inductance_h: self.inductance_h,
        };
        running.current_at(self.current_a, t_s).map(|current| current.max(0.0))
    }

    /// The charge in coulombs that runs on: the current integrated until it is zero,
    /// `L I / R - L Vn / R^2 ln(1 + I R / Vn)`, without resistance `L I^2 / (2 Vn)`.
    pub fn charge_c(&self) -> f64 {
        self.inductance_h * self.current_a / self.net_v
            * self.current_a
            * logarithmic_rest(self.braking())
    }

    /// The energy in joules that the clamp takes, at `clamp_v` volts across the clamp itself: its voltage times the
    /// charge. For a clamp to ground this includes what the supply delivers meanwhile.
    pub fn clamp_energy_j(&self, clamp_v: f64) -> f64 {
        clamp_v * self.charge_c()
    }

    /// The energy in the coil when the switch opens, in joules.
    pub fn stored_energy_j(&self) -> f64 {
        stored_energy_j(self.inductance_h, self.current_a)
    }

    /// The part of the stored energy in joules that the loop's resistance turns into heat: what the net voltage doesn't
    /// take.
    pub fn resistance_energy_j(&self) -> f64 {
        (self.stored_energy_j() - self.net_v * self.charge_c()).max(0.0)
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
    fn after_one_time_constant_63_percent() {
        let coil = Inductive::new(12.0, 3.0, 0.006).unwrap();
        check(coil.time_constant_s(), 0.002);
        check(coil.current_at(0.0, 0.002), 4.0 * (1.0 - math::exp(-1.0)));
        check(coil.inductor_voltage_at(0.0, 0.002), 12.0 * math::exp(-1.0));
        check(coil.time_to(0.0, 2.0), 0.002 * math::ln(2.0));
    }

    #[test]
    fn without_resistance_the_current_rises_for_ever() {
        let coil = Inductive::new(12.0, 0.0, 0.006).unwrap();
        check(coil.current_at(1.0, 0.001), 3.0);
        check(coil.time_to(1.0, 3.0), 0.001);
        assert_eq!((coil.time_constant_s(), coil.final_current_a()), (None, None), "no limit");
    }

    #[test]
    fn a_current_beyond_the_last_is_never_reached() {
        let coil = Inductive::new(12.0, 3.0, 0.006).unwrap();
        for target in [4.0, 4.1, -0.1, f64::NAN, f64::INFINITY] {
            assert_eq!(coil.time_to(0.0, target), None, "{target}");
        }
        check(coil.time_to(6.0, 5.0), 0.002 * math::ln(2.0));
    }

    #[test]
    fn values_that_are_none_are_refused() {
        for bad in [f64::NAN, f64::INFINITY, -1.0] {
            assert_eq!(Inductive::new(12.0, bad, 0.006), None, "{bad}");
            assert_eq!(Inductive::new(12.0, 3.0, bad), None, "{bad}");
            assert_eq!(TurnOff::new(bad, 40.0, 3.0, 0.006), None, "{bad}");
            assert_eq!(TurnOff::new(1.0, bad, 3.0, 0.006), None, "{bad}");
        }
        assert_eq!(TurnOff::new(1.0, 0.0, 3.0, 0.006), None, "nothing brakes");
        let coil = Inductive::new(12.0, 3.0, 0.006).unwrap();
        assert_eq!(coil.current_at(0.0, -1.0), None, "before the start");
    }

    #[test]
    fn a_lossless_turn_off_gives_all_to_the_clamp() {
        let coil = TurnOff::new(2.0, 40.0, 0.0, 0.01).unwrap();
        check(Some(coil.time_to_zero_s()), 0.0005);
        check(Some(coil.clamp_energy_j(40.0)), coil.stored_energy_j());
        assert!(coil.resistance_energy_j() < 1e-15, "nothing is left");
    }

    proptest! {
        /// The time to a current, put back, gives the current.
        #[test]
        fn time_and_current_agree(
            v in 1.0..20.0_f64, r in 0.0..20.0_f64, l in 1e-4..1.0_f64,
            from in -2.0..2.0_f64, share in 0.01..0.99_f64,
        ) {
            let coil = Inductive::new(v, r, l).unwrap();
            let last = if r > 0.0 { v / r } else { 1e3 };
            let target = from + share * (last - from);
            let t = coil.time_to(from, target).unwrap();
            let found = coil.current_at(from, t).unwrap();
            let size = from.abs() + target.abs() + last;
            prop_assert!((found - target).abs() <= 1e-12 * size, "{found} {target}");
        }

        /// The parabolic rule over the decaying current finds the same charge and heat.
        #[test]
        fn charge_and_heat_are_integrals(
            i in 0.1..10.0_f64, v in 0.5..60.0_f64, r in 0.0..20.0_f64, l in 1e-3..1.0_f64,
        ) {
            let coil = TurnOff::new(i, v, r, l).unwrap();
            let end = coil.time_to_zero_s();
            let integral = |f: &dyn Fn(f64) -> f64| {
                let steps = 2000_u32;
                let weight = |k: u32| if k == 0 || k == steps { 1.0 } else if k % 2 == 1 { 4.0 } else { 2.0 };
                let at = |k: u32| f(coil.current_at(end * f64::from(k) / f64::from(steps)).unwrap());
                (0..=steps).map(|k| weight(k) * at(k)).sum::<f64>() * end / f64::from(steps) / 3.0
            };
            let charge = integral(&|i| i);
            prop_assert!((coil.charge_c() - charge).abs() <= 1e-9 * charge, "{coil:?}");
            let heat = r * integral(&|i| i * i);
            let stored = coil.stored_energy_j();
            prop_assert!((coil.resistance_energy_j() - heat).abs() <= 1e-9 * stored, "{coil:?}");
        }

        /// Any numbers: no panic, and no answer that is not a number.
        #[test]
        fn nothing_panics(v: f64, r: f64, l: f64, i: f64, t: f64) {
            if let Some(coil) = Inductive::new(v, r, l) {
                for answer in [coil.current_at(i, t), coil.time_to(i, t), coil.energy_at(i, t), coil.inductor_voltage_at(i, t)] {
                    prop_assert!(answer.is_none_or(f64::is_finite));
                }
            }
            if let Some(coil) = TurnOff::new(i, v, r, l) {
                prop_assert!(coil.current_at(t).is_none_or(f64::is_finite));
                let _ = (coil.charge_c(), coil.resistance_energy_j(), coil.clamp_energy_j(t));
            }
        }
    }
}
