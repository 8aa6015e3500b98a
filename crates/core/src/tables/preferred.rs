//! Preferred values of resistors.
//!
//! Source: IEC 60063, Preferred number series for resistors and capacitors.

use crate::quantity::{Measure, Resistance};

/// A series of preferred values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Series {
    /// Six values a decade, made for ±20 %.
    E6,
    /// Twelve values a decade, made for ±10 %: power resistors are sold in it.
    E12,
    /// Twenty-four values a decade, made for ±5 %.
    E24,
}

const E6: &[u32] = &[10, 15, 22, 33, 47, 68];
const E12: &[u32] = &[10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82];
// not the rounded geometric series: 27, 30, 33, 36, 39, 43, 47 and 82 depart from it
const E24: &[u32] = &[
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
];

/// Decades looked at: 1 mΩ to 82 MΩ holds every resistor there is.
const DECADES: std::ops::RangeInclusive<i32> = -4..=6;

impl Series {
    /// The values of one decade, in tenths of its start: 10 to below 100.
    pub fn decade(self) -> &'static [u32] {
        match self {
            Self::E6 => E6,
            Self::E12 => E12,
            Self::E24 => E24,
        }
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::E6 => "E6",
            Self::E12 => "E12",
            Self::E24 => "E24",
        }
    }

    /// Every value from 1 mΩ to below 100 MΩ, rising.
    pub fn values(self) -> impl Iterator<Item = Resistance> {
        DECADES.flat_map(move |decade| {
            self.decade().iter().map(move |tenths| Measure::from_base(scaled(*tenths, decade)))
        })
    }

    /// The smallest value that is not below `least`; none above 82 MΩ or for what is no number.
    ///
    /// ```
    /// use quietpin_core::{quantity::ohms, tables::preferred::Series};
    /// assert_eq!(Series::E12.next_at_or_above(ohms(4.8)), Some(ohms(5.6)));
    /// assert_eq!(Series::E12.next_at_or_above(ohms(5.6)), Some(ohms(5.6)));
    /// ```
    pub fn next_at_or_above(self, least: Resistance) -> Option<Resistance> {
        self.values().find(|value| value.base() >= least.base())
    }
}

/// Exact to the last bit for every value, since a division of whole numbers is rounded once.
fn scaled(tenths: u32, decade: i32) -> f64 {
    let power = f64::from(10_u32.saturating_pow(decade.unsigned_abs().min(9)));
    let tenths = f64::from(tenths);
    if decade < 0 { tenths / power } else { tenths * power }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::ohms;

    #[track_caller]
    fn check(series: Series, least: f64, expected: Option<f64>) {
        let next = series.next_at_or_above(ohms(least)).map(Measure::base);
        assert_eq!(next, expected, "next of {series:?} at or above {least}");
    }

    #[test]
    fn the_next_value_is_found_in_its_decade_and_in_the_one_above() {
        check(Series::E12, 0.9, Some(1.0));
        check(Series::E12, 8.3, Some(10.0));
        check(Series::E6, 4.8, Some(6.8));
        check(Series::E24, 4.8, Some(5.1));
        check(Series::E12, 0.0, Some(0.001));
    }

    #[test]
    fn a_value_of_the_series_is_its_own_next() {
        for value in Series::E24.values() {
            assert_eq!(Series::E24.next_at_or_above(value), Some(value), "not its own next");
        }
    }

    #[test]
    fn nonsense_has_no_next_value() {
        check(Series::E12, f64::NAN, None);
        check(Series::E12, f64::INFINITY, None);
        check(Series::E12, 1e9, None);
    }
}
