//! Question 3: how does this output rest, before the load is connected?

use quietpin_core::fields;

use super::{controller::controller_view, form, frame, section};
use crate::{
    components::{Dispatch, Page, answer_view, button, sending},
    element::{View, all, el, keyed, nothing, several},
    state::{Action, List},
};

/// The question, its answers and its fields.
pub(crate) fn rest_view(page: &Page) -> View {
    let state = &page.state;
    let section = section(&state.report, "rest");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let of_load = |at: usize| answers.iter().find(|answer| answer.subject == format!("loads.{at}"));
    let others = answers.iter().filter(|answer| !answer.subject.starts_with("loads."));
    let load = |at: usize| {
        let fields = entry(page, List::Loads, at);
        let view = match of_load(at) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        };
        keyed(&format!("load{at}"), el!("div"; view))
    };
    let output =
        |at: usize| keyed(&format!("output{at}"), el!("div"; entry(page, List::Outputs, at)));
    let content = several!(
        el!("div"; all(others.map(|answer| answer_view(page, answer, nothing())))),
        el!("div"; all((0..List::Loads.length(&state.plan)).map(load))),
        add(List::Loads, "Add a load", &page.send),
        el!("h3"; "The controller’s outputs"),
        el!("div"; all((0..List::Outputs.length(&state.plan)).map(output))),
        add(List::Outputs, "Add an output", &page.send),
        controller_view(page),
    );
    frame(section, Some(content))
}

fn entry(page: &Page, list: List, at: usize) -> View {
    let record = format!("{}.{at}", list.name());
    let fields: Vec<_> = fields::of(list.name()).collect();
    let named = page.state.plan.get(&format!("{record}.name")).unwrap_or_default();
    let what = what(list, at, named);
    let remove = sending(&page.send, Action::Remove(list, at));
    el!("fieldset", "id" = format!("at-{record}-fields");
        el!("legend"; &what),
        form(page, &record, &fields),
        button(Some("quiet"), format!("Remove {what}"), remove),
    )
}

fn what(list: List, at: usize, named: &str) -> String {
    let kind = match list {
        List::Outputs => "output",
        List::Loads => "load",
    };
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

fn add(list: List, label: &str, send: &Dispatch) -> View {
    button(Some("add"), label, sending(send, Action::Add(list)))
}
