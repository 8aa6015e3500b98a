//! Which corner bounds the thresholds that work: one at which a threshold just beyond does not.

use proptest::prelude::*;
use quietpin_core::{
    cranking::{CrankingInputs, StartCorner},
    quantity::{Measure, RotationalSpeed, rpm},
};

use super::{
    answered,
    curves::{OUTSIDE, declared},
};

/// Whether the relay stays out, opens again, or waits for a crest.
fn fails(corner: &StartCorner, threshold: RotationalSpeed) -> bool {
    !corner.closes || corner.openings.count > 0 || threshold > corner.slowest_reading
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(80) })]

    #[test]
    fn the_corner_that_is_named_is_one_that_fails_just_beyond((_, inputs) in declared(), asked in 10.0..150.0_f64) {
        let at = |asked: f64| answered(&CrankingInputs { threshold: Some(rpm(asked)), ..inputs.clone() });
        let rocking = inputs.rocking.high.base();
        let mut found = at(asked);
        let Some(first) = found.works else { return Ok(()) };
        // beyond a gap that a crest of the run-up leaves, others may work again
        for by in [1.01, 1.03, 1.1, 1.2] {
            let beyond = at(first.high * by);
            let Some(band) = beyond.works.filter(|it| it.low > first.high) else { continue };
            prop_assert!(!beyond.bounds.low.is_empty(), "{:?} after {:?}", band, first);
            found = beyond;
        }
        let Some(band) = found.works else { return Ok(()) };
        prop_assert_eq!(found.bounds.low.is_empty(), band.low <= rocking, "{:?}: {:?}", band, found.bounds);
        for (end, side, name) in [(band.low, -1.0, &found.bounds.low), (band.high, 1.0, &found.bounds.high)] {
            let fails_there = |by: &f64| {
                let threshold = rpm(end * (1.0 + side * by));
                let beyond = answered(&CrankingInputs { threshold: Some(threshold), ..inputs.clone() });
                beyond.corners.iter().any(|it| it.name == *name && fails(it, threshold))
            };
            prop_assert!(name.is_empty() || OUTSIDE.iter().any(fails_there), "{name} at {end} of {band:?}");
        }
    }
}
