//! The current of several coils through a turn or two.

use super::pattern::Pattern;
use crate::transient::Limited;

/// Steps in which the time is gone through in which two coils are charged at once.
const STEPS: u32 = 64;

/// Coils that are charged one after the other, all alike.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ChargingSequence {
    pub(super) coil: Limited,
    pub(super) dwell_s: f64,
    pub(super) s_per_degree: f64,
    pub(super) pattern: Pattern,
}

impl ChargingSequence {
    /// The effective value of the current of so many coils, in amperes: the root of the mean of its square, which is what
    /// heats a fuse or a contact. They are those that follow one another, so that they overlap as much as any can.
    pub(super) fn effective_a(&self, coils: u32) -> f64 {
        let ends = self.pattern.ends_of(coils);
        let period = self.pattern.period_degrees();
        let ahead = |from: f64, to: f64| (to - from).rem_euclid(period) * self.s_per_degree;
        // (a + b)² = a² + b² + 2 a b
        let alone = self.coil.square_at(self.dwell_s).unwrap_or(0.0);
        let mut square = 0.0;
        for (at, end) in ends.iter().enumerate() {
            square += alone;
            for other in ends.iter().skip(at + 1) {
                let (before, after) = (ahead(*end, *other), ahead(*other, *end));
                let both = if before > 0.0 { self.product_at(after) } else { 0.0 };
                square += 2.0 * (self.product_at(before) + both);
            }
        }
        (square / (period * self.s_per_degree)).sqrt()
    }

    /// The integral of the product of the currents of two coils while both are charged, the one this many seconds ahead of
    /// the other, in A² s.
    fn product_at(&self, ahead_s: f64) -> f64 {
        let time = self.dwell_s - ahead_s;
        if time <= 0.0 {
            return 0.0;
        }
        let width = time / f64::from(STEPS);
        let current = |age: f64| self.coil.current_at(age).unwrap_or(0.0);
        let product = |step: u32| {
            let age = (f64::from(step) + 0.5) * width;
            current(age) * current(age + ahead_s)
        };
        width * (0..STEPS).map(product).sum::<f64>()
    }
}
