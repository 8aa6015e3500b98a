//! A coil that is switched on and off without end, once it has settled into its rhythm.

use super::{Inductive, relaxed};
use crate::math;

/// A pulsed coil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pulsed {
    /// The current in amperes that it nears while on, from zero.
    pub on_final_a: f64,
    /// All resistance in the loop while on, in ohms, above zero.
    pub on_resistance_ohm: f64,
    /// The voltage against which the current runs on while off, in volts, from zero.
    pub off_net_v: f64,
    /// All resistance in the loop while off, in ohms, above zero.
    pub off_resistance_ohm: f64,
    /// The inductance in henries, above zero.
    pub inductance_h: f64,
    /// The current in amperes below which it does not fall while off, from zero.
    pub floor_a: f64,
    /// The length of a period in seconds, above zero.
    pub period_s: f64,
    /// The part of it that is on, between zero and one.
    pub duty: f64,
}

/// The rhythm into which it settles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rhythm {
    /// The current in amperes at the end of the off time.
    pub least_a: f64,
    /// The current in amperes at the end of the on time.
    pub most_a: f64,
    /// The mean of the current over a period, in amperes.
    pub mean_a: f64,
    /// The charge in coulombs that runs on against the off voltage, each period.
    pub off_charge_c: f64,
    /// How long the current takes to fall to its floor, in seconds, where it gets there.
    pub fallen_s: Option<f64>,
}

impl Pulsed {
    /// The rhythm; `None` where a value is outside its range.
    ///
    /// With `a = exp(-D T R1 / L)`, `b = exp(-(1 - D) T R2 / L)` and `N = Vn / R2` the current at the end of the off
    /// time is `(b I (1 - a) - N (1 - b)) / (1 - a b)`: what both phases leave as it was. Where that is below the floor,
    /// the current has fallen before the period ends.
    pub fn rhythm(&self) -> Option<Rhythm> {
        let (on_s, off_s) = self.phases()?;
        let last = self.on_final_a;
        let on_decay = on_s * self.on_resistance_ohm / self.inductance_h;
        let off_decay = off_s * self.off_resistance_ohm / self.inductance_h;
        let against = self.off_net_v / self.off_resistance_ohm;
        let (risen, fallen) = (-math::exp_m1(-on_decay), -math::exp_m1(-off_decay));
        let both = -math::exp_m1(-on_decay - off_decay);
        let settled = (math::exp(-off_decay) * last * risen - against * fallen) / both;
        let off = Inductive::new(-self.off_net_v, self.off_resistance_ohm, self.inductance_h)?;
        let falls = settled.is_nan() || settled <= self.floor_a;
        let least_a = if falls { self.floor_a } else { settled };
        let most_a = (last + (least_a - last) * math::exp(-on_decay)).max(least_a);
        let fallen_s = if falls { off.time_to(most_a, self.floor_a) } else { None };
        let runs_s = fallen_s.unwrap_or(off_s).min(off_s);
        let on_charge = on_s * (last + (least_a - last) * relaxed(on_decay));
        let running = runs_s * self.off_resistance_ohm / self.inductance_h;
        let off_charge_c = runs_s * ((most_a + against) * relaxed(running) - against);
        let rest_charge = self.floor_a * (off_s - runs_s);
        let mean_a = (on_charge + off_charge_c + rest_charge) / self.period_s;
        let is_real = mean_a.is_finite() && off_charge_c.is_finite();
        is_real.then_some(Rhythm { least_a, most_a, mean_a, off_charge_c, fallen_s })
    }

    /// How long it is on and off, in seconds.
    fn phases(&self) -> Option<(f64, f64)> {
        let above = |x: f64| x.is_finite() && x > 0.0;
        let from_zero = |x: f64| (0.0..f64::INFINITY).contains(&x);
        let is_real = above(self.on_resistance_ohm)
            && above(self.off_resistance_ohm)
            && above(self.inductance_h)
            && above(self.period_s)
            && from_zero(self.on_final_a)
            && from_zero(self.off_net_v)
            && from_zero(self.floor_a)
            && self.floor_a <= self.on_final_a
            && self.duty > 0.0
            && self.duty < 1.0;
        is_real.then_some((self.duty * self.period_s, (1.0 - self.duty) * self.period_s))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// Many periods stepped through one by one, each phase by the solution of its own equation: what is left at last.
    fn stepped(coil: &Pulsed) -> Option<(f64, f64, f64)> {
        let on = Inductive::new(
            coil.on_final_a * coil.on_resistance_ohm,
            coil.on_resistance_ohm,
            coil.inductance_h,
        )?;
        let off = Inductive::new(-coil.off_net_v, coil.off_resistance_ohm, coil.inductance_h)?;
        let (on_s, off_s) = coil.phases()?;
        let steps = 4000_u32;
        let (mut least, mut most) = (coil.floor_a, coil.floor_a);
        for _ in 0..3000 {
            most = on.current_at(least, on_s)?;
            least = off.current_at(most, off_s)?.max(coil.floor_a);
        }
        // trapezia over one period
        let h = |phase: f64| phase / f64::from(steps);
        let at_on = |k: u32| on.current_at(least, h(on_s) * f64::from(k));
        let at_off =
            |k: u32| Some(off.current_at(most, h(off_s) * f64::from(k))?.max(coil.floor_a));
        let mut charge = 0.0;
        for k in 0..steps {
            charge += h(on_s) * f64::midpoint(at_on(k)?, at_on(k + 1)?);
            charge += h(off_s) * f64::midpoint(at_off(k)?, at_off(k + 1)?);
        }
        Some((least, most, charge / coil.period_s))
    }

    fn valve() -> Pulsed {
        Pulsed {
            on_final_a: 0.5,
            on_resistance_ohm: 24.0,
            off_net_v: 0.7,
            off_resistance_ohm: 24.0,
            inductance_h: 0.03,
            floor_a: 0.0,
            period_s: 1.0 / 300.0,
            duty: 0.5,
        }
    }

    #[test]
    fn fast_pulses_into_a_freewheel_diode_give_the_duty_less_the_diodes_share() {
        // volt-second balance of a buck converter in continuous conduction, the textbook way: D V - (1 - D) Vf = I R
        let coil = Pulsed { period_s: 1e-5, duty: 0.4, ..valve() };
        let rhythm = coil.rhythm().unwrap();
        let expected = (0.4 * 12.0 - 0.6 * 0.7) / 24.0;
        assert!((rhythm.mean_a - expected).abs() < 1e-9, "{rhythm:?} {expected}");
        // ripple of the same converter: dI = (V - I R) D T / L
        let ripple = (12.0 - expected * 24.0) * 0.4 * 1e-5 / 0.03;
        assert!((rhythm.most_a - rhythm.least_a - ripple).abs() < 1e-3 * ripple, "{rhythm:?}");
    }

    #[test]
    fn slow_pulses_rise_to_the_end_and_fall_to_nothing() {
        let rhythm = Pulsed { period_s: 1.0, ..valve() }.rhythm().unwrap();
        assert!((rhythm.most_a - 0.5).abs() < 1e-12, "{rhythm:?}");
        assert!(rhythm.least_a.abs() < 1e-12, "{rhythm:?}");
        assert!(rhythm.fallen_s.is_some(), "it has fallen: {rhythm:?}");
    }

    #[test]
    fn values_out_of_range_are_refused() {
        for duty in [0.0, 1.0, -0.5, f64::NAN] {
            assert_eq!(Pulsed { duty, ..valve() }.rhythm(), None, "{duty}");
        }
        for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(Pulsed { period_s: bad, ..valve() }.rhythm(), None, "{bad}");
            assert_eq!(Pulsed { inductance_h: bad, ..valve() }.rhythm(), None, "{bad}");
            assert_eq!(Pulsed { off_resistance_ohm: bad, ..valve() }.rhythm(), None, "{bad}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(60))]

        /// The closed form is where thousands of periods, one after the other, end.
        #[test]
        fn the_rhythm_is_where_many_periods_end(
            last in 0.05..10.0_f64, r in 0.5..100.0_f64, more in 0.0..5.0_f64, net in 0.0..60.0_f64,
            tau in 1e-4..0.05_f64, periods in 0.01..20.0_f64, duty in 0.02..0.98_f64, floor in 0.0..0.5_f64,
        ) {
            let coil = Pulsed {
                on_final_a: last, on_resistance_ohm: r, off_net_v: net, off_resistance_ohm: r + more,
                inductance_h: tau * r, floor_a: floor * last, period_s: periods * tau, duty,
            };
            let rhythm = coil.rhythm().unwrap();
            let (least, most, mean) = stepped(&coil).unwrap();
            prop_assert!((rhythm.least_a - least).abs() < 1e-7 * last, "{coil:?} {rhythm:?} {least}");
            prop_assert!((rhythm.most_a - most).abs() < 1e-7 * last, "{coil:?} {rhythm:?} {most}");
            prop_assert!((rhythm.mean_a - mean).abs() < 1e-3 * last, "{coil:?} {rhythm:?} {mean}");
        }

        /// Any numbers: no panic, and no answer that is not a number.
        #[test]
        fn nothing_panics(
            on_final_a: f64, on_resistance_ohm: f64, off_net_v: f64, off_resistance_ohm: f64,
            inductance_h: f64, floor_a: f64, period_s: f64, duty in 0.0..1.0_f64,
        ) {
            let coil = Pulsed {
                on_final_a, on_resistance_ohm, off_net_v, off_resistance_ohm, inductance_h, floor_a, period_s, duty,
            };
            prop_assert!(coil.rhythm().is_none_or(|it| it.mean_a.is_finite()));
        }
    }
}
