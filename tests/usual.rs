//! The usual report: a page or two, and nothing grave is missing from it.
//!
//! Source: what it must hold, and how long it may be, is the project's own.
#![expect(clippy::expect_used, reason = "a test fails by it")]

use std::path::PathBuf;

use quietpin::print::{self, USUAL_WIDTH};
use quietpin_core::{
    demo,
    explained::explanation,
    finding::Severity,
    plan::{self, Plan},
    report::{
        Report, Tone, report,
        usual::{Fact, Setting, knows, usual},
    },
    schema::Part,
    whole_car,
};
use quietpin_tests::plans::{self, Example};

/// As many words as a tired person reads.
const MOST_WORDS: usize = 1_050;

/// What has neither a letter nor a digit is no word.
fn words(text: &str) -> usize {
    text.split_whitespace().filter(|it| it.contains(char::is_alphanumeric)).count()
}

fn plan_of(example: &Example) -> Plan {
    plan::parse(example.text).expect(example.name)
}

/// The whole car, with a fuse on its pump relay that is larger than the wire behind it bears.
fn burning() -> Plan {
    let mut plan = whole_car();
    // they are told with the whole car
    plan.set_count(Part::Sensors, 0);
    for (path, text) in [("relays.1.fuse", "60 A"), ("relays.1.lead_size", "1 mm2")] {
        assert!(plan.set(path, text), "{path} is no place");
    }
    plan
}

#[test]
fn the_usual_reports_are_as_they_were_read_and_accepted() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("usual/snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        for (name, plan) in [
            ("blank", Plan::default()),
            ("burning", burning()),
            ("demo", demo()),
            ("whole-car", whole_car()),
        ] {
            insta::assert_snapshot!(name, print::usual(&report(&plan)));
        }
    });
}

#[test]
fn a_whole_car_takes_a_page_or_two() {
    for plan in [demo(), whole_car(), burning()] {
        let count = words(&print::usual(&report(&plan)));
        assert!(count <= MOST_WORDS, "{}: {count} words", plan.name);
    }
}

#[test]
fn no_line_is_wider_than_paper() {
    for example in plans::ALL {
        for line in print::usual(&report(&plan_of(example))).lines() {
            let width = line.chars().count();
            assert!(width <= USUAL_WIDTH, "{}: {width} columns: {line}", example.name);
        }
    }
}

fn grave(report: &Report) -> impl Iterator<Item = &quietpin_core::finding::Finding> {
    report.findings.iter().map(AsRef::as_ref).filter(|it| it.severity <= Severity::Fault)
}

/// Without blanks: a text that was broken into lines is the same.
fn joined(text: &str) -> String {
    text.split_whitespace().collect()
}

#[test]
fn every_danger_and_fault_stands_in_the_usual_report() {
    let mut seen = 0;
    for example in plans::ALL {
        let report = report(&plan_of(example));
        let (usual, printed) = (usual(&report), joined(&print::usual(&report)));
        for finding in grave(&report) {
            let text = finding.message.text.as_str();
            let is_same =
                |it: &&Fact| it.severity == finding.severity && it.code == finding.message.code;
            let tells = |it: &&Fact| is_same(it) && (text.starts_with(&it.words) || it.count > 1);
            let fact = usual.facts.iter().find(tells);
            let fact = fact.unwrap_or_else(|| panic!("{}: not told: {text}", example.name));
            assert!(
                printed.contains(&joined(&fact.words)),
                "{}: not printed: {text}",
                example.name
            );
            for also in &fact.also {
                assert!(printed.contains(&joined(also)), "{}: not named: {also}", example.name);
            }
            // what is told of several parts is told of as many as it was found of
            let told: usize = usual.facts.iter().filter(is_same).map(|it| it.count).sum();
            let found = grave(&report).filter(|it| {
                it.severity == finding.severity && it.message.code == finding.message.code
            });
            assert_eq!(told, found.count(), "{}: {}", example.name, finding.message.code);
            seen += 1;
        }
    }
    assert!(seen > 200, "only {seen} Dangers and Faults");
}

#[test]
fn what_is_grave_comes_first_and_by_when_it_strikes() {
    for example in plans::ALL {
        let facts = usual(&report(&plan_of(example))).facts;
        let place = |it: &Fact| (it.severity.max(Severity::Fault), it.moment, it.severity);
        assert!(facts.is_sorted_by_key(place), "{}", example.name);
    }
}

#[test]
fn no_question_is_right_of_which_something_grave_was_found() {
    for example in plans::ALL {
        let usual = usual(&report(&plan_of(example)));
        for (at, fact) in
            usual.facts.iter().enumerate().filter(|(_, it)| it.severity <= Severity::Fault)
        {
            // what can't be read in a field belongs to no question
            if fact.code.starts_with("field.") {
                continue;
            }
            let question = usual.questions.iter().find(|it| it.grave.contains(&at));
            let tone = question.map(|it| it.tone);
            assert_eq!(tone, Some(Tone::Bad), "{}: {}", example.name, fact.code);
        }
    }
    let burning = print::usual(&report(&burning()));
    assert!(burning.contains("NO    Feeds     "), "{burning}");
}

#[test]
fn it_is_known_what_every_step_and_caution_is_for() {
    for example in plans::ALL {
        let report = report(&plan_of(example));
        let answers = report.sections.iter().flat_map(|section| &section.answers);
        let steps = answers.flat_map(|it| it.to_do.iter().chain(&it.cautions));
        let remedies = report.findings.iter().flat_map(|it| &it.remedies);
        for message in steps.chain(remedies) {
            assert!(knows(message.code), "{}: {}", example.name, message.code);
        }
        for finding in &report.findings {
            let Some(explained) = explanation(finding.message.code) else { continue };
            assert!(!explained.act.contains("offered"), "{}: {}", example.name, explained.act);
        }
        for answer in report.sections.iter().flat_map(|section| &section.answers) {
            let is_taken =
                answer.to_do.iter().any(|it| it.code.rsplit('.').next() == Some("taken"));
            assert!(!is_taken, "{}: what was assumed is nothing to do", example.name);
            let best = answer.to_do.iter().find(|it| it.text.starts_with("Best: "));
            let Some(edits) = best.map(|it| &it.edits).filter(|it| !it.is_empty()) else {
                continue;
            };
            let said = answer.to_do.iter().filter(|it| it.edits == *edits).count();
            assert_eq!(said, 1, "{}: {:?}", example.name, answer.to_do);
        }
    }
}

/// The texts that are entered for this plan, each with what it is about.
fn entered(plan: &Plan) -> Vec<String> {
    let usual = usual(&report(plan));
    let said = usual.enter.iter().filter_map(|it| match it {
        Setting::Said(line) => Some(format!("{}: {}", line.about.join(", "), line.words.text)),
        Setting::Paired { .. } => None,
    });
    said.collect()
}

#[test]
fn leads_that_stay_are_entered_as_they_are() {
    let entered = entered(&demo());
    let orders: Vec<_> = entered.iter().filter(|it| it.contains("order of channels")).collect();
    // the demo's coils are crossed, and its first cure is another order; its injectors are right
    assert_eq!(orders.len(), 2, "{entered:?}");
    assert!(orders.iter().any(|it| it.contains("1-3-2-4-5-6")), "{entered:?}");
    assert!(orders.iter().any(|it| it.starts_with("injection:")), "{entered:?}");
}

#[test]
fn other_ways_to_the_same_cure_are_neither_entered_nor_bought() {
    let entered = entered(&demo());
    // moving the valve's other end is the first cure, another level the last
    assert!(!entered.iter().any(|it| it.contains("counts as on")), "{entered:?}");
    let bought = usual(&report(&demo())).buy;
    assert!(bought.iter().any(|it| it.words.text.contains("driver")), "{bought:?}");
    assert!(!bought.iter().any(|it| it.words.text.starts_with("resistor")), "{bought:?}");
}

#[test]
fn parts_are_counted_over_the_car() {
    let example = plans::ALL.iter().find(|it| it.name == "injectors-ballast").expect("a plan");
    let bought = usual(&report(&plan_of(example))).buy;
    let counts: Vec<_> = bought.iter().map(|it| (it.count, it.words.code)).collect();
    // a resistor for each of six injectors, and one fuse for all
    assert_eq!(
        counts,
        [(Some(6), "injectors.resistor-each"), (Some(1), "injectors.feed-fit")],
        "{bought:?}"
    );
}
