//! The table that is entered in the controller, held against the sensor.

use super::curve::PointCurve;
use crate::quantity::Span;

/// What a controller shows where a sensor tells it something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TableReading {
    /// What it shows, beyond the table's ends what stands at its end.
    pub shown: f64,
    /// By how much that is off at the least, whatever of its tolerance the sensor has: above nought it shows too much.
    pub error: f64,
    /// Whether what the sensor tells lies beyond the table's ends: within them a reading beyond them is another sensor's.
    pub is_beyond: bool,
}

/// What a table makes of what a sensor gives at `value`: `reading`, over its tolerance.
pub fn shown(table: &PointCurve, value: f64, reading: &Span) -> TableReading {
    let (least, most) = table.ends();
    // two points are a line, which has no ends
    let is_line = table.is_line();
    let shown_at = |reading: f64| {
        let free = table.value(reading);
        if is_line {
            return free;
        }
        // beyond its ends a table with a logarithm in it may lead anywhere
        if free.is_finite() { free.clamp(least, most) } else { least }
    };
    let ends = [shown_at(reading.low), shown_at(reading.high)];
    let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
    let error = if low > value {
        low - value
    } else if high < value {
        high - value
    } else {
        0.0
    };
    let is_told = (least..=most).contains(&value);
    let is_beyond = !is_line && !is_told && table.value_within(reading.nominal).is_none();
    TableReading { shown: shown_at(reading.nominal), error, is_beyond }
}
