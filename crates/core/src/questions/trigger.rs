//! The answers about the crank and the cam sensor.

mod coil;
pub mod fields;
mod offset;
pub(crate) mod read;
mod sensor;
mod switch;
mod wheel;
pub(crate) mod words;

use std::rc::Rc;

use crate::report::{Answer, Tone};
use crate::{
    car::Car, finding::Findings, plan::Plan, questions::Question, read::Triggered, say,
    schema::Part,
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

/// The answers: the wheel, each sensor, the offset.
pub(crate) fn answers(car: &Car<'_>, (): &mut Memory, findings: &mut Findings) -> Vec<Rc<Answer>> {
    match &car.trigger {
        None => vec![Answer::new("trigger", Tone::Open, say!(words::BLANK)).into()],
        Some(read) => answered(read, findings).into_iter().map(Into::into).collect(),
    }
}

fn answered(read: &Triggered, findings: &mut Findings) -> Vec<Answer> {
    let mut answers = vec![wheel::answer(read, findings)];
    answers.push(read.crank.as_ref().map_or_else(
        || {
            let mut answer = Answer::new("crank_sensor", Tone::Open, say!(words::NO_KIND));
            answer.title = Some(say!(words::CRANK_TITLE));
            answer
        },
        |crank| sensor::answer(read, crank, findings),
    ));
    answers.extend(read.cam.as_ref().map(|cam| sensor::answer(read, cam, findings)));
    answers.push(offset::answer(read, findings));
    answers
}
