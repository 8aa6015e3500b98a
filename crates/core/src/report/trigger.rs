//! The answers about the crank and the cam sensor.

mod coil;
mod offset;
mod sensor;
mod switch;
mod wheel;

use super::{Answer, Section, Tone};
use crate::{
    engine::Engine,
    finding::Findings,
    quantity::{Band, RotationalSpeed},
    read::{self, Conditions, Reader, Triggered},
    say,
};

/// Reads question 8 and answers it.
pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    speed: Option<Band<RotationalSpeed>>,
    findings: &mut Findings,
) -> Section {
    let answers = match read::trigger(reader, conditions, engine, speed) {
        None => vec![Answer::new("trigger", Tone::Open, say!("trigger.blank")).into()],
        Some(read) => answered(&read, findings).into_iter().map(Into::into).collect(),
    };
    Section { id: "trigger", question: say!("trigger.question"), answers }
}

fn answered(read: &Triggered, findings: &mut Findings) -> Vec<Answer> {
    let mut answers = vec![wheel::answer(read, findings)];
    answers.push(read.crank.as_ref().map_or_else(
        || {
            let mut answer = Answer::new("crank_sensor", Tone::Open, say!("trigger.no-kind"));
            answer.title = Some(say!("trigger.crank-title"));
            answer
        },
        |crank| sensor::answer(read, crank, findings),
    ));
    answers.extend(read.cam.as_ref().map(|cam| sensor::answer(read, cam, findings)));
    answers.push(offset::answer(read, findings));
    answers
}
