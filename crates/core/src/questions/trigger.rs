//! The answers about the crank and the cam sensor.

mod coil;
mod detail;
pub mod fields;
mod offset;
pub(crate) mod read;
mod sensor;
mod switch;
mod wheel;
pub(crate) mod words;

use std::rc::Rc;

use crate::report::{Answer, Detail, Tone};
use crate::{
    car::Car,
    channels::light::{self, LightFinding, Readings},
    engine::{Engine, EngineKind},
    finding::Findings,
    plan::Plan,
    quantity::CrankAngle,
    questions::Question,
    read::Triggered,
    say,
    schema::Part,
    trigger::hall::{Hall, InputNeeds, Levels},
    trigger::reluctance::Peak,
};

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "trigger",
    name: "Trigger",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[
        Part::Wheels,
        Part::Cranking,
        Part::Controller,
        Part::Trigger,
        Part::CrankSensor,
        Part::CamSensor,
        Part::TriggerInput,
    ],
    subjects,
};

fn subjects(plan: &Plan) -> Vec<String> {
    if !read::is_asked(plan) {
        return Vec::new();
    }
    let sensor = Part::CrankSensor.name().to_owned();
    vec![Part::Trigger.name().to_owned(), sensor, crate::fields::controller::OFFSET.path()]
}

/// Nothing is remembered.
pub(crate) type Memory = ();

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    wheel: fn(&Triggered) -> Detail,
    levels: fn(&Hall, &Levels, &InputNeeds) -> Detail,
    peaks: fn(Option<&Peak>, Option<&Peak>) -> Detail,
    offset: fn(&Triggered) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details {
    wheel: detail::of_wheel,
    levels: detail::of_levels,
    peaks: detail::of_peaks,
    offset: detail::of_offset,
};

/// The answers: the wheel, each sensor, the offset.
pub(crate) fn answers(
    car: &Car<'_>,
    (): &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    match &car.trigger {
        None => vec![Answer::new("trigger", Tone::Open, say!(words::BLANK)).into()],
        Some(read) => {
            let light = lit(car);
            let answers = answered(read, &light, details, findings);
            answers.into_iter().map(Into::into).collect()
        }
    }
}

/// What the timing light has shown of each cylinder, and what a wrong offset does to such an engine.
struct ShownByLight {
    /// Within what the offset is right, where those that were read are right.
    within: Option<CrankAngle>,
    /// By how much all sparks come late, early below nought, and how far that may be off.
    error: Option<(CrankAngle, CrankAngle)>,
    kind: EngineKind,
}

fn lit(car: &Car<'_>) -> ShownByLight {
    let engine = car.engine.as_ref();
    let read = engine.zip(car.firing.channels.lit());
    let is_right = |(engine, readings): &(&Engine, &Readings)| light::is_right(engine, readings);
    let error = |(engine, readings): (&Engine, &Readings)| match light::finding(engine, readings) {
        LightFinding::Constant(error, _) => Some((error, readings.tolerance)),
        _ => None,
    };
    ShownByLight {
        within: read.filter(is_right).map(|(_, readings)| readings.tolerance),
        error: read.and_then(error),
        kind: engine.map_or(EngineKind::FourStroke, Engine::kind),
    }
}

fn answered(
    read: &Triggered,
    light: &ShownByLight,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Answer> {
    let mut wheel = wheel::answer(read, findings);
    wheel.show(details.map(|it| (it.wheel)(read)));
    let mut answers = vec![wheel];
    answers.push(read.crank.as_ref().map_or_else(
        || {
            let mut answer = Answer::new("crank_sensor", Tone::Open, say!(words::NO_KIND));
            answer.title = Some(say!(words::CRANK_TITLE));
            answer
        },
        |crank| sensor::answer(read, crank, details, findings),
    ));
    answers.extend(read.cam.as_ref().map(|cam| sensor::answer(read, cam, details, findings)));
    let mut offset = offset::answer(read, light, findings);
    offset.show(details.map(|it| (it.offset)(read)));
    answers.push(offset);
    answers
}
