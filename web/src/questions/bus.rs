//! Is the bus terminated, short enough, not overloaded?

use quietpin_core::{
    fields::{bus, frames},
    schema::{Part, Place},
};

use super::{
    answers_in,
    outputs::{add, called, count, removing_to},
};
use crate::{
    cards::{Block, Card},
    components::{Page, row},
    element::{View, all, el, several},
    state::State,
};

/// What closes it.
const PAIR: [Place; 4] =
    [bus::READING.place(), bus::TERMINATORS.place(), bus::TERMINATED_AT.place(), bus::SIZE.place()];

/// How far it reaches.
const WIRE: [Place; 5] = [
    bus::BIT_RATE.place(),
    bus::LENGTH.place(),
    bus::BRANCH.place(),
    bus::SHAPE.place(),
    bus::OTHER_RATE.place(),
];

/// Read while it runs.
const LEVELS: [Place; 2] = [bus::HIGH.place(), bus::LOW.place()];

/// The card of the list of frames.
const FRAMES: &str = "frames";

/// Its ends and its wire; its levels; its load, with a row for each frame; then each frame.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, "bus");
    let of = |subjects: &'static [&str]| {
        answers.iter().filter(|it| subjects.contains(&it.subject.as_str()))
    };
    let card = |key: &str, title: &str, fields: &[Place], subjects| {
        let card = Card::new(key, title).asking(Block::Form(fields.to_vec()));
        card.answering(of(subjects))
    };
    let mut cards = vec![
        card("bus", "Terminators", &PAIR, &["bus", "bus.termination"]),
        card("bus.wire", "Bus wire", &WIRE, &["bus.wire"]),
        card("bus.levels", "Bus levels", &LEVELS, &["bus.levels"]),
        Card::new(FRAMES, "Bus load").asking(Block::Made(list, 0)).answering(of(&["bus.load"])),
    ];
    for at in 0..count(plan, Part::Frames) {
        let title = called(Part::Frames, at, plan.text(frames::NAME.at(at)));
        let fields = Part::Frames.places().map(|it| it.at(at)).collect();
        let card = Card::new(Part::Frames.record(at), title)
            .asking(Block::Form(fields))
            .asking(Block::Made(|page, at| removing_to(page, Part::Frames, at, FRAMES), at));
        cards.push(card);
    }
    cards
}

/// A row for each frame.
fn list(page: &Page, _: usize) -> View {
    let cards = cards(&page.state);
    let rows = cards.iter().filter(|it| it.key.starts_with("frames."));
    several!(
        el!("ul", "class" = "rows"; all(rows.map(|card| row(card, false)))),
        add(page, Part::Frames, "Add a frame", ""),
    )
}
