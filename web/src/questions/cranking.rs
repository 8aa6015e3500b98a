//! At what speed do the relays pull in?

use quietpin_core::schema::Part;

use super::{
    answers_in, form_of, frame,
    outputs::{add, entry},
    same_fields, section,
};
use crate::{
    components::{Drawn, Page, answer_view, is_as_before, parts},
    element::{View, el, several},
    state::State,
};

/// The question, its answers and its fields: the coils' relay first, then the others, each in a place of its own.
pub(crate) fn cranking_view(page: &Page) -> View {
    let state = &page.state;
    let coils = about(state, "cranking");
    let content = several!(
        el!("div"; coils.map(|it| answer_view(page, it, form_of(page, Part::Cranking)))),
        el!("div"; parts(page, state.plan.count(Part::Relays), RELAY)),
        add(Part::Relays, "Add a relay: pump, alternator, fan", &page.send),
    );
    frame(section(&state.report, "cranking"), Some(content))
}

const RELAY: Drawn = Drawn {
    draw: |page, at| {
        let fields = entry(page, Part::Relays, at);
        match about(&page.state, &Part::Relays.record(at)) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let subject = Part::Relays.record(at);
        is_as_before(about(one, &subject), about(other, &subject))
            && one.plan.record(Part::Relays, at) == other.plan.record(Part::Relays, at)
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
