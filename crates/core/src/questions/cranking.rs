//! The answer to the question of cranking.

mod advice;
mod bounds;
mod extent;
pub mod fields;
mod figures;
mod judge;
mod otherwise;
mod picture;
mod problems;
pub(crate) mod read;
mod relays;
pub(crate) mod words;

use std::rc::Rc;

use advice::Advice;
use otherwise::Otherwise;

use crate::report::{Answer, Tone, recall::Recall};
use crate::{
    car::Car,
    plan::Plan,
    questions::Question,
    schema::Part,
    cranking::{self, Inputs},
    finding::Findings,
    message::Message,
    read::Wanted,
    read::{Known, SpeedRelay},
    say, say_of,
};

/// What an answer follows from: the start of the engine, and the relay that it is about, where that is a further one.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Asked {
    known: Rc<Known>,
    relay: Option<SpeedRelay>,
}

/// What was answered before.
pub(crate) type Memory = Recall<Asked>;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "cranking",
    name: "Relay",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Cranking, Part::Relays],
    subjects,
};

fn subjects(plan: &Plan) -> Vec<String> {
    let relays = (0..plan.count(Part::Relays)).map(|at| Part::Relays.record(at));
    [Part::Cranking.name().to_owned()].into_iter().chain(relays).collect()
}

/// The answers: the coils' relay, then each further one.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    memory.turn();
    let asked = Asked { known: Rc::clone(&car.cranking), relay: None };
    let own = memory.recall(asked, findings, |asked, findings| {
        Some(match &asked.known.inputs {
            Some(inputs) => answered(&asked.known, inputs, findings),
            None => open(&asked.known),
        })
    });
    own.into_iter().chain(relays::answers(car, memory, findings)).collect()
}

fn open(known: &Known) -> Answer {
    let mut answer = Answer::new("cranking", Tone::Open, say!(words::OPEN));
    answer.why = Some(wants(known));
    answer
}

fn wants(known: &Known) -> Message {
    let names = known.wanted.iter().map(|wanted| {
        let code = match wanted {
            Wanted::Cylinders => words::WANTS_CYLINDERS,
            Wanted::Speed => words::WANTS_SPEED,
            Wanted::Threshold => words::WANTS_THRESHOLD,
        };
        say_of!(code).into_text()
    });
    say!(words::OPEN_WANTS, wanted = listed(&names.collect::<Vec<_>>()))
}

/// `a, b and c`.
fn listed(names: &[String]) -> String {
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => names.concat(),
    }
}

fn answered(known: &Known, inputs: &Inputs, findings: &mut Findings) -> Answer {
    let Some(result) = cranking::answer(inputs) else { return open(known) };
    let advice = advice::advice(inputs, &result);
    let (tone, verdict, why) = judge::verdict(known, inputs, &result);
    let otherwise = Otherwise::new(inputs);
    findings.extend(problems::findings(known, inputs, &result, advice));
    findings.extend(otherwise.findings(known, inputs, &result, advice));
    let mut answer = Answer::new("cranking", tone, verdict);
    answer.why = Some(why);
    answer.to_do = to_do(known, inputs, advice);
    answer.cautions = vec![
        say!(words::CAUTION_CRANK),
        say!(words::CAUTION_PUMP),
        say!(words::CAUTION_COIL),
    ];
    if known.power_up.is_none() {
        answer.cautions.push(say!(words::relays::CAUTION_SPARK));
    }
    answer.figures = figures::figures(known, inputs, &result);
    answer.tables =
        figures::table(inputs, &result).into_iter().chain(otherwise.table(inputs)).collect();
    answer.pictures = picture::picture(inputs, &result).into_iter().collect();
    answer
}

fn to_do(known: &Known, inputs: &Inputs, advice: Option<Advice>) -> Vec<Message> {
    let mut steps = Vec::new();
    steps.extend((!known.wanted.is_empty()).then(|| wants(known)));
    steps.extend(advice.map(|advice| {
        say!(
            words::DO_SET,
            threshold = advice.threshold,
            release = advice.release,
            agree = inputs.confirmation
        )
    }));
    if known.dip_is_assumed {
        steps.push(say!(words::DO_MEASURE));
    }
    steps.push(say!(words::DO_LISTEN));
    steps.push(say!(words::DO_STOP));
    steps
}
#[cfg(test)]
mod tests;
