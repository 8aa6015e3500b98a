//! Can the outputs carry these injectors, and what power do they feed?

use quietpin_core::{car::relays::feeding, fields::relays::Purpose, schema::Part};

use super::{answers_in, feeds, of_part, of_record, relays};
use crate::{
    cards::{Block, Card},
    components::{button, sending},
    state::{Action, State},
};

/// One set of injectors, the other, what feeds them, and the fuel. Those that come later wait until they are wanted: a
/// blank plan asks for few things.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let answers = answers_in(&state.report, "injectors");
    let of = |subject: &'static str| answers.iter().filter(move |it| it.subject == subject);
    let has_feed = of("injector_feed").next().is_some();
    let mut cards = vec![
        Card::new("injectors", "Injectors")
            .asking(of_set(Part::Injectors))
            .answering(of("injectors")),
    ];
    if has_feed {
        let feed = match feeding(&state.plan, Purpose::Injectors) {
            Some(at) => Block::Form(relays::contact_of_injectors(at)),
            None => Block::Made(
                |page, _| {
                    let add = sending(&page.send, Action::AddRelay(Purpose::Injectors));
                    button(Some("add"), "Add the relay that feeds them", add)
                },
                0,
            ),
        };
        let card = Card::new("injector_feed", "Feed of the injectors").asking(feed);
        cards.push(card.answering(of("injector_feed")));
    }
    if has_feed || of("second_injectors").next().is_some() {
        let second = Card::new("second_injectors", "A second set of injectors");
        cards.push(second.asking(of_set(Part::SecondInjectors)).answering(of("second_injectors")));
    }
    cards.push(
        Card::new("fuel", "Flow, power and fuel").asking(of_part(Part::Fuel)).answering(of("fuel")),
    );
    cards
}

/// The fields of a set; its fuse is asked where it is fed.
fn of_set(part: Part) -> Block {
    Block::Form(of_record(part).into_iter().filter(|it| !feeds::is_of_the_feeds(it)).collect())
}
