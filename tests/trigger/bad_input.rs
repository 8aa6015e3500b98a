//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    fields,
    plan::Plan,
    report::{Answer, Report, Tone, report},
};
use quietpin_tests::typed::{self, check_refused, planned};

const RECORDS: [&str; 4] = ["trigger", "crank_sensor", "cam_sensor", "trigger_input"];

/// A plan whose sensors suit, with fields of it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("engine.highest_speed", "7000 rpm"),
        ("cranking.speed", "200 rpm"),
        ("crank_sensor.kind", "reluctance"),
        ("crank_sensor.amplitude", "2 V"),
        ("crank_sensor.amplitude_as", "peak"),
        ("crank_sensor.amplitude_speed", "200 rpm"),
        ("crank_sensor.polarity", "right"),
        ("cam_sensor.kind", "open-collector"),
        ("cam_sensor.pull_rail", "5"),
        ("trigger.cam_teeth", "1"),
        ("trigger_input.highest_frequency", "10 kHz"),
        ("trigger_input.arming", "0.5 V"),
        ("trigger_input.bears", "100 V"),
    ];
    planned(&usual, typed)
}

fn answers(report: &Report) -> Vec<&Answer> {
    typed::answers(report, "trigger")
}

#[track_caller]
fn check_answer(typed: &[(&str, &str)], subject: &str, expected: (Tone, &str)) {
    let report = report(&plan(typed));
    let all = answers(&report);
    let found = all.iter().find(|it| it.subject == subject).expect("the answer");
    assert_eq!((found.verdict.tone, found.verdict.message.code), expected, "{typed:?}");
}

/// The finding at the field; every answer is still given.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    let subjects: Vec<_> = answers(&report).iter().map(|it| it.subject.as_str()).collect();
    assert_eq!(subjects, ["trigger", "crank_sensor", "cam_sensor", "trigger.offset"], "{path}");
}

#[test]
fn what_is_none_is_named_at_its_field_and_the_rest_is_answered() {
    for (field, text, finding) in [
        ("kind", "a magnet", "field.unknown-choice"),
        ("amplitude", "0 V", "field.too-small"),
        ("amplitude_as", "mean", "field.unknown-choice"),
        ("amplitude_speed", "200 V", "field.wrong-unit"),
        ("resistance", "5 ohm", "field.too-small"),
        ("polarity", "both", "field.unknown-choice"),
        ("pull_rail", "12", "field.unknown-choice"),
        ("pull_up", "0 ohm", "field.too-small"),
        ("saturation", "5 V", "field.too-large"),
        ("sink", "many", "field.no-number"),
        ("length", "-1 m", "field.too-small"),
        ("contact", "-1 ohm", "field.too-small"),
        ("ground_offset", "12 V", "field.too-large"),
        ("shield", "half", "field.unknown-choice"),
        ("connector", "perhaps", "field.unknown-choice"),
    ] {
        for record in ["crank_sensor", "cam_sensor"] {
            check(&[record, ".", field].concat(), text, finding);
        }
    }
    check("trigger_input.highest_frequency", "0 Hz", "field.too-small");
    check("trigger_input.lowest_frequency", "-1 Hz", "field.too-small");
    check("trigger_input.tick", "1 V", "field.wrong-unit");
    check("trigger_input.arming", "0 V", "field.too-small");
    check("trigger_input.bears", "0 V", "field.too-small");
    check("trigger_input.low", "letters", "field.no-number");
    check("trigger_input.high", "99 V", "field.too-large");
    check("trigger_input.resistance", "1 ohm", "field.too-small");
    check("trigger_input.capacitance", "1 F", "field.too-large");
    check("trigger.cam_teeth", "0", "field.too-small");
    check("trigger.offset", "800 deg", "field.too-large");
    check("trigger.tooth", "one", "field.not-whole");
    check("trigger.advance", "91 deg", "field.too-large");
    check("trigger.seen_low", "10 V", "field.wrong-unit");
    check("trigger.speed_low", "0 rpm", "field.too-small");
    check("trigger.seen_high", "200 deg", "field.too-large");
    check("trigger.speed_high", "1 Hz", "field.wrong-unit");
}

#[test]
fn a_part_is_answered_where_a_part_is_known() {
    check_answer(&[], "trigger", (Tone::Good, "trigger.fast-enough"));
    check_answer(&[], "crank_sensor", (Tone::Good, "trigger.strong"));
    check_answer(&[], "cam_sensor", (Tone::Good, "trigger.levels-suit"));
    check_answer(&[], "trigger.offset", (Tone::Open, "trigger.offset-open"));
    let blank = ("engine.highest_speed", "");
    check_answer(&[blank], "trigger", (Tone::Open, "trigger.no-speed"));
    check_answer(&[blank], "crank_sensor", (Tone::Open, "trigger.no-speed"));
    check_answer(
        &[("crank_sensor.amplitude", "")],
        "crank_sensor",
        (Tone::Open, "trigger.measure"),
    );
    check_answer(&[("trigger_input.arming", "")], "crank_sensor", (Tone::Open, "trigger.peak-is"));
    check_answer(&[("trigger_input.bears", "")], "crank_sensor", (Tone::Open, "trigger.top-is"));
    check_answer(&[("cranking.speed", "")], "crank_sensor", (Tone::Open, "trigger.no-cranking"));
    check_answer(
        &[("cam_sensor.pull_rail", "")],
        "cam_sensor",
        (Tone::Open, "trigger.rail-wanted"),
    );
    check_answer(&[("cam_sensor.kind", "")], "cam_sensor", (Tone::Open, "trigger.no-kind"));
    check_answer(&[("trigger.tooth", "15")], "trigger.offset", (Tone::Open, "trigger.enter-first"));
    let stands = [("trigger.tooth", "15"), ("trigger.offset", "84 deg")];
    check_answer(&stands, "trigger.offset", (Tone::Doubtful, "trigger.near"));
    let one = [
        ("trigger.advance", "10 deg"),
        ("trigger.seen_low", "12 deg"),
        ("trigger.speed_low", "1000 rpm"),
    ];
    check_answer(&one, "trigger.offset", (Tone::Doubtful, "trigger.out-at"));
    let blank = report(&Plan::default());
    assert_eq!(answers(&blank).len(), 1, "a blank plan is asked for few things");
    assert_eq!(answers(&blank)[0].verdict.message.code, "trigger.blank");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    /// Whatever is typed, each field stands somehow and the question is answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(A|ohm|nF|V|ms|Hz|m|rpm|deg|)",
                "\\PC{0,12}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
            ],
            48,
        ),
        kinds in prop::array::uniform2(prop_oneof![Just("reluctance"), Just("open-collector"), Just("push-pull")]),
    ) {
        let fields: Vec<_> = RECORDS.iter().flat_map(|it| fields::of(it)).map(|field| field.path).collect();
        let mut typed: Vec<_> = fields.iter().copied().zip(texts.iter().map(String::as_str)).collect();
        typed.extend(["crank_sensor.kind", "cam_sensor.kind"].into_iter().zip(kinds));
        let report = report(&plan(&typed));
        for path in fields {
            prop_assert!(report.fields.contains_key(path), "{path} has no state");
        }
        for answer in answers(&report) {
            for figure in &answer.figures {
                let number = figure.value.number;
                prop_assert!(number.is_none_or(f64::is_finite), "{}: {number:?}", figure.label.text);
            }
        }
    }
}
