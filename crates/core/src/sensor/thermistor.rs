//! Thermistors: resistance by temperature, however their data are given.

use super::curve::{PointCurve, Scale, ZERO_K};
use crate::{
    math,
    quantity::{Measure, Resistance, Temperature, Value, celsius, ohms},
    working::{Formula, Step, step},
};

const POINTS: Formula = Formula {
    symbols: "ln R = ln R_1 + (1 / T − 1 / T_1) / (1 / T_2 − 1 / T_1) × (ln R_2 − ln R_1)",
    source: "between neighbouring points of its data a thermistor follows the law of its B value",
};
const SERIES: Formula = Formula {
    symbols: "1 / T = a + b ln R + c (ln R)³",
    source: "Steinhart and Hart, 1968, solved for R; of a B value: c = 0, b = 1 / B",
};

/// Its data must hold between these, in degrees Celsius.
const COLDEST: f64 = -40.0;
const HOTTEST: f64 = 130.0;
/// By how many times it must fall in between, or it is none.
const LEAST_FALL: f64 = 5.0;
/// Resistances that are looked for, in ohms.
const LEAST_OHM: f64 = 0.01;
const MOST_OHM: f64 = 1e9;
/// Kelvin at 25 °C.
const WARM_K: f64 = ZERO_K + 25.0;

/// A thermistor whose resistance falls as it gets hot.
#[derive(Clone, Debug, PartialEq)]
pub enum Thermistor {
    /// By a table of points.
    Points(PointCurve),
    /// By the terms of `1 / T` in `x = ln (R / R_0)`: without `x`, of `x`, `x²` and `x³`; `T` in kelvin.
    Series {
        /// `R_0`.
        at: Resistance,
        /// The terms.
        terms: [f64; 4],
    },
}

impl Thermistor {
    /// By its resistance at 25 °C and its B value in kelvin.
    pub fn by_beta(r25: Resistance, beta_k: f64) -> Option<Self> {
        let terms = [1.0 / WARM_K, 1.0 / beta_k, 0.0, 0.0];
        Self::Series { at: r25, terms }.that_falls()
    }

    /// By the coefficients of Steinhart and Hart, of the resistance in ohms.
    pub fn by_coefficients(a: f64, b: f64, c: f64) -> Option<Self> {
        Self::Series { at: ohms(1.0), terms: [a, b, 0.0, c] }.that_falls()
    }

    /// By the four terms in `ln (R / R25)`.
    pub fn by_terms(r25: Resistance, terms: [f64; 4]) -> Option<Self> {
        Self::Series { at: r25, terms }.that_falls()
    }

    /// Through points: two give its B value, three the coefficients of Steinhart and Hart, more a table.
    pub fn by_points(points: &[(Temperature, Resistance)]) -> Option<Self> {
        let bare = points.iter().map(|(t, r)| (t.base(), r.base()));
        let curve = PointCurve::new(bare, Scale::Thermistor)?;
        let falls = curve.points().first()?.1 > curve.points().last()?.1;
        match curve.points() {
            _ if !falls => None,
            [one, other] => {
                let (x, y) = (scaled(*one), scaled(*other));
                let slope = (y.1 - x.1) / (y.0 - x.0);
                let terms = [x.1 - slope * x.0, slope, 0.0, 0.0];
                Self::Series { at: ohms(1.0), terms }.that_falls()
            }
            [one, middle, other] => {
                // three that no such series fits are a table
                let series = three(scaled(*one), scaled(*middle), scaled(*other));
                series.that_falls().or(Some(Self::Points(curve)))
            }
            _ => Some(Self::Points(curve)),
        }
    }

    /// Where its resistance falls throughout.
    fn that_falls(self) -> Option<Self> {
        let at = |degrees: f64| self.resistance(celsius(degrees)).map(Measure::base);
        let (coldest, hottest) = (at(COLDEST)?, at(HOTTEST)?);
        if coldest < LEAST_FALL * hottest {
            return None;
        }
        let mut last = coldest;
        let mut degrees = COLDEST;
        while degrees < HOTTEST {
            degrees += 10.0;
            let next = at(degrees)?;
            if next >= last {
                return None;
            }
            last = next;
        }
        Some(self)
    }

    /// Its resistance; nothing where its data give none.
    pub fn resistance(&self, temperature: Temperature) -> Option<Resistance> {
        let degrees = temperature.base();
        let found = match self {
            Self::Points(curve) => curve.reading(degrees),
            Self::Series { at, terms } => {
                let wanted = 1.0 / (degrees + ZERO_K);
                let (low, high) = (math::ln(LEAST_OHM / at.base()), math::ln(MOST_OHM / at.base()));
                let x = math::least(low, high, |x| series(terms, x) >= wanted);
                // what was found must be it: a series may turn back
                let is_it = (series(terms, x) - wanted).abs() <= 1e-9 * wanted.abs();
                if is_it { at.base() * math::exp(x) } else { f64::NAN }
            }
        };
        (found.is_finite() && found > 0.0).then(|| ohms(found))
    }

    /// Its temperature; nothing where its data give none.
    pub fn temperature(&self, resistance: Resistance) -> Option<Temperature> {
        if resistance.base() <= 0.0 {
            return None;
        }
        let found = match self {
            Self::Points(curve) => curve.value(resistance.base()),
            Self::Series { at, terms } => {
                1.0 / series(terms, math::ln(resistance.base() / at.base())) - ZERO_K
            }
        };
        (found.is_finite() && found > -ZERO_K).then(|| celsius(found))
    }

    /// How a resistance was found.
    pub fn working(&self, temperature: Temperature) -> Option<Step> {
        let found = self.resistance(temperature)?.show();
        let kelvin = Value::text(
            [crate::quantity::number(temperature.base() + ZERO_K).as_str(), " K"].concat(),
        );
        Some(match self {
            Self::Points(_) => step(&POINTS, &[("T", kelvin)], found),
            Self::Series { .. } => step(&SERIES, &[("T", kelvin)], found),
        })
    }
}

fn series(terms: &[f64; 4], x: f64) -> f64 {
    let [a, b, c, d] = terms;
    a + x * (b + x * (c + x * d))
}

/// The logarithm of the resistance, and one over the absolute temperature.
fn scaled((degrees, ohm): (f64, f64)) -> (f64, f64) {
    (math::ln(ohm), 1.0 / (degrees + ZERO_K))
}

/// The coefficients of Steinhart and Hart through three points.
fn three(one: (f64, f64), middle: (f64, f64), other: (f64, f64)) -> Thermistor {
    let ((l1, y1), (l2, y2), (l3, y3)) = (one, middle, other);
    let (g2, g3) = ((y2 - y1) / (l2 - l1), (y3 - y1) / (l3 - l1));
    let c = (g3 - g2) / (l3 - l2) / (l1 + l2 + l3);
    let b = g2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
    let a = y1 - (b + l1 * l1 * c) * l1;
    Thermistor::Series { at: ohms(1.0), terms: [a, b, 0.0, c] }
}
