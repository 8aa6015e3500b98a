//! A value that is typed as it was taken makes nothing graver: what a data sheet says is never punished against leaving it blank.
//!
//! Source: the rule is the project's own.

use std::collections::BTreeMap;

use quietpin_core::{
    finding::Severity,
    plan::{self, Plan},
    read::State,
    report::{Memory, Report, untried},
    schema::{Kind, Place},
};
use quietpin_tests::plans;

/// One plan of each question, and the two whole cars.
const PLANS: [&str; 14] = [
    "coils-weak",
    "cranking-chatter",
    "cranking-usual",
    "demo",
    "firing-six-right",
    "fuel-runs-out",
    "injectors-driver",
    "injectors-resistors-fitted",
    "outputs-care",
    "outputs-right",
    "outputs-switching",
    "standing-sound",
    "trigger-suits",
    "whole-car",
];

type Gravest = BTreeMap<(&'static str, String), Severity>;

fn gravest(report: &Report) -> Gravest {
    let mut gravest = Gravest::new();
    for finding in &report.findings {
        let named = (finding.message.code, finding.subject.clone());
        let known = gravest.entry(named).or_insert(finding.severity);
        *known = finding.severity.min(*known);
    }
    gravest
}

/// What was taken, as a person types it; nothing where that is a sentence or was rounded to be shown.
fn as_typed(place: Place, shown: &str, number: Option<f64>) -> Option<String> {
    let typed = shown.replace('−', "-");
    match place.field().kind {
        Kind::Quantity { .. } | Kind::Whole(..) => {
            (number.is_some() || typed.contains(" to ")).then_some(typed)
        }
        Kind::Choice(table) => {
            table.iter().find(|it| it.label == shown).map(|it| it.code.to_owned())
        }
        Kind::Text | Kind::Row | Kind::NameIn(_) => None,
    }
}

fn complaints(name: &str, plan: &Plan) -> (usize, Vec<String>) {
    let mut memory = Memory::detailed();
    let before = untried(&mut memory, plan);
    let (was, mut typed, mut wrong) = (gravest(&before), 0, Vec::new());
    let assumed = before.fields.iter().filter(|(_, field)| field.state == State::Assumed);
    for (path, field) in assumed {
        let (Some(place), Some(value)) = (Place::at_path(path), &field.value) else { continue };
        let Some(text) = as_typed(place, &value.shown, value.number) else { continue };
        let mut plan = plan.clone();
        // what is taken of a record that the plan does not have is typed nowhere
        if !plan.put(place, &text) {
            continue;
        }
        let after = untried(&mut memory, &plan);
        let state = after.fields.get(path).map(|it| it.state);
        if state != Some(State::Given) {
            wrong.push(format!("{name}: {path} = {text} is {state:?}"));
            continue;
        }
        typed += 1;
        let is = gravest(&after);
        let graver = is.iter().filter(|(named, it)| was.get(*named).is_none_or(|was| it < &was));
        wrong.extend(graver.map(|it| format!("{name}: {path} = {text} brings {it:?}")));
        let gone =
            was.iter().filter(|(named, it)| **it < Severity::Doubt && !is.contains_key(*named));
        wrong.extend(gone.map(|it| format!("{name}: {path} = {text} hides {it:?}")));
    }
    (typed, wrong)
}

#[test]
fn what_is_typed_as_it_was_taken_makes_nothing_graver_and_hides_nothing_grave() {
    let (mut typed, mut wrong) = (0, Vec::new());
    for name in PLANS {
        let example = plans::ALL.iter().find(|it| it.name == name).expect(name);
        let plan = plan::parse(example.text).expect(name);
        let (count, complaints) = complaints(name, &plan);
        typed += count;
        wrong.extend(complaints);
    }
    assert!(typed > 300, "only {typed} values were typed");
    assert!(wrong.is_empty(), "{} of {typed}:\n{}", wrong.len(), wrong.join("\n"));
}
