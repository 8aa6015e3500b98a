//! What a sensor does, whatever its kind: ohms or volts by what it tells.

use super::{curve::PointCurve, platinum, ratiometric::Ratiometric, thermistor::Thermistor};
use crate::{
    quantity::{Band, Measure, Pressure, Resistance, Span, Voltage, celsius, ohms, volts},
    working::{Formula, Step, step},
};

const STRAIGHT: Formula = Formula {
    symbols: "y = y_1 + (x − x_1) / (x_2 − x_1) × (y_2 − y_1)",
    source: "a straight line between neighbouring points of its data",
};

/// A sensor. What it tells is in the base unit of its dimension: °C, Pa, a share of one.
#[derive(Clone, Debug, PartialEq)]
pub enum SensorElement {
    /// A thermistor, and by what share its ohms may be off.
    Thermistor(Thermistor, f64),
    /// Platinum, by its resistance at 0 °C, of class B.
    Platinum(Resistance),
    /// Ohms by points, and by what share they may be off.
    Resistor(PointCurve, f64),
    /// Pressure, as a share of its supply.
    Pressure(Ratiometric),
    /// Volts by points, whatever its supply.
    Line(PointCurve),
}

impl SensorElement {
    /// Whether it is told by its ohms.
    pub fn is_resistive(&self) -> bool {
        matches!(self, Self::Thermistor(..) | Self::Platinum(_) | Self::Resistor(..))
    }

    /// Its resistance between two values of what it tells; nothing of what is told by its volts, or where its data give none.
    pub fn resistance(&self, of: &Span) -> Option<Band<Resistance>> {
        let (all, share) = match self {
            Self::Thermistor(curve, share) => {
                let at = |t: f64| curve.resistance(celsius(t));
                ((at(of.low)?, at(of.nominal)?, at(of.high)?), *share)
            }
            Self::Platinum(zero) => {
                let between = of.band();
                return Some(platinum::of_class_b(*zero, &between));
            }
            Self::Resistor(curve, share) => {
                let at = |value: f64| ohms(curve.reading(value).max(0.0));
                ((at(of.low), at(of.nominal), at(of.high)), *share)
            }
            Self::Pressure(_) | Self::Line(_) => return None,
        };
        let (one, nominal, other) = all;
        let (low, high) = if one <= other { (one, other) } else { (other, one) };
        Some(Band { low: low * (1.0 - share), nominal, high: high * (1.0 + share) })
    }

    /// What it gives by itself on such a supply; nothing of what is told by its ohms.
    pub fn voltage(&self, of: &Span, supply: &Band<Voltage>) -> Option<Band<Voltage>> {
        match self {
            Self::Pressure(sensor) => Some(sensor.voltage(&of.band(), supply)),
            Self::Line(curve) => {
                let ends = [of.low, of.high].map(|it| volts(curve.reading(it).max(0.0)));
                let nominal = volts(curve.reading(of.nominal).max(0.0));
                let [one, other] = ends;
                Some(Band { nominal, ..Band::between(one, other) })
            }
            _ => None,
        }
    }

    /// What it tells at a resistance.
    pub fn value_at_ohms(&self, at: Resistance) -> Option<f64> {
        match self {
            Self::Thermistor(curve, _) => curve.temperature(at).map(Measure::base),
            Self::Platinum(zero) => platinum::temperature(*zero, at).map(Measure::base),
            Self::Resistor(curve, _) => curve.value_within(at.base()),
            Self::Pressure(_) | Self::Line(_) => None,
        }
    }

    /// What it tells at a voltage that it gives on 5 V.
    pub fn value_at_volts(&self, at: Voltage) -> Option<f64> {
        match self {
            Self::Pressure(sensor) => Some(sensor.pressure(at).base()),
            Self::Line(curve) => curve.value_within(at.base()),
            _ => None,
        }
    }

    /// How what it gives was found.
    pub fn working(&self, value: f64, supply: Voltage) -> Option<Step> {
        let straight = |curve: &PointCurve, unit: &str| {
            let shown = [crate::quantity::number(curve.reading(value)).as_str(), unit].concat();
            step(&STRAIGHT, &[], crate::quantity::Value::text(shown))
        };
        match self {
            Self::Thermistor(curve, _) => curve.working(celsius(value)),
            Self::Platinum(zero) => Some(platinum::working(*zero, celsius(value))),
            Self::Resistor(curve, _) => Some(straight(curve, " Ω")),
            Self::Pressure(sensor) => Some(sensor.working(Pressure::from_base(value), supply)),
            Self::Line(curve) => Some(straight(curve, " V")),
        }
    }
}
