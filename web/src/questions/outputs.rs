//! How does this output rest, before the load is connected?

use std::rc::Rc;

use quietpin_core::{
    fields::{self, outputs},
    plan::{Plan, names_in},
    report::Answer,
    schema::{Part, Place},
};

use super::{answers_in, controller::CONTROLLER, form, frame, relays, same_fields, section};
use crate::{
    components::{Dispatch, Drawn, Page, answer_view, button, is_as_before, parts, sending},
    element::{View, all, el, nothing, several},
    state::{Action, State},
};

/// The question, its answers and its fields.
pub(crate) fn outputs_view(page: &Page) -> View {
    let state = &page.state;
    let others =
        answers_in(&state.report, "outputs").iter().filter(|it| !is_of_record(&it.subject));
    let content = several!(
        el!("div"; all(others.map(|answer| answer_view(page, answer, nothing())))),
        el!("div"; parts(page, state.plan.count(Part::Loads), LOAD)),
        add(Part::Loads, "Add a load", &page.send),
        el!("div"; parts(page, state.plan.count(Part::Relays), RELAY)),
        add(Part::Relays, "Add a relay", &page.send),
        el!("h3"; "The controller's outputs"),
        el!("div"; parts(page, state.plan.count(Part::Outputs), OUTPUT)),
        add(Part::Outputs, "Add an output", &page.send),
        el!("div"; parts(page, 1, CONTROLLER)),
    );
    frame(section(&state.report, "outputs"), Some(content))
}

const LOAD: Drawn = Drawn {
    draw: |page, at| {
        let fields: Vec<_> = Part::Loads.places().map(|place| place.at(at)).collect();
        let fields = entry(page, Part::Loads, at, &fields);
        match about(&page.state, &Part::Loads.record(at)) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let (plan, changed) = (&one.plan, &other.plan);
        is_as_before(about(one, &Part::Loads.record(at)), about(other, &Part::Loads.record(at)))
            && plan.record(Part::Loads, at) == changed.record(Part::Loads, at)
            // it may be hung on any of them
            && names(plan).eq(names(changed))
            && same_fields(one, other, &Part::Loads.record(at))
    },
};

const RELAY: Drawn = Drawn {
    draw: |page, at| {
        let fields = relays::coil(page, at);
        match about(&page.state, &coil(at)) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let (plan, changed) = (&one.plan, &other.plan);
        is_as_before(about(one, &coil(at)), about(other, &coil(at)))
            && plan.record(Part::Relays, at) == changed.record(Part::Relays, at)
            && names(plan).eq(names(changed))
            && same_fields(one, other, &Part::Relays.record(at))
    },
};

/// Whether an answer is about a load, or a relay's coil.
fn is_of_record(subject: &str) -> bool {
    [Part::Loads, Part::Relays]
        .iter()
        .any(|part| subject.strip_prefix(part.name()).is_some_and(|rest| rest.starts_with('.')))
}

/// What the answer about a relay's coil is about.
fn coil(relay: usize) -> String {
    Part::Relays.record(relay) + ".coil"
}

/// The answer about a load, or about a relay's coil.
fn about<'a>(state: &'a State, subject: &str) -> Option<&'a Rc<Answer>> {
    answers_in(&state.report, "outputs").iter().find(|answer| answer.subject == subject)
}

const OUTPUT: Drawn = Drawn {
    draw: |page, at| {
        let fields: Vec<_> = Part::Outputs.places().map(|place| place.at(at)).collect();
        entry(page, Part::Outputs, at, &fields)
    },
    is_same: |one, other, at| {
        one.plan.record(Part::Outputs, at) == other.plan.record(Part::Outputs, at)
            && same_fields(one, other, &Part::Outputs.record(at))
    },
};

/// The names that a load may have in a field of its own.
fn names(plan: &Plan) -> impl Iterator<Item = &str> {
    let outputs = (0..plan.count(Part::Outputs)).map(|at| plan.text(outputs::NAME.at(at)));
    outputs.chain((0..plan.count(Part::Relays)).map(|at| plan.text(fields::relays::NAME.at(at))))
}

pub(super) fn entry(page: &Page, list: Part, at: usize, fields: &[Place]) -> View {
    let record = list.record(at);
    let named = Place::at_path(&format!("{record}.name"));
    let named = named.map_or("", |place| page.state.plan.text(place));
    let what = what(list, at, named);
    let remove = sending(&page.send, Action::Remove(list, at));
    el!("fieldset", "id" = format!("at-{record}-fields");
        el!("legend"; &what),
        form(page, fields),
        button(Some("quiet"), format!("Remove {what}"), remove),
    )
}

pub(super) fn what(list: Part, at: usize, named: &str) -> String {
    // outputs, loads, relays
    let is_one = list != Part::Outputs || names_in(named).len() == 1;
    let kind = if is_one { list.name().trim_end_matches('s') } else { list.name() };
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

pub(super) fn add(list: Part, label: &str, send: &Dispatch) -> View {
    button(Some("add"), label, sending(send, Action::Add(list)))
}
