//! Laws of sensors and of the inputs that read them.
//!
//! Source: it follows from Ohm's law, and from what a curve is.

use proptest::prelude::*;
use quietpin_core::{
    quantity::{Band, Measure, Pressure, celsius, metres, ohms, volts},
    sensor::{
        atmosphere,
        divider::{Divider, SecondPull, best_pull_up},
        platinum,
        ratiometric::Ratiometric,
        thermistor::Thermistor,
        thermocouple,
        tracks::{TrackRun, compare},
    },
};

fn divider(pull_up: f64) -> Divider {
    Divider { supply: Band::exact(volts(5.0)), pull_up: Band::exact(ohms(pull_up)), second: None }
}

fn near(one: f64, other: f64, tolerance: f64) -> Result<(), TestCaseError> {
    prop_assert!((one - other).abs() <= tolerance, "{one} instead of {other}");
    Ok(())
}

proptest! {
    #[test]
    fn a_thermistors_resistance_leads_back_to_its_temperature(
        r25 in 500.0..50e3_f64, beta in 2500.0..5000.0_f64, t in -40.0..130.0_f64,
    ) {
        let curve = Thermistor::by_beta(ohms(r25), beta).expect("a B value");
        let at = |t: f64| curve.resistance(celsius(t)).expect("it has one");
        near(curve.temperature(at(t)).expect("it has one").base(), t, 1e-6)?;
        // three of its points, or many, are the same sensor
        for ends in [vec![-40.0, 25.0, 130.0], vec![-40.0, 0.0, 25.0, 80.0, 130.0]] {
            let points: Vec<_> = ends.into_iter().map(|t| (celsius(t), at(t))).collect();
            let same = Thermistor::by_points(&points).expect("points");
            near(same.temperature(at(t)).expect("it has one").base(), t, 1e-6)?;
        }
    }

    #[test]
    fn platinum_and_thermocouples_lead_back_to_their_temperature(
        t in -190.0..840.0_f64, cold in -40.0..90.0_f64,
    ) {
        let ohm = platinum::resistance(ohms(1000.0), celsius(t));
        near(platinum::temperature(ohms(1000.0), ohm).expect("it has one").base(), t, 1e-9)?;
        let volts = thermocouple::between(celsius(t), celsius(cold));
        near(thermocouple::temperature(volts, celsius(cold)).expect("it has one").base(), t, 1e-6)?;
    }

    #[test]
    fn a_pressure_leads_back_to_itself(
        low in 0.0..50e3_f64, span in 50e3..1e6_f64, at in 0.0..1.0_f64, v in 0.0..1.0_f64,
    ) {
        let pa = |it: f64| -> Pressure { Measure::from_base(it) };
        let sensor = Ratiometric {
            pressure: (pa(low), pa(low + span)),
            voltage: (volts(v), volts(v + 3.5)),
            tolerance: 0.0,
        };
        let pressure = pa(low + at * span);
        let given = sensor.voltage(&Band::exact(pressure), &Band::exact(volts(5.0)));
        near(sensor.pressure(given.nominal).base(), pressure.base(), 1e-6 * span)?;
        // half the supply is half the voltage
        let half = sensor.voltage(&Band::exact(pressure), &Band::exact(volts(2.5)));
        near(half.nominal.base(), given.nominal.base() / 2.0, 1e-12)?;
    }

    #[test]
    fn more_ohms_give_more_volts_and_a_larger_pull_up_never_more(
        ohm in 1.0..1e6_f64, more in 1.0..10.0_f64, pull in 100.0..1e5_f64,
    ) {
        let at = |pull: f64, ohm: f64| divider(pull).nominal(ohms(ohm)).base();
        prop_assert!(at(pull, ohm * more) >= at(pull, ohm));
        prop_assert!(at(pull * more, ohm) <= at(pull, ohm));
        let found = divider(pull).resistance(volts(at(pull, ohm))).expect("between 0 and 5 V");
        near(found.base(), ohm, 1e-6 * ohm * (1.0 + ohm / pull))?;
    }

    #[test]
    fn a_second_pull_up_never_lowers_it_and_no_tolerance_narrows_it(
        ohm in 1.0..1e5_f64, pull in 100.0..1e5_f64, other in 100.0..1e5_f64, off in 0.0..0.2_f64,
    ) {
        let one = divider(pull);
        let second = SecondPull {
            supply: Band::exact(volts(5.0)),
            resistance: Band::exact(ohms(other)),
        };
        let both = Divider { second: Some(second), ..one };
        let sensor = Band::exact(ohms(ohm));
        prop_assert!(both.voltage(&sensor).nominal >= one.voltage(&sensor).nominal);
        // two that go to the same are one, in parallel
        let parallel = divider(1.0 / (1.0 / pull + 1.0 / other));
        near(both.nominal(ohms(ohm)).base(), parallel.nominal(ohms(ohm)).base(), 1e-9)?;
        let wide = Divider { pull_up: Band::with_tolerance(ohms(pull), off), ..both };
        let (wide, narrow) = (wide.voltage(&sensor), both.voltage(&sensor));
        prop_assert!(wide.low <= narrow.low && wide.high >= narrow.high);
        prop_assert!(narrow.low <= narrow.nominal && narrow.nominal <= narrow.high);
    }

    #[test]
    fn the_best_pull_up_lies_between_what_it_is_to_tell_apart(
        r25 in 500.0..50e3_f64, beta in 3000.0..4500.0_f64,
    ) {
        let curve = Thermistor::by_beta(ohms(r25), beta).expect("a B value");
        let at = |t: f64| curve.resistance(celsius(t)).expect("it has one");
        let best = best_pull_up((at(-20.0), at(-19.0)), (at(100.0), at(101.0))).expect("one");
        prop_assert!(at(101.0) <= best && best <= at(-20.0), "{}", best.base());
    }

    #[test]
    fn the_higher_the_thinner(one in -400.0..5000.0_f64, more in 1.0..3000.0_f64) {
        prop_assert!(atmosphere::standard(metres(one)) > atmosphere::standard(metres(one + more)));
    }

    #[test]
    fn two_tracks_are_told_by_how_they_run(
        strokes in prop::collection::vec(0.0..1.0_f64, 1..6), rest in 0.3..0.9_f64,
    ) {
        let firsts: Vec<_> = [0.0, 1.0].into_iter().chain(strokes).map(|it| rest + 3.5 * it).collect();
        for run in TrackRun::ALL {
            let second = |one: f64| match run {
                TrackRun::Mirrored => 5.0 - one,
                TrackRun::Half => one / 2.0,
                TrackRun::Alike => one,
            };
            let pairs: Vec<_> =
                firsts.iter().map(|it| (volts(*it), volts(second(*it)))).collect();
            for asked in TrackRun::ALL {
                let compared = compare(asked, &pairs).expect("a stroke");
                prop_assert_eq!(compared.suits(), asked == run);
                prop_assert_eq!(compared.found, Some(run));
            }
        }
    }
}

/// Source: the standard atmosphere as handbooks print it: 1013.25 hPa at sea level, 898.7 at 1000 m, 795.0 at 2000 m, 540.2 at 5000 m.
#[test]
fn the_air_is_as_thin_as_handbooks_print_it() {
    for (metre, hectopascal) in
        [(0.0, 1013.25), (1000.0, 898.75), (2000.0, 794.95), (5000.0, 540.2)]
    {
        let found = atmosphere::standard(metres(metre)).base() / 100.0;
        assert!((found - hectopascal).abs() < 0.05, "{metre} m: {found}");
    }
}
