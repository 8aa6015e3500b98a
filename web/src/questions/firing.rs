//! Which channel fires which cylinder, and is it wired like that?

use std::rc::Rc;

use quietpin_core::{
    fields::{channels, controller, light},
    report::Answer,
    schema::{Part, Place},
};

use super::{answers_in, length, of_record};
use crate::{
    cards::{Block, Card},
    components::Page,
    element::{View, nothing},
    state::State,
};

/// The engine; then each kind of channel, as planned and as found at the car; then what is entered, one cycle, and the
/// timing light.
pub(super) fn cards(state: &State) -> Vec<Card> {
    let answers = answers_in(&state.report, "firing");
    let engine = Card::new("engine", "Engine")
        // the third thing that a blank plan is asked
        .asking(Block::Around(
            of_record(Part::Engine),
            vec![Block::Also(vec![channels::IGNITION_MODE.place()])],
        ));
    if answers.len() < 2 {
        return vec![engine.answering(answers)];
    }
    let of = |choose: fn(&Rc<Answer>) -> bool| {
        answers.iter().filter(move |it| choose(it)).collect::<Vec<_>>()
    };
    let mut cards = vec![
        Card::new("ignition", "Ignition")
            .asking(planned("ignition"))
            .answering(of(|it| it.subject.starts_with("channels.ignition"))),
    ];
    cards.extend(at_the_car(state, channels::COILS_WIRED.into(), "Ignition, at the car", IGNITION));
    cards.push(
        Card::new("injection", "Injection")
            .asking(planned("injection"))
            .answering(of(|it| it.subject.starts_with("channels.injection"))),
    );
    cards.extend(at_the_car(
        state,
        channels::INJECTORS_WIRED.into(),
        "Injection, at the car",
        INJECTION,
    ));
    cards.push(
        Card::new("second", "Second injectors: channels")
            .asking(planned("second"))
            .answering(of(|it| is_second(it) && it.subject != "channels.second_wired")),
    );
    cards.extend(at_the_car(
        state,
        channels::SECOND_WIRED.into(),
        "Second injectors, at the car",
        SECOND,
    ));
    cards.push(entered().answering(of(|it| it.subject == controller::OUTPUTS.path())));
    cards.push(strip().answering(of(|it| it.subject == "strip")));
    cards.push(timing_light().answering(of(|it| it.subject == "light")));
    // whatever else is answered, with the engine
    let is_elsewhere = |it: &Rc<Answer>| {
        cards.iter().any(|card| card.answers.iter().any(|other| Rc::ptr_eq(it, other)))
    };
    let rest: Vec<_> = answers.iter().filter(|it| !is_elsewhere(it)).collect();
    cards.insert(0, engine.answering(rest));
    cards
}

/// Where the test of a kind of channel stands in the report: with the answer as planned.
const IGNITION: usize = 0;
const INJECTION: usize = 1;
const SECOND: usize = 2;

/// The answers as planned begin like this.
const PLANNED: [&str; 3] = ["channels.ignition", "channels.injection", "channels.second"];

fn is_second(answer: &Rc<Answer>) -> bool {
    answer.subject.starts_with("channels.second")
        || answer.title.as_ref().is_some_and(|title| title.code == "firing.title-second")
}

/// The fields of the channels whose names begin alike.
fn planned(kind: &'static str) -> Block {
    let is_part = |place: &Place| {
        let field = place.field();
        field.name.starts_with(kind) && !field.name.ends_with("_done") && !field.is_list
    };
    Block::Form(Part::Channels.places().filter(is_part).collect())
}

/// The test of the channels, one fired after the other, once there is a plan to hold it against.
fn at_the_car(state: &State, list: Place, title: &str, kind: usize) -> Option<Card> {
    if length(&state.report, list) == 0 {
        return None;
    }
    let cell = list.in_cell(0).path();
    let subject = cell.strip_suffix(".0").unwrap_or(&cell);
    let wired = answers_in(&state.report, "firing").iter().filter(|it| it.subject == subject);
    let typed = Block::Fold {
        class: "wired",
        summary: "Or type it in".into(),
        is_wanted: false,
        blocks: vec![Block::Rows(list, "Channel # reaches cylinder")],
    };
    let mut card =
        Card::new(subject, title).asking(Block::Made(bench, kind)).asking(typed).answering(wired);
    let test = planned_with_bench(state, kind).and_then(|it| it.bench.as_ref());
    card.idle = "Not tested yet";
    card.warned.extend(test.iter().flat_map(|it| &it.cautions).map(|it| it.text.clone()));
    Some(card)
}

fn planned_with_bench(state: &State, kind: usize) -> Option<&Rc<Answer>> {
    let begin = PLANNED.get(kind).copied().unwrap_or_default();
    let mut answers = answers_in(&state.report, "firing").iter();
    answers.find(|it| it.subject.starts_with(begin) && it.bench.is_some())
}

fn bench(page: &Page, kind: usize) -> View {
    let planned = planned_with_bench(&page.state, kind);
    let details = page.state.details.there();
    planned.zip(details).map_or_else(nothing, |(answer, details)| (details.bench)(page, answer))
}

/// What stands in the controller.
fn entered() -> Card {
    let fields = [
        controller::ORDER.place(),
        controller::SPACING.place(),
        controller::ANGLES.place(),
        controller::OUTPUTS.place(),
    ];
    Card::new("entered", "Entered in the controller").asking(Block::Form(fields.to_vec()))
}

/// One cycle at a speed.
fn strip() -> Card {
    let mut fields: Vec<_> = Part::Strip.places().collect();
    fields.insert(1.min(fields.len()), controller::DWELL.into());
    Card::new("strip", "One cycle at a speed").asking(Block::Form(fields))
}

fn timing_light() -> Card {
    let mut fields = vec![controller::LOCKED_ADVANCE.into()];
    fields.extend(Part::Light.places().filter(|it| !it.field().is_list));
    Card::new("light", "Timing light")
        .asking(Block::Form(fields))
        .asking(Block::Also(vec![controller::OFFSET.into()]))
        .asking(Block::Rows(light::SEEN.into(), "Seen on cylinder #"))
}
