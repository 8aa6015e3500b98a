//! What holds for every plan, however it was typed.
#![expect(clippy::expect_used, reason = "a test fails by it")]

mod assumed;
mod costliest;
mod merged;
mod sequences;
mod typed;
mod unused;
use proptest::prelude::*;
use quietpin::print::{self, Options};
use quietpin_core::{
    fields,
    finding::{Finding, Severity},
    plan::{self, MOST_ENTRIES, Plan, VERSION},
    read::State,
    report::{Memory, Report, report, report_after},
    schema::{Part, Place},
};

use quietpin_tests::texts::Texts;
use serde_json::json;

proptest! {
    // a dozen edits each, every one answered twice
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]

    #[test]
    fn what_is_remembered_changes_no_report(
        plan in typed::plan(),
        edits in prop::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>()), 1..6),
    ) {
        let places = typed::places(&plan);
        let mut memory = Memory::detailed();
        let mut plan = plan;
        prop_assert_eq!(report_after(&mut memory, &plan), report(&plan));
        for (place, source) in edits {
            // one field is emptied, or typed as another of its kind is
            let (place, source): (&Place, &Place) = (place.get(&places), source.get(&places));
            let (text, path) = (plan.text(*source).to_owned(), place.path());
            prop_assert!(plan.put(*place, &text), "{} is a place in the plan", path);
            prop_assert_eq!(report_after(&mut memory, &plan), report(&plan), "after {} is {:?}", path, text);
            prop_assert!(plan.put(*place, ""), "{} is a place in the plan", path);
            prop_assert_eq!(report_after(&mut memory, &plan), report(&plan), "after {} is blank", path);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(128) })]

    #[test]
    fn a_plan_is_the_same_after_writing_and_reading(plan in typed::plan()) {
        let mut plan = plan;
        plan.quietpin = VERSION;
        prop_assert_eq!(plan::parse(&plan::write(&plan)), Ok(plan));
    }

    #[test]
    fn a_report_is_total_and_the_same_every_time(plan in typed::plan()) {
        let before = plan.clone();
        let json = serde_json::to_string(&report(&plan)).expect("a report is data");
        let again = serde_json::to_string(&report(&plan)).expect("a report is data");
        prop_assert_eq!(json, again);
        prop_assert_eq!(plan, before, "what was typed is not changed");
    }

    #[test]
    fn texts_are_whole_and_numbers_are_numbers(plan in typed::plan()) {
        let report = report(&plan);
        let texts = Texts::of(&report);
        for (place, text) in texts.all() {
            // the strategy types no braces, so one in the report is a gap that was left open
            prop_assert!(!text.contains(['{', '}']), "{place}: a gap is left open in {text:?}");
        }
        prop_assert_eq!(texts.without_number(), Vec::<String>::new(), "no number where one is shown");
        print::report(&report, Options { working: true });
    }

    #[test]
    fn every_field_stands_as_it_was_typed(plan in typed::plan()) {
        for (path, field) in &report(&plan).fields {
            // a list that is too long is said at the list; the coils' relay is read before it has a record
            if Part::named(path).is_some() || is_behind_the_last(&plan, path) { continue }
            let Some(typed) = plan.get(path) else {
                return Err(TestCaseError::fail(format!("{path} is no place in the plan")));
            };
            let is_blank = typed.trim().is_empty();
            let was_typed = matches!(field.state, State::Given | State::Unreadable);
            prop_assert_eq!(was_typed, !is_blank, "{}: {:?} is {:?}", path, typed, field.state);
        }
    }

    #[test]
    fn what_cannot_be_read_is_said_at_the_field(plan in typed::plan()) {
        let report = report(&plan);
        for (path, field) in &report.fields {
            if field.state == State::Unreadable {
                let is_said = report.findings.iter().any(|finding| finding.subject == *path);
                prop_assert!(is_said && field.problem.is_some(), "{path} is not usable, and nothing says why");
            }
        }
    }

    #[test]
    fn every_finding_leads_somewhere(plan in typed::plan()) {
        let report = report(&plan);
        for finding in &report.findings {
            prop_assert!(leads_somewhere(&plan, &report, &finding.subject), "{finding:?} leads nowhere");
        }
        for pair in report.findings.windows(2) {
            let place = |it: &Finding| (it.severity.max(Severity::Fault), it.strikes, it.severity);
            let [one, other] = [&pair[0], &pair[1]].map(|it| place(it));
            prop_assert!(one <= other, "by when they strike: {one:?}, {other:?}");
        }
    }

    #[test]
    fn a_text_that_looks_like_a_gap_does_no_harm(plan in typed::plan(), at in any::<prop::sample::Index>()) {
        let mut plan = plan;
        let place = *at.get(&typed::places(&plan));
        prop_assert!(plan.put(place, "{field} {n|a|b} }{ {"), "{} is a place in the plan", place.path());
        print::report(&report(&plan), Options { working: true });
    }
}

/// Whether it is the record that the next relay would have.
fn is_behind_the_last(plan: &Plan, path: &str) -> bool {
    Place::at_path(path)
        .is_some_and(|it| it.part() == Part::Relays && it.record() == plan.count(Part::Relays))
}

/// Whether the page can lead to it: a field, a whole part of the plan, an entry of one, or the subject of an answer.
fn leads_somewhere(plan: &Plan, report: &Report, subject: &str) -> bool {
    let is_answered = || {
        report.sections.iter().flat_map(|section| &section.answers).any(|it| it.subject == subject)
    };
    let is_part =
        || Part::named(subject).is_some() || plan.get(&format!("{subject}.name")).is_some();
    // a pattern is no place: the page has no field at it
    let is_field = !subject.contains('#') && Place::at_path(subject).is_some();
    let is_left_over = subject == "left_over" && !plan.left_over().is_empty();
    is_field || is_part() || is_left_over || is_answered()
}

/// What is typed, where what is wrong with it is said, and by which words.
type Misplaced = (&'static [(&'static str, &'static str)], &'static str, &'static str);

/// What the law above found, and what a look for more of its kind did.
const BESIDE_A_BLANK: &[Misplaced] = &[
    (&[("trigger_input.low", "20 V")], "trigger_input.low", "trigger.levels-cross"),
    (&[("trigger_input.high", "0.5 V")], "trigger_input.high", "trigger.levels-cross"),
    (
        &[("trigger_input.low", "3 V"), ("trigger_input.high", "2 V")],
        "trigger_input.high",
        "trigger.levels-cross",
    ),
    (
        &[("engine.order", "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16-17")],
        "engine.order",
        "engine.cylinders-many",
    ),
    (
        &[
            ("engine.kind", "two-stroke"),
            ("engine.order", "1-3-2"),
            ("engine.spacing", "geometry"),
            ("engine.bank_angles", "120 240"),
        ],
        "engine.bank_angles",
        "engine.out-of-turn",
    ),
    (&[("outputs.0.name", "output 2")], "outputs.0.name", "outputs.output-named-twice"),
    (&[("outputs.1.name", "output 1")], "outputs.1.name", "outputs.output-named-twice"),
];

#[track_caller]
fn check_said_at(plan: &Plan, subject: &str, code: &str) {
    let report = report(plan);
    let found = report.findings.iter().find(|it| it.message.code == code);
    assert_eq!(found.map(|it| it.subject.as_str()), Some(subject), "{code}");
    let unusable = report.fields.iter().filter(|(_, it)| it.state == State::Unreadable);
    let unusable: Vec<_> = unusable.map(|(path, _)| path.as_str()).collect();
    assert_eq!(unusable, [subject], "{code}");
}

#[test]
fn what_is_wrong_is_said_where_something_was_typed() {
    for (edits, subject, code) in BESIDE_A_BLANK {
        let mut plan = Plan::default();
        plan.set_count(Part::Outputs, 2);
        for (path, text) in *edits {
            assert!(plan.set(path, text), "{path}");
        }
        check_said_at(&plan, subject, code);
    }
}

#[test]
fn a_blank_channel_too_many_does_no_harm() {
    // only a file has so many: the page can't type them
    let with_last = |last: &str| {
        let mut cells = vec![""; MOST_ENTRIES + 2];
        cells.push(last);
        let file = json!({ "quietpin": VERSION, "channels": { "coils_wired": cells } });
        plan::parse(&file.to_string()).expect("a plan")
    };
    assert!(report(&with_last("")).findings.is_empty(), "blanks say nothing");
    let plan = with_last("1");
    let last = fields::channels::COILS_WIRED.in_cell(MOST_ENTRIES + 2);
    assert_eq!(plan.text(last), "1", "nothing of the file is lost");
    check_said_at(&plan, &last.path(), "field.too-many");
}
