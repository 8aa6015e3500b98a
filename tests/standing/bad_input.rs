//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    report::{Tone, report},
};
use quietpin_tests::typed::{check_refused, lacking, planned};

use super::{answer, figure, plan};

const FIELDS: [&str; 3] = ["battery.capacity", "battery.other_draw", "controller.key_off_draw"];

/// The finding at the field, and the verdict all the same.
#[track_caller]
fn check(path: &str, text: &str, finding: &str, verdict: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    assert_eq!(answer(&report).verdict.message.code, verdict, "{path}: {text:?}");
}

#[test]
fn what_is_none_is_named_at_its_field() {
    const MEND: &str = "standing.open-mend";
    const SO_FAR: &str = "standing.so-far";
    check("battery.capacity", "60 A", "field.wrong-unit", MEND);
    check("battery.capacity", "letters", "field.no-number", MEND);
    check("battery.capacity", "0", "field.too-small", MEND);
    check("battery.capacity", "0.9 Ah", "field.too-small", MEND);
    check("battery.capacity", "501 Ah", "field.too-large", MEND);
    check("battery.capacity", "60 MAh", "field.wrong-capitals", MEND);
    // what can't be read is left out, and a time without it is no good news
    check("battery.other_draw", "30 mAh", "field.wrong-unit", SO_FAR);
    check("battery.other_draw", "-1 mA", "field.too-small", SO_FAR);
    check("battery.other_draw", "6 A", "field.too-large", SO_FAR);
    check("battery.other_draw", "a little", "field.no-number", SO_FAR);
    check("controller.key_off_draw", "5 V", "field.wrong-unit", SO_FAR);
    check("controller.key_off_draw", "-1 mA", "field.too-small", SO_FAR);
    check("controller.key_off_draw", "3 A", "field.too-large", SO_FAR);
}

#[test]
fn a_capacity_is_read_as_it_is_printed() {
    for text in ["60 Ah", "60", "60AH", "60 ah"] {
        let report = report(&plan(&[("battery.capacity", text), ("battery.other_draw", "50 mA")]));
        let seconds = figure(&report, "standing.figure-time");
        // by hand: by itself it loses 4 % of 60 Ah in 720 h, 3.33 mA; 30 Ah / 53.33 mA = 562.5 h = 2 025 000 s
        assert!(seconds.is_some_and(|it| (it - 2.025e6).abs() < 1e-3), "{text}: {seconds:?}");
    }
}

#[test]
fn a_blank_plan_is_asked_for_one_thing() {
    let report = report(&Plan::default());
    let answer = answer(&report);
    assert_eq!(answer.verdict.message.code, "standing.blank");
    assert!(answer.why.is_none() && answer.figures.is_empty() && answer.cautions.is_empty());
}

#[test]
fn a_part_is_answered_where_a_part_is_known() {
    let without = report(&planned(&[("battery.other_draw", "50 mA")], &[]));
    assert_eq!(answer(&without).verdict.message.code, "standing.open");
    assert_eq!(answer(&without).verdict.tone, Tone::Open);
    // by hand: 50 mA and the 1 mA that is taken for the controller
    let drain = figure(&without, "standing.figure-drain");
    assert!(drain.is_some_and(|it| (it - 0.051).abs() < 1e-12), "{drain:?}");
    let outputs = report(&planned(&[("outputs.0.stage", "open-drain")], &[]));
    assert_eq!(answer(&outputs).verdict.message.code, "standing.open");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// Whatever is typed, each field stands somehow and the question is answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(Ah|A|mA|mAh|V|)",
                "\\PC{0,12}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
            ],
            FIELDS.len(),
        ),
    ) {
        let typed: Vec<_> = FIELDS.into_iter().zip(texts.iter().map(String::as_str)).collect();
        prop_assert_eq!(lacking(&report(&plan(&typed)), "standing", &typed), Vec::<String>::new());
    }
}
