//! What was assumed, as far as an answer or a finding rests on it.

use std::collections::BTreeSet;

use crate::{
    quantity::Value,
    questions::trigger::words as trigger,
    read::State,
    report::{Answer, Report, Tone, unread::resting_on},
    schema::{Kind, Part, Place},
};

use super::names;

/// A value that was taken for a blank.
#[derive(Clone, Debug, PartialEq)]
pub struct Assumption {
    /// The path of the field.
    pub path: String,
    /// What it is called.
    pub label: &'static str,
    /// What was taken.
    pub value: Option<Value>,
    /// Why that.
    pub basis: Option<String>,
    /// Whether another record says it, which this one is said to be like.
    pub is_as_another: bool,
    /// Whether something was found that is about it.
    pub is_found: bool,
}

/// What was assumed, in the order in which it is asked, without what no answer rests on.
pub fn taken(report: &Report) -> Vec<Assumption> {
    let found: BTreeSet<&str> = report.findings.iter().map(|it| it.subject.as_str()).collect();
    let assumed = report.fields.iter().filter(|(_, field)| field.state == State::Assumed);
    let mut taken: Vec<_> = assumed
        .filter(|(path, _)| found.contains(path.as_str()) || is_used(report, path))
        .map(|(path, field)| Assumption {
            path: path.clone(),
            label: names::label(path).unwrap_or_default(),
            value: field.value.clone(),
            basis: field.basis.clone(),
            is_as_another: field.basis.as_ref().is_some_and(|basis| basis.starts_with("as “")),
            is_found: found.contains(path.as_str()),
        })
        .collect();
    taken.sort_by_key(|it| Place::at_path(&it.path).map(|it| it.at(0).in_cell(0)));
    taken
}

fn is_used(report: &Report, path: &str) -> bool {
    let Some(place) = Place::at_path(path) else { return true };
    is_asked(report, place)
        && answered(report).any(|(id, answer)| rests_on(report, id, answer, place))
}

/// Whether the field beside it, on which it hangs, asks for it.
fn is_asked(report: &Report, place: Place) -> bool {
    let Some(only) = place.field().only_if else { return true };
    // a relay is no load of several kinds: what hangs on its kind hangs on nothing
    let Some(beside) = place.beside(only.name) else { return true };
    let standing = report.fields.get(&beside.path());
    let Some(shown) = standing.and_then(|it| it.value.as_ref()).map(|it| it.shown.as_str()) else {
        return only.codes.contains(&"");
    };
    match beside.field().kind {
        Kind::Choice(choices) if !only.codes.is_empty() => {
            choices.iter().any(|it| only.codes.contains(&it.code) && it.label == shown)
        }
        _ => true,
    }
}

/// The answers that are given; one that is open may have numbers all the same.
fn answered(report: &Report) -> impl Iterator<Item = (&'static str, &Answer)> {
    let all = report
        .sections
        .iter()
        .flat_map(|section| section.answers.iter().map(|it| (section.id, it.as_ref())));
    all.filter(|(_, answer)| answer.verdict.tone != Tone::Open || !answer.figures.is_empty())
}

fn rests_on(report: &Report, id: &str, answer: &Answer, place: Place) -> bool {
    let about = [id, "/", answer.subject.as_str()].concat();
    let is_named = || resting_on(place).iter().any(|it| about.starts_with(it));
    match (place.part(), place.field().name) {
        // an output is solved with what hangs on it, or might
        (Part::Outputs, _) => {
            let outputs = [&answer.title].into_iter().flatten().chain(&answer.to_do);
            let mut outputs = outputs.filter_map(|it| names::in_gap(Some(it), "output"));
            id == "outputs" && outputs.any(|name| is_output(report, place, name))
        }
        // a coil has a voltage of its own, and no levels that its input is asked for
        (Part::TriggerInput, "low" | "high" | "capacitance") => {
            let is_coil = answer.why.as_ref().is_some_and(|it| it.code == trigger::WHY_COIL.code);
            answer.subject.ends_with("_sensor") && is_named() && !is_coil
        }
        (Part::Cranking, "idle") => {
            is_named() && answer.why.as_ref().is_some_and(|it| it.values.contains_key("idle"))
        }
        (Part::Loads | Part::Relays | Part::Sensors, _) => {
            let record = [place.part().name(), ".", &place.record().to_string()].concat();
            let rest = answer.subject.strip_prefix(&record);
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.')) || is_named()
        }
        _ => is_named(),
    }
}

/// Whether the record describes the output of this name, perhaps with others.
fn is_output(report: &Report, place: Place, name: &str) -> bool {
    let described = names::called(report, &place.path());
    described == name || crate::plan::names_in(&described).iter().any(|it| it == name)
}
