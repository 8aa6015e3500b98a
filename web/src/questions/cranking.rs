//! At what speed do the relays pull in?

use quietpin_core::{
    car::relays::of_coils,
    fields::{controller, cranking},
    schema::{Part, Place},
};

use super::{
    answers_in, form, frame,
    outputs::{add, entry},
    relays, same_fields, section,
    trigger::is_of_wheels,
};
use crate::{
    components::{Drawn, Page, answer_view, is_as_before, parts},
    element::{View, el, nothing, several},
    state::State,
};

/// The question, its answers and its fields: the coils' relay first, then the others, each in a place of its own.
pub(crate) fn cranking_view(page: &Page) -> View {
    let state = &page.state;
    let coils = about(state, "cranking");
    // the speeds of the engine, and those of the coils' relay
    let mut own = vec![cranking::SPEED.place()];
    own.extend(relays::of_coils(&state.plan));
    let is_here = |it: &Place| !is_of_wheels(*it) && *it != cranking::SPEED.place();
    own.extend(Part::Cranking.places().filter(is_here));
    own.push(controller::CRANKING_DWELL.into());
    own.push(controller::LEAST_SUPPLY.into());
    let content = several!(
        el!("div"; coils.map(|it| answer_view(page, it, form(page, &own)))),
        el!("div"; parts(page, state.plan.count(Part::Relays), RELAY)),
        add(Part::Relays, "Add a relay: pump, alternator, fan", &page.send),
    );
    frame(section(&state.report, "cranking"), Some(content))
}

const RELAY: Drawn = Drawn {
    draw: |page, at| {
        if at == of_coils(&page.state.plan) {
            return nothing();
        }
        let fields = entry(page, Part::Relays, at, &relays::switched(at));
        match about(&page.state, &Part::Relays.record(at)) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let subject = Part::Relays.record(at);
        is_as_before(about(one, &subject), about(other, &subject))
            && one.plan.record(Part::Relays, at) == other.plan.record(Part::Relays, at)
            && of_coils(&one.plan) == of_coils(&other.plan)
            && same_fields(one, other, &subject)
    },
};

/// The answer about a relay.
fn about<'a>(
    state: &'a State,
    subject: &str,
) -> Option<&'a std::rc::Rc<quietpin_core::report::Answer>> {
    answers_in(&state.report, "cranking").iter().find(|answer| answer.subject == subject)
}
