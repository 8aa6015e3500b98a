//! What a wire carries continuously.
//!
//! Source: a cable distributor's brochure of thin-wall automotive cable (conductor to ISO 6722, PVC for 105 °C), one wire in
//! free air at 20 °C: the most that any loom allows. In a bundle, or where it is hot, a wire bears less.

use crate::{
    math,
    quantity::{Area, Current, Measure, amperes},
};

/// Nominal size in mm², and current in amperes.
const BEARS: [(f64, f64); 12] = [
    (0.5, 11.0),
    (0.75, 14.0),
    (1.0, 16.5),
    (1.5, 21.0),
    (2.0, 25.0),
    (2.5, 29.0),
    (3.0, 33.0),
    (4.0, 39.0),
    (4.5, 42.0),
    (6.0, 50.0),
    (8.5, 63.0),
    (10.0, 70.0),
];

/// The sizes of wires that are usual, in mm²: ISO 6722 up to 0.35 mm², from memory, the table above, and IEC 60228 from 16 mm².
pub const SIZES: [f64; 21] = [
    0.22, 0.35, 0.5, 0.75, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 4.5, 6.0, 8.5, 10.0, 16.0, 25.0, 35.0,
    50.0, 70.0, 95.0, 120.0,
];

/// Where a current that is worked out here comes from.
pub const SOURCE: &str = "a cable distributor's table of thin-wall cable in free air, conductor to ISO 6722; between and \
    beyond its sizes by the power of the size that two neighbours give";

/// The most that a copper wire bears for long, alone in free air.
///
/// Between two sizes, and beyond the first and the last, by the power of the size that the nearest two give.
pub fn bears(area: Area) -> Current {
    let size = (area.base() * 1e6).max(1e-3);
    let pair = BEARS.windows(2).find(|pair| matches!(pair, [_, (to, _)] if size <= *to));
    let pair = pair.or_else(|| BEARS.windows(2).next_back());
    let Some([(size_1, current_1), (size_2, current_2)]) = pair else { return amperes(0.0) };
    let power = math::ln(current_2 / current_1) / math::ln(size_2 / size_1);
    amperes(current_1 * math::pow(size / size_1, power))
}

/// The smallest size of the table that bears so much for long; nothing beyond it.
pub fn smallest_for(current: Current) -> Option<Area> {
    let bears = |(_, bears): &&(f64, f64)| *bears >= current.base();
    BEARS.iter().find(bears).map(|(size, _)| Measure::from_base(size * 1e-6))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm2(size: f64) -> Area {
        Measure::from_base(size * 1e-6)
    }
    #[test]
    fn a_size_of_the_table_bears_what_stands_there_and_others_lie_between() {
        for (size, current) in BEARS {
            let found = bears(mm2(size)).base();
            assert!((found - current).abs() < 1e-9, "{size} mm²: {found} A");
        }
        let mut last = 0.0;
        for step in 1..400 {
            let found = bears(mm2(f64::from(step) * 0.1)).base();
            assert!(found > last, "a larger wire bears more: {found} A at {step}");
            last = found;
        }
        let thin = bears(mm2(0.35)).base();
        assert!((8.0..9.5).contains(&thin), "{thin} A in 0.35 mm²");
    }
}
