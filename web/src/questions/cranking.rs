//! At what speed do the relays pull in?

use quietpin_core::{
    car::relays::of_coils,
    fields::{controller, cranking, relays::NAME},
    schema::Part,
};

use super::{
    answers_in,
    outputs::{add, called, count, removing},
    relays,
    trigger::is_of_wheels,
};
use crate::{
    cards::{Block, Card},
    state::State,
};

/// The coils' relay first, then the others.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, "cranking");
    // the speeds of the engine, and those of the coils' relay
    let mut own = vec![cranking::SPEED.place()];
    own.extend(relays::of_coils(plan));
    own.extend(
        Part::Cranking.places().filter(|it| !is_of_wheels(*it) && *it != cranking::SPEED.place()),
    );
    own.push(controller::CRANKING_DWELL.into());
    own.push(controller::LEAST_SUPPLY.into());
    let first = Card::new("cranking", "Cranking and the coil relay")
        .asking(Block::Form(own))
        .asking(Block::Made(
            |page, _| add(page, Part::Relays, "Add a relay: pump, alternator, fan", ""),
            0,
        ));
    let mut cards = vec![first.answering(answers.iter().filter(|it| it.subject == "cranking"))];
    for at in (0..count(plan, Part::Relays)).filter(|at| *at != of_coils(plan)) {
        let subject = Part::Relays.record(at);
        let own = answers.iter().filter(|it| it.subject == subject);
        let card = Card::new(&subject, called(Part::Relays, at, plan.text(NAME.at(at))))
            .asking(Block::Form(relays::switched(at)))
            .asking(Block::Made(|page, at| removing(page, Part::Relays, at), at));
        cards.push(card.answering(own).titled());
    }
    cards
}
