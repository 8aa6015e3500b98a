//! The battery and the temperatures between which every answer must hold.

use quietpin_core::{
    fields::controller,
    plan::{LeftOver, MOST_ENTRIES},
    schema::{Part, Place},
};

use super::{form, frame_of, standing};
use crate::{
    components::{Page, button, sending},
    element::{View, all, el, several},
    state::Action,
};

/// The parts of the plan whose fields are asked here.
pub(super) const PARTS: &[Part] =
    &[Part::Battery, Part::Temperatures, Part::Controller, Part::SwitchedFeeds];

/// The question, its answers and its fields.
pub(crate) fn conditions_view(page: &Page) -> View {
    // what the battery holds is asked where it is asked how long it lasts
    let is_here = |place: &Place| !standing::is_of_the_standing_car(place);
    let part = |part: Part| part.places().filter(is_here).collect::<Vec<Place>>();
    let mut fields = [part(Part::Battery), part(Part::Temperatures)].concat();
    fields.push(controller::SUPPLY_OFF.into());
    fields.push(controller::FEED.into());
    fields.extend(part(Part::SwitchedFeeds));
    let left = page.state.plan.left_over();
    several!(
        frame_of(
            "conditions",
            "Battery voltages and temperatures",
            several!(
                el!("p", "class" = "why"; "Every answer is worked out at the ends of these."),
                form(page, &fields),
            )
        ),
        el!("div"; (!left.is_empty()).then(|| left_over(page, left))),
    )
}

/// What the plan's file held that has no place in it.
fn left_over(page: &Page, left: &[LeftOver]) -> View {
    let row = |(path, text): &LeftOver| el!("li"; el!("code"; path), ": ", text);
    let drop = button(
        Some("quiet"),
        "Remove what has no place",
        sending(&page.send, Action::DropLeftOver),
    );
    frame_of(
        "left_over",
        "What has no place in this plan",
        several!(
            el!("p", "class" = "why"; "Kept as it was in the file; nothing depends on it. Type what is true where it belongs, then remove the rest."),
            el!("ul"; all(left.iter().take(MOST_ENTRIES).map(row))),
            drop,
        ),
    )
}
