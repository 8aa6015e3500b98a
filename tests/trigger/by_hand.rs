//! More cases worked by hand: a switch and a coil as they are met.

use super::{coil, exact, near};
use quietpin_core::{
    quantity::{Band, CrankAngle, Measure, amperes, hertz, rpm, seconds, share, volts},
    trigger::{
        hall::{Hall, InputNeeds},
        offset::{LightReading, solve, standing},
        reluctance::{Reluctance, SignalLimiter},
        wheel,
    },
    working::Working,
};

/// An open collector of 0.2 V through a contact of 1 ohm.
fn hall() -> Hall {
    Hall { saturation: exact("0.2 V"), contact: exact("1 ohm"), ..super::hall() }
}

/// By hand: 5 kHz at 7000 rpm leave 42.9 positions; a microsecond at 7000 rpm is 0.042 degrees; a cam of two teeth at
/// 6000 rpm turns fifty times a second.
#[test]
fn limits_steps_and_cams_by_hand() {
    assert_eq!(wheel::most_positions(hertz(5000.0), rpm(7000.0)), Some(42), "5 kHz");
    assert_eq!(wheel::most_positions(hertz(7000.0), rpm(7000.0)), Some(60), "exactly as many");
    assert_eq!(wheel::most_positions(hertz(100.0), rpm(7000.0)), None, "not even two");
    let working = &mut Working::new();
    near("a tick", wheel::turned(working, seconds(1e-6), rpm(7000.0)).degrees(), 0.042, 1e-12);
    near("a cam", wheel::cam_frequency(working, 2, rpm(6000.0)).base(), 100.0, 1e-12);
}

/// By hand: an even six fires each 120 degrees, and a quarter of that is 30; where the speed swings by all of itself the crank stands.
#[test]
fn teeth_more_than_a_quarter_of_the_swing_apart_tell_nothing_of_what_is_lost_between_them() {
    let told = |pitch_deg: f64, dip: f64| {
        let angle = CrankAngle::new;
        wheel::interpolation(
            &mut Working::new(),
            angle(pitch_deg),
            angle(2.0 * pitch_deg),
            share(dip),
            angle(120.0),
        )
    };
    assert!(told(29.5, 0.2).is_some() && told(30.0, 0.2).is_some(), "up to 30 degrees");
    assert_eq!(told(30.5, 0.2), None, "beyond");
    assert!(told(10.0, 0.97).is_some(), "nearly all of its speed");
    assert_eq!(told(10.0, 1.0), None, "all of it");
    assert_eq!(told(10.0, 1.05), None, "more than that");
}

/// By hand: half the speed is half the voltage, and 9 of 10 kilohm get nine tenths of it.
#[test]
fn a_coil_at_half_the_speed_gives_half_the_voltage() {
    let peak = coil().at(Band::exact(rpm(100.0))).expect("a circuit");
    near("open", peak.open.nominal.base(), 1.0, 1e-12);
    near("at the input", peak.at_input.nominal.base(), 0.9, 1e-9);
}

/// By hand: 70 V at 7000 rpm on 9 kilohm, 60 V borne: 1/6 of 9 kilohm less the coil's is 500 ohm, 510 in the series E24.
#[test]
fn a_resistor_is_enough_where_it_is_and_a_clamp_where_not() {
    let (slow, fast) = (Band::exact(rpm(120.0)), Band::exact(rpm(7000.0)));
    let cure = coil().cure(slow, fast, volts(0.5), volts(60.0));
    let Some(SignalLimiter::Series(series, left)) = cure else { panic!("{cure:?}") };
    near("series", series.base(), 510.0, 1e-9);
    near("left", left.base(), 1.2 * 9000.0 / 10510.0, 1e-9);
    let behind = Reluctance { series, ..coil() }.at(fast).expect("a circuit");
    assert!(behind.at_input.high <= volts(60.0), "{behind:?}");
    // 5 V borne would leave a fourteenth while cranking: a clamp, 65 V at 5 mA are 13 kilohm less the coil's
    let cure = coil().cure(slow, fast, volts(0.3), volts(5.0));
    let Some(SignalLimiter::Clamp(series, current)) = cure else { panic!("{cure:?}") };
    near("series", series.base(), 12000.0, 1e-9);
    near("clamp", current.base(), 0.005, 1e-9);
    assert_eq!(coil().cure(slow, fast, volts(1.1), volts(5.0)), None, "none leaves 1.1 V");
}

/// By hand: 5 V through a pull-up are 5 mA at 1 kilohm, 2.27, 1.52, 1.06 and 0.5 mA at the next ones that are sold in every shop; what
/// the sensor may sink says which of them it is.
#[test]
fn a_pull_up_is_one_that_the_sensor_can_sink() {
    for (sink_ma, kilohm) in [(5.2, 1.0), (2.4, 2.2), (1.6, 3.3), (1.15, 4.7), (0.55, 10.0)] {
        let sink = Some(amperes(sink_ma * 1e-3));
        let asked = InputNeeds { low: volts(0.8), high: volts(2.0), bears: None, sink };
        let open = Hall { input: exact("1 Mohm"), rail: None, ..super::hall() };
        let (pull_up, rail) = open.cure(&asked, None).expect("one of them does");
        near("pull-up", pull_up.base(), kilohm * 1e3, 1e-9);
        near("rail", rail.base(), 5.0, 1e-9);
    }
    // an input that bears 3.5 V is given 3.3
    let asked =
        InputNeeds { low: volts(0.8), high: volts(2.0), bears: Some(volts(3.5)), sink: None };
    let open = Hall { input: exact("1 Mohm"), ..hall() };
    near("rail", open.cure(&asked, None).expect("3.3 V does").1.base(), 3.3, 1e-9);
}

/// By hand: 5 V on 1 and 9 kilohm are 4.5 V; 4.8 mA less the input's share through 1 ohm lift 0.2 V by 4.8 mV.
#[test]
fn the_levels_of_an_open_collector() {
    let levels = hall().levels().expect("a circuit");
    near("high", levels.high.nominal.base(), 4.5, 1e-9);
    // (5/1000 + 0.2/1) / (1/1000 + 1/9000 + 1/1)
    let low = (0.005 + 0.2) / (0.001 + 1.0 / 9000.0 + 1.0);
    near("low", levels.low.nominal.base(), low, 1e-9);
    near("sunk", levels.sunk.nominal.base(), low - 0.2, 1e-6);
    let asked =
        InputNeeds { low: volts(0.8), high: volts(2.0), bears: Some(volts(5.5)), sink: None };
    assert!(levels.suit(&asked), "{levels:?}");
    assert!(!levels.suit(&InputNeeds { sink: Some(amperes(0.004)), ..asked }), "4.8 mA of 4");
    let at_battery = Hall { rail: Some(Band::exact(volts(12.6))), ..hall() };
    assert!(!at_battery.levels().expect("a circuit").suit(&asked), "12 V into 5 V");
    let none = Hall { rail: None, ..hall() }.levels().expect("a circuit");
    assert!(none.high.high < volts(0.001), "nothing pulls up: {none:?}");
    let both = Hall { drives_up: true, ..hall() }.levels().expect("a circuit");
    near("driven", both.high.nominal.base(), 4.8, 1e-3);
}

/// By hand: 900 ohm and 1 nF from 0.2 V towards 4.5 V are at 2 V after 0.9 µs ln(4.3/2.5).
#[test]
fn the_level_rises_by_its_time_constant() {
    let (time, _) = hall().rise(volts(2.0)).expect("it rises");
    near("rise", time.base(), 0.9e-6 * (4.3_f64 / 2.5).ln(), 1e-9);
    assert_eq!(hall().rise(volts(4.6)), None, "it never gets there");
}

/// By hand: 15.4 seen at 1000 rpm and 13.6 at 4000, 10 locked: 1.8 degrees in 18000 a second are 100 µs, and 15.4 less 10
/// and 0.6 of delay are 6.
#[test]
fn offset_and_delay_from_two_readings() {
    let reading =
        |seen, speed| LightReading { seen: Band::exact(CrankAngle::new(seen)), speed: rpm(speed) };
    let (low, high) = (reading(15.4, 1000.0), reading(13.6, 4000.0));
    let solved = solve(CrankAngle::new(10.0), low, high).expect("two speeds");
    near("delay", solved.delay.nominal.base(), 100e-6, 1e-9);
    near("error", solved.error.nominal.degrees(), 6.0, 1e-9);
    assert!(solved.error.low < solved.error.nominal, "an eye tells half a degree");
    assert_eq!(solve(CrankAngle::new(10.0), low, reading(13.6, 1000.0)), None, "one speed");
    near("tooth 16 of 60", standing(&mut Working::new(), 60, 16).degrees(), 90.0, 1e-12);
    near("tooth 10 of 36", standing(&mut Working::new(), 36, 10).degrees(), 90.0, 1e-12);
}
