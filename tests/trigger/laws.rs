//! What holds whatever the numbers are.

use proptest::prelude::*;
use quietpin_core::{
    quantity::{Band, CrankAngle, Measure, ohms, rpm, volts},
    trigger::{
        hall::Hall,
        offset::{Reading, solve, to_enter},
        reluctance::{divided, scaled},
        wheel,
    },
    working::Working,
};

use crate::hall;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    #[test]
    fn the_rate_is_proportional_to_speed(n in 1.0..15000.0_f64, k in 0.1..10.0_f64, teeth in 1..360_u32) {
        let rate = |n| wheel::frequency(&mut Working::new(), teeth, rpm(n)).base();
        prop_assert!((rate(k * n) - k * rate(n)).abs() <= 1e-9 * rate(k * n));
    }

    #[test]
    fn a_divider_never_raises(v in 0.0..500.0_f64, above in 1.0..1e5_f64, input in 100.0..1e8_f64) {
        let found = divided(volts(v), ohms(above), ohms(input)).expect("a circuit").base();
        prop_assert!(found <= v * (1.0 + 1e-12) && found >= 0.0, "{found} of {v}");
        let more = divided(volts(v), ohms(2.0 * above), ohms(input)).expect("a circuit").base();
        prop_assert!(more <= found * (1.0 + 1e-12), "{more} behind more than {found}");
    }

    #[test]
    fn scaling_there_and_back_changes_nothing(v in 0.01..500.0_f64, a in 20.0..2e4_f64, b in 20.0..2e4_f64) {
        let back = scaled(scaled(volts(v), rpm(a), rpm(b)), rpm(b), rpm(a)).base();
        prop_assert!((back - v).abs() <= 1e-12 * v, "{back} of {v}");
    }

    /// What was planted in two readings is found in them, in whichever order they stand; entering it leaves no error.
    #[test]
    fn planted_offset_and_delay_are_found(
        error in -60.0..60.0_f64, delay_us in -200.0..500.0_f64, locked in -10.0..40.0_f64,
        n in 300.0..2000.0_f64, up in 500.0..8000.0_f64, offset in 0.0..360.0_f64,
    ) {
        let seen = |n: f64, error: f64| {
            Band::exact(CrankAngle::new(locked + error - 6.0 * n * delay_us * 1e-6))
        };
        let reading = |n: f64| Reading { seen: seen(n, error), speed: rpm(n) };
        for (one, other) in [(n, n + up), (n + up, n)] {
            let found = solve(CrankAngle::new(locked), reading(one), reading(other)).expect("two speeds");
            prop_assert!((found.error.nominal.degrees() - error).abs() < 1e-8);
            prop_assert!((found.delay.nominal.base() * 1e6 - delay_us).abs() < 1e-5);
            let real = to_enter(&mut Working::new(), CrankAngle::new(offset), found.error.nominal);
            // a controller told `real` fires at `real - locked` behind the tooth: exactly `locked` before top dead centre
            prop_assert!((real.degrees() - (offset + error)).abs() < 1e-8);
        }
    }

    /// Any point inside the tolerances lies between the levels of their ends.
    #[test]
    fn the_ends_of_the_tolerances_hold_every_point(
        at in prop::array::uniform5(0.0..1.0_f64), pull in 500.0..20e3_f64, input in 5e3..1e6_f64, rail in 3.3..15.0_f64,
    ) {
        let of = |low: f64, high: f64, at: f64| low + at * (high - low);
        let wide = Hall {
            rail: Some(Band::between(volts(rail), volts(rail * 1.1))),
            pull_up: Band::between(ohms(pull), ohms(pull * 1.2)),
            saturation: Band::between(volts(0.1), volts(0.4)),
            ground: Band::between(volts(-0.1), volts(0.3)),
            input: Band::between(ohms(input), ohms(input * 2.0)),
            ..hall()
        };
        let point = Hall {
            rail: Some(Band::exact(volts(of(rail, rail * 1.1, at[0])))),
            pull_up: Band::exact(ohms(of(pull, pull * 1.2, at[1]))),
            saturation: Band::exact(volts(of(0.1, 0.4, at[2]))),
            ground: Band::exact(volts(of(-0.1, 0.3, at[3]))),
            input: Band::exact(ohms(of(input, input * 2.0, at[4]))),
            ..hall()
        };
        let (wide, point) = (wide.levels().expect("a circuit"), point.levels().expect("a circuit"));
        for (what, band, inside) in [("low", wide.low, point.low), ("high", wide.high, point.high)] {
            let inside = inside.nominal.base();
            prop_assert!(inside >= band.low.base() - 1e-9 && inside <= band.high.base() + 1e-9, "{what}");
        }
        let sunk = point.sunk.nominal.base();
        prop_assert!(sunk >= wide.sunk.low.base() - 1e-12 && sunk <= wide.sunk.high.base() + 1e-12, "sunk");
    }
}
