//! What is cut, crimped, labelled and bought?

use quietpin_core::{
    car::relays::{is_switched_by_key, with_coil},
    fields::{grounds, harness, loads, relays},
    plan::Plan,
    schema::{Part, Place},
};

use super::{
    answers_in, length,
    outputs::{called, count},
};
use crate::{
    cards::{Block, Card},
    components::Page,
    element::{View, nothing},
    state::State,
};

/// The harness as it was bought, and how it is to be laid.
const HARNESS: [Place; 9] = [
    harness::LENGTH.place(),
    harness::SPARE.place(),
    harness::COIL_ENDS.place(),
    harness::INJECTOR_ENDS.place(),
    harness::PIN_CURRENT.place(),
    harness::PIN_WIRE.place(),
    harness::PERMANENT.place(),
    harness::SWITCHED.place(),
    harness::GROUND.place(),
];

/// The way of each channel's wire.
const CHANNELS: [(&str, &str, Place, &str); 3] = [
    ("wires.coils", "Coil wires", harness::COILS.place(), "Ignition #"),
    ("wires.injectors", "Injector wires", harness::INJECTORS.place(), "Injection #"),
    ("wires.second", "Second injector wires", harness::SECOND.place(), "Second injection #"),
];

const SENSORS: [Place; 2] = [harness::CRANK.place(), harness::CAM.place()];

/// The branches of the feeds.
const BRANCHES: [Place; 4] = [
    harness::COIL_FEED.place(),
    harness::COIL_GROUND.place(),
    harness::INJECTOR_FEED.place(),
    grounds::MINUS_LENGTH.place(),
];

/// Whether a field of a load, or of a relay's coil, is asked here.
pub(super) fn is_way(place: &Place) -> bool {
    let ways = [
        loads::LENGTH.place(),
        loads::OTHER_LENGTH.place(),
        relays::TO_CONTACT.place(),
        relays::GROUND_LENGTH.place(),
    ];
    ways.iter().any(|it| it.field().name == place.field().name)
        && [Part::Loads, Part::Relays].contains(&place.part())
}

/// The harness; then the way of each wire, kind by kind; then what is cut, and what is bought.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let answers = answers_in(&state.report, "wires");
    let about =
        |subject: &str| answers.iter().filter(move |it| it.subject == subject).collect::<Vec<_>>();
    let mut cards = vec![
        Card::new("wires", "Harness")
            .asking(Block::Form(HARNESS.to_vec()))
            .asking(Block::Made(lists, 0))
            .answering(about("harness")),
    ];
    for (key, title, list, label) in CHANNELS {
        if length(&state.report, list) > 0 {
            cards
                .push(Card::new(key, title).asking(Block::Rows(list, label)).answering(about(key)));
        }
    }
    let ways = ways(&state.plan);
    if !ways.is_empty() {
        let mut card = Card::new("wires.loads", "Load wires").answering(about("wires.loads"));
        card.blocks = ways;
        cards.push(card);
    }
    let mut of = |key, title, blocks: Vec<Block>| {
        let mut card = Card::new(key, title).answering(about(key));
        card.blocks = blocks;
        if !card.blocks.is_empty() || !card.answers.is_empty() {
            cards.push(card);
        }
    };
    of("wires.sensors", "Sensor wires", vec![Block::Form(SENSORS.to_vec())]);
    let mut feeds = vec![Block::Form(BRANCHES.to_vec())];
    feeds.extend((0..count(&state.plan, Part::Relays)).map(|at| {
        let named = state.plan.text(relays::NAME.at(at));
        of_record(
            Part::Relays,
            at,
            named,
            [relays::TO_CONTACT.place(), relays::GROUND_LENGTH.place()]
                .map(|it| it.at(at))
                .to_vec(),
        )
    }));
    of("wires.feeds", "Feed wires", feeds);
    of("wires.cut", "Cut list", Vec::new());
    of("wires.buy", "Shopping list", Vec::new());
    cards
}

/// The two ways of each load and of each relay's coil.
fn ways(plan: &Plan) -> Vec<Block> {
    let of = |part: Part, at: usize, named: &str, fields: [Place; 2]| {
        of_record(part, at, named, fields.map(|it| it.at(at)).to_vec())
    };
    let loads = (0..count(plan, Part::Loads)).map(|at| {
        let fields = [loads::LENGTH.place(), loads::OTHER_LENGTH.place()];
        of(Part::Loads, at, plan.text(loads::NAME.at(at)), fields)
    });
    let has_wires = |at: &usize| with_coil(plan).contains(at) || is_switched_by_key(plan, *at);
    let relays = (0..count(plan, Part::Relays)).filter(has_wires).map(|at| {
        let fields = [relays::LENGTH.place(), relays::OTHER_LENGTH.place()];
        of(Part::Relays, at, plan.text(relays::NAME.at(at)), fields)
    });
    loads.chain(relays).collect()
}

fn of_record(part: Part, at: usize, named: &str, fields: Vec<Place>) -> Block {
    Block::Fold {
        class: "second",
        summary: called(part, at, named),
        is_wanted: false,
        blocks: vec![Block::Form(fields)],
    }
}

fn lists(page: &Page, _: usize) -> View {
    page.state.details.there().map_or_else(nothing, |it| (it.harness)(page))
}
