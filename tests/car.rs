//! One car: a fact that is told once changes every question that rests on it, and no other.
#![expect(clippy::expect_used, reason = "a test fails by it")]

use std::collections::BTreeSet;

use quietpin_core::{
    plan::Plan,
    report::{Report, report},
};
use quietpin_tests::typed::put;

/// A straight-six with coils, a relay for them on an output, sensors, and readings of a timing light.
fn six() -> Plan {
    let mut plan = Plan::default();
    for (path, text) in [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("engine.highest_speed", "7000 rpm"),
        ("channels.ignition_mode", "sequential"),
        ("channels.injection_mode", "each-once"),
        ("injectors.resistance", "12 ohm"),
        ("injectors.output_limit", "3 A"),
        ("injectors.count", "6"),
        ("cranking.speed", "200 rpm"),
        ("wheels.crank_teeth", "60"),
        ("wheels.missing", "2"),
        ("coils.resistance", "0.5 ohm"),
        ("coils.inductance", "3 mH"),
        ("coils.current", "7 A"),
        ("outputs.0.name", "A1"),
        ("outputs.0.stage", "open-drain"),
        ("relays.0.name", "coil relay"),
        ("relays.0.purpose", "coils"),
        ("relays.0.relay_on_at", "100 rpm"),
        ("relays.0.output", "A1"),
        ("relays.0.far_end", "ignition"),
        ("relays.0.pull_in", "7 V"),
        ("trigger.tooth", "15"),
        ("trigger.seen_low", "12 deg"),
        ("trigger.speed_low", "1000 rpm"),
        ("light.seen.0", "12"),
        ("light.seen.5", "12"),
        ("controller.locked_advance", "10"),
        ("controller.offset", "84"),
    ] {
        put(&mut plan, path, text);
    }
    plan
}

/// What is said of a question: its answers, and the findings that begin with its name.
fn said(report: &Report, question: &str) -> String {
    let section = report.sections.iter().find(|it| it.id == question).expect("the question");
    let of = |code: &str| code.split('.').next() == Some(question);
    let findings: Vec<_> = report.findings.iter().filter(|it| of(it.message.code)).collect();
    serde_json::to_string(&(&section.answers, findings)).expect("data")
}

/// The questions that are answered otherwise once a text is typed.
fn changed(path: &str, text: &str) -> BTreeSet<&'static str> {
    changed_in(&six(), path, text)
}

/// The same of another car.
fn changed_in(plan: &Plan, path: &str, text: &str) -> BTreeSet<&'static str> {
    let (before, mut plan) = (report(plan), plan.clone());
    put(&mut plan, path, text);
    let after = report(&plan);
    let ids = after.sections.iter().map(|it| it.id);
    ids.filter(|id| said(&before, id) != said(&after, id)).collect()
}

#[track_caller]
fn check(path: &str, text: &str, questions: &[&'static str]) {
    assert_eq!(changed(path, text), questions.iter().copied().collect(), "{path} = {text}");
}

#[test]
fn what_a_relay_pulls_in_at_is_told_to_the_start_and_to_its_output() {
    check("relays.0.pull_in", "5 V", &["cranking", "outputs"]);
}

/// The same with a fuse and a wire behind the coils' contact, and a second relay.
fn fed() -> Plan {
    let mut plan = six();
    for (path, text) in [
        ("relays.0.fuse", "20 A"),
        ("relays.0.rating", "30 A"),
        ("relays.0.lead_size", "2.5 mm2"),
        ("relays.1.name", "fan relay"),
        ("relays.1.purpose", "fan"),
        ("relays.1.draws", "8 A"),
        ("relays.1.rating", "30 A"),
        ("relays.1.fuse", "15 A"),
        ("relays.1.lead_size", "2.5 mm2"),
        ("relays.1.lead_length", "3 m"),
        ("battery.alternator", "100 A"),
    ] {
        put(&mut plan, path, text);
    }
    plan
}

#[track_caller]
fn check_fed(path: &str, text: &str, questions: &[&'static str]) {
    let found = changed_in(&fed(), path, text);
    assert_eq!(found, questions.iter().copied().collect(), "{path} = {text}");
}

#[test]
fn the_contact_of_the_coils_relay_is_told_to_the_coils_and_to_the_feeds() {
    check("relays.0.rating", "5 A", &["coils"]);
    check_fed("relays.0.rating", "5 A", &["coils", "feeds"]);
    check_fed("relays.0.fuse", "40 A", &["coils", "feeds"]);
    check_fed("relays.0.lead_size", "0.5 mm2", &["coils", "feeds"]);
    // what the coils draw is counted with what the alternator must give
    check_fed("coils.resistance", "0.6 ohm", &["coils", "cranking", "feeds", "firing"]);
}

#[test]
fn what_is_fed_and_through_what_is_told_to_the_feeds() {
    for (path, text) in [
        ("relays.1.draws", "10 A"),
        ("relays.1.inrush", "60 A"),
        ("relays.1.fuse", "40 A"),
        ("relays.1.lead_size", "1 mm2"),
        ("relays.1.lead_length", "9 m"),
        ("relays.1.behind", "coil relay"),
        ("switched_feeds.fuse", "40 A"),
        ("battery.alternator", "10 A"),
        ("battery.alternator_idle", "10 A"),
    ] {
        check_fed(path, text, &["feeds"]);
    }
    // a fuse where there was none has a wire behind it
    check_fed("switched_feeds.battery_fuse", "40 A", &["feeds", "wires"]);
    check_fed("injectors.fuse", "40 A", &["feeds", "wires"]);
}

#[test]
fn the_way_of_a_wire_is_told_to_the_wires() {
    for (path, text) in [
        ("harness.length", "3 m"),
        ("harness.coils.0", "1 m"),
        ("relays.0.length", "1 m"),
        ("relays.0.other_length", "1 m"),
    ] {
        check(path, text, &["wires"]);
    }
}

/// What comes back is told to the feeds alone.
#[test]
fn the_grounds_are_told_to_the_feeds() {
    let mut plan = fed();
    for (path, text) in [
        ("battery.starter", "200 A"),
        ("grounds.minus_to", "body"),
        ("grounds.strap", "fitted"),
        ("grounds.strap_size", "16 mm2"),
        ("grounds.strap_length", "0.4 m"),
        ("grounds.wires", "2"),
        ("grounds.wire_size", "1 mm2"),
        ("grounds.wire_length", "1 m"),
        ("grounds.sensors", "bolt"),
        ("relays.1.ground", "sensors"),
    ] {
        put(&mut plan, path, text);
    }
    for (path, text) in [
        ("grounds.minus_to", "engine"),
        ("grounds.strap", "none"),
        ("grounds.strap_size", "6 mm2"),
        ("grounds.strap_length", "1 m"),
        ("grounds.wires", "1"),
        ("grounds.wire_size", "2 mm2"),
        ("grounds.wire_length", "3 m"),
        ("grounds.sensors", "pin"),
        ("grounds.bolt", "5 mohm"),
        ("relays.1.ground", "own"),
        ("battery.kill_switch", "battery"),
        ("controller.highest_supply", "18 V"),
        ("controller.reverse", "fails"),
    ] {
        let found = changed_in(&plan, path, text);
        // each of the controller's is a wire, and so is the strap
        let is_wire = ["grounds.wires", "grounds.strap"].contains(&path);
        let expected: &[_] = if is_wire { &["feeds", "wires"] } else { &["feeds"] };
        assert_eq!(found, expected.iter().copied().collect(), "{path} = {text}");
    }
}

/// The loom is the same for all that lies in it.
#[test]
fn how_the_wires_are_laid_is_told_to_the_feeds() {
    check_fed("wiring.insulation", "a", &["feeds"]);
    check_fed("wiring.ambient", "80 °C", &["feeds"]);
    // behind a fuse that is too large for its wire now
    check_fed("wiring.bundled", "6", &["coils", "feeds"]);
}

#[test]
fn the_locked_advance_is_told_to_both_readings_of_the_light() {
    check("controller.locked_advance", "15", &["firing", "trigger"]);
}

/// The way from the gap to top dead centre is what is entered as the offset, until it is measured.
#[test]
fn the_offset_is_told_to_the_trigger_and_to_the_start() {
    check("controller.offset", "60", &["cranking", "trigger"]);
    let mut measured = six();
    put(&mut measured, "wheels.gap_angle", "84 deg");
    let start = said(&report(&measured), "cranking");
    put(&mut measured, "controller.offset", "60");
    assert_eq!(said(&report(&measured), "cranking"), start, "what was measured stands");
}

#[test]
fn the_dwell_is_told_to_the_coils_to_the_cycle_and_to_the_start() {
    check("controller.dwell", "9 ms", &["coils", "cranking", "firing"]);
    check("controller.cranking_dwell", "19 ms", &["coils", "cranking"]);
}

#[test]
fn the_wheel_is_told_to_the_trigger_to_the_start_and_to_the_light() {
    assert!(changed("wheels.crank_teeth", "12").is_superset(&["cranking", "trigger"].into()));
}

#[test]
fn a_cold_and_a_weak_start_are_told_to_the_start_and_to_the_cranks_sensor() {
    check("cranking.cold_speed", "60 rpm", &["cranking", "trigger"]);
    check("cranking.weak_speed", "60 rpm", &["cranking", "trigger"]);
}

#[test]
fn the_battery_is_told_to_all() {
    let cold = changed("battery.cold_cranking", "6 V");
    assert!(cold.is_superset(&["coils", "cranking", "injectors", "outputs"].into()), "{cold:?}");
}

/// What flows with the key off is solved from the outputs, and told to nobody else.
#[test]
fn what_draws_with_the_key_off_is_told_to_the_standing_car() {
    check("battery.capacity", "60 Ah", &["standing"]);
    check("battery.other_draw", "30 mA", &["standing"]);
    check("controller.key_off_draw", "5 mA", &["standing"]);
    check("outputs.0.pull_up", "1 kohm", &["outputs", "pins", "standing"]);
    // behind a feed that the key cuts the controller draws nothing
    assert!(changed("controller.feed", "ignition").contains("standing"));
}

/// The bus is a circuit of its own: what is typed of it is told to nobody else.
#[test]
fn what_is_said_of_the_bus_is_told_to_the_bus_alone() {
    check("bus.bit_rate", "500 kbit/s", &["bus"]);
    check("bus.reading", "40 ohm", &["bus"]);
    check("bus.high", "2.6 V", &["bus"]);
    check("frames.0.period", "10 ms", &["bus"]);
    assert_eq!(changed("frames.0.name", "engine speed"), ["bus"].into(), "a frame that is begun");
    // and of the rest of the car it is told nothing
    assert!(!changed("battery.resting", "11 V").contains("bus"));
    assert!(!changed("temperatures.hot", "60").contains("bus"));
}

/// Within it, each answer rests on its own facts, and on the bit rate.
#[test]
fn the_bit_rate_is_told_to_the_wire_and_to_the_load() {
    let mut plan = six();
    for (path, text) in [
        ("bus.bit_rate", "500 kbit/s"),
        ("bus.length", "3 m"),
        ("bus.terminators", "2"),
        ("frames.0.period", "10 ms"),
    ] {
        put(&mut plan, path, text);
    }
    let of = |path: &str, text: &str| {
        let (before, mut plan) = (report(&plan), plan.clone());
        put(&mut plan, path, text);
        let after = report(&plan);
        let answers = |report: &Report| {
            let section = report.sections.iter().find(|it| it.id == "bus").expect("the bus");
            section.answers.clone()
        };
        let (before, after) = (answers(&before), answers(&after));
        let pairs = before.iter().zip(&after).filter(|(one, other)| one != other);
        pairs.map(|(one, _)| one.subject.clone()).collect::<Vec<_>>()
    };
    assert_eq!(of("bus.bit_rate", "250 kbit/s"), ["bus.wire", "bus.load"]);
    assert_eq!(of("bus.length", "30 m"), ["bus.termination", "bus.wire"]);
    assert_eq!(of("bus.terminators", "3"), ["bus.termination"]);
    assert_eq!(of("bus.branch", "0.2 m"), [""; 0], "a short branch changes nothing");
    assert_eq!(of("bus.branch", "2 m"), ["bus.wire"]);
    assert_eq!(of("frames.0.bytes", "2"), ["bus.load"]);
}

/// A hot engine cranks at a voltage of its own: what is told of the cold one stays.
#[test]
fn a_battery_that_is_weaker_hot_is_weaker_hot_alone() {
    let mut plan = six();
    put(&mut plan, "battery.hot_cranking", "6.5 V");
    let text = said(&report(&plan), "injectors");
    assert!(text.contains("6.5"), "the hot corner has its voltage: {text}");
    assert!(text.contains("8 V") || text.contains("8\u{a0}V"), "the cold corner keeps its own");
}

/// Seen late by twice the offset, its sign is the likeliest cause: only who knows the offset can say so.
#[test]
fn the_offset_is_told_to_the_timing_light() {
    let mut plan = six();
    for (path, text) in [
        ("controller.offset", "20"),
        ("light.seen.0", "-30"),
        ("light.seen.5", "-30"),
        ("light.stroke", "compression"),
    ] {
        put(&mut plan, path, text);
    }
    let with = said(&report(&plan), "firing");
    put(&mut plan, "controller.offset", "");
    assert_ne!(said(&report(&plan), "firing"), with, "the cause hangs on it");
}

/// How many injectors hang on one output follows from how they are fired.
#[test]
fn how_injectors_are_fired_is_told_to_their_outputs() {
    check("channels.injection_mode", "companions", &["firing", "injectors", "wires"]);
}

/// A sensor of the coolant with an old gauge on its wire, and one of the manifold.
fn sensed() -> Plan {
    let mut plan = six();
    for (path, text) in [
        ("inputs.0.name", "T1, T2"),
        ("inputs.0.takes", "analogue"),
        ("inputs.0.pull_up", "2.49k"),
        ("sensor_supplies.0.name", "5V"),
        ("sensors.0.name", "coolant"),
        ("sensors.0.purpose", "coolant"),
        ("sensors.0.kind", "ntc"),
        ("sensors.0.r25", "2k"),
        ("sensors.0.beta", "3500"),
        ("sensors.0.input", "T1"),
        ("sensors.0.also", "gauge"),
        ("sensors.1.name", "manifold"),
        ("sensors.1.purpose", "manifold"),
        ("sensors.1.kind", "ratiometric"),
        ("sensors.1.range_low", "20 kPa"),
        ("sensors.1.range_high", "250 kPa"),
        ("sensors.1.supply", "5V"),
        ("grounds.sensors", "pin"),
    ] {
        put(&mut plan, path, text);
    }
    plan
}

#[test]
fn what_is_told_of_sensors_and_of_today_is_told_to_the_sensors() {
    for (path, text) in [
        ("today.temperature", "5 °C"),
        ("today.altitude", "2000 m"),
        ("today.air", "80 kPa"),
        ("inputs.0.pull_up", "1k"),
        ("sensor_supplies.0.volts", "4.5 V"),
        ("sensors.1.tolerance", "10 %"),
        ("temperatures.cold", "-40 °C"),
        ("grounds.sensors", "engine"),
    ] {
        let found = changed_in(&sensed(), path, text);
        assert!(found.contains("sensors"), "{path} = {text}: {found:?}");
    }
    let charging = changed_in(&sensed(), "battery.charging", "16 V");
    assert!(charging.contains("sensors"), "an old gauge is on the battery: {charging:?}");
    // nothing else rests on them
    for (path, text) in
        [("today.temperature", "5 °C"), ("sensors.0.beta", "4000"), ("inputs.0.pull_up", "1k")]
    {
        assert_eq!(changed_in(&sensed(), path, text), ["sensors"].into(), "{path} = {text}");
    }
}
