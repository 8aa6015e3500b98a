//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    report::{Answer, Report, Tone, report},
    schema::{Part, Place},
};
use quietpin_tests::typed::{self, check_refused, lacking, planned};

/// A plan of a usual engine with fields of it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("engine.highest_speed", "7000 rpm"),
        ("channels.ignition_mode", "sequential"),
        ("coils.resistance", "0.5 ohm"),
        ("coils.inductance", "3 mH"),
        ("coils.current", "7 A"),
        ("relays.0.purpose", "coils"),
        ("relays.0.rating", "30 A"),
        ("relays.0.fuse", "15 A"),
        // it saves a coil that is held on
        ("relays.0.relay_on_at", "100 rpm"),
    ];
    planned(&usual, typed)
}

fn answers(report: &Report) -> Vec<&Answer> {
    typed::answers(report, "coils")
}

#[track_caller]
fn check_answers(typed: &[(&str, &str)], expected: &[(Tone, &str)]) {
    let report = report(&plan(typed));
    let found: Vec<_> =
        answers(&report).iter().map(|it| (it.verdict.tone, it.verdict.message.code)).collect();
    assert_eq!(found, expected, "{typed:?}");
}

/// The finding at the field; both answers are still given.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    let codes: Vec<_> = answers(&report).iter().map(|it| it.verdict.message.code).collect();
    // a usual coil, which is taken then, may have so much resistance that a weak battery does not charge it
    let is_taken = path == "coils.resistance";
    let first = if is_taken { "coils.weak-cranking" } else { "coils.in-time" };
    assert_eq!(codes[0], first, "{path}: {text:?}");
    assert_eq!(codes.len(), 2, "{path}: {text:?}");
}

#[test]
fn what_is_none_is_named_at_its_field_and_the_rest_is_answered() {
    check("coils.resistance", "0", "field.too-small");
    check("coils.resistance", "0.5 mH", "field.wrong-unit");
    check("coils.resistance", "letters", "field.no-number");
    check("coils.inductance", "3 MH", "field.wrong-capitals");
    check("coils.inductance", "3 H", "field.too-large");
    check("coils.inductance", "-3 mH", "field.too-small");
    check("coils.current", "0 A", "field.too-small");
    check("coils.current", "7 V", "field.wrong-unit");
    check("coils.limit", "0 A", "field.too-small");
    check("coils.drop", "14 V", "field.too-large");
    check("coils.spark", "1 s", "field.too-large");
    check("coils.duty_limit", "0 %", "field.too-small");
    check("coils.duty_limit", "110 %", "field.too-large");
    check("relays.0.alike", "two", "field.not-whole");
    check("relays.0.alike", "0", "field.too-small");
    check("relays.0.rating", "30 V", "field.wrong-unit");
    check("relays.0.fuse", "many", "field.no-number");
    check("relays.0.lead_length", "-4.5 m", "field.too-small");
    check("relays.0.lead_size", "6 mH", "field.wrong-unit");
}

#[test]
fn a_part_is_answered_where_a_part_is_known() {
    const OPEN: (Tone, &str) = (Tone::Open, "coils.feed-open");
    check_answers(&[], &[(Tone::Good, "coils.in-time"), (Tone::Good, "coils.feed-good")]);
    check_answers(&[("engine.highest_speed", "")], &[(Tone::Open, "coils.dwell-is"), OPEN]);
    check_answers(&[("channels.ignition_mode", "")], &[(Tone::Open, "coils.dwell-is"), OPEN]);
    check_answers(&[("engine.order", "1-1-3-6-2-4")], &[(Tone::Open, "coils.dwell-is"), OPEN]);
    check_answers(
        &[("relays.0.fuse", ""), ("relays.0.rating", "")],
        &[(Tone::Good, "coils.in-time"), (Tone::Open, "coils.feed-wanted")],
    );
    check_answers(
        &[("relays.0.rating", "")],
        &[(Tone::Good, "coils.in-time"), (Tone::Open, "coils.feed-unrated")],
    );
    check_answers(
        &[("relays.0.fuse", "3 A")],
        &[(Tone::Good, "coils.in-time"), (Tone::Bad, "coils.feed-fuse-small")],
    );
    check_answers(
        &[("relays.0.rating", "5 A")],
        &[(Tone::Good, "coils.in-time"), (Tone::Bad, "coils.feed-relay-small")],
    );
    check_answers(&[("coils.limit", "5 A")], &[(Tone::Bad, "coils.never"), OPEN]);
    check_answers(
        &[("coils.current", "14 A"), ("relays.0.fuse", "40 A"), ("relays.0.rating", "40 A")],
        &[(Tone::Doubtful, "coils.weak-cranking"), (Tone::Good, "coils.feed-good")],
    );
    check_answers(&[("coils.resistance", "1.6 ohm")], &[(Tone::Bad, "coils.not-sure"), OPEN]);
    let blank = report(&Plan::default());
    assert_eq!(answers(&blank).len(), 1, "a blank plan is asked for few things");
    assert_eq!(answers(&blank)[0].verdict.message.code, "coils.blank");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// Whatever is typed, each field stands somehow and the question is answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(A|ohm|mH|V|ms|%|m|mm2|)",
                "\\PC{0,12}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
            ],
            Part::Coils.fields().len(),
        ),
    ) {
        let paths: Vec<_> = Part::Coils.places().map(Place::path).collect();
        let paths = paths.iter().map(String::as_str);
        let typed: Vec<_> = paths.zip(texts.iter().map(String::as_str)).collect();
        let report = report(&plan(&typed));
        prop_assert_eq!(lacking(&report, "coils", &typed), Vec::<String>::new());
    }
}
