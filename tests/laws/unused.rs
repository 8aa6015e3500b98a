//! What is not listed as assumed is not used: whatever is typed there, the answers stay as they are.
//!
//! Source: the rule is the project's own.

use std::collections::BTreeSet;

use quietpin_core::{
    plan::{self, Plan},
    read::State,
    report::{Memory, Report, Tone, untried, usual::taken},
    schema::{Kind, Part, Place},
};
use quietpin_tests::plans;

const PLANS: [&str; 8] = [
    "coils-eight",
    "cranking-usual",
    "demo",
    "injectors-ballast",
    "outputs-care",
    "standing-sound",
    "trigger-suits",
    "whole-car",
];

/// Another value than the one that is shown, as a person types it.
fn other(place: Place, shown: &str) -> Option<String> {
    let Kind::Quantity { unit, .. } = place.field().kind else { return None };
    let typed = shown.replace('−', "-");
    let number: f64 = typed.split(' ').next()?.parse().ok()?;
    let own = typed.rsplit(' ').next().filter(|it| !it.ends_with(|c: char| c.is_ascii_digit()));
    Some(format!("{} {}", number * 1.25, own.unwrap_or(unit)))
}

fn answers(report: &Report) -> serde_json::Value {
    serde_json::json!([report.findings, report.sections])
}

fn is_there(report: &Report, set: Part) -> bool {
    let mut answers = report.sections.iter().flat_map(|section| &section.answers);
    answers.any(|it| it.subject == set.name() && it.verdict.tone != Tone::Open)
}

fn complaints(name: &str, plan: &Plan) -> (usize, Vec<String>) {
    let mut memory = Memory::detailed();
    let before = untried(&mut memory, plan);
    let listed: BTreeSet<_> = taken(&before).into_iter().map(|it| it.path).collect();
    let (was, mut typed, mut wrong) = (answers(&before), 0, Vec::new());
    for (path, field) in &before.fields {
        if field.state != State::Assumed || listed.contains(path) {
            continue;
        }
        let (Some(place), Some(value)) = (Place::at_path(path), &field.value) else { continue };
        // a set that isn't there is there as soon as one of its fields is typed
        let is_set = matches!(place.part(), Part::Injectors | Part::SecondInjectors);
        if is_set && !is_there(&before, place.part()) {
            continue;
        }
        let Some(text) = other(place, &value.shown) else { continue };
        let mut plan = plan.clone();
        if !plan.put(place, &text) {
            continue;
        }
        let after = untried(&mut memory, &plan);
        if after.fields.get(path).map(|it| it.state) != Some(State::Given) {
            continue;
        }
        typed += 1;
        if answers(&after) != was {
            wrong.push(format!("{name}: {path} = {text} changes an answer, and is not listed"));
        }
    }
    (typed, wrong)
}

#[test]
fn what_is_not_listed_as_assumed_changes_no_answer() {
    let (mut typed, mut wrong) = (0, Vec::new());
    for name in PLANS {
        let example = plans::ALL.iter().find(|it| it.name == name).expect(name);
        let (count, complaints) = complaints(name, &plan::parse(example.text).expect(name));
        typed += count;
        wrong.extend(complaints);
    }
    assert!(typed > 50, "only {typed} values were typed");
    assert!(wrong.is_empty(), "{} of {typed}:\n{}", wrong.len(), wrong.join("\n"));
}
