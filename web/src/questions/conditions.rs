//! The battery and the temperatures between which every answer must hold.

use quietpin_core::{
    fields::controller,
    plan::MOST_ENTRIES,
    schema::{Part, Place},
};

use super::{feeds, standing};
use crate::{
    cards::{Block, Card},
    components::{Page, button, sending},
    element::{View, all, el, several},
    state::{Action, State},
};

/// The parts of the plan whose fields are asked here.
pub(super) const PARTS: &[Part] =
    &[Part::Battery, Part::Temperatures, Part::Controller, Part::SwitchedFeeds];

/// What every answer rests on, and what the plan's file held that has no place in it.
pub(super) fn cards(state: &State) -> Vec<Card> {
    // what the battery holds is asked where it is asked how long it lasts
    let is_here =
        |place: &Place| !standing::is_of_the_standing_car(place) && !feeds::is_of_the_feeds(place);
    let part = |part: Part| part.places().filter(is_here).collect::<Vec<Place>>();
    let mut fields = [part(Part::Battery), part(Part::Temperatures)].concat();
    fields.push(controller::SUPPLY_OFF.into());
    fields.push(controller::FEED.into());
    fields.push(controller::AFTER_KEY_OFF.into());
    fields.extend(part(Part::SwitchedFeeds));
    let mut conditions = vec![
        Card::new("conditions", "Battery voltages and temperatures").asking(Block::Form(fields)),
    ];
    for card in &mut conditions {
        card.idle = "Every answer uses these, from lowest to highest";
    }
    let mut cards = conditions;
    if !state.plan.left_over().is_empty() {
        let left = Block::Made(left_over, 0);
        cards.push(Card::new("left_over", "What has no place in this plan").asking(left));
    }
    cards
}

fn left_over(page: &Page, _: usize) -> View {
    let row = |(path, text): &(String, String)| el!("li"; el!("code"; path), ": ", text);
    let drop = button(
        Some("quiet"),
        "Remove what has no place",
        sending(&page.send, Action::DropLeftOver),
    );
    several!(
        el!("p", "class" = "why"; "Kept as it was in the file; nothing depends on it. Type what is true where it belongs, then remove the rest."),
        el!("ul"; all(page.state.plan.left_over().iter().take(MOST_ENTRIES).map(row))),
        drop,
    )
}
