//! From both sides of each line between what suits a trigger and what does not, and from the line itself.

use quietpin_core::{
    finding::{Finding, Severity},
    quantity::{Holds, Measure, amperes, volts},
    report::{Tone, report},
    trigger::hall::InputNeeds,
};

use super::{found, hall, plan, verdicts};

/// An input reads low *at or below* and high *at or above* its levels, and bears what it bears. By hand: 5 V over 1 and 9 kilohm are
/// 4.5 V, and the switch sinks 5 mA.
#[test]
fn what_is_just_as_it_is_asked_suits_and_anything_beyond_does_not() {
    let levels = hall().levels().expect("a circuit");
    let just = InputNeeds {
        low: levels.low.high,
        high: levels.high.low,
        bears: Some(levels.high.high),
        sink: Some(levels.sunk.high),
    };
    assert!(levels.suit(&just), "{levels:?}");
    let beyond = [
        InputNeeds { low: levels.low.high - volts(1e-6), ..just },
        InputNeeds { high: volts(4.51), ..just },
        InputNeeds { bears: Some(volts(4.49)), ..just },
        InputNeeds { sink: Some(amperes(4.99e-3)), ..just },
    ];
    for needs in beyond {
        assert!(!levels.suit(&needs), "{needs:?}");
    }
    let unknown = InputNeeds { bears: None, sink: None, ..just };
    assert!(levels.suit(&unknown), "what is not known stops nothing");
}

/// By hand: a sensor that drives up, or a wire without capacitance, is there at once; the least capacitance takes its time.
#[test]
fn only_a_capacitance_behind_a_pull_up_takes_time() {
    let of = |hall: quietpin_core::trigger::hall::Hall| hall.rise(volts(2.0)).expect("reached").0;
    let bare = quietpin_core::trigger::hall::Hall { capacitance: super::exact("0 nF"), ..hall() };
    assert!(of(bare).base() <= 0.0, "no capacitance");
    assert!(of(hall()).base() > 0.0, "1 nF");
    let driven = quietpin_core::trigger::hall::Hall { drives_up: true, ..hall() };
    assert!(of(driven).base() <= 0.0, "it drives up");
}

/// Half a degree, common practice, no source. By hand: 1 kilohm beside 50 kilohm is 980 ohm, and from nought to 2.5 V of 4.902 V takes
/// ln(4.902 / 2.402) = 0.7133 of its time constants; at 7000 a minute, 42 000 degrees a second, half a degree is 11.9 µs: 17.02 nF.
#[test]
fn an_edge_is_late_from_half_a_degree_on() {
    let with = |capacitance: &'static str| {
        found(&[
            ("crank_sensor.kind", "open-collector"),
            ("crank_sensor.pull_rail", "5"),
            ("crank_sensor.pull_up", "1 kohm"),
            ("crank_sensor.saturation", "0 V"),
            ("crank_sensor.ground_offset", "0 V"),
            ("trigger_input.resistance", "50 kohm"),
            ("trigger_input.high", "2.5 V"),
            ("trigger_input.bears", "6 V"),
            ("trigger_input.capacitance", capacitance),
        ])
    };
    assert_eq!(with("16.2 nF"), [""; 0]);
    assert_eq!(with("17.9 nF"), ["trigger.slow-rise"]);
}

/// Two degrees, common practice, no source. By hand: what is read half a degree wrong at 1000 and at n a minute is
/// (n + 1000) / (n − 1000) halves of a degree wrong at standstill: 1.93 degrees at 1700, and 2.09 at 1630.
#[test]
fn two_readings_prove_an_offset_only_where_they_are_far_enough_apart() {
    let read_at = |speed: &'static str| {
        let said = verdicts(&[
            ("controller.offset", "84 deg"),
            ("controller.locked_advance", "10 deg"),
            ("trigger.seen_low", "10 deg"),
            ("trigger.speed_low", "1000 rpm"),
            ("trigger.seen_high", "10 deg"),
            ("trigger.speed_high", speed),
        ]);
        said.get(2).copied()
    };
    assert_eq!(read_at("1700 rpm"), Some((Tone::Good, "trigger.offset-right")));
    assert_eq!(read_at("1630 rpm"), Some((Tone::Doubtful, "trigger.offset-right")));
}

/// Where and how gravely the only finding of that name stands.
fn holds(typed: &[(&str, &str)], code: &str) -> (Severity, Holds) {
    let report = report(&plan(typed));
    let all: Vec<&Finding> =
        report.findings.iter().filter(|it| it.message.code == code).map(AsRef::as_ref).collect();
    let [it] = all.as_slice() else { panic!("{code} stands {} times", all.len()) };
    (it.severity, it.holds.clone())
}

/// By hand: a rail of 5 V is the same at every corner; one of the battery is above 14 V while it charges, and not at rest.
#[test]
fn a_level_that_is_wrong_is_wrong_at_the_corners_of_its_rail() {
    let with = |more: &[(&'static str, &'static str)], code| {
        let usual =
            [("crank_sensor.kind", "open-collector"), ("trigger_input.resistance", "50 kohm")];
        holds(&[&usual, more].concat(), code)
    };
    let five = ("crank_sensor.pull_rail", "5");
    for (more, code) in [
        (("trigger_input.bears", "4.5 V"), "trigger.rail-too-high"),
        (("crank_sensor.ground_offset", "1 V"), "trigger.low-too-high"),
        (("crank_sensor.sink", "0.5 mA"), "trigger.over-sink"),
        (("trigger_input.high", "6 V"), "trigger.high-too-low"),
    ] {
        assert_eq!(with(&[five, more], code).1, Holds::Always, "{code}");
    }
    let battery = [("crank_sensor.pull_rail", "battery"), ("trigger_input.bears", "13.5 V")];
    let (severity, at) = with(&battery, "trigger.rail-too-high");
    assert_eq!(severity, Severity::Danger);
    let Holds::AtSome(corners) = at else { panic!("{at:?}") };
    assert!(!corners.is_empty() && corners.iter().all(|it| it.contains("charging")), "{corners:?}");
}

/// By hand: with a dip of 30 % typed 2 V at 200 rpm are 1.4 V, and with a tolerance of the sensor some may give less: what a usual one
/// still gives is a doubt, what it does not is a fault.
#[test]
fn a_weak_sensor_is_a_fault_where_even_a_usual_one_is_too_weak() {
    let at = |counts_from: &'static str| {
        let typed = [
            ("cranking.dip", "30 %"),
            ("crank_sensor.amplitude", "2 V ± 20 %"),
            ("trigger_input.counts_from", counts_from),
        ];
        let report = report(&plan(&typed));
        let found = report.findings.iter().find(|it| it.message.code == "trigger.weak");
        found.map(|it| it.severity)
    };
    assert_eq!(at("1 V"), None);
    assert_eq!(at("1.25 V"), Some(Severity::Doubt));
    assert_eq!(at("1.6 V"), Some(Severity::Fault));
}

/// By hand: 60 positions at 7000 a minute are 7 kHz. A wheel with one tooth is its own mark.
#[test]
fn the_limit_itself_is_borne_and_one_tooth_tells_where_the_engine_is() {
    assert_eq!(found(&[("trigger_input.highest_frequency", "7 kHz")]), [""; 0]);
    assert_eq!(found(&[("trigger_input.highest_frequency", "6.99 kHz")]), ["trigger.too-fast"]);
    let teeth = |n: &'static str| found(&[("wheels.crank_teeth", n), ("wheels.missing", "0")]);
    assert!(!teeth("1").contains(&"trigger.no-position"), "{:?}", teeth("1"));
    assert!(teeth("2").contains(&"trigger.no-position"), "{:?}", teeth("2"));
}
