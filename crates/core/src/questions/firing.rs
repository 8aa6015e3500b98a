//! The answers to the question of channels: the engine, its ignition, its injection.

mod angles;
mod cure;
mod effects;
mod entered;
pub mod fields;
mod ignition;
mod injection;
mod light;
mod lists;
mod outputs;
mod places;
mod plan;
pub(crate) mod read;
mod sequence;
mod strip;
mod taps;
mod wired;
pub(crate) mod words;

use std::rc::Rc;

use super::Question;
use plan::BothNumberings;
use sequence::{CamSensor, Sequence};
use strip::Lane;
use wired::CheckedConnection;

use crate::{
    car::Car,
    channels::{Check, Ignition, Injection, Layout, Wired, light::Readings},
    cranking::Sync,
    engine::Engine,
    fields::{
        channels, cranking,
        engine::{self, KnownBy},
        wheels,
    },
    finding::Findings,
    plan::Plan,
    read::Entry,
    report::{Answer, Bench, Detail, Tone, picture::CycleStrip},
    say,
    schema::{Choice as _, Part, Place},
};

/// The channels of one kind, and what they really reach, as far as that is known.
pub(crate) struct Mapped {
    layout: Layout,
    wired: Wired,
    /// Whether anything of it was found at the car.
    is_seen: bool,
}

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "firing",
    name: "Firing",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Engine, Part::Controller, Part::Channels, Part::Light, Part::Strip],
    subjects,
};

fn subjects(plan: &Plan) -> Vec<String> {
    let is_typed = |place: Place| !plan.text(place).trim().is_empty();
    let has_engine = is_typed(engine::CYLINDERS.into()) && is_typed(engine::ORDER.into());
    let of_channels = [channels::IGNITION_MODE.path(), channels::INJECTION_MODE.path()];
    let of_channels = of_channels.into_iter().filter(|_| has_engine);
    [Part::Engine.name().to_owned()].into_iter().chain(of_channels).collect()
}

/// Nothing is remembered.
pub(crate) type Memory = ();

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    engine: fn(&Engine) -> Detail,
    ignition_ways: fn(&Engine) -> Detail,
    ignition: fn(&Engine, Ignition, Option<u32>, &BothNumberings<'_>) -> Detail,
    injection_ways: fn(&Engine) -> Detail,
    injection: fn(&Engine, Injection, Option<u32>, &BothNumberings<'_>) -> Detail,
    bench: fn(&CheckedConnection<'_>) -> Option<Bench>,
    wired: fn(&CheckedConnection<'_>, &Check) -> Detail,
    light: fn(&Readings) -> Detail,
    strip: fn(&[Lane], CycleStrip) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    engine: angles::detail,
    ignition_ways: ignition::ways_alone,
    ignition: ignition::detail,
    injection_ways: injection::ways_alone,
    injection: injection::detail,
    bench: taps::bench,
    wired: wired::detail,
    light: light::detail,
    strip: strip::detail,
};

/// The answers: the engine, ignition and injection as planned and as wired, the timing light, one cycle.
pub(crate) fn answers(
    car: &Car<'_>,
    (): &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let read = &car.firing.channels;
    let Some(engine) = &car.engine else {
        return vec![open(car, matches!(read.ignition.mode, Entry::Missing)).into()];
    };
    let mut sequence = Sequence::new(cam(car));
    let mut mapped = [None, None, None];
    let [coils, injectors, seconds] = &mut mapped;
    let mut answers = vec![angles::answer(engine, read, details)];
    answers.extend(ignition::answers(
        engine,
        &read.ignition,
        (&read.entered, light::proves_coils(engine, read)),
        coils,
        &mut sequence,
        details,
        findings,
    ));
    answers.extend(injection::answers(
        engine,
        &read.injection,
        injectors,
        &mut sequence,
        details,
        findings,
    ));
    if has_second(car) {
        answers.extend(injection::answers(
            engine,
            &read.second,
            seconds,
            &mut sequence,
            details,
            findings,
        ));
    }
    findings.extend(sequence.finding());
    outputs::judge_sets(engine, read, &mapped, &mut answers, findings);
    answers.extend(outputs::answer(car, engine, &mapped, findings));
    answers.extend(light::answer(engine, read, details, findings));
    answers.extend(strip::answer(engine, &car.firing.strip, &mapped, details));
    answers.into_iter().map(Rc::new).collect()
}

/// What the plan tells of a cam sensor: with the crank's sensor told and nothing at the cam, there is none.
fn cam(car: &Car<'_>) -> CamSensor {
    let is_synced_by_cam = car.text(cranking::SYNC) == Sync::Cam.choosable().code;
    if is_synced_by_cam || car.is_typed(wheels::CAM_TEETH) || car.is_begun(Part::CamSensor) {
        CamSensor::There
    } else if car.is_typed(crate::fields::sensor::KIND.of(Part::CrankSensor)) {
        CamSensor::Missing
    } else {
        CamSensor::Untold
    }
}

/// Whether the plan has a second set of injectors.
fn has_second(car: &Car<'_>) -> bool {
    car.is_typed(channels::SECOND_MODE)
        || car.is_typed(channels::SECOND_COUNT)
        || car.has_cells(channels::SECOND_WIRED)
        || car.has(Part::SecondInjectors)
}

/// Without an engine: what is needed, or which field is to be mended.
fn open(car: &Car<'_>, no_mode: bool) -> Answer {
    let no_cylinders = !car.is_typed(engine::CYLINDERS);
    // with one cylinder or two there is but one order
    let no_order =
        !car.is_typed(engine::ORDER) && !matches!(car.text(engine::CYLINDERS), "1" | "2");
    let by_angles = car.text(engine::SPACING) == KnownBy::Angles.choosable().code;
    let why = match (no_cylinders, no_order, no_mode) {
        (true, true, true) => say!(words::NEEDS_THREE),
        (_, true, _) => say!(words::NEEDS_ORDER),
        _ if by_angles && !car.is_typed(engine::ANGLES) => say!(words::NEEDS_ANGLES),
        _ if car.engine_is_spoiled => say!(words::NEEDS_MENDING),
        _ => say!(crate::car::engine::words::crank::NEEDS_CRANK),
    };
    let mut answer = Answer::new("engine", Tone::Open, say!(words::OPEN));
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
