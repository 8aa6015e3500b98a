//! Question 2: can the outputs carry these injectors?

use super::{form_of, frame, section};
use crate::{
    components::{Page, answer_view, fold},
    element::{View, el, nothing, several},
};

/// The question, its answers and its fields. The fields of a second set keep their place when the answer to them comes.
pub(crate) fn injectors_view(page: &Page) -> View {
    let section = section(&page.state.report, "injectors");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let answer = |subject: &str| answers.iter().find(|answer| answer.subject == subject);
    let of = |subject: &str, fields| answer(subject).map(|it| answer_view(page, it, fields));
    let is_begun = answers.len() > 1;
    let second = || {
        let wanted = answer("second_injectors").is_some();
        fold("second", "A second set of injectors", wanted, form_of(page, "second_injectors"))
    };
    let content = several!(
        el!("div"; of("injectors", form_of(page, "injectors"))),
        el!("div"; of("second_injectors", nothing())),
        el!("div"; is_begun.then(second)),
        el!("div"; of("injector_feed", form_of(page, "injector_feed"))),
    );
    frame(section, Some(content))
}
