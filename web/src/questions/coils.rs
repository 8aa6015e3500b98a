//! Are the coils charged in time, and what must their feed bear?

use quietpin_core::schema::Part;

use super::{answers_in, of_part, relays};
use crate::{
    cards::{Block, Card},
    state::State,
};

/// The coils, and what feeds them.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let (feed, own) = answers_in(&state.report, "coils")
        .iter()
        .partition::<Vec<_>, _>(|it| it.subject == "coils.feed");
    let mut cards = vec![Card::new("coils", "Coils").asking(of_part(Part::Coils)).answering(own)];
    if !feed.is_empty() {
        let contact = Block::Form(relays::contact_of_coils(&state.plan));
        cards.push(Card::new("coils.feed", "Feed of the coils").asking(contact).answering(feed));
    }
    cards
}
