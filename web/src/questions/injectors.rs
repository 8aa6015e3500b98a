//! Question 2: can the outputs carry these injectors?

use yew::prelude::*;

use super::{form_of, frame, section};
use crate::components::{Page, answer_view};

/// The question, its answers and its fields.
pub(crate) fn injectors_view(page: &Page) -> Html {
    let section = section(&page.state.report, "injectors");
    let answer = section.and_then(|section| section.answers.first());
    frame(
        section,
        html! {
            if let Some(answer) = answer {
                { answer_view(answer, form_of(page, "injectors")) }
            }
        },
    )
}
