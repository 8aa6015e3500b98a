//! What must hold for any wheel, sensor and input.

use proptest::prelude::*;
use quietpin_core::{
    quantity::{Band, CrankAngle, Measure, ohms, rpm, volts},
    trigger::{
        hall::Hall,
        offset::{LightReading, solve, to_enter},
        reluctance::{Reluctance, SignalLimiter, divided, scaled},
        wheel,
    },
    working::Working,
};

use super::{coil, hall};

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(500) })]

    /// Twice the speed is twice the rate, and half the time of a tooth.
    #[test]
    fn the_rate_goes_with_speed(positions in 1..=360_u32, speed in 20.0..20_000.0_f64, times in 0.1..50.0_f64) {
        let working = &mut Working::new();
        let (slow, fast) = (rpm(speed), rpm(speed * times));
        let one = wheel::frequency(working, positions, slow).base();
        let other = wheel::frequency(working, positions, fast).base();
        prop_assert!((other - times * one).abs() <= 1e-9 * other);
        let turn = wheel::period(working, positions, slow).base() * one;
        prop_assert!((turn - 1.0).abs() <= 1e-12, "a tooth in the time of a tooth");
        let rate = wheel::frequency(working, positions, slow);
        let back = wheel::speed_at(working, positions, rate);
        prop_assert!((back.base() - speed).abs() <= 1e-9 * speed);
    }

    /// The most positions are in time, and one more isn't.
    #[test]
    fn one_position_more_is_too_fast(limit in 50.0..20_000.0_f64, speed in 500.0..20_000.0_f64) {
        let working = &mut Working::new();
        let limit = Measure::from_base(limit);
        if let Some(most) = wheel::most_positions(limit, rpm(speed)) {
            let rate = |n| wheel::frequency(&mut *working, n, rpm(speed)).base();
            let [at, beyond] = [most, most + 1].map(rate);
            prop_assert!(at <= limit.base() * (1.0 + 1e-9), "{most}: {at}");
            prop_assert!(most == 360 || beyond > limit.base(), "{most}: {beyond}");
        }
    }

    /// To another speed and back is the same voltage.
    #[test]
    fn a_peak_scaled_there_and_back_is_the_same(peak in 1e-3..500.0, from in 20.0..20_000.0_f64, to in 20.0..20_000.0_f64) {
        let there = scaled(volts(peak), rpm(from), rpm(to));
        let back = scaled(there, rpm(to), rpm(from));
        prop_assert!((back.base() - peak).abs() <= 1e-12 * peak);
    }

    /// A divider never raises, and more in line leaves less.
    #[test]
    fn a_divider_never_raises(open in 0.0..500.0_f64, above in 1.0..1e6, more in 1.0..1e6, input in 100.0..1e8) {
        let left = |above| divided(volts(open), ohms(above), ohms(input)).expect("a circuit").base();
        prop_assert!((0.0..=open * (1.0 + 1e-12)).contains(&left(above)));
        prop_assert!(left(above + more) <= left(above) * (1.0 + 1e-12));
        let expected = open * input / (above + input);
        prop_assert!((left(above) - expected).abs() <= 1e-9 * open.max(1e-12), "{} {expected}", left(above));
    }

    /// What is found lies in the band that is found, and what cures does cure.
    #[test]
    fn a_cure_cures(peak in 0.1..10.0, coil_ohm in 100.0..3000.0, input in 5e3..200e3, bears in 3.0..100.0, counts_from in 0.05..2.0) {
        let sensor = Reluctance {
            peak: Band::with_tolerance(volts(peak), 0.2),
            coil: Band::with_tolerance(ohms(coil_ohm), 0.2),
            input: Band::with_tolerance(ohms(input), 0.2),
            temperature: Band { low: quietpin_core::quantity::celsius(-20.0), ..Band::exact(quietpin_core::quantity::celsius(20.0)) },
            ..coil()
        };
        let (slow, fast) = (Band::exact(rpm(100.0)), Band::exact(rpm(7000.0)));
        let at = sensor.at(fast).expect("a circuit").at_input;
        prop_assert!(at.low <= at.nominal && at.nominal <= at.high, "{at:?}");
        if at.high <= volts(bears) { return Ok(()) }
        match sensor.cure(slow, fast, volts(counts_from), volts(bears)) {
            Some(SignalLimiter::Series(series, left)) => {
                let cured = Reluctance { series, ..sensor };
                prop_assert!(cured.at(fast).expect("a circuit").at_input.high <= volts(bears));
                prop_assert!(left >= volts(counts_from));
            }
            Some(SignalLimiter::Clamp(series, current)) => {
                let cured = Reluctance { series, ..sensor };
                prop_assert!(cured.at(slow).expect("a circuit").at_input.low >= volts(counts_from));
                prop_assert!(current.base() > 0.0 && current.base() <= 5e-3 * (1.0 + 1e-9), "{current:?}");
            }
            None => {}
        }
    }

    /// A planted error and delay are found again, in either order of the readings, and the offset that is entered then is
    /// the true one.
    #[test]
    fn a_planted_offset_and_delay_are_found(
        advance in -20.0..45.0_f64, error in -60.0..60.0_f64, delay_us in -200.0..500.0_f64,
        low in 300.0..2000.0, apart in 500.0..8000.0, offset in -300.0..300.0,
    ) {
        let reading = |speed: f64| LightReading {
            seen: Band::exact(CrankAngle::new(advance + error - 6.0 * speed * delay_us * 1e-6)),
            speed: rpm(speed),
        };
        let commanded = CrankAngle::new(advance);
        let (one, other) = (reading(low), reading(low + apart));
        for pair in [(one, other), (other, one)] {
            let solved = solve(commanded, pair.0, pair.1).expect("two speeds");
            prop_assert!((solved.error.nominal.degrees() - error).abs() < 1e-8, "{solved:?}");
            prop_assert!((solved.delay.nominal.base() - delay_us * 1e-6).abs() <= 1e-12, "{solved:?}");
            prop_assert!(solved.error.low <= solved.error.nominal && solved.error.nominal <= solved.error.high);
            prop_assert!(solved.delay.low <= solved.delay.nominal && solved.delay.nominal <= solved.delay.high);
            let enter = to_enter(&mut Working::new(), CrankAngle::new(offset), solved.error.nominal);
            prop_assert!((enter.degrees() - offset - error).abs() < 1e-8);
        }
    }

    /// A level lies between ground and rail, the low one below the high one, and a weaker pull-up sinks less and rises later.
    #[test]
    fn levels_lie_between_the_rails(pull in 100.0..47e3, weaker in 1.1..5.0, input in 5e3..1e6, rail in 3.0..15.0) {
        let of = |pull| Hall {
            rail: Some(Band::exact(volts(rail))),
            pull_up: Band::exact(ohms(pull)),
            input: Band::exact(ohms(input)),
            ..hall()
        };
        let (one, other) = (of(pull).levels().expect("a circuit"), of(pull * weaker).levels().expect("a circuit"));
        prop_assert!(one.low.low.base() >= -1e-9 && one.high.high.base() <= rail * (1.0 + 1e-9));
        prop_assert!(one.low.high <= one.high.low);
        prop_assert!(other.sunk.nominal < one.sunk.nominal && other.high.nominal < one.high.nominal);
        let threshold = volts(other.high.low.base() / 2.0);
        let (soon, late) = (of(pull).rise(threshold), of(pull * weaker).rise(threshold));
        prop_assert!(soon.expect("reached").0 <= late.expect("reached").0);
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
