//! Numbers as they are shown: three figures that count, in the scale a person would say.

use std::ops::Deref;

use serde::Serialize;

use super::Dimension;
use crate::math;

// A thin pointer, for the same reason as `Message`.
/// A value in a report: how it reads, and the number behind it where there is one.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(as = "Reading"))]
#[serde(transparent)]
pub struct Value(Box<Reading>);

/// What a [`Value`] points to.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(rename = "Value", optional_fields))]
pub struct Reading {
    /// How it reads, with its unit.
    pub shown: String,
    /// The number in the base unit of its dimension.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<f64>,
    /// The base unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<&'static str>,
}

impl Deref for Value {
    type Target = Reading;

    fn deref(&self) -> &Reading {
        &self.0
    }
}

impl Value {
    /// A text.
    pub fn text(shown: impl Into<String>) -> Self {
        Self::new(shown.into(), None, None)
    }

    /// How it reads.
    pub fn into_shown(self) -> String {
        self.0.shown
    }

    /// The same number in other words.
    #[must_use]
    pub fn said(mut self, shown: String) -> Self {
        self.0.shown = shown;
        self
    }

    fn new(shown: String, number: Option<f64>, unit: Option<&'static str>) -> Self {
        Self(Box::new(Reading { shown, number, unit }))
    }

    pub(crate) fn scaled(base: f64, dimension: Dimension) -> Self {
        let unit = dimension.units().first().map(|unit| unit.spelling);
        if !base.is_finite() {
            let shown = if base.is_nan() { "not a number" } else { "without limit" };
            return Self::new(shown.into(), None, unit);
        }
        let size = base.abs();
        let scales = dimension.scales();
        let scale = scales
            .iter()
            // 999.6 would be shown as 1000 of the smaller scale
            .find(|(factor, _)| size * factor >= 0.9995)
            .or(if size < dimension.nought() { nought_scale(scales) } else { scales.last() });
        let (factor, sign) = scale.copied().unwrap_or((1.0, ""));
        let mut shown = String::with_capacity(ROOM);
        if size < dimension.nought() {
            shown.push('0');
        } else {
            push_number(&mut shown, base * factor);
        }
        if !matches!(sign, "°" | "%") {
            shown.push(' ');
        }
        shown.push_str(sign);
        Self::new(shown, Some(base), unit)
    }
}

/// Bytes that a value takes, most often.
const ROOM: usize = 16;

/// Nought is said in the base unit: 0 Ω, not 0 MΩ.
fn nought_scale(scales: &'static [(f64, &'static str)]) -> Option<&'static (f64, &'static str)> {
    scales.iter().find(|(factor, _)| (factor - 1.0).abs() < 1e-9).or(scales.first())
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::text(text)
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::text(text)
    }
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        #[expect(clippy::cast_precision_loss, reason = "counts of parts, far below 2^52")]
        let number = count as f64;
        Self::new(count.to_string(), Some(number), None)
    }
}

impl From<u32> for Value {
    fn from(count: u32) -> Self {
        Self::new(count.to_string(), Some(f64::from(count)), None)
    }
}

impl<Q: super::Measure> From<Q> for Value {
    fn from(quantity: Q) -> Self {
        quantity.show()
    }
}

/// Three significant figures, whole numbers in full, no trailing noughts.
pub fn number(value: f64) -> String {
    let mut text = String::new();
    push_number(&mut text, value);
    text
}

/// Adds the same to a text.
fn push_number(text: &mut String, value: f64) {
    let size = value.abs();
    let places = match size {
        s if s >= 99.95 => 0,
        s if s >= 9.995 => 1,
        s if s >= 0.9995 => 2,
        s if s >= 0.09995 => 3,
        s if s >= 0.009995 => 4,
        _ => 6,
    };
    push_short(text, value, places);
}

/// Adds a number with so many decimals at the most, and the minus of print.
pub(super) fn push_short(text: &mut String, value: f64, places: u32) {
    let begun = text.len();
    math::push_short(text, value, places);
    if text.get(begun..).is_some_and(|it| it.starts_with('-')) {
        text.replace_range(begun..=begun, "−");
    }
}

#[cfg(test)]
mod tests {
    use crate::quantity::{CrankAngle, Measure, amperes, celsius, ohms, rpm, share, volts};

    #[track_caller]
    fn check(value: impl Measure, expected: &str) {
        assert_eq!(value.show().shown, expected, "{value:?}", value = value.base());
    }

    #[test]
    fn values_are_shown_as_a_person_says_them() {
        check(volts(12.6), "12.6 V");
        check(volts(0.0), "0 V");
        check(volts(0.25), "250 mV");
        check(volts(-0.7), "−700 mV");
        check(amperes(1.2345), "1.23 A");
        check(amperes(0.9996), "1 A");
        check(amperes(0.0029), "2.9 mA");
        check(ohms(4700.0), "4.7 kΩ");
        check(ohms(2.4), "2.4 Ω");
        check(ohms(0.0), "0 Ω");
        check(celsius(-20.0), "−20 °C");
        check(rpm(7000.0), "7000 rpm");
        check(share(0.05), "5%");
        check(CrankAngle::new(112.5), "112.5°");
        check(CrankAngle::new(-720.0 / 7.0), "−102.9°");
        check(CrankAngle::new(0.9999), "1°");
        check(CrankAngle::new(0.0432), "0.043°");
        check(CrankAngle::new(-0.25), "−0.25°");
        check(CrankAngle::new(0.0), "0°");
        check(CrankAngle::new(-0.0004), "0°");
    }
}
