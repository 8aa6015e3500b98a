//! How long does the battery last?

use quietpin_core::{
    fields::{battery, controller},
    schema::Place,
};

use super::answers_in;
use crate::{
    cards::{Block, Card},
    state::State,
};

/// What the battery holds, and what draws from it.
const FIELDS: [Place; 3] =
    [battery::CAPACITY.place(), battery::OTHER_DRAW.place(), controller::KEY_OFF_DRAW.place()];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_the_standing_car(place: &Place) -> bool {
    FIELDS.contains(place)
}

/// The car that stands.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let card = Card::new("standing", "Standing, key off").asking(Block::Form(FIELDS.to_vec()));
    vec![card.answering(answers_in(&state.report, "standing"))]
}
