//! Question 2: can the outputs carry these injectors, and what power do they feed?

use std::rc::Rc;

use quietpin_core::{plan::Fuel, report::Answer};

use super::{form_of, frame, section};
use crate::{
    components::{Page, answer_view, fold},
    element::{View, all},
};

/// The question, its answers and their fields.
pub(crate) fn injectors_view(page: &Page) -> View {
    let section = section(&page.state.report, "injectors");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let answer = |it: &Rc<Answer>| answer_view(page, it, fields(page, it));
    frame(section, Some(all(answers.iter().map(answer))))
}

/// The fields that an answer rests on. Those of the fuel wait until they are wanted: a blank plan asks for few things.
fn fields(page: &Page, answer: &Answer) -> View {
    if answer.subject != "fuel" {
        return form_of(page, "injectors");
    }
    let is_wanted = page.state.plan.fuel != Fuel::default();
    fold("rare", "Flow, power and fuel", is_wanted, form_of(page, "fuel"))
}
