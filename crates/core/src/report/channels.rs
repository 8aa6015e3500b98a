//! The answers to the question of channels: the engine, its ignition, its injection.

mod angles;
mod cure;
mod ignition;
mod injection;
mod plan;
mod wired;

use std::rc::Rc;

use super::{Answer, Section, Tone};
use crate::{
    channels::{Habit, Ignition, Injection, Layout},
    engine::Engine,
    finding::Findings,
    read::{self, Entry, Reader},
    say,
};

pub(super) fn section(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    findings: &mut Findings,
) -> Section {
    // read first, so that every field says how it stands even where the engine isn't known
    let ignition = read::ignition(reader, engine);
    let injection = read::injection(reader, engine);
    let answers = match engine {
        None => vec![open(reader, matches!(ignition.mode, Entry::Missing))],
        Some(engine) => {
            rows(reader, engine, &ignition, &injection);
            let mut answers = vec![angles::answer(engine)];
            answers.extend(ignition::answers(engine, &ignition, findings));
            answers.extend(injection::answers(engine, &injection, findings));
            answers
        }
    };
    Section {
        id: "channels",
        question: say!("channels.question"),
        answers: answers.into_iter().map(Rc::new).collect(),
    }
}

/// Every channel of the plan has a row of its own for what is found at the car, typed or still blank.
fn rows(
    reader: &mut Reader<'_>,
    engine: &Engine,
    ignition: &read::Channels<Ignition>,
    injection: &read::Channels<Injection>,
) {
    let coils =
        ignition.mode.value().and_then(|mode| Layout::ignition(engine, mode, Habit::ByOrder).ok());
    let injectors = injection
        .mode
        .value()
        .and_then(|mode| Layout::injection(engine, mode, Habit::ByOrder).ok());
    for (list, layout) in [("coils_wired", coils), ("injectors_wired", injectors)] {
        for channel in 0..layout.map_or(0, |layout| layout.slots().len()) {
            let path = format!("channels.{list}.{channel}");
            if reader.text(&path).is_empty() {
                reader.missing(&path);
            }
        }
    }
}

/// Without an engine: what is needed, or which field is to be mended.
fn open(reader: &Reader<'_>, no_mode: bool) -> Answer {
    let blank = |path| reader.text(path).is_empty();
    let (no_cylinders, no_order) = (blank("engine.cylinders"), blank("engine.order"));
    let why = match (no_cylinders, no_order, no_mode) {
        (true, true, true) => say!("channels.needs-three"),
        (_, true, _) => say!("channels.needs-order"),
        _ if !blank("engine.angles") || reader.text("engine.spacing") != "angles" => {
            say!("channels.needs-mending")
        }
        _ => say!("channels.needs-angles"),
    };
    let mut answer = Answer::new("engine", Tone::Open, say!("channels.open"));
    answer.why = Some(why);
    answer
}

/// The names of things in a row, as `1, 5 and 3`.
fn listed<T: ToString>(things: impl IntoIterator<Item = T>) -> String {
    let texts: Vec<String> = things.into_iter().map(|it| it.to_string()).collect();
    match texts.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    }
}
