//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    read::State,
    report::{Tone, report},
    schema::{Part, Place},
};
use quietpin_tests::typed::check_refused;

use super::{answer, plan};

/// The finding at the field; every other sensor is still answered.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    let others: Vec<_> = (0..4).map(|at| Part::Sensors.record(at)).collect();
    for other in others.iter().filter(|it| !path.starts_with(it.as_str())) {
        assert_ne!(answer(&report, other).verdict.tone, Tone::Open, "{path}: {other}");
    }
}

#[test]
fn what_is_none_of_a_sensor_is_named_and_the_others_are_answered() {
    for (field, text, finding) in [
        ("sensors.0.purpose", "warmth", "field.unknown-choice"),
        ("sensors.0.kind", "a bulb", "field.unknown-choice"),
        ("sensors.0.input", "Z9", "sensors.no-such-input"),
        ("sensors.0.points", "20 2450, hot 290", "sensors.pairs-unread"),
        ("sensors.0.points", "20 2450", "sensors.not-a-curve"),
        ("sensors.0.points", "2450, 290", "sensors.not-a-curve"),
        ("sensors.0.points", "20 2450, 60 3000, 80 290, 100 160", "sensors.not-a-curve"),
        ("sensors.0.points", "20 2450, 20 2400, 80 290, 100 160", "sensors.not-a-curve"),
        ("sensors.0.points", "20 2450, 80 -290", "sensors.pairs-unread"),
        ("sensors.0.points", "20 2450, 80 2.9 V", "sensors.pairs-unread"),
        ("sensors.0.points", "20 1.500k, 80 290", "sensors.pairs-unread"),
        ("sensors.0.r25", "2 V", "field.wrong-unit"),
        ("sensors.0.r25", "0 ohm", "field.too-small"),
        ("sensors.0.beta", "10", "field.too-small"),
        ("sensors.0.beta", "3435 K", "field.not-whole"),
        ("sensors.0.steinhart", "1 2 3", "sensors.no-series"),
        ("sensors.0.steinhart", "1e-3 letters 1e-7", "sensors.no-series"),
        ("sensors.0.tolerance", "80 %", "field.too-large"),
        ("sensors.0.feed", "24v", "field.unknown-choice"),
        ("sensors.0.supply", "12V-Z", "sensors.no-such-supply"),
        ("sensors.0.draw", "10 V", "field.wrong-unit"),
        ("sensors.0.also", "two", "field.unknown-choice"),
        ("sensors.0.also_ohms", "0 ohm", "field.too-small"),
        ("sensors.0.entered", "heat", "field.unknown-choice"),
        ("sensors.0.table_of", "amps", "field.unknown-choice"),
        ("sensors.1.table", "20", "sensors.not-a-curve"),
        ("sensors.1.table", "20 0.5, 80 wet", "sensors.pairs-unread"),
        ("sensors.1.table", "20 0.5, 40 3, 80 2", "sensors.not-a-curve"),
        ("sensors.0.read_ohms", "warm", "sensors.pairs-unread"),
        ("sensors.0.read_volts", "-1", "sensors.pairs-unread"),
        ("sensors.1.range_low", "-900 kPa", "field.too-small"),
        ("sensors.1.range_high", "0 kPa", "field.too-small"),
        ("sensors.1.range_high", "20.5 kPa", "sensors.no-span"),
        ("sensors.1.low_volts", "9 V", "field.too-large"),
        ("sensors.1.low_volts", "4.5 V", "sensors.no-span"),
        ("sensors.1.high_volts", "-1 V", "field.too-small"),
        ("sensors.1.counted_from", "the ground", "field.unknown-choice"),
        ("sensors.2.stroke", "half", "sensors.no-stroke"),
        ("sensors.2.stroke", "-1 2 3", "sensors.no-stroke"),
        ("sensors.2.stroke", "1 2 300", "sensors.no-stroke"),
        ("sensors.2.second", "backwards", "field.unknown-choice"),
        ("sensors.2.second_input", "Z9", "sensors.no-such-input"),
        ("sensors.2.second_stroke", "1 2 letters", "sensors.no-stroke"),
        ("sensors.2.second_supply", "12V-Z", "sensors.no-such-supply"),
        ("sensors.3.switched_to", "the sky", "field.unknown-choice"),
        ("sensors.3.stands", "ajar", "field.unknown-choice"),
    ] {
        check(field, text, finding);
    }
}

#[test]
fn what_is_none_of_an_input_a_supply_or_today_is_named() {
    for (field, text, finding) in [
        ("inputs.0.takes", "water", "field.unknown-choice"),
        ("inputs.0.pull", "sideways", "field.unknown-choice"),
        ("inputs.2.pull_up", "1 ohm", "field.too-small"),
        ("inputs.2.pull_up", "5 V", "field.wrong-unit"),
        ("inputs.2.range", "0 V", "field.too-small"),
        ("inputs.2.bits", "2", "field.too-small"),
        ("inputs.2.bits", "ten", "field.not-whole"),
        ("sensor_supplies.0.volts", "0 V", "field.too-small"),
        ("sensor_supplies.0.rating", "0 mA", "field.too-small"),
        ("sensor_supplies.0.others", "-1 mA", "field.too-small"),
        ("today.temperature", "200 °C", "field.too-large"),
        ("today.temperature", "warm", "field.no-number"),
        ("today.altitude", "9000 m", "field.too-large"),
        ("today.air", "1 kPa", "field.too-small"),
    ] {
        check(field, text, finding);
    }
}

/// A field that this kind of sensor is not asked says nothing.
#[test]
fn what_another_kind_is_asked_is_kept_and_not_used() {
    let one = report(&plan(&[]));
    let other = report(&plan(&[("sensors.0.range_low", "20 kPa"), ("sensors.0.stroke", "1 2 3")]));
    assert_eq!(answer(&one, "sensors.0").verdict, answer(&other, "sensors.0").verdict);
}

/// Every field of the question.
fn places() -> Vec<Place> {
    [Part::Sensors, Part::Inputs, Part::SensorSupplies, Part::Today]
        .into_iter()
        .flat_map(Part::places)
        .collect()
}

proptest! {
    #[test]
    fn whatever_is_typed_is_answered(
        typed in prop::collection::vec(
            (0_usize..48, 0_usize..4, "[-0-9.,;: kVmΩa-z]{0,24}"), 1..8,
        ),
    ) {
        let (mut plan, places): (Plan, _) = (plan(&[]), places());
        for (field, record, text) in typed {
            let Some(place) = places.get(field) else { continue };
            plan.put(place.at(record), &text);
        }
        let report = report(&plan);
        for (path, field) in &report.fields {
            if field.state == State::Unreadable {
                let is_told = report.findings.iter().any(|it| it.subject == *path);
                prop_assert!(is_told, "{path} can't be used, and nothing says why");
            }
        }
    }
}
