//! What is wired otherwise than it is planned.

use std::rc::Rc;

use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    message::Message,
    questions::outputs::words,
    read::{OutputLink, PlannedLoad, PlannedOutput, PlannedRest, Unasked},
    report::{Answer, Tone, Verdict},
    say,
};

/// Each load whose wire was found on another output than the one that it is planned on.
pub(super) fn concerns(planned: &PlannedRest, answers: &[Rc<Answer>], findings: &mut Findings) {
    // what else is wrong with it there stays wrong where the plan follows the wire
    let is_wrong = |load: &PlannedLoad| {
        answers.iter().any(|it| {
            let Verdict { tone, message } = &it.verdict;
            it.subject == load.path()
                && *tone == Tone::Bad
                && message.code != words::NO_WIRED_ELSEWHERE.code
        })
    };
    let of_each = planned.loads.iter().filter_map(|it| of_load(planned, it, !is_wrong(it)));
    findings.extend(of_each);
}

/// The names of the output that it is on, and of the one that it is planned on where that is another.
fn ends(planned: &PlannedRest, load: &PlannedLoad) -> Option<(String, String)> {
    let (OutputLink::To(found), meant) = (load.link, load.meant?) else { return None };
    let name = |at: usize| planned.outputs.get(at).map(|it: &Rc<PlannedOutput>| it.name.clone());
    Some((name(found)?, name(meant)?))
}

/// The verdict on it, and why; nothing where it is on the output that it is planned on.
pub(super) fn verdict(planned: &PlannedRest, load: &PlannedLoad) -> Option<(Verdict, Message)> {
    let (found, meant) = ends(planned, load)?;
    let message = say!(words::NO_WIRED_ELSEWHERE, wired = found, planned = meant);
    Some((Verdict { tone: Tone::Bad, message }, told(planned, load)?))
}

fn told(planned: &PlannedRest, load: &PlannedLoad) -> Option<Message> {
    let (found, meant) = ends(planned, load)?;
    let name = load.name.clone();
    Some(say!(words::WIRED_ELSEWHERE, load = name, wired = found, planned = meant))
}

/// That its wire is moved to where it is planned.
pub(super) fn rewire(planned: &PlannedRest, load: &PlannedLoad) -> Option<Message> {
    let (found, meant) = ends(planned, load)?;
    let move_it = say!(words::DO_REWIRE, load = load.name.clone(), wired = found, planned = meant);
    Some(move_it.done_by(vec![load.place.key(fields::loads::WIRED).edit("")]))
}

fn of_load(planned: &PlannedRest, load: &PlannedLoad, suits_there: bool) -> Option<Finding> {
    let (OutputLink::To(number), (found, _)) = (load.link, ends(planned, load)?) else {
        return None;
    };
    let key = load.place.key(fields::loads::WIRED);
    let is_other = |it: &&PlannedLoad| it.place != load.place && it.claims(number);
    let others = || planned.loads.iter().map(|it| &**it).filter(is_other);
    // what is switched there acts on this one, and what is switched here on what is there
    let is_dangerous = others().chain([load]).any(|it| it.unasked == Unasked::Dangerous);
    let severity = if is_dangerous { Severity::Danger } else { Severity::Fault };
    let output = load.place.key(fields::loads::OUTPUT);
    // the plan follows the wire to an output that is free, and right for it
    let is_free = suits_there && others().next().is_none();
    let plan = say!(words::DO_PLAN_WIRED, load = load.name.clone(), wired = found.clone())
        .done_by(vec![output.edit(found), key.edit("")]);
    let plan = Some(plan).filter(|_| is_free);
    let finding = Finding::new(severity, key, told(planned, load)?);
    Some(finding.cured_by(plan.into_iter().chain(rewire(planned, load))))
}
