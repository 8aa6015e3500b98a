//! What should each sensor read now?

use quietpin_core::{
    fields::{inputs, sensors},
    plan::names_in,
    questions::sensors::QUESTION,
    schema::{Part, Place},
};
use yew::Callback;

use super::{
    answers_in,
    outputs::{add, called, count, what},
};
use crate::{
    address::record,
    browser::address,
    cards::{Block, Card},
    components::{Page, button, row, sending},
    element::{View, all, el, several},
    state::{Action, State},
};

/// All of them first, a row each, with the car as it stands today; then each sensor with its input, each supply, and the inputs
/// that have no sensor.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let plan = &state.plan;
    let answers = answers_in(&state.report, QUESTION.id);
    let about =
        |subject: &str| answers.iter().filter(|it| it.subject == subject).collect::<Vec<_>>();
    let mut overview_card = Card::new(QUESTION.id, "Sensors");
    overview_card.is_overview = true;
    let mut cards = vec![
        overview_card
            .asking(Block::Made(overview, 0))
            .asking(Block::Form(Part::Today.places().collect()))
            .answering(about(QUESTION.id)),
    ];
    let mut described = Vec::new();
    for at in 0..count(plan, Part::Sensors) {
        let owner = Part::Sensors.record(at);
        let named = [sensors::INPUT.place(), sensors::SECOND_INPUT.place()].map(|it| it.at(at));
        let input = its_inputs(state, &owner, named, &mut described);
        let title = called(Part::Sensors, at, plan.text(sensors::NAME.at(at)));
        let card = Card::new(&owner, title)
            .asking(Block::Around(of_record(Part::Sensors, at), input))
            .asking(Block::Made(|page, at| removing(page, Part::Sensors, at), at));
        cards.push(card.answering(about(&owner)).titled());
    }
    let others = [Part::SensorSupplies, Part::Inputs];
    for part in others {
        for at in 0..count(plan, part) {
            if part == Part::Inputs && described.contains(&at) {
                continue;
            }
            let owner = part.record(at);
            let name = Place::at_path(&[&owner, ".name"].concat());
            let title = called(part, at, name.map_or("", |it| plan.text(it)));
            let removing: fn(&Page, usize) -> View = if part == Part::Inputs {
                |page, at| removing(page, Part::Inputs, at)
            } else {
                |page, at| removing(page, Part::SensorSupplies, at)
            };
            let card = Card::new(&owner, title)
                .asking(Block::Form(of_record(part, at)))
                .asking(Block::Made(removing, at));
            cards.push(card.answering(about(&owner)).titled());
        }
    }
    cards
}

fn of_record(part: Part, at: usize) -> Vec<Place> {
    part.places().map(|place| place.at(at)).collect()
}

/// The inputs that a sensor is on, on its card: they are looked at together. An input has its home with the first sensor of
/// several.
fn its_inputs(
    state: &State,
    owner: &str,
    named: [Place; 2],
    described: &mut Vec<usize>,
) -> Vec<Block> {
    let plan = &state.plan;
    let is_here = record(&state.address) == owner;
    let mut blocks = Vec::new();
    for (nth, place) in named.into_iter().enumerate() {
        let named = plan.text(place).trim();
        let of = |at: usize| plan.text(inputs::NAME.at(at));
        let mut all_inputs = 0..count(plan, Part::Inputs);
        let is_named = |at: &usize| names_in(of(*at)).iter().any(|it| it == named);
        let by_name = all_inputs.clone().find(|at| !named.is_empty() && is_named(at));
        // the card of a sensor that is on none describes one that has no name yet
        let unnamed = |at: &usize| {
            nth == 0 && is_here && of(*at).trim().is_empty() && !described.contains(at)
        };
        let Some(at) = by_name.or_else(|| all_inputs.find(unnamed)) else {
            if nth == 0 && named.is_empty() {
                blocks.push(Block::Made(describing, 0));
            }
            continue;
        };
        let fields = of_record(Part::Inputs, at);
        if described.contains(&at) {
            // the second track is on another of those that are described with the first
            let is_own = nth == 1
                && names_in(of(at))
                    .iter()
                    .any(|it| it == plan.text(sensors::INPUT.at(place.record())).trim());
            if !is_own {
                blocks.push(folded(state, at, Block::Also(fields)));
            }
            continue;
        }
        described.push(at);
        blocks.push(folded(state, at, Block::Form(fields)));
    }
    blocks
}

fn folded(state: &State, at: usize, block: Block) -> Block {
    let plan = &state.plan;
    Block::Fold {
        class: "second",
        summary: called(Part::Inputs, at, plan.text(inputs::NAME.at(at))),
        is_wanted: plan.text(inputs::TAKES.at(at)).trim().is_empty(),
        blocks: vec![block],
    }
}

fn describing(page: &Page, _: usize) -> View {
    button(Some("add"), "Describe its input", sending(&page.send, Action::Add(Part::Inputs)))
}

/// A row for each sensor, each supply, and each input that has no sensor.
fn overview(page: &Page, _: usize) -> View {
    let cards = cards(&page.state);
    let rows = |list: Part| {
        let start = [list.name(), "."].concat();
        let rows = cards.iter().skip(1).filter(move |it| it.key.starts_with(&start));
        el!("ul", "class" = "rows"; all(rows.map(|card| row(card, false))))
    };
    several!(
        rows(Part::Sensors),
        add(page, Part::Sensors, "Add a sensor", ""),
        rows(Part::SensorSupplies),
        add(page, Part::SensorSupplies, "Add a sensor supply", ""),
        rows(Part::Inputs),
        add(page, Part::Inputs, "Add an input", ""),
    )
}

/// Takes an entry off its list, and goes back to the list.
fn removing(page: &Page, list: Part, at: usize) -> View {
    let named = Place::at_path(&format!("{}.name", list.record(at)));
    let named = named.map_or("", |place| page.state.plan.text(place));
    let (send, label) = (page.send.clone(), format!("Remove {}", what(list, at, named)));
    let remove = Callback::from(move |_| {
        send.dispatch(Action::Remove(list, at));
        address::go(QUESTION.id);
    });
    button(Some("quiet"), label, remove)
}
