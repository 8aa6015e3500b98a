//! How long does the battery last with the key off?

use quietpin_core::{
    fields::{battery, controller},
    schema::Place,
};

use super::{answers_in, form, frame, section};
use crate::{
    components::{Page, answer_view},
    element::{View, all},
};

/// What the battery holds, and what draws from it.
const FIELDS: [Place; 3] =
    [battery::CAPACITY.place(), battery::OTHER_DRAW.place(), controller::KEY_OFF_DRAW.place()];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_the_standing_car(place: &Place) -> bool {
    FIELDS.contains(place)
}

/// The question, its answer and its fields.
pub(crate) fn standing_view(page: &Page) -> View {
    let report = &page.state.report;
    let answers = answers_in(report, "standing").iter();
    let answers = answers.map(|it| answer_view(page, it, form(page, &FIELDS)));
    frame(section(report, "standing"), Some(all(answers)))
}
