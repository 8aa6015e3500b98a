//! The answer to the question of rest: may I connect this load?

mod advice;
mod case;
mod dependency;
pub mod fields;
mod figure;
mod memory;
mod names;
mod once;
mod open;
mod picture;
pub(crate) mod read;
mod switching;
mod table;
mod throttle;
mod told;
mod trouble;
mod unsolved;
mod verdict;
mod wired;
pub(crate) mod words;
mod working;

use std::rc::Rc;

use case::{LoadAtLevel, Subject};
pub(crate) use memory::Memory;

use crate::report::{Answer, Detail, Tone, Verdict};
use crate::{
    budget::Budget,
    car::Car,
    finding::Findings,
    message::Message,
    output::{Prefer, Stance, Trouble, Wiring, alternatives},
    questions::Question,
    read::{LoadPlace, PlannedRest, Unasked, relay_records},
    say,
    schema::Part,
};

/// What all loads of a plan may cost together, in steps: about three tenths of a second natively, and two or three on a phone.
/// A usual load takes half a thousandth of that, and one of a bridge pair a hundredth with all other ways to connect it.
pub(crate) const MOST: u64 = 360_000_000;

/// What is said of the question before it is answered.
pub const QUESTION: Question = Question {
    id: "outputs",
    name: "Outputs",
    asks: words::QUESTION,
    pending: words::PENDING,
    parts: &[Part::Outputs, Part::Relays, Part::Loads],
    subjects: |plan| {
        let loads = (0..plan.count(Part::Loads)).map(|at| Part::Loads.record(at));
        let coils = relay_records::with_coil(plan).into_iter();
        let coils = coils.map(|number| LoadPlace { part: Part::Relays, number }.subject());
        loads.chain(coils).collect()
    },
};

/// What makes the details of an answer.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Details {
    load: fn(&Subject<'_>) -> Detail,
    remedies: fn(&Subject<'_>, &Budget) -> Vec<Message>,
}

/// Named by the list of questions alone.
pub(crate) const DETAILS: Details = Details { load: detail, remedies };

fn detail(subject: &Subject<'_>) -> Detail {
    Detail {
        figures: figure::figures(subject),
        tables: table::tables(subject),
        pictures: picture::pictures(subject),
    }
}

/// An answer for each load.
pub(crate) fn answers(
    car: &Car<'_>,
    memory: &mut Memory,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Vec<Rc<Answer>> {
    if car.outputs.loads.is_empty() {
        return vec![open::without_loads(&car.outputs).into()];
    }
    let before = findings.count();
    let answers = memory.recall(&car.outputs, details, findings);
    wired::concerns(&car.outputs, &answers, findings);
    once::gather(
        findings,
        before,
        &once::Around {
            outputs: &car.outputs,
            coils: car.coils.as_ref(),
            least_supply: car.cranking.least_supply,
        },
    );
    answers
}

fn answer(
    planned: &PlannedRest,
    at: usize,
    budget: &Budget,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Option<Answer> {
    let Some(subject) = Subject::new(planned, at, budget) else {
        let load = planned.loads.get(at)?;
        if budget.is_short() {
            return unsolved::answer(planned, load, findings);
        }
        let answer = open::answer(planned, load, budget);
        findings.extend(unsolved::not_all_tried(load, budget));
        return Some(answer);
    };
    let own = verdict::verdict(&subject);
    let is_graver = |it: &Verdict| it.tone == Tone::Bad || own.tone == Tone::Good;
    let as_throttle = throttle::verdict(&subject).filter(is_graver);
    let as_throttle = as_throttle.filter(|_| own.tone != Tone::Bad);
    let is_no_throttle = as_throttle.as_ref().is_some_and(|it| it.tone == Tone::Bad);
    let verdict = as_throttle.unwrap_or(own);
    let (verdict, elsewhere) = match wired::verdict(planned, subject.load) {
        Some((wired, why)) if verdict.tone != Tone::Bad => (wired, Some(why)),
        _ => (verdict, None),
    };
    let mut answer = Answer::new(subject.load.path(), verdict.tone, verdict.message);
    let (load, output) = (subject.load.name.clone(), subject.output.name.clone());
    answer.title = Some(say!(words::LOAD_TITLE, load = load, output = output));
    // what is searched with pains comes after the verdict
    let remedies = details.map(|it| (it.remedies)(&subject, budget));
    answer.why = trouble::reason(&subject).or_else(|| why_connect(&subject));
    let found = trouble::findings(&subject, remedies.as_deref().unwrap_or_default());
    answer.to_do = advice::to_do(&subject, &found, remedies, budget);
    // nothing is proved of what may not be connected
    if is_no_throttle {
        answer.why = throttle::findings(&subject).next().map(|it| it.message);
        answer.to_do = Vec::new();
    }
    if elsewhere.is_some() {
        answer.why = elsewhere;
        answer.to_do = Vec::new();
    }
    answer.cautions = advice::cautions(&subject);
    answer.show(details.map(|it| (it.load)(&subject)));
    findings.extend(found);
    findings.extend(unsolved::not_all_tried(subject.load, budget));
    Some(answer)
}

/// Other ways to connect it, where it may not be connected as planned.
fn remedies(subject: &Subject<'_>, budget: &Budget) -> Vec<Message> {
    let is_clean = subject.cases.iter().all(|case| case.judgement.is_clean());
    // where another output decides, what counts as on there is measured first; or the load's resistance, where that does
    if is_clean || subject.is_decided_elsewhere() || subject.is_measured_first() {
        return Vec::new();
    }
    let wirings: Vec<&Wiring> = subject.cases.iter().map(|case| &case.rest.wiring).collect();
    let spares = subject.spares();
    let prefer = match subject.load.unasked {
        Unasked::Dangerous => Prefer::Wires,
        Unasked::Costly | Unasked::Harmless => Prefer::LeastWork,
    };
    let borne = borne(subject);
    let search = (budget, borne.as_slice());
    let found =
        alternatives(&wirings, subject.at, &spares, &subject.planned.around, prefer, search);
    let rewired = wired::rewire(subject.planned, subject.load);
    let others = found.iter().map(|it| advice::remedy(subject, it));
    rewired.into_iter().chain(others).collect()
}

/// What calls for care beside the worst: a change that cures the worst need not cure that too.
fn borne(subject: &Subject<'_>) -> Vec<Trouble> {
    let beside = |case: &LoadAtLevel| {
        let head = case.judgement.head().map(|it| it.trouble);
        let others = case.judgement.found.iter().map(|it| it.trouble);
        others.filter(|it| it.stance() == Stance::Cares && Some(*it) != head).collect::<Vec<_>>()
    };
    subject.cases.iter().flat_map(beside).collect()
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
            words::WHY_CONNECT_BUT,
            unasked = unasked,
            on = on,
            weak = advice::size(voltage),
            acts = acts
        ));
    }
    Some(say!(
        words::WHY_CONNECT,
        unasked = unasked,
        on = on,
        acts = load.pull_in.high,
        lets_go = load.drop_out.low
    ))
}
