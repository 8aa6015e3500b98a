//! A second set of injectors, and the feed of both.

use proptest::prelude::*;
use quietpin_core::{
    fields::engine,
    plan::Plan,
    read::State,
    report::{Answer, Report, Tone, report},
    schema::{Part, Place},
};
use quietpin_tests::typed::put;

/// A plan with both sets typed; the second is the first over again.
fn both(typed: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    put(&mut plan, "relays.0.purpose", "injectors");
    for record in ["injectors", "second_injectors"] {
        for (name, text) in
            [("resistance", "12 ohm"), ("count", "6"), ("output_limit", "3 A"), ("per_output", "1")]
        {
            assert!(plan.set(&format!("{record}.{name}"), text), "{record}.{name} is no place");
        }
    }
    for (path, text) in typed {
        put(&mut plan, path, text);
    }
    plan
}

fn answers(report: &Report) -> Vec<&Answer> {
    let section = report.sections.iter().find(|section| section.id == "injectors");
    section.expect("the question is there").answers.iter().map(AsRef::as_ref).collect()
}

#[track_caller]
fn answer<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let found = answers(report).into_iter().find(|it| it.subject == subject);
    found.unwrap_or_else(|| panic!("nothing is said of {subject}"))
}

#[test]
fn a_set_that_nobody_speaks_of_is_not_asked_about() {
    let subjects = |plan: &Plan| -> Vec<String> {
        answers(&report(plan)).iter().map(|it| it.subject.clone()).collect()
    };
    assert_eq!(subjects(&Plan::default()), ["injectors", "fuel"]);
    let mut plan = Plan::default();
    plan.set("injectors.resistance", "12 ohm");
    assert_eq!(subjects(&plan), ["injectors", "injector_feed", "fuel"]);
    plan.set("second_injectors.count", "6");
    assert_eq!(subjects(&plan), ["injectors", "second_injectors", "injector_feed", "fuel"]);
}

#[test]
fn the_same_injectors_are_answered_alike_in_either_set() {
    let report = report(&both(&[]));
    let (first, second) = (answer(&report, "injectors"), answer(&report, "second_injectors"));
    assert_eq!(first.verdict, second.verdict);
    assert_eq!(first.figures, second.figures);
    assert_eq!(first.tables, second.tables);
}

/// What is wrong with one set is said at its own fields.
#[test]
fn a_finding_leads_to_the_set_that_it_is_about() {
    let report = report(&both(&[("second_injectors.resistance", "2.4 ohm")]));
    let about: Vec<_> =
        report.findings.iter().filter(|it| it.message.code.starts_with("injectors.")).collect();
    assert!(!about.is_empty(), "2.4 ohm on 3 A is too much");
    for finding in about {
        assert!(finding.subject.starts_with("second_injectors."), "{}", finding.subject);
        assert!(report.fields.contains_key(&finding.subject), "{} is no field", finding.subject);
    }
}

/// By hand: two sets of six at 1.29 A (14.8 V, 12 Ω × 0.95 = 11.4 Ω and 2 m of 1 mm²), at a duty of 85 % 12 × 1.29 × √0.85 = 14.3 A RMS,
/// / 0.75 = 19 A: a fuse of 20 A.
#[test]
fn fuse_and_relay_are_held_against_both_sets() {
    let tone = |fuse: &str, relay: &str| {
        let plan = both(&[("relays.0.fuse", fuse), ("relays.0.rating", relay)]);
        answer(&report(&plan), "injector_feed").verdict.clone()
    };
    let blank = tone("", "");
    assert_eq!(blank.tone, Tone::Open);
    assert!(blank.message.text.contains("20 A"), "{}", blank.message.text);
    assert_eq!(tone("20 A", "30 A").tone, Tone::Good);
    assert_eq!(tone("15 A", "30 A").message.code, "injectors.feed-fuse-small");
    assert_eq!(tone("20 A", "15 A").message.code, "injectors.feed-relay-small");
    assert_eq!(tone("15 A", "15 A").message.code, "injectors.feed-both-small");
}

#[test]
fn the_feed_waits_for_what_it_needs() {
    let code =
        |typed: &[(&str, &str)]| answer(&report(&both(typed)), "injector_feed").to_do[0].code;
    assert_eq!(code(&[("injectors.count", "")]), "injectors.feed-wants-count");
    assert_eq!(code(&[("second_injectors.resistance", "")]), "injectors.feed-wants-sets");
    assert_eq!(code(&[("second_injectors.resistance", "what?")]), "injectors.feed-wants-sets");
}

/// The finding at the field, and that the first set is answered all the same.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let report = report(&both(&[(path, text)]));
    let at_field: Vec<_> =
        report.findings.iter().filter(|it| it.subject == path).map(|it| it.message.code).collect();
    assert_eq!(at_field, [finding], "{path}: {text:?}");
    assert_eq!(report.fields[path].state, State::Unreadable, "{path}: {text:?}");
    assert_eq!(answer(&report, "injectors").verdict.message.code, "injectors.carries", "{path}");
}

#[test]
fn bad_input_is_named_at_its_field() {
    check("second_injectors.resistance", "12 kohm", "field.too-large");
    check("second_injectors.tolerance", "x", "field.no-number");
    check("second_injectors.inductance", "0", "field.too-small");
    check("second_injectors.opening_current", "1 V", "field.wrong-unit");
    check("second_injectors.count", "1.5", "field.not-whole");
    check("second_injectors.per_output", "7", "injectors.more-than-there-are");
    check("second_injectors.output_kind", "magic", "field.unknown-choice");
    check("second_injectors.output_limit", "NaN", "field.no-number");
    check("second_injectors.hold_current", "1e300 A", "field.not-finite");
    check("second_injectors.peak_time", "-1 ms", "field.too-small");
    check("second_injectors.output_resistance", "9 ohm", "field.too-large");
    check("second_injectors.clamp", "5 V", "field.too-small");
    check("second_injectors.clamp_energy", "5 s", "field.wrong-unit");
    check("second_injectors.output_heat", "hot", "field.no-number");
    check("second_injectors.wire_length", "-1 m", "field.too-small");
    check("second_injectors.wire_size", "0 mm2", "field.too-small");
    check("second_injectors.contact_resistance", "9 ohm", "field.too-large");
    check("relays.0.fuse", "0 A", "field.too-small");
    check("relays.0.fuse", "many", "field.no-number");
    check("relays.0.rating", "30 V", "field.wrong-unit");
    check("engine.highest_speed", "-1 rpm", "field.too-small");
    check("engine.highest_speed", "7000 V", "field.wrong-unit");
}

/// The fields of the second set and of the feed, and what both ask of the engine.
fn places() -> Vec<Place> {
    let (second, feed) = (Part::SecondInjectors.places(), Part::Relays.places());
    second.chain(feed).chain([engine::HIGHEST_SPEED.place()]).collect()
}

proptest! {
    /// Any texts in any field of both sets and the feed: a whole report.
    #[test]
    fn nothing_that_is_typed_breaks_the_report(
        texts in proptest::collection::vec(
            prop_oneof![
                2 => (0.01..200.0_f64).prop_map(|number| format!("{number:.2}")),
                1 => (1..20_u32).prop_map(|number| number.to_string()),
                1 => Just(String::new()),
                1 => any::<String>(),
            ],
            places().len(),
        ),
    ) {
        let mut plan = both(&[]);
        for (place, text) in places().into_iter().zip(&texts) {
            plan.put(place, text);
        }
        let report = report(&plan);
        for path in places().into_iter().map(Place::path) {
            prop_assert!(report.fields.contains_key(&path), "{} has no state", path);
        }
        for answer in answers(&report) {
            for figure in &answer.figures {
                prop_assert!(!figure.working.is_empty(), "{:?} has no working", figure.label);
            }
            for table in &answer.tables {
                prop_assert!(!table.working.is_empty(), "{:?} has no working", table.caption);
            }
        }
    }
}
