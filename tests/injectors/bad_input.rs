//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    fields::engine,
    plan::Plan,
    read::State,
    report::{Answer, Report, Tone, report},
    schema::Part,
};
use quietpin_tests::typed::planned;

/// A plan of a usual engine with one field of it as typed.
fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("injectors.resistance", "12 ohm"),
        ("injectors.count", "6"),
        ("injectors.output_limit", "3 A"),
    ];
    planned(&usual, typed)
}

fn answer(report: &Report) -> &Answer {
    let section = report.sections.iter().find(|section| section.id == "injectors");
    &section.expect("the question is there").answers[0]
}

/// The finding at the field, and what the answer is then.
#[track_caller]
fn check(path: &str, text: &str, finding: &str, verdict: &str) {
    let report = report(&plan(&[(path, text)]));
    let at_field: Vec<_> =
        report.findings.iter().filter(|it| it.subject == path).map(|it| it.message.code).collect();
    assert_eq!(at_field, [finding], "{path}: {text:?}");
    assert_eq!(report.fields[path].state, State::Unreadable, "{path}: {text:?}");
    assert_eq!(answer(&report).verdict.message.code, verdict, "{path}: {text:?}");
}

#[test]
fn a_resistance_that_is_none_is_named_at_its_field() {
    const OPEN: &str = "injectors.unreadable";
    check("injectors.resistance", "0", "field.too-small", OPEN);
    check("injectors.resistance", "0 ohm", "field.too-small", OPEN);
    check("injectors.resistance", "-12 ohm", "field.too-small", OPEN);
    check("injectors.resistance", "NaN", "field.no-number", OPEN);
    check("injectors.resistance", "1e300", "field.not-finite", OPEN);
    check("injectors.resistance", "12 kohm", "field.too-large", OPEN);
    check("injectors.resistance", "12 A", "field.wrong-unit", OPEN);
    check("injectors.resistance", "12 ohm ±200%", "field.too-small", OPEN);
    check("injectors.resistance", "twelve", "field.no-number", OPEN);
}

#[test]
fn what_does_not_depend_on_a_bad_field_is_still_answered() {
    const CARRIES: &str = "injectors.carries";
    check("injectors.tolerance", "100 %", "field.too-large", CARRIES);
    check("injectors.wire_length", "-1 m", "field.too-small", CARRIES);
    check("injectors.wire_length", "4 ohm", "field.wrong-unit", CARRIES);
    check("injectors.wire_size", "0", "field.too-small", CARRIES);
    check("injectors.wire_size", "99 AWG", "field.not-finite", CARRIES);
    check("injectors.output_resistance", "1e9", "field.too-large", CARRIES);
    check("injectors.inductance", "0", "field.too-small", CARRIES);
    check("injectors.opening_current", "0 A", "field.too-small", CARRIES);
    check("injectors.output_kind", "magic", "field.unknown-choice", CARRIES);
    check("injectors.hold_current", "much", "field.no-number", CARRIES);
    check("injectors.contact_resistance", "-1 mohm", "field.too-small", CARRIES);
    check("injectors.contact_resistance", "50 mA", "field.wrong-unit", CARRIES);
    check("injectors.peak_time", "0 ms", "field.too-small", CARRIES);
    check("injectors.peak_time", "2 V", "field.wrong-unit", CARRIES);
    check("injectors.clamp", "0 V", "field.too-small", CARRIES);
    check("injectors.clamp", "high", "field.no-number", CARRIES);
    check("injectors.clamp_energy", "-5 mJ", "field.too-small", CARRIES);
    check("injectors.clamp_energy", "5 V", "field.wrong-unit", CARRIES);
    check("injectors.clamp_energy", "1e300 J", "field.not-finite", CARRIES);
    check("injectors.output_heat", "0 W", "field.too-small", CARRIES);
    check("injectors.output_heat", "1 V", "field.wrong-unit", CARRIES);
    check("injectors.count", "0", "field.too-small", CARRIES);
    check("injectors.count", "six", "field.not-whole", CARRIES);
    check("injectors.output_limit", "0 A", "field.too-small", "injectors.limit-wanted");
    check("injectors.output_limit", "3 V", "field.wrong-unit", "injectors.limit-wanted");
}

#[test]
fn a_number_on_an_output_that_can_not_be_is_asked_again() {
    const ASKED: &str = "injectors.sharing-unknown";
    check("injectors.per_output", "0", "field.too-small", ASKED);
    check("injectors.per_output", "17", "field.too-large", ASKED);
    check("injectors.per_output", "-2", "field.not-whole", ASKED);
    check("injectors.per_output", "1.5", "field.not-whole", ASKED);
    check("injectors.per_output", "7", "injectors.more-than-there-are", ASKED);
}

#[test]
fn a_blank_question_asks_for_three_things() {
    let report = report(&Plan::default());
    let answer = answer(&report);
    assert_eq!(answer.verdict.tone, Tone::Open);
    assert_eq!(answer.to_do.len(), 3, "{:?}", answer.to_do);
    for place in Part::Injectors.places() {
        let path = place.path();
        assert!(report.fields.contains_key(&path), "{path} has no state");
    }
}

#[test]
fn the_number_of_injectors_is_that_of_the_cylinders_where_none_is_given() {
    let mut plan = plan(&[("injectors.count", "")]);
    plan.put(engine::CYLINDERS, "6");
    plan.put(engine::ORDER, "1-5-3-6-2-4");
    let state = &report(&plan).fields["injectors.count"];
    assert_eq!(state.state, State::Assumed);
    assert_eq!(state.value.as_ref().and_then(|value| value.number), Some(6.0));
}

/// Every text under one of these names, anywhere in the report.
fn texts(report: &Report, names: &[&str]) -> Vec<String> {
    let json = serde_json::to_value(report).expect("a report is plain data");
    let mut found = Vec::new();
    let mut open = vec![&json];
    while let Some(value) = open.pop() {
        match value {
            serde_json::Value::Array(values) => open.extend(values),
            serde_json::Value::Object(map) => {
                open.extend(map.values());
                let named = names.iter().filter_map(|name| map.get(*name)?.as_str());
                found.extend(named.map(str::to_owned));
            }
            _ => {}
        }
    }
    found
}

/// A sentence without what it repeats of the typed text, from the first opening quote to the last closing one, since
/// the typed text may have quotes of its own.
fn own_words(text: &str) -> String {
    let quoted =
        text.split_once('“').and_then(|(before, rest)| Some((before, rest.rsplit_once('”')?.1)));
    quoted.map_or_else(|| text.to_owned(), |(before, after)| format!("{before}{after}"))
}

#[test]
fn quotes_and_braces_that_are_typed_are_no_gaps() {
    for typed in ["”{", "“{”", "{“", "{n}"] {
        let report = report(&plan(&[("injectors.inductance", typed)]));
        let at_field = report.findings.iter().find(|it| it.subject == "injectors.inductance");
        let text = &at_field.expect("it is no inductance").message.text;
        assert!(text.contains(typed), "{typed} is not repeated: {text}");
        assert!(!own_words(text).contains('{'), "{text}");
    }
}

/// What a person might type, and what a cat on the keyboard would.
fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => (-1.0..200.0_f64).prop_map(|number| format!("{number:.2}")),
        2 => (0.01..40.0_f64, 0.0..30.0_f64).prop_map(|(n, t)| format!("{n:.2} ±{t:.0}%")),
        1 => (0.1..20.0_f64, 0.1..20.0_f64).prop_map(|(a, b)| format!("{a:.2} to {b:.2}")),
        2 => (0..20_u32).prop_map(|number| number.to_string()),
        1 => prop_oneof!["plain-switch", "current-controlled"],
        1 => Just(String::new()),
        1 => "[0-9a-zA-Zµ.,±{} -]{0,12}",
        1 => any::<String>(),
    ]
}

proptest! {
    #[test]
    fn nothing_that_is_typed_breaks_the_report(
        texts_typed in proptest::collection::vec(typed(), Part::Injectors.fields().len()),
    ) {
        let mut plan = Plan::default();
        for (place, text) in Part::Injectors.places().zip(&texts_typed) {
            plan.put(place, text);
        }
        let report = report(&plan);
        for text in texts(&report, &["text", "filled"]) {
            prop_assert!(!own_words(&text).contains('{'), "a gap is left: {}", text);
        }
        for shown in texts(&report, &["text", "filled", "shown"]) {
            prop_assert!(!own_words(&shown).contains("not a number"), "no number: {}", shown);
        }
        for figure in &answer(&report).figures {
            prop_assert!(!figure.working.is_empty(), "{:?} has no working", figure.label);
        }
        for table in &answer(&report).tables {
            prop_assert!(!table.working.is_empty(), "{:?} has no working", table.caption);
            for row in &table.rows {
                prop_assert_eq!(row.cells.len(), table.columns.len(), "a row is short");
            }
        }
    }
}
