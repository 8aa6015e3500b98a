//! The answers to the question of channels: the engine, its ignition, its injection.

mod angles;
mod cure;
mod ignition;
mod injection;
mod light;
mod lists;
mod places;
mod plan;
mod strip;
mod taps;
mod wired;

use std::rc::Rc;

use super::{Answer, Section, Tone};
use crate::{
    channels::{Habit, Ignition, Injection, Layout, Wired},
    engine::Engine,
    finding::Findings,
    quantity::{Band, RotationalSpeed, Time},
    read::{self, Entry, Reader},
    say,
};

/// The channels of one kind, and what they really reach, as far as that is known.
pub(super) struct Mapped {
    layout: Layout,
    wired: Wired,
}

/// The answers, and the channels of the coils, the injectors and a second set.
pub(super) fn section(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    findings: &mut Findings,
) -> (Section, [Option<Mapped>; 3]) {
    // read first, so that every field says how it stands even where the engine isn't known
    let ignition = read::ignition(reader, engine);
    let injection = read::injection(reader, engine, &read::INJECTION);
    let lit = read::light(reader, engine);
    let second = read::injection(reader, engine, &read::SECOND);
    let mut mapped = [None, None, None];
    let answers = match engine {
        None => vec![open(reader, matches!(ignition.mode, Entry::Missing))],
        Some(engine) => {
            rows(reader, engine, &ignition, [&injection, &second]);
            let mut answers = vec![angles::answer(engine)];
            let [coils, injectors, seconds] = &mut mapped;
            answers.extend(ignition::answers(engine, &ignition, coils, findings));
            answers.extend(injection::answers(engine, &injection, injectors, findings));
            if has_second(reader) {
                answers.extend(injection::answers(engine, &second, seconds, findings));
            }
            answers.extend(light::answer(engine, lit.as_ref(), findings));
            answers
        }
    };
    let section = Section {
        id: "channels",
        question: say!("channels.question"),
        answers: answers.into_iter().map(Rc::new).collect(),
    };
    (section, mapped)
}

/// One cycle at a speed; `dwell` is what the coils need.
pub(super) fn strip(
    reader: &mut Reader<'_>,
    highest: Option<Band<RotationalSpeed>>,
    dwell: Option<Time>,
    engine: Option<&Engine>,
    mapped: &[Option<Mapped>; 3],
) -> Option<Answer> {
    let read = read::strip(reader, highest, dwell);
    strip::answer(engine?, &read, mapped)
}

/// Every channel of the plan has a row of its own for what is found at the car, typed or still blank.
fn rows(
    reader: &mut Reader<'_>,
    engine: &Engine,
    ignition: &read::Channels<Ignition>,
    injections: [&read::Channels<Injection>; 2],
) {
    let coils =
        ignition.mode.value().and_then(|mode| Layout::ignition(engine, mode, Habit::ByOrder).ok());
    let injectors = injections.map(|injection| {
        let layout = |mode| Layout::injection(engine, mode, Habit::ByOrder).ok();
        (injection.paths.wired, injection.mode.value().and_then(layout))
    });
    for (list, layout) in [(ignition.paths.wired, coils)].into_iter().chain(injectors) {
        for channel in 0..layout.map_or(0, |layout| layout.slots().len()) {
            let path = format!("{list}.{channel}");
            if reader.text(&path).is_empty() {
                reader.missing(&path);
            }
        }
    }
}

/// Whether the plan has a second set of injectors.
fn has_second(reader: &Reader<'_>) -> bool {
    let plan = reader.plan();
    let typed = [&plan.channels.second_mode, &plan.channels.second_count];
    typed.iter().any(|text| !text.trim().is_empty())
        || plan.channels.second_wired.iter().any(|text| !text.trim().is_empty())
        || plan.second_injectors != crate::plan::Injectors::default()
}

/// Without an engine: what is needed, or which field is to be mended.
fn open(reader: &Reader<'_>, no_mode: bool) -> Answer {
    let blank = |path| reader.text(path).is_empty();
    let no_cylinders = blank("engine.cylinders");
    // with one cylinder or two there is but one order
    let no_order = blank("engine.order") && !matches!(reader.text("engine.cylinders"), "1" | "2");
    let why = match (no_cylinders, no_order, no_mode) {
        (true, true, true) => say!("channels.needs-three"),
        (_, true, _) => say!("channels.needs-order"),
        _ if blank("engine.angles") && reader.text("engine.spacing") == "angles" => {
            say!("channels.needs-angles")
        }
        _ if reader.has_unusable("engine.") => say!("channels.needs-mending"),
        _ => say!("engine.needs-crank"),
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
