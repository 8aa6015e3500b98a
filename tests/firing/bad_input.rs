//! What people may type of what is done at the car, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    report::{Answer, Report, report},
    schema::{self, Place},
};
use quietpin_tests::typed::{self, check_refused, lacking, planned};

/// A straight-six with everything asked of its channels, and fields of it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("engine.highest_speed", "7000 rpm"),
        ("channels.ignition_mode", "sequential"),
        ("channels.injection_mode", "each-once"),
        ("channels.second_mode", "companions"),
        ("controller.locked_advance", "10 deg"),
        ("light.seen.0", "10"),
        ("light.seen.4", "11"),
        ("light.stroke", "compression"),
    ];
    planned(&usual, typed)
}

fn answers(report: &Report) -> Vec<&Answer> {
    typed::answers(report, "firing")
}

/// What is answered, however.
fn subjects(report: &Report) -> Vec<&str> {
    answers(report).iter().map(|it| it.subject.as_str()).collect()
}

const ALL: [&str; 6] = [
    "engine",
    "channels.ignition_mode",
    "channels.injection_mode",
    "channels.second_mode",
    "light",
    "strip",
];

/// The finding at the field; everything is still answered, and the text is kept.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    let found = subjects(&report);
    for subject in ALL {
        assert!(found.contains(&subject), "{path}: {text:?}: no answer to {subject}: {found:?}");
    }
}

#[test]
fn everything_is_answered_where_nothing_is_wrong() {
    let report = report(&plan(&[]));
    assert_eq!(subjects(&report), ALL);
    assert!(report.findings.iter().all(|it| it.subject != "light"), "{:?}", report.findings);
}

#[test]
fn what_is_none_is_named_at_its_field_and_the_rest_is_answered() {
    check("channels.second_mode", "by turns", "field.unknown-choice");
    check("channels.second_count", "many", "field.not-whole");
    check("channels.second_count", "33", "field.too-large");
    check("channels.second_habit", "backwards", "field.unknown-choice");
    check("channels.second_wired.0", "x", "firing.wired-unreadable");
    check("channels.second_wired.0", "7", "firing.wired-stray");
    check("channels.coils_wired.0", "none of them", "firing.wired-unreadable");
    check("controller.locked_advance", "10 V", "field.wrong-unit");
    check("controller.locked_advance", "letters", "field.no-number");
    check("controller.locked_advance", "91 deg", "field.too-large");
    check("light.seen.0", "-361", "field.too-small");
    check("light.seen.3", "NaN", "field.no-number");
    check("light.seen.9", "10", "firing.light-stray");
    check("light.stroke", "upwards", "field.unknown-choice");
    check("controller.offset", "1e999", "field.not-finite");
    check("light.tolerance", "0", "field.too-small");
    check("strip.speed", "0", "field.too-small");
    check("controller.dwell", "3 mH", "field.wrong-unit");
    check("strip.advance", "letters", "field.no-number");
    check("strip.injection", "-8 ms", "field.too-small");
    check("strip.injection_end", "721", "field.too-large");
    check("strip.second_injection", "0", "field.too-small");
}

/// What was ticked off of another cure, or by no hand of the page, is kept and means nothing.
#[test]
fn strange_ticks_are_kept_and_tick_nothing() {
    for text in ["swap1_2 again:swap1_2", "\u{1F600} , ;;", "1e308"] {
        let plan = plan(&[
            ("channels.coils_wired.1", "3"),
            ("channels.coils_wired.2", "5"),
            ("channels.coils_done", text),
        ]);
        let report = report(&plan);
        let items = answers(&report).into_iter().flat_map(|it| &it.lists).flat_map(|it| &it.items);
        assert!(items.clone().all(|item| !item.is_done), "{text:?}");
        assert_eq!(plan.get("channels.coils_done"), Some(text));
    }
}

/// The fields of what is done at the car; of a list, its second cell.
fn paths() -> Vec<String> {
    let starts = ["channels.second", "channels.coils", "light", "strip"];
    let paths = schema::places()
        .map(|place| if place.field().is_list { place.in_cell(1).path() } else { place.path() });
    paths.filter(|path| starts.iter().any(|start| path.starts_with(start))).collect()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(200) })]

    /// Whatever is typed, each field stands somehow and the questions are answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(deg|rpm|ms|none|)",
                "\\PC{0,12}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
            ],
            paths().len(),
        ),
    ) {
        let fields = paths();
        prop_assert_eq!(fields.len(), texts.len(), "a text for each field");
        let is_list = |path: &str| Place::at_path(path).is_some_and(|it| it.field().is_list);
        // a cell behind the last in which something was typed is none
        let typed: Vec<(&str, &str)> = fields
            .iter()
            .map(String::as_str)
            .zip(texts.iter().map(String::as_str))
            .filter(|(path, text)| !text.is_empty() || !is_list(path))
            .collect();
        let report = report(&plan(&typed));
        prop_assert_eq!(lacking(&report, "firing", &typed), Vec::<String>::new());
        prop_assert!(answers(&report).len() > 2, "no answers");
    }
}
