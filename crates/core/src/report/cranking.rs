//! The answer to the question of cranking.

mod advice;
mod bounds;
mod extent;
mod figures;
mod judge;
mod otherwise;
mod picture;
mod problems;
mod relays;

use std::rc::Rc;

use advice::Advice;
use otherwise::Otherwise;

use super::{Answer, Section, Tone, recall::Recall};
use crate::{
    cranking::{self, Inputs},
    engine::Engine,
    finding::Findings,
    message::Message,
    read::{self, Conditions, Known, Reader, SpeedRelay},
    say,
};

/// What an answer follows from: the start of the engine, and the relay that it is about, where that is a further one.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Asked {
    known: Rc<Known>,
    relay: Option<SpeedRelay>,
}

/// What was answered before.
pub(super) type Memory = Recall<Asked>;

pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    engine: Option<&Engine>,
    memory: &mut Memory,
    findings: &mut Findings,
) -> Section {
    let known = Rc::new(read::cranking(reader, conditions, engine));
    let before = findings.count();
    memory.turn();
    let mut answers: Vec<_> = memory
        .recall(Asked { known: Rc::clone(&known), relay: None }, findings, |asked, findings| {
            Some(match &asked.known.inputs {
                Some(inputs) => answered(&asked.known, inputs, findings),
                None => open(&asked.known),
            })
        })
        .into_iter()
        .collect();
    answers.extend(relays::answers(reader, &known, memory, findings));
    // a threshold above the cranking speed is a slip of the field as well
    for finding in
        findings.since(before).iter().filter(|it| it.message.code == "cranking.never-closes")
    {
        reader.object(&finding.subject, &finding.message);
    }
    Section { id: "cranking", question: say!("cranking.question"), answers }
}

fn open(known: &Known) -> Answer {
    let mut answer = Answer::new("cranking", Tone::Open, say!("cranking.open"));
    answer.why = Some(wants(known));
    answer
}

fn wants(known: &Known) -> Message {
    let names = known.wanted.iter().map(|path| match *path {
        "engine.cylinders" => say!("cranking.wants-cylinders").into_text(),
        "cranking.speed" => say!("cranking.wants-speed").into_text(),
        _ => say!("cranking.wants-threshold").into_text(),
    });
    say!("cranking.open-wants", wanted = listed(&names.collect::<Vec<_>>()))
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
        say!("cranking.caution-crank"),
        say!("cranking.caution-pump"),
        say!("cranking.caution-coil"),
    ];
    if known.power_up.is_none() {
        answer.cautions.push(say!("cranking.caution-spark"));
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
            "cranking.do-set",
            threshold = advice.threshold,
            release = advice.release,
            agree = inputs.confirmation
        )
    }));
    if known.dip_is_assumed {
        steps.push(say!("cranking.do-measure"));
    }
    steps.push(say!("cranking.do-listen"));
    steps.push(say!("cranking.do-stop"));
    steps
}
#[cfg(test)]
mod tests;
