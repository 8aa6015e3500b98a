//! Which output takes which load? Held against cases worked by hand, bad input and laws.
//!
//! Source: P. Hall, On representatives of subsets, 1935: as many outputs as loads are not enough where some of the loads share too few;
//! Ohm's law for what each draws.
#![expect(clippy::indexing_slicing, reason = "a test fails by them")]

mod bad_input;
mod laws;

use quietpin_core::{
    message::Message,
    plan::Plan,
    report::{Answer, Report, Tone, report},
};
use quietpin_tests::typed;

/// Two low-side outputs that carry 3 A, one high-side, and two valves and a lamp with no output yet; the fields over it as typed.
pub(crate) fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("outputs.0.name", "D1 to D2"),
        ("outputs.0.stage", "open-drain"),
        ("outputs.0.current_limit", "3 A"),
        ("outputs.1.name", "S1"),
        ("outputs.1.stage", "high-side"),
        ("outputs.1.current_limit", "3 A"),
        ("loads.0.name", "idle valve"),
        ("loads.0.kind", "solenoid"),
        ("loads.0.far_end", "ignition"),
        ("loads.0.resistance", "20 ohm"),
        ("loads.0.suppression", "diode"),
        ("loads.1.name", "purge valve"),
        ("loads.1.kind", "solenoid"),
        ("loads.1.far_end", "ignition"),
        ("loads.1.resistance", "26 ohm"),
        ("loads.1.suppression", "diode"),
        ("loads.2.name", "lamp"),
        ("loads.2.kind", "led"),
        ("loads.2.far_end", "ground"),
        ("loads.2.resistance", "1 kohm"),
    ];
    typed::planned(&usual, typed)
}

pub(crate) fn answer(report: &Report) -> Answer {
    let all = typed::answers(report, "pins");
    assert_eq!(all.len(), 1, "one answer");
    all[0].clone()
}

/// What is proposed: the loads' outputs in its edits.
pub(crate) fn proposed(report: &Report) -> Vec<(String, String)> {
    let to_do = answer(report).to_do;
    let is_it = |it: &&Message| it.code == "pins.do-place";
    let edits = to_do.iter().find(is_it).map(|it| it.edits.clone()).unwrap_or_default();
    edits.into_iter().map(|it| (it.path, it.text)).collect()
}

fn pairs(of: &[(&str, &str)]) -> Vec<(String, String)> {
    of.iter().map(|(path, text)| ((*path).to_owned(), (*text).to_owned())).collect()
}

/// By hand: the lamp to ground needs the high-side output; the valves take one low-side output each.
#[test]
fn each_load_gets_an_output_that_suits() {
    let report = report(&plan(&[]));
    assert_eq!(
        proposed(&report),
        pairs(&[("loads.0.output", "D1"), ("loads.1.output", "D2"), ("loads.2.output", "S1")])
    );
    assert_eq!(answer(&report).verdict.tone, Tone::Open);
    let done =
        plan(&[("loads.0.output", "D1"), ("loads.1.output", "D2"), ("loads.2.output", "S1")]);
    let answer = answer(&quietpin_core::report::report(&done));
    assert_eq!(answer.verdict.tone, Tone::Good, "{answer:?}");
    assert!(answer.to_do.is_empty(), "{:?}", answer.to_do);
}

/// By hand: one wire that stays is one that need not be moved; the other goes where it is free.
#[test]
fn what_is_planned_is_moved_only_where_it_must_be() {
    let report = report(&plan(&[("loads.1.output", "D1")]));
    assert_eq!(proposed(&report), pairs(&[("loads.0.output", "D2"), ("loads.2.output", "S1")]));
    // 14.8 V / 2.6 Ω are 5.7 A: only the half-bridge carries that, and the lamp makes room for it
    let heavy = plan(&[
        ("outputs.1.current_limit", "8 A"),
        ("outputs.2.name", "S2"),
        ("outputs.2.stage", "high-side"),
        ("outputs.2.current_limit", "1 A"),
        ("loads.2.output", "S1"),
        ("loads.3.name", "heater"),
        ("loads.3.kind", "resistor"),
        ("loads.3.far_end", "ground"),
        ("loads.3.resistance", "2.6 ohm"),
        ("loads.0.output", "D1"),
        ("loads.1.output", "D2"),
    ]);
    let report = quietpin_core::report::report(&heavy);
    assert_eq!(proposed(&report), pairs(&[("loads.2.output", "S2"), ("loads.3.output", "S1")]));
}

/// By hand: of two that serve, the one that can do less is taken, and the other stays free.
#[test]
fn what_can_do_more_stays_free() {
    let more = [
        ("outputs.2.name", "H1"),
        ("outputs.2.stage", "half-bridge"),
        ("outputs.2.on_level", "battery"),
        ("outputs.2.current_limit", "8 A"),
    ];
    let report = report(&plan(&more));
    assert!(proposed(&report).contains(&("loads.2.output".to_owned(), "S1".to_owned())));
    let why = answer(&report).why.expect("what is free");
    assert!(why.text.contains("H1"), "{}", why.text);
}

/// Hall's theorem, by hand: three valves share two outputs that suit any of them; the lamp is none of the set.
#[test]
fn those_that_compete_are_named_and_no_others() {
    let third = [
        ("loads.3.name", "water valve"),
        ("loads.3.kind", "solenoid"),
        ("loads.3.far_end", "ignition"),
        ("loads.3.resistance", "26 ohm"),
        ("loads.3.suppression", "diode"),
    ];
    let report = report(&plan(&third));
    let found: Vec<_> =
        report.findings.iter().filter(|it| it.message.code == "pins.too-few").collect();
    assert_eq!(found.len(), 1);
    let text = &found[0].message.text;
    for name in ["dle valve", "purge valve", "water valve", "D1, D2"] {
        assert!(text.contains(name), "{text}");
    }
    assert!(!text.contains("lamp"), "{text}");
    let harmless: Vec<_> = third.into_iter().chain([("loads.3.unasked", "harmless")]).collect();
    let report = quietpin_core::report::report(&plan(&harmless));
    let cures = |report: &Report| {
        let all = report.findings.iter().filter(|it| it.message.code == "pins.too-few");
        all.flat_map(|it| it.remedies.clone()).collect::<Vec<_>>()
    };
    let by_hand = cures(&report).into_iter().find(|it| it.code == "pins.do-switch");
    let by_hand = by_hand.expect("a switch would do");
    let mut done = plan(&harmless);
    for edit in &by_hand.edits {
        assert!(done.set(&edit.path, &edit.text), "{}", edit.path);
    }
    let after = quietpin_core::report::report(&done);
    assert!(cures(&after).is_empty(), "it needs no output any more");
    assert_eq!(proposed(&after).len(), 3);
}

/// By hand: a motor between two half-bridges takes a pair of them.
#[test]
fn a_motor_between_two_takes_a_pair() {
    let bridges = |name: &'static str| {
        plan(&[
            ("outputs.2.name", name),
            ("outputs.2.stage", "half-bridge"),
            ("outputs.2.on_level", "battery"),
            ("outputs.2.current_limit", "8 A"),
            ("loads.3.name", "flap"),
            ("loads.3.kind", "motor"),
            ("loads.3.far_end", "output"),
            ("loads.3.output", "H1"),
            ("loads.3.far_output", "H2"),
            ("loads.3.resistance", "8 ohm"),
        ])
    };
    let report = report(&bridges("H1 to H2"));
    assert!(proposed(&report).iter().all(|(path, _)| !path.starts_with("loads.3")), "it is there");
    assert_eq!(proposed(&report).len(), 3);
}

/// By hand: 14.8 V / 10 Ω twice are 2.96 A: more than 2 A of one group. With one timer for both, two frequencies are one too many.
#[test]
fn what_shares_a_limit_stays_within_it() {
    let group = |limit: &'static str, more: &[(&str, &str)]| {
        let usual = [
            ("outputs.0.group", "A"),
            ("outputs.0.group_limit", limit),
            ("outputs.2.name", "D9 to D10"),
            ("outputs.2.stage", "open-drain"),
            ("outputs.2.current_limit", "5 A"),
            ("loads.0.resistance", "10 ohm"),
            ("loads.1.resistance", "10 ohm"),
        ];
        plan(&[&usual[..], more].concat())
    };
    let outputs = |plan: &Plan| {
        let report = report(plan);
        let mut outputs: Vec<_> = proposed(&report).into_iter().map(|(_, text)| text).collect();
        // which of the two that are alike goes where is all one
        outputs.sort();
        outputs
    };
    assert_eq!(outputs(&group("3 A", &[])), ["D1", "D2", "S1"]);
    assert_eq!(outputs(&group("2 A", &[])), ["D1", "D9", "S1"]);
    let paces = [
        ("outputs.0.group_pulse", "one"),
        ("loads.0.frequency", "100 Hz"),
        ("loads.1.frequency", "200 Hz"),
    ];
    assert_eq!(outputs(&group("5 A", &paces)), ["D1", "D9", "S1"]);
    assert_eq!(outputs(&group("5 A", &paces[1..])), ["D1", "D2", "S1"]);
}

/// By hand: the potentiometer's two tracks take the two inputs that nothing pulls, the thermistor the one that is pulled, the switch the
/// digital one, though the analogue one would do.
#[test]
fn each_sensor_gets_an_input_that_reads_it() {
    let typed = [
        ("inputs.0.name", "A1 to A2"),
        ("inputs.0.takes", "analogue"),
        ("inputs.0.pull", "none"),
        ("inputs.1.name", "T1"),
        ("inputs.1.takes", "analogue"),
        ("inputs.1.pull", "up"),
        ("inputs.2.name", "F1"),
        ("inputs.2.takes", "digital"),
        ("inputs.2.pull", "up"),
        ("sensors.0.name", "clutch"),
        ("sensors.0.kind", "switch"),
        ("sensors.0.switched_to", "ground"),
        ("sensors.1.name", "coolant"),
        ("sensors.1.kind", "ntc"),
        ("sensors.2.name", "throttle"),
        ("sensors.2.kind", "pot"),
        ("sensors.2.second", "mirrored"),
    ];
    let plan = typed::planned(&typed, &[]);
    let report = report(&plan);
    assert_eq!(
        proposed(&report),
        pairs(&[
            ("sensors.0.input", "F1"),
            ("sensors.1.input", "T1"),
            ("sensors.2.input", "A1"),
            ("sensors.2.second_input", "A2"),
        ])
    );
    let mut done = plan;
    for (path, text) in proposed(&report) {
        assert!(done.set(&path, &text), "{path}");
    }
    let after = quietpin_core::report::report(&done);
    assert_eq!(answer(&after).verdict.tone, Tone::Good);
}
