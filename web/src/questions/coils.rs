//! Are the coils charged in time, and what must their feed bear?

use quietpin_core::schema::Part;

use super::{answers_in, form_of, frame, relays, section};
use crate::{
    components::{Page, answer_view},
    element::{View, el, several},
};

/// The question, its answers and their fields. Each has a place of its own, so that a field keeps its own while the other
/// answer comes and goes.
pub(crate) fn coils_view(page: &Page) -> View {
    let report = &page.state.report;
    let answers = answers_in(report, "coils");
    let of = |subject: &str| {
        let answer = answers.iter().find(|answer| answer.subject == subject);
        el!("div"; answer.map(|it| answer_view(page, it, fields_of(page, subject))))
    };
    frame(section(report, "coils"), Some(several!(of("coils"), of("coils.feed"))))
}

fn fields_of(page: &Page, subject: &str) -> View {
    if subject == "coils.feed" {
        relays::contact_of_coils(page)
    } else {
        form_of(page, Part::Coils)
    }
}
