//! Ratings of blade fuses, and what a fuse may carry for long.
//!
//! Source: ISO 8820-3, blade fuses of types C, F and E; the ratings from memory. A fuse carries 70 to 80 percent of its
//! rating for long at room temperature, less in an engine bay: common practice, no source.

use crate::quantity::{Current, Measure, amperes};

/// The ratings, in amperes: 1 to 40 A of the regular blade, above it of the large one.
pub const RATINGS_A: [f64; 17] = [
    1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0,
];

/// Where a rating that is worked out with [`LASTING`] comes from.
pub const SOURCE: &str =
    "ISO 8820-3 ratings, from memory; loaded to 75%: common practice, no source";

/// The share of its rating that a fuse carries for long: common practice, no source.
pub const LASTING: f64 = 0.75;

/// The smallest fuse that carries a current for long; none where 80 A would not.
///
/// ```
/// use quietpin_core::{quantity::amperes, tables::fuses};
/// assert_eq!(fuses::for_long(amperes(7.5)), Some(amperes(10.0)));
/// assert_eq!(fuses::for_long(amperes(7.6)), Some(amperes(15.0)));
/// assert_eq!(fuses::for_long(amperes(61.0)), None);
/// ```
pub fn for_long(current: Current) -> Option<Current> {
    let carries = |rating: &f64| current.base() <= rating * LASTING * (1.0 + 1e-9);
    RATINGS_A.into_iter().find(carries).map(amperes)
}
