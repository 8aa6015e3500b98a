//! Do fuses, wires and relays suit?

use std::rc::Rc;

use quietpin_core::{
    fields::{
        battery, controller, grounds, injectors, loads, relays::NAME, switched_feeds, wiring,
    },
    plan::Plan,
    report::Answer,
    schema::{Part, Place},
};

use super::{
    answers_in,
    outputs::{add, called, count},
    relays,
};
use crate::{
    cards::{Block, Card},
    state::State,
};

/// The cable to the starter.
const CABLE: [Place; 3] =
    [battery::LEAD_LENGTH.place(), battery::LEAD_SIZE.place(), battery::STARTER.place()];

/// What joins engine and body.
const STRAP: [Place; 4] = [
    grounds::MINUS_TO.place(),
    grounds::STRAP.place(),
    grounds::STRAP_SIZE.place(),
    grounds::STRAP_LENGTH.place(),
];

/// What controller and sensors are grounded with.
const GROUND: [Place; 5] = [
    grounds::WIRES.place(),
    grounds::WIRE_SIZE.place(),
    grounds::WIRE_LENGTH.place(),
    grounds::SENSORS.place(),
    grounds::BOLT.place(),
];

/// What stops the car, and what the controller survives.
const GUARDS: [Place; 3] =
    [battery::KILL_SWITCH.place(), controller::HIGHEST_SUPPLY.place(), controller::REVERSE.place()];

/// What charges the battery.
const ALTERNATOR: [Place; 2] = [battery::ALTERNATOR.place(), battery::ALTERNATOR_IDLE.place()];

/// What hangs on 15 and on 30 without a relay's contact.
const IGNITION: [Place; 2] = [switched_feeds::FUSE.place(), switched_feeds::SIZE.place()];
const BATTERY: [Place; 2] =
    [switched_feeds::BATTERY_FUSE.place(), switched_feeds::BATTERY_SIZE.place()];

/// The injectors, which have a fuse of their own.
const SETS: [(Part, &str); 2] =
    [(Part::Injectors, "Injector fuse"), (Part::SecondInjectors, "Second injector fuse")];

/// How all wires lie.
const LAID: [Place; 3] =
    [wiring::AMBIENT.place(), wiring::BUNDLED.place(), wiring::INSULATION.place()];

/// Whether a field is asked here, whatever record it stands in.
pub(super) fn is_of_the_feeds(place: &Place) -> bool {
    place.field().name == injectors::FUSE.field().name && is_of_injectors(place)
        || [&CABLE[..], &ALTERNATOR, &GUARDS, &IGNITION, &BATTERY].concat().contains(place)
}

fn is_of_injectors(place: &Place) -> bool {
    SETS.iter().any(|(part, _)| *part == place.part())
}

/// A card for each feed, then the battery's cable and the alternator.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, "feeds");
    let about = |subject: &str| -> Vec<&Rc<Answer>> {
        answers.iter().filter(|it| it.subject == subject).collect()
    };
    // the feed of the coils has a card of its own once they are answered
    let has_coils = answers_in(&state.report, "coils").iter().any(|it| it.subject == "coils.feed");
    let mut cards = Vec::new();
    for at in 0..count(plan, Part::Relays) {
        cards.push(of_relay(
            (plan, at),
            has_coils,
            about(&["feeds.relay.", &at.to_string()].concat()),
        ));
    }
    if cards.is_empty() {
        let add = Block::Made(|page, _| add(page, Part::Relays, "Add a relay", ""), 0);
        cards.push(Card::new("feeds", "Feeds").asking(add).answering(about("feeds")));
    }
    for (part, title) in SETS {
        let key = ["feeds.", part.name()].concat();
        if part == Part::Injectors || !plan.is_blank(part) {
            let of = |place: Place| vec![place.of(part)];
            let card = Card::new(&key, title)
                .asking(Block::Form(of(injectors::FUSE.into())))
                .asking(Block::Also(of(injectors::WIRE_SIZE.into())));
            cards.push(card.answering(about(&key)));
        }
    }
    let of = |key, title, fields: &[Place]| {
        Card::new(key, title).asking(Block::Form(fields.to_vec())).answering(about(key))
    };
    cards.push(of("feeds.ignition", "Ignition feed (15)", &IGNITION));
    cards.push(of("feeds.battery", "Battery feed (30)", &BATTERY));
    cards.push(of("feeds.cable", "Battery cable", &CABLE));
    cards.push(of("feeds.strap", "Engine strap", &STRAP));
    let ground = of("feeds.ground", "Grounds", &GROUND);
    cards.push(ground.answering(about("feeds.sensors")));
    cards.push(of("feeds.alternator", "Alternator", &ALTERNATOR));
    let kill = of("feeds.kill", "Kill switch", &GUARDS);
    cards.push(kill.answering(about("feeds.survives")));
    cards.extend(thin_wires(answers));
    let mut laid = of("feeds.wires", "How the wires lie", &LAID);
    laid.idle = "Every feed is judged with these";
    cards.push(laid);
    cards
}

/// Loads that have a fuse of their own, or whose wire their feed's fuse doesn't protect.
fn thin_wires(answers: &[Rc<Answer>]) -> Option<Card> {
    let told: Vec<_> = answers.iter().filter(|it| it.subject.starts_with(LOAD)).collect();
    let record = |it: &&Rc<Answer>| it.subject.strip_prefix(LOAD)?.parse().ok();
    let own = |at| [loads::FUSE.at(at).into(), loads::WIRE_SIZE.at(at).into()];
    let own = told.iter().filter_map(record).flat_map(own).collect();
    let card = || Card::new("feeds.load", "Wires of loads").asking(Block::Also(own));
    (!told.is_empty()).then(card).map(|card| card.answering(told))
}

/// What an answer about the wire of a load begins with.
const LOAD: &str = "feeds.load.";

fn of_relay((plan, at): (&Plan, usize), has_coils: bool, answers: Vec<&Rc<Answer>>) -> Card {
    let key = ["feeds.relay.", &at.to_string()].concat();
    let title = ["Feed: ", &called(Part::Relays, at, plan.text(NAME.at(at)))].concat();
    let (home, elsewhere) = relays::fed(plan, at, has_coils);
    Card::new(key, title)
        .asking(Block::Form(home))
        .asking(Block::Also(elsewhere))
        .answering(answers)
}
