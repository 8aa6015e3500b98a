//! The answer to the question of rest: may I connect this load?

mod advice;
mod case;
mod dependency;
mod figure;
mod memory;
mod names;
mod open;
mod picture;
mod switching;
mod table;
mod trouble;
mod verdict;
mod working;

use case::Subject;
pub(super) use memory::Memory;

use super::{Answer, Section};
use crate::{
    finding::Findings,
    message::Message,
    output::{Prefer, Trouble, Wiring, alternatives},
    read::{self, Conditions, PlannedRest, Reader, Unasked},
    say,
};

pub(super) fn section(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    memory: &mut Memory,
    findings: &mut Findings,
) -> Section {
    let planned = read::rest(reader, conditions, memory.read_before());
    let answers = if planned.loads.is_empty() {
        vec![open::without_loads(&planned).into()]
    } else {
        memory.recall(&planned, findings)
    };
    Section { id: "rest", question: say!("rest.question"), answers }
}

fn answer(planned: &PlannedRest, at: usize, findings: &mut Findings) -> Option<Answer> {
    let Some(subject) = Subject::new(planned, at) else {
        return planned.loads.get(at).map(|load| open::answer(planned, load));
    };
    let verdict = verdict::verdict(&subject);
    let mut answer = Answer::new(subject.load.path.clone(), verdict.tone, verdict.message);
    let (load, output) = (subject.load.name.clone(), subject.output.name.clone());
    answer.title = Some(say!("rest.load-title", load = load, output = output));
    let remedies = remedies(&subject);
    answer.why = trouble::reason(&subject).or_else(|| why_connect(&subject));
    let found = trouble::findings(&subject, &remedies);
    answer.to_do = advice::to_do(&subject, &found, remedies);
    answer.cautions = advice::cautions(&subject);
    answer.figures = figure::figures(&subject);
    answer.tables = table::tables(&subject);
    answer.pictures = picture::pictures(&subject);
    findings.extend(found);
    Some(answer)
}

/// Other ways to connect it, where it may not be connected as planned.
fn remedies(subject: &Subject<'_>) -> Vec<Message> {
    let is_clean = subject.cases.iter().all(|case| case.judgement.is_clean());
    if is_clean {
        return Vec::new();
    }
    let wirings: Vec<&Wiring> = subject.cases.iter().map(|case| &case.rest.wiring).collect();
    let spares = subject.spares();
    let prefer = match subject.load.unasked {
        Unasked::Dangerous => Prefer::Wires,
        Unasked::Costly | Unasked::Harmless => Prefer::LeastWork,
    };
    let found = alternatives(&wirings, subject.at, &spares, &subject.planned.around, prefer);
    found.iter().map(|it| advice::remedy(subject, it)).collect()
}

fn why_connect(subject: &Subject<'_>) -> Option<Message> {
    let (case, load) = (subject.cases.first()?, subject.solved()?);
    let (unasked, on) = advice::extremes(subject)?;
    let weak = case.judgement.found.iter().find(|it| it.trouble == Trouble::WeakWhileCranking);
    if let Some(weak) = weak {
        let at = weak.worst.point.at.temperature;
        let acts = load.pull_in.high * load.kind.warmth(at);
        let voltage = weak.worst.load()?.voltage;
        return Some(say!(
            "rest.why-connect-but",
            unasked = unasked,
            on = on,
            weak = advice::size(voltage),
            acts = acts
        ));
    }
    Some(say!(
        "rest.why-connect",
        unasked = unasked,
        on = on,
        acts = load.pull_in.high,
        lets_go = load.drop_out.low
    ))
}
