//! Plans as they are typed, and fields that can't be read.

use quietpin_core::{
    plan::Plan,
    read::State,
    report::{Answer, Report},
    schema::Place,
};

/// A plan with what is usual, and over it what a test types: each by its path.
///
/// # Panics
///
/// If there is no such place in a plan.
pub fn planned(usual: &[(&str, &str)], typed: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    for (path, text) in usual.iter().chain(typed) {
        put(&mut plan, path, text);
    }
    plan
}

/// Types a text at a path; a list is made as long as the path asks.
///
/// # Panics
///
/// Where there is no such place.
pub fn put(plan: &mut Plan, path: &str, text: &str) {
    let place = Place::at_path(path).unwrap_or_else(|| panic!("{path} is no place in a plan"));
    while plan.count(place.part()) <= place.record() {
        plan.add(place.part());
    }
    plan.put(place, text);
}

/// The answers to a question.
///
/// # Panics
///
/// If the report does not ask it.
pub fn answers<'a>(report: &'a Report, question: &str) -> Vec<&'a Answer> {
    let section = report.sections.iter().find(|section| section.id == question);
    let section = section.unwrap_or_else(|| panic!("{question} is not asked"));
    section.answers.iter().map(AsRef::as_ref).collect()
}

/// The text at a path is refused with this finding alone, and kept as it was typed.
///
/// # Panics
///
/// If it is not.
#[track_caller]
pub fn check_refused(plan: &Plan, report: &Report, path: &str, finding: &str) {
    let text = plan.get(path).unwrap_or_default();
    let at_field: Vec<_> =
        report.findings.iter().filter(|it| it.subject == path).map(|it| it.message.code).collect();
    assert_eq!(at_field, [finding], "{path}: {text:?}");
    let state = report.fields.get(path).map(|field| field.state);
    assert_eq!(state, Some(State::Unreadable), "{path}: {text:?}");
    assert!(!text.is_empty(), "nothing typed is lost");
}

/// What is lacking in the answer to whatever was typed: a field that stands nohow, no answer, a figure that is no number.
pub fn lacking(report: &Report, question: &str, typed: &[(&str, &str)]) -> Vec<String> {
    let stands_nohow = |path: &&str| !report.fields.contains_key(*path);
    let fields = typed.iter().map(|(path, _)| *path).filter(stands_nohow);
    let answers = answers(report, question);
    let none = answers.is_empty().then(|| "no answer".to_owned());
    let figures = answers.iter().flat_map(|answer| &answer.figures);
    let is_none = |number: Option<f64>| number.is_some_and(|number| !number.is_finite());
    let figures = figures.filter(|it| is_none(it.value.number)).map(|it| it.label.text.clone());
    fields.map(|path| format!("{path} has no state")).chain(none).chain(figures).collect()
}
