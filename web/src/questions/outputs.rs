//! How does this output rest, before the load is connected?

use std::rc::Rc;

use quietpin_core::{
    fields::outputs,
    plan::Plan,
    report::Answer,
    schema::{Part, Place},
};

use super::{answers_in, controller::CONTROLLER, form, frame, same_fields, section};
use crate::{
    components::{Dispatch, Drawn, Page, answer_view, button, is_as_before, parts, sending},
    element::{View, all, el, nothing, several},
    state::{Action, State},
};

/// The question, its answers and its fields.
pub(crate) fn outputs_view(page: &Page) -> View {
    let state = &page.state;
    let others =
        answers_in(&state.report, "outputs").iter().filter(|it| !it.subject.starts_with("loads."));
    let content = several!(
        el!("div"; all(others.map(|answer| answer_view(page, answer, nothing())))),
        el!("div"; parts(page, state.plan.count(Part::Loads), LOAD)),
        add(Part::Loads, "Add a load", &page.send),
        el!("h3"; "The controller’s outputs"),
        el!("div"; parts(page, state.plan.count(Part::Outputs), OUTPUT)),
        add(Part::Outputs, "Add an output", &page.send),
        el!("div"; parts(page, 1, CONTROLLER)),
    );
    frame(section(&state.report, "outputs"), Some(content))
}

const LOAD: Drawn = Drawn {
    draw: |page, at| {
        let fields = entry(page, Part::Loads, at);
        match about(&page.state, at) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let (plan, changed) = (&one.plan, &other.plan);
        is_as_before(about(one, at), about(other, at))
            && plan.record(Part::Loads, at) == changed.record(Part::Loads, at)
            // it may be hung on any of them
            && output_names(plan).eq(output_names(changed))
            && same_fields(one, other, &Part::Loads.record(at))
    },
};

/// The answer about a load.
fn about(state: &State, at: usize) -> Option<&Rc<Answer>> {
    let subject = Part::Loads.record(at);
    answers_in(&state.report, "outputs").iter().find(|answer| answer.subject == subject)
}

const OUTPUT: Drawn = Drawn {
    draw: |page, at| entry(page, Part::Outputs, at),
    is_same: |one, other, at| {
        one.plan.record(Part::Outputs, at) == other.plan.record(Part::Outputs, at)
            && same_fields(one, other, &Part::Outputs.record(at))
    },
};

fn output_names(plan: &Plan) -> impl Iterator<Item = &str> {
    (0..plan.count(Part::Outputs)).map(|at| plan.text(outputs::NAME.at(at)))
}

pub(super) fn entry(page: &Page, list: Part, at: usize) -> View {
    let record = list.record(at);
    let fields: Vec<_> = list.places().map(|place| place.at(at)).collect();
    let named = Place::at_path(&format!("{record}.name"));
    let named = named.map_or("", |place| page.state.plan.text(place));
    let what = what(list, at, named);
    let remove = sending(&page.send, Action::Remove(list, at));
    el!("fieldset", "id" = format!("at-{record}-fields");
        el!("legend"; &what),
        form(page, &fields),
        button(Some("quiet"), format!("Remove {what}"), remove),
    )
}

fn what(list: Part, at: usize, named: &str) -> String {
    // outputs, loads, relays
    let kind = list.name().trim_end_matches('s');
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

pub(super) fn add(list: Part, label: &str, send: &Dispatch) -> View {
    button(Some("add"), label, sending(send, Action::Add(list)))
}
