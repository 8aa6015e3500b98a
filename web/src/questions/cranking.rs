//! Question 4: at what speed do the relays pull in?

use super::{
    answers_in, form_of, frame,
    rest::{add, entry, record},
    same_fields, section,
};
use crate::{
    components::{Drawn, Page, answer_view, is_as_before, parts},
    element::{View, el, several},
    state::{List, State},
};

/// The question, its answers and its fields: the coils' relay first, then the others, each in a place of its own.
pub(crate) fn cranking_view(page: &Page) -> View {
    let state = &page.state;
    let coils = about(state, "cranking");
    let content = several!(
        el!("div"; coils.map(|it| answer_view(page, it, form_of(page, "cranking")))),
        el!("div"; parts(page, List::Relays.length(&state.plan), RELAY)),
        add(List::Relays, "Add a relay: pump, alternator, fan", &page.send),
    );
    frame(section(&state.report, "cranking"), Some(content))
}

const RELAY: Drawn = Drawn {
    draw: |page, at| {
        let fields = entry(page, List::Relays, at);
        match about(&page.state, &record(List::Relays, at)) {
            Some(answer) => answer_view(page, answer, fields),
            None => fields,
        }
    },
    is_same: |one, other, at| {
        let subject = record(List::Relays, at);
        is_as_before(about(one, &subject), about(other, &subject))
            && one.plan.relays.get(at) == other.plan.relays.get(at)
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
