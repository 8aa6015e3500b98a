//! Question 5: are the coils charged in time, and what must their feed bear?

use quietpin_core::fields;

use super::{answers_in, form, frame, section};
use crate::{
    components::{Page, answer_view},
    element::{View, el, several},
};

/// Fields of the feed; it is answered by itself.
const FEED: [&str; 5] = ["relays", "relay", "fuse", "lead_length", "lead_size"];

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
    let is_feed = subject == "coils.feed";
    let is_here =
        |path: &str| path.rsplit('.').next().is_some_and(|name| FEED.contains(&name)) == is_feed;
    let fields: Vec<_> = fields::of("coils").filter(|field| is_here(field.path)).collect();
    form(page, "coils", &fields)
}
