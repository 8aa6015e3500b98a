//! Are the coils charged in time, and what must their feed bear?

use quietpin_core::{
    fields::coils,
    schema::{Part, Place},
};

use super::{answers_in, form, frame, section};
use crate::{
    components::{Page, answer_view},
    element::{View, el, several},
};

/// Fields of the feed; it is answered by itself.
const FEED: [Place; 5] = [
    coils::RELAYS.place(),
    coils::RELAY.place(),
    coils::FUSE.place(),
    coils::LEAD_LENGTH.place(),
    coils::LEAD_SIZE.place(),
];

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
    let is_here = |place: &Place| FEED.contains(place) == is_feed;
    form(page, &Part::Coils.places().filter(is_here).collect::<Vec<_>>())
}
