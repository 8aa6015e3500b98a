//! Question 1: which channel fires which cylinder, and is it wired like that?

use std::rc::Rc;

use quietpin_core::{fields, report::Answer};

use super::{answers_in, form, form_of, frame, section};
use crate::{
    components::{FieldProps, Page, answer_view, field_view, fold},
    element::{View, all, el, nothing, several},
};

/// The question, its answers and its fields.
pub(crate) fn channels_view(page: &Page) -> View {
    let report = &page.state.report;
    let answers = answers_in(report, "channels");
    let answer = |it: &Rc<Answer>| answer_view(page, it, inputs(page, answers, it));
    frame(section(report, "channels"), Some(all(answers.iter().map(answer))))
}

/// The fields that an answer rests on. What was found at the car is typed where the plan is, and keeps its place
/// when the answer to it comes.
fn inputs(page: &Page, answers: &[Rc<Answer>], answer: &Answer) -> View {
    let planned =
        |kind: &'static str, list: &'static str| several!(part(page, kind), as_wired(page, list));
    match answer.subject.as_str() {
        "engine" => several!(
            form_of(page, "engine"),
            // the third thing that a blank plan is asked
            (answers.len() == 1).then(|| part(page, "ignition")),
        ),
        "channels.coils_wired" | "channels.injectors_wired" => nothing(),
        subject if subject.starts_with("channels.ignition") => planned("ignition", "coils_wired"),
        _ => planned("injection", "injectors_wired"),
    }
}

/// The fields of the channels whose names begin alike.
fn part(page: &Page, kind: &str) -> View {
    let is_part = |path: &str| path.rsplit('.').next().is_some_and(|name| name.starts_with(kind));
    let fields: Vec<_> = fields::of("channels").filter(|field| is_part(field.path)).collect();
    form(page, "channels", &fields)
}

/// A field for each channel that the report speaks of.
fn as_wired(page: &Page, list: &str) -> View {
    let state = &page.state;
    let prefix = format!("channels.{list}.");
    let number = |path: &String| path.strip_prefix(&prefix)?.parse::<usize>().ok();
    let count = state.report.fields.keys().filter_map(number).max().map_or(0, |last| last + 1);
    if count == 0 {
        return nothing();
    }
    let has_typed = (0..count)
        .any(|at| state.plan.get(&format!("{prefix}{at}")).is_some_and(|it| !it.is_empty()));
    let title = if list == "coils_wired" {
        "Found at the car: each ignition channel fired alone"
    } else {
        "Found at the car: each injection channel pulsed alone"
    };
    let field = |at: usize| {
        let label = Some(format!("Channel {} reaches cylinder", at + 1));
        field_view(&FieldProps { path: format!("{prefix}{at}"), page, label })
    };
    let fields = el!("div", "class" = "row-form"; all((0..count).map(field)));
    fold("wired", title, has_typed, fields)
}
