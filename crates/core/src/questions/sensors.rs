//! The answers about the sensors, but for those at crank and cam.

pub mod fields;
pub(crate) mod judge;
mod numbers;
pub(crate) mod read;
mod stroke;
mod subject;
mod supplies;
mod tables;
mod verdict;
pub(crate) mod words;

use std::rc::Rc;

use crate::{
    car::Car,
    finding::Findings,
    plan::{MOST_ENTRIES, Plan},
    questions::Question,
    report::{Answer, Detail, Tone},
    say,
    schema::Part,
};

use subject::SensorSubject;
use supplies::SupplySum;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "sensors",
    name: "Sensors",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Sensors, Part::Inputs, Part::SensorSupplies, Part::Today],
    subjects,
};

/// Each sensor, and each supply.
fn subjects(plan: &Plan) -> Vec<String> {
    let records =
        |part: Part| (0..plan.count(part).min(MOST_ENTRIES)).map(move |at| part.record(at));
    records(Part::Sensors).chain(records(Part::SensorSupplies)).collect()
}

/// Nothing is remembered.
pub(crate) type Memory = ();

/// What makes the details of each answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    sensor: fn(&SensorSubject<'_>) -> Detail,
    supply: fn(&SupplySum) -> Detail,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details =
    Details { sensor: numbers::of_sensor, supply: numbers::of_supply };

/// An answer for each sensor and for each supply.
pub(crate) fn answers(
    car: &Car<'_>,
    (): &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    let blank = || vec![Answer::new("sensors", Tone::Open, say!(words::BLANK)).into()];
    let Some(sensing) = &car.sensing else { return blank() };
    let mut answers: Vec<Rc<Answer>> = Vec::new();
    for (at, sensor) in sensing.sensors.iter().enumerate() {
        let subject = SensorSubject { sensing, at, sensor };
        let mut answer = verdict::answer(&subject, findings);
        let is_known = sensor.kind.is_some() && !sensor.is_unreadable;
        answer.show(details.filter(|_| is_known).map(|it| (it.sensor)(&subject)));
        answers.push(answer.into());
    }
    let supply = details.map(|it| it.supply);
    answers.extend(
        (0..sensing.supplies.len())
            .filter_map(|at| supplies::answer(sensing, at, supply, findings))
            .map(Rc::new),
    );
    if answers.is_empty() {
        return blank();
    }
    answers
}
