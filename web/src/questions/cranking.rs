//! Question 4: at what speed does the relay pull in?

use yew::prelude::*;

use super::{form_of, frame, section};
use crate::components::{Page, answer_view};

/// The question, its answers and its fields.
pub(crate) fn cranking_view(page: &Page) -> Html {
    let section = section(&page.state.report, "cranking");
    let answer = section.and_then(|section| section.answers.first());
    frame(
        section,
        html! {
            if let Some(answer) = answer {
                { answer_view(answer, form_of(page, "cranking")) }
            }
        },
    )
}
