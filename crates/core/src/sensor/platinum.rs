//! Platinum sensors.

use crate::{
    math,
    quantity::{Band, Measure, Resistance, Temperature, celsius, ohms},
    working::{Formula, Step, step},
};

const A: f64 = 3.9083e-3;
const B: f64 = -5.775e-7;
const C: f64 = -4.183e-12;

const ABOVE: Formula = Formula {
    symbols: "R = R_0 (1 + 3.9083e-3 t − 5.775e-7 t²)",
    source: "IEC 60751 from 0 °C up (Callendar and Van Dusen)",
};
const BELOW: Formula = Formula {
    symbols: "R = R_0 (1 + 3.9083e-3 t − 5.775e-7 t² − 4.183e-12 (t − 100) t³)",
    source: "IEC 60751 below 0 °C (Callendar and Van Dusen)",
};

/// From the coldest to the hottest of the standard, in degrees Celsius.
pub const RANGE: (f64, f64) = (-200.0, 850.0);

/// The resistance at a temperature; `at_zero` is that at 0 °C: 100 or 1000 Ω. Beyond the standard's range as it goes on.
pub fn resistance(at_zero: Resistance, temperature: Temperature) -> Resistance {
    let t = temperature.base();
    let below = if t < 0.0 { C * (t - 100.0) * t * t * t } else { 0.0 };
    ohms(at_zero.base() * (1.0 + A * t + B * t * t + below))
}

/// The temperature at a resistance; nothing beyond the standard's range.
pub fn temperature(at_zero: Resistance, at: Resistance) -> Option<Temperature> {
    let of = |t: f64| resistance(at_zero, celsius(t)).base();
    let (low, high) = RANGE;
    let is_within = of(low) <= at.base() && at.base() <= of(high);
    is_within.then(|| celsius(math::least(low, high, |t| of(t) >= at.base())))
}

/// The resistance between two temperatures, of class B: within 0.3 °C and half a percent of the temperature.
pub fn of_class_b(at_zero: Resistance, temperature: &Band<Temperature>) -> Band<Resistance> {
    let off = |t: Temperature| 0.3 + 0.005 * t.base().abs();
    let (low, high) = (temperature.low, temperature.high);
    Band {
        low: resistance(at_zero, celsius(low.base() - off(low))),
        nominal: resistance(at_zero, temperature.nominal),
        high: resistance(at_zero, celsius(high.base() + off(high))),
    }
}

/// How a resistance was found.
pub fn working(at_zero: Resistance, temperature: Temperature) -> Step {
    let formula = if temperature.base() < 0.0 { &BELOW } else { &ABOVE };
    let values = [("R_0", at_zero.show()), ("t", temperature.show())];
    step(formula, &values, resistance(at_zero, temperature).show())
}
