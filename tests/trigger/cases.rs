//! The table, and cases worked by hand.

use quietpin_core::{
    quantity::{Band, CrankAngle, Measure, Ratio, hertz, ohms, rpm, seconds, volts},
    report::Tone,
    trigger::{
        hall::{Hall, InputNeeds},
        offset::{LightReading, solve, standing},
        reluctance::{Reluctance, SignalLimiter, divided},
        wheel,
    },
    working::Working,
};
use quietpin_tests::{Checked, Worst, rows};

use super::{coil, exact, found, hall, near, typed, verdicts};

/// Source: `crank_tooth_frequency.csv`; six digits are written.
pub(crate) fn teeth() -> Checked {
    let mut worst = Worst::default();
    let mut read = 0;
    for row in rows("crank_tooth_frequency.csv") {
        let working = &mut Working::new();
        let positions: u32 = row.text("positions").parse().expect("a whole number");
        let teeth: u32 = row.text("physical_teeth").parse().expect("a whole number");
        let speed = rpm(row.number("rpm"));
        let rate = wheel::frequency(working, positions, speed);
        let period = wheel::period(working, positions, speed).base() * 1e6;
        let pitch = wheel::pitch(working, positions).degrees();
        let across = pitch * f64::from(positions - teeth + 1);
        let back = wheel::speed_at(working, positions, rate).base();
        for (column, found) in [
            ("tooth_pitch_frequency_Hz", rate.base()),
            ("pitch_period_us", period),
            ("deg_per_pitch", pitch),
            ("deg_across_gap", across),
            ("rpm", back),
        ] {
            let listed = row.number(column);
            worst.check(&format!("{} {column}", row.place()), Some(found), listed, 1e-5 * listed);
        }
        // what a counter of whole turns shows is less, and would let a wheel pass that is too fast
        let mean = row.number("mean_edges_per_second");
        assert!(mean <= rate.base() * (1.0 + 1e-5), "{}", row.place());
        read += 1;
    }
    assert_eq!(read, 56, "seven wheels at eight speeds");
    let against = "a table computed from rpm × positions / 60";
    worst.checked("trigger", "Rate, pitch and gap of a wheel's teeth", against, "Hz, µs, °, rpm")
}

#[test]
fn teeth_come_as_the_table_says() {
    teeth();
}

/// Worked by hand: 60 positions at 7000 a minute are 7000 Hz; a limit of 6 kHz is 6000 a minute, and 51 positions at 7000.
#[test]
fn a_limit_is_met_at_its_speed() {
    let working = &mut Working::new();
    near("rate", wheel::frequency(working, 60, rpm(7000.0)).base(), 7000.0, 1e-12);
    near("runs out", wheel::speed_at(working, 60, hertz(6000.0)).base(), 6000.0, 1e-12);
    assert_eq!(wheel::most_positions(hertz(6000.0), rpm(7000.0)), Some(51));
    assert_eq!(
        wheel::most_positions(hertz(7000.0), rpm(7000.0)),
        Some(60),
        "the limit itself is borne"
    );
    assert_eq!(wheel::most_positions(hertz(1.0), rpm(7000.0)), None);
    // a cam turns half as often: 4 teeth at 6000 a minute are 200 Hz
    near("cam", wheel::cam_frequency(working, 4, rpm(6000.0)).base(), 200.0, 1e-12);
    // 1 µs at 6000 a minute is 0.036 degrees
    near("tick", wheel::turned(working, seconds(1e-6), rpm(6000.0)).degrees(), 0.036, 1e-12);
}

/// Worked by hand: 1 V at 100 a minute is 70 V at 7000; of that an input of 9 kohm gets nine tenths behind a coil of 1 kohm.
#[test]
fn a_coil_gives_by_speed_and_shares_it_with_its_input() {
    let peak = coil().at(Band::exact(rpm(7000.0))).expect("a circuit");
    near("open", peak.open.high.base(), 70.0, 1e-12);
    near("at the input", peak.at_input.nominal.base(), 63.0, 1e-9);
    // copper at 120 °C: 1 + 0.00393 · 100 (IEC 60028)
    let hot = Reluctance { temperature: exact("120 degC"), ..coil() };
    let left = hot.at(Band::exact(rpm(100.0))).expect("a circuit").at_input.low;
    near("hot", left.base(), 9000.0 / (9000.0 + 1393.0), 1e-9);
}

/// Worked by hand: 63 V to no more than 21 V wants 70 · 9 / 21 = 30 kohm in all, so 20 kohm more, which E24 has; at 70 a
/// minute 0.7 · 9 / 30 = 0.21 V are left. Where more must be left, a clamp.
#[test]
fn a_resistor_keeps_it_down_or_a_clamp_does() {
    let (slow, fast) = (Band::exact(rpm(70.0)), Band::exact(rpm(7000.0)));
    let cure = |counts_from| {
        coil().cure(slow, fast, volts(counts_from), volts(21.0)).expect("one of them does")
    };
    let SignalLimiter::Series(series, left) = cure(0.2) else { panic!("a resistor is enough") };
    near("series", series.base(), 20e3, 1e-9);
    near("left", left.base(), 0.21, 1e-9);
    let SignalLimiter::Clamp(series, current) = cure(0.3) else {
        panic!("a resistor leaves too little")
    };
    // 49 V over the coil and the resistor; 5 mA at most
    near("current", current.base(), 49.0 / (series.base() + 1000.0), 1e-9);
    assert!(current.base() <= 5e-3 * (1.0 + 1e-9), "{current:?}");
    let clamped = Reluctance { series, ..coil() };
    assert!(clamped.at(slow).expect("a circuit").at_input.low >= volts(0.3), "{series:?}");
    assert_eq!(
        coil().cure(slow, fast, volts(0.7), volts(21.0)),
        None,
        "not even bare is that much left"
    );
}

/// Worked by hand: open, 5 V share 1 and 9 kohm: 4.5 V. Closed, 0.4 V and 0.1 V of ground, and what 1 ohm of contact drops of
/// (5 - 0.5) / 1001 A beside what the input itself draws.
#[test]
fn a_switch_to_ground_gives_its_levels() {
    let levels = hall().levels().expect("a circuit");
    near("high", levels.high.nominal.base(), 4.5, 1e-9);
    let real = Hall {
        saturation: exact("0.4 V"),
        ground: exact("0.1 V"),
        contact: exact("1 ohm"),
        ..hall()
    };
    let levels = real.levels().expect("a circuit");
    // the node: (5 - u) / 1000 = (u - 0.5) / 1 + u / 9000
    let low = (5.0 / 1000.0 + 0.5) / (1.0 / 1000.0 + 1.0 + 1.0 / 9000.0);
    near("low", levels.low.nominal.base(), low, 1e-9);
    near("sunk", levels.sunk.nominal.base(), low - 0.5, 1e-6);
    let asked =
        InputNeeds { low: volts(0.8), high: volts(2.0), bears: Some(volts(5.5)), sink: None };
    assert!(levels.suit(&asked), "{levels:?}");
    assert!(!levels.suit(&InputNeeds { sink: Some(typed("4 mA")), ..asked }), "4.5 mA");
    // pulled up to a battery that charges
    let battery = Hall { rail: Some(exact("14.8 V")), ..real };
    assert!(!battery.levels().expect("a circuit").suit(&asked), "13 V on an input that bears 5.5");
    let cure = battery.cure(&asked, None).expect("5 V does");
    near("rail", cure.1.base(), 5.0, 1e-12);
    let driven = Hall { drives_up: true, saturation: exact("0.3 V"), ..hall() };
    near("driven", driven.levels().expect("a circuit").high.nominal.base(), 4.7, 1e-5);
}

/// Worked by hand: 1 and 9 kohm are 900 ohm, with 1 nF 0.9 µs; from 0 to 2 V of 4.5 V takes ln(4.5 / 2.5) of them.
#[test]
fn a_level_rises_by_its_resistance_and_capacitance() {
    let (time, steps) = hall().rise(volts(2.0)).expect("it is reached");
    near("rise", time.base(), 0.9e-6 * f64::ln(4.5 / 2.5), 1e-9);
    assert!(!steps.is_empty(), "it is shown how");
    assert_eq!(hall().rise(volts(4.6)), None, "above 4.5 V it never comes");
}

/// Worked by hand: 11 teeth after the first of 60 are 66 degrees. An offset 4 degrees too small and 100 µs of delay, light
/// read at 1000 and 4000 a minute with 10 degrees locked: 10 + 4 - 0.6 and 10 + 4 - 2.4.
#[test]
fn the_offset_is_found_standing_and_by_light() {
    near("standing", standing(&mut Working::new(), 60, 12).degrees(), 66.0, 1e-12);
    let reading =
        |seen, speed| LightReading { seen: Band::exact(CrankAngle::new(seen)), speed: rpm(speed) };
    let solved = solve(CrankAngle::new(10.0), reading(13.4, 1000.0), reading(11.6, 4000.0))
        .expect("two speeds");
    near("error", solved.error.nominal.degrees(), 4.0, 1e-9);
    near("delay", solved.delay.nominal.base(), 100e-6, 1e-9);
    // half a degree of eye at either end: 1 degree in 18000 degrees a second
    near("delay, at least", solved.delay.low.base(), 100e-6 - 1.0 / 18000.0, 1e-9);
    near("delay, at most", solved.delay.high.base(), 100e-6 + 1.0 / 18000.0, 1e-9);
    assert_eq!(solve(CrankAngle::new(10.0), reading(13.4, 1000.0), reading(11.6, 1000.0)), None);
}

/// What a divider leaves of nothing, and of a circuit that is none.
#[test]
fn a_divider_of_nothing_is_nothing() {
    near("none", divided(volts(0.0), ohms(1.0), ohms(1.0)).expect("a circuit").base(), 0.0, 1e-12);
    assert_eq!(divided(volts(f64::NAN), ohms(1.0), ohms(1.0)), None);
}

/// A speed that swings by a sine about its mean, in small steps: what one tooth's time says of the next, at its worst.
///
/// "At most" is said of the figure, so that no tooth anywhere on the swing may lose more.
#[test]
fn no_tooth_loses_more_than_is_said() {
    for (pitch, interval, dip, firing) in [
        (6.0, 6.0, 0.1, 120.0),
        (6.0, 18.0, 0.3, 120.0),
        (6.0, 18.0, 0.4, 120.0),
        (10.0, 20.0, 0.6, 180.0),
    ] {
        let said = wheel::interpolation(
            &mut Working::new(),
            CrankAngle::new(pitch),
            CrankAngle::new(interval),
            Ratio::from_base(dip),
            CrankAngle::new(firing),
        );
        let said = said.expect("teeth enough").degrees();
        let time = |from: f64, over: f64| {
            let step = over / 400.0;
            let at = |index: u32| from + (f64::from(index) + 0.5) * step;
            let slowness =
                |angle: f64| 1.0 / (1.0 - dip * (core::f64::consts::TAU * angle / firing).sin());
            (0..400).map(|index| step * slowness(at(index))).sum::<f64>()
        };
        let lost = (0..720).map(|start| {
            let from = firing * f64::from(start) / 720.0;
            let expected = time(from, pitch) * interval / pitch;
            interval * (time(from + pitch, interval) / expected - 1.0).abs()
        });
        let most = lost.fold(0.0, f64::max);
        let place = format!("{interval}° of {firing}°, dip {dip}: {most}°, {said}° is said");
        assert!(most <= said, "{place}");
        // a bound that is far from what is lost would find fault with wheels that are right
        assert!(said <= most * 1.5, "{place}");
    }
}

#[test]
fn what_suits_is_said_to_suit() {
    assert_eq!(found(&[]), [""; 0]);
    let said = verdicts(&[]);
    assert_eq!(said[0], (Tone::Good, "trigger.fast-enough"));
    assert_eq!(said[1].0, Tone::Good, "{said:?}");
    assert_eq!(said[2], (Tone::Open, "trigger.offset-open"));
}

/// By hand: 2 V at 200 a minute are 70 V at 7000, of which an input of 100 kilohm gets all but a hundredth, 69 V; an open collector
/// lets its input up to the 5 V of its rail, less what a pull-up of a few kilohm drops into 50 kilohm.
#[test]
fn what_an_input_bears_is_held_against_what_it_gets() {
    let bears = |volt: &'static str| found(&[("trigger_input.bears", volt)]);
    assert_eq!(bears("73 V"), [""; 0]);
    assert_eq!(bears("66 V"), ["trigger.over-voltage"]);
    let of_hall = |volt: &'static str| {
        found(&[
            ("crank_sensor.kind", "open-collector"),
            ("crank_sensor.pull_rail", "5"),
            ("crank_sensor.pull_up", "1 kohm"),
            ("trigger_input.resistance", "50 kohm"),
            ("trigger_input.bears", volt),
        ])
    };
    assert_eq!(of_hall("5.25 V"), [""; 0]);
    assert_eq!(of_hall("4.7 V"), ["trigger.rail-too-high"]);
}

/// Common practice, no source: half a degree is coarse, ten lost in a gap are much. By hand: at 7000 a minute 42 000 degrees pass in a
/// second, half a degree in 11.9 us; over 18 degrees of gap a swing of 57.5 % loses 18 (exp(0.6283 × 0.575 / √(1 − 0.575²)) − 1) = 10.
#[test]
fn a_step_of_time_is_coarse_and_a_loss_much_from_their_lines_on() {
    assert_eq!(found(&[("trigger_input.tick", "11.5 us")]), [""; 0]);
    assert_eq!(found(&[("trigger_input.tick", "12.3 us")]), ["trigger.coarse"]);
    let at_gap = ("trigger.tooth", "1");
    let loses =
        |dip: &'static str| found(&[("cranking.dip", dip), at_gap]).contains(&"trigger.loses");
    assert!(!loses("56 %") && loses("59 %"), "from ten degrees on");
}

/// Each wrong thing alone, and what is found.
#[test]
fn each_fault_is_found_alone() {
    let hall = [("crank_sensor.kind", "open-collector"), ("trigger_input.resistance", "50 kohm")];
    let of_hall = |more: &[(&'static str, &'static str)]| found(&[&hall, more].concat());
    assert_eq!(found(&[("trigger_input.highest_frequency", "6 kHz")]), ["trigger.too-fast"]);
    assert_eq!(found(&[("trigger_input.lowest_frequency", "200 Hz")]), ["trigger.too-slow"]);
    assert_eq!(found(&[("trigger_input.tick", "20 us")]), ["trigger.coarse"]);
    assert_eq!(found(&[("wheels.missing", "0")]), ["trigger.no-position"]);
    assert_eq!(found(&[("wheels.missing", "0"), ("wheels.cam_teeth", "1")]), [""; 0]);
    assert_eq!(found(&[("trigger_input.counts_from", "5 V")]), ["trigger.weak"]);
    assert_eq!(found(&[("trigger_input.bears", "20 V")]), ["trigger.over-voltage"]);
    assert_eq!(found(&[("crank_sensor.polarity", "reversed")]), ["trigger.reversed"]);
    assert_eq!(found(&[("crank_sensor.shield", "both")]), ["trigger.shield-both"]);
    assert_eq!(found(&[("crank_sensor.shield", "none")]), ["trigger.shield-none"]);
    // a switch's levels are volts apart
    let unshielded = ("crank_sensor.shield", "none");
    assert_eq!(of_hall(&[("crank_sensor.pull_rail", "5"), unshielded]), [""; 0]);
    assert_eq!(of_hall(&[("crank_sensor.pull_rail", "none")]), ["trigger.no-pull-up"]);
    assert_eq!(
        of_hall(&[("crank_sensor.pull_rail", "5"), ("trigger_input.bears", "6 V")]),
        [""; 0]
    );
    assert_eq!(
        of_hall(&[("crank_sensor.pull_rail", "battery"), ("trigger_input.bears", "6 V")]),
        ["trigger.rail-too-high"]
    );
    assert_eq!(
        of_hall(&[("crank_sensor.pull_rail", "5"), ("crank_sensor.sink", "0.5 mA")]),
        ["trigger.over-sink"]
    );
    assert_eq!(
        of_hall(&[("crank_sensor.pull_rail", "5"), ("crank_sensor.ground_offset", "1 V")]),
        ["trigger.low-too-high"]
    );
    assert_eq!(
        of_hall(&[("crank_sensor.pull_rail", "3.3"), ("trigger_input.high", "3.5 V")]),
        ["trigger.high-too-low"]
    );
    let rises = [
        ("crank_sensor.pull_rail", "5"),
        ("crank_sensor.pull_up", "47 kohm"),
        ("trigger_input.capacitance", "10 nF"),
    ];
    assert_eq!(of_hall(&rises), ["trigger.slow-rise"]);
    assert_eq!(found(&[("trigger.tooth", "12"), ("controller.offset", "66 deg")]), [""; 0]);
    assert_eq!(
        found(&[("trigger.tooth", "12"), ("controller.offset", "60 deg")]),
        ["trigger.offset-differs"]
    );
}
