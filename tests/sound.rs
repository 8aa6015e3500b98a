//! Ten cars as a good fitter builds them, whole: nothing alarms, and each line that is left is worth a fitter's time.
//!
//! Source: what a sound car is, is common practice, no source; each was written by hand before its report was seen.

#![expect(clippy::expect_used, reason = "a test fails by them")]

use quietpin::print;
use quietpin_core::{
    finding::Severity,
    plan::{self, Plan},
    report::{Report, report},
    schema::{Part, Place},
};
use quietpin_tests::plans;

const CARS: [&str; 10] = [
    "sound-single",
    "sound-twin",
    "sound-triple",
    "sound-four",
    "sound-boxer",
    "sound-five",
    "sound-v6",
    "sound-v8",
    "sound-v12",
    "sound-rotary",
];

/// What is left, and why it is worth its line: the car, the finding, the reason.
const DEFENDED: &[(&str, &str, &str)] = &[
    (
        "sound-triple",
        "outputs.acts-without-ground",
        "its igniters hold on as long as they are told to, and its coils are fed from the key: with the ground lost they cook",
    ),
    (
        "sound-four",
        "outputs.over-voltage-without-ground",
        "its igniters' data say 12 V, and 13.6 V come through a loose ground",
    ),
    (
        "sound-v6",
        "outputs.weak",
        "a rev counter for 12 V may not count pulses of 5 V, and what it needs was not typed",
    ),
    (
        "sound-rotary",
        "injectors.peak-not-while-cranking",
        "the peak of its second set is a setting: one a little lower is reached at every start",
    ),
];

/// As many as a fitter reads of a car with which nothing is wrong.
const MOST_DOUBTS: usize = 3;
const MOST_NOTES: usize = 4;
const MOST_WORDS: usize = 1500;

fn report_of(name: &str) -> Report {
    let example = plans::ALL.iter().find(|it| it.name == name).expect(name);
    report(&plan::parse(example.text).expect(name))
}

fn codes(report: &Report, severity: Severity) -> Vec<&'static str> {
    let findings = report.findings.iter().filter(|it| it.severity == severity);
    findings.map(|it| it.message.code).collect()
}

#[test]
fn nothing_alarms_in_a_sound_car() {
    for name in CARS {
        let report = report_of(name);
        let of = |severity| codes(&report, severity);
        assert_eq!(of(Severity::Danger), [""; 0], "{name}");
        assert_eq!(of(Severity::Fault), [""; 0], "{name}");
        let (doubts, notes) = (of(Severity::Doubt), of(Severity::Note));
        assert!(doubts.len() <= MOST_DOUBTS, "{name}: {doubts:?}");
        assert!(notes.len() <= MOST_NOTES, "{name}: {notes:?}");
    }
}

#[test]
fn each_line_that_is_left_is_defended() {
    let said: Vec<_> = CARS
        .iter()
        .flat_map(|name| {
            let report = report_of(name);
            report.findings.iter().map(|it| (*name, it.message.code)).collect::<Vec<_>>()
        })
        .collect();
    let is_defended =
        |it: &(&str, &str)| DEFENDED.iter().any(|(car, code, _)| (*car, *code) == *it);
    let undefended: Vec<_> = said.iter().filter(|it| !is_defended(it)).collect();
    assert!(undefended.is_empty(), "{undefended:?}");
    let stale: Vec<_> =
        DEFENDED.iter().filter(|(car, code, _)| !said.contains(&(car, code))).collect();
    assert!(stale.is_empty(), "no longer said: {stale:?}");
}

#[test]
fn their_usual_reports_are_a_page_or_two() {
    for name in CARS {
        let printed = print::usual(&report_of(name));
        let words = printed.split_whitespace().filter(|it| it.contains(char::is_alphanumeric));
        assert!(words.count() <= MOST_WORDS, "{name}");
    }
}

#[test]
fn they_are_whole() {
    for name in CARS {
        let report = report_of(name);
        let open: Vec<_> = report
            .sections
            .iter()
            .flat_map(|section| section.answers.iter().map(move |it| (section.id, it)))
            .filter(|(_, it)| it.verdict.tone == quietpin_core::report::Tone::Bad)
            .map(|(id, it)| (id, it.verdict.message.text.clone()))
            .collect();
        assert_eq!(open, [], "{name}: no answer says no");
    }
}

/// The fields of what feeds, and of what comes back.
fn fields_of_the_feeds(plan: &Plan) -> Vec<String> {
    let mut paths: Vec<_> = [Part::Grounds, Part::Wiring]
        .into_iter()
        .flat_map(|part| part.places().map(Place::path))
        .collect();
    let of_relays = ["rating", "fuse", "lead_length", "lead_size", "draws", "inrush", "ground"];
    for at in 0..plan.count(Part::Relays) {
        paths.extend(of_relays.iter().map(|field| format!("relays.{at}.{field}")));
    }
    paths.extend(
        [
            "battery.lead_length",
            "battery.lead_size",
            "battery.starter",
            "battery.alternator",
            "battery.alternator_idle",
            "battery.kill_switch",
            "controller.highest_supply",
            "controller.reverse",
            "switched_feeds.fuse",
            "switched_feeds.size",
            "switched_feeds.battery_fuse",
            "switched_feeds.battery_size",
            "injectors.fuse",
        ]
        .map(str::to_owned),
    );
    paths
}

/// The findings of the question of the feeds that a fitter would have to look into.
fn looked_into(plan: &Plan) -> Vec<&'static str> {
    let report = report(plan);
    let own = report.findings.iter().filter(|it| it.message.code.starts_with("feeds."));
    own.filter(|it| it.severity != Severity::Note).map(|it| it.message.code).collect()
}

#[test]
fn what_feeds_a_sound_car_is_calm_whole_and_blank() {
    for name in CARS {
        let example = plans::ALL.iter().find(|it| it.name == name).expect(name);
        let mut plan = plan::parse(example.text).expect(name);
        for at in 0..plan.count(Part::Relays) {
            assert!(plan.set(&format!("relays.{at}.ground"), "own"));
        }
        for kill in ["none", "both"] {
            assert!(plan.set("battery.kill_switch", kill));
            assert_eq!(looked_into(&plan), [""; 0], "{name}, whole");
        }
        for path in fields_of_the_feeds(&plan) {
            assert!(plan.set(&path, ""), "{path} is no place");
        }
        let blank = looked_into(&plan);
        assert!(blank.len() <= 1, "{name}, blank: {blank:?}");
    }
}

/// A blank in the place of any one value says nothing that the whole car doesn't: it never invents a fault.
#[test]
fn a_single_blank_alarms_nobody() {
    for name in CARS {
        let example = plans::ALL.iter().find(|it| it.name == name).expect(name);
        let whole = plan::parse(example.text).expect(name);
        for path in Part::Grounds.places().map(Place::path) {
            let mut plan = whole.clone();
            assert!(plan.set(&path, ""), "{path} is no place");
            assert_eq!(looked_into(&plan), [""; 0], "{name} without {path}");
        }
    }
}
