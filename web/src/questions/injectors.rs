//! Can the outputs carry these injectors, and what power do they feed?

use quietpin_core::{car::relays::feeding, fields::relays::Purpose, schema::Part};

use super::{form_of, frame, relays, section};
use crate::{
    components::{Page, answer_view, button, fold, sending},
    element::{View, el, nothing, several},
    state::Action,
};

/// The question, its answers and their fields. Those of a second set keep their place when the answer to them comes; and those
/// that come later wait until they are wanted: a blank plan asks for few things.
pub(crate) fn injectors_view(page: &Page) -> View {
    let section = section(&page.state.report, "injectors");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let answer = |subject: &str| answers.iter().find(|answer| answer.subject == subject);
    let of = |subject: &str, fields| answer(subject).map(|it| answer_view(page, it, fields));
    let has_second = answer("second_injectors").is_some();
    let is_begun = has_second || answer("injector_feed").is_some();
    let second = || {
        let fields = form_of(page, Part::SecondInjectors);
        fold("second", "A second set of injectors", has_second, fields)
    };
    let is_wanted = !page.state.plan.is_blank(Part::Fuel);
    let fuel = fold("rare", "Flow, power and fuel", is_wanted, form_of(page, Part::Fuel));
    let content = several!(
        el!("div"; of("injectors", form_of(page, Part::Injectors))),
        el!("div"; of("second_injectors", nothing())),
        el!("div"; is_begun.then(second)),
        el!("div"; of("injector_feed", feed(page))),
        el!("div"; of("fuel", fuel)),
    );
    frame(section, Some(content))
}

/// The fuse and the contact of their relay, once there is one.
fn feed(page: &Page) -> View {
    if let Some(at) = feeding(&page.state.plan, Purpose::Injectors) {
        return relays::contact_of_injectors(page, at);
    }
    let add = sending(&page.send, Action::AddRelay(Purpose::Injectors));
    button(Some("add"), "Add the relay that feeds them", add)
}
