//! Question 3: how does this output rest, before the load is connected?

use std::rc::Rc;

use quietpin_core::{fields, report::Answer};

use super::{answers_in, controller::CONTROLLER, form, frame, same_fields, section};
use crate::{
    components::{Dispatch, Drawn, Page, answer_view, button, is_as_before, parts, sending},
    element::{View, all, el, nothing, several},
    state::{Action, List, State},
};

/// The question, its answers and its fields.
pub(crate) fn rest_view(page: &Page) -> View {
    let state = &page.state;
    let others =
        answers_in(&state.report, "rest").iter().filter(|it| !it.subject.starts_with("loads."));
    let content = several!(
        el!("div"; all(others.map(|answer| answer_view(page, answer, nothing())))),
        el!("div"; parts(page, List::Loads.length(&state.plan), LOAD)),
        add(List::Loads, "Add a load", &page.send),
        el!("h3"; "The controller’s outputs"),
        el!("div"; parts(page, List::Outputs.length(&state.plan), OUTPUT)),
        add(List::Outputs, "Add an output", &page.send),
        el!("div"; parts(page, 1, CONTROLLER)),
    );
    frame(section(&state.report, "rest"), Some(content))
}

const LOAD: Drawn = Drawn {
    draw: |page, at| {
        let fields = entry(page, List::Loads, at);
        match about(&page.state, at) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let (plan, changed) = (&one.plan, &other.plan);
        is_as_before(about(one, at), about(other, at))
            && plan.loads.get(at) == changed.loads.get(at)
            // it may be hung on any of them
            && plan.outputs.iter().map(|it| &it.name).eq(changed.outputs.iter().map(|it| &it.name))
            && same_fields(one, other, &record(List::Loads, at))
    },
};

/// The answer about a load.
fn about(state: &State, at: usize) -> Option<&Rc<Answer>> {
    let subject = record(List::Loads, at);
    answers_in(&state.report, "rest").iter().find(|answer| answer.subject == subject)
}

const OUTPUT: Drawn = Drawn {
    draw: |page, at| entry(page, List::Outputs, at),
    is_same: |one, other, at| {
        one.plan.outputs.get(at) == other.plan.outputs.get(at)
            && same_fields(one, other, &record(List::Outputs, at))
    },
};

pub(super) fn record(list: List, at: usize) -> String {
    format!("{}.{at}", list.name())
}

pub(super) fn entry(page: &Page, list: List, at: usize) -> View {
    let record = record(list, at);
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
        List::Relays => "relay",
    };
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

pub(super) fn add(list: List, label: &str, send: &Dispatch) -> View {
    button(Some("add"), label, sending(send, Action::Add(list)))
}
