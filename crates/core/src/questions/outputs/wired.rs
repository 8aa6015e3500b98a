//! What is wired otherwise than it is planned.

use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    questions::outputs::words,
    read::{OutputLink, PlannedLoad, PlannedRest, Unasked},
    say,
};

/// Each load whose wire was found on another output than the one that it is planned on.
pub(super) fn concerns(planned: &PlannedRest, findings: &mut Findings) {
    findings.extend(planned.loads.iter().filter_map(|load| of_load(planned, load)));
}

fn of_load(planned: &PlannedRest, load: &PlannedLoad) -> Option<Finding> {
    let (number, OutputLink::To(link)) = (load.wired?, load.link) else { return None };
    let [found, meant] = [number, link].map(|at| planned.outputs.get(at).map(|it| it.name.clone()));
    let (found, meant) = (found?, meant?);
    let key = load.place.key(fields::loads::WIRED);
    let name = || load.name.clone();
    let others = || planned.loads.iter().map(|it| &**it).filter(|it| it.takes(number));
    // what is switched there acts on this one, and what is switched here on what is there
    let is_dangerous = others().chain([load]).any(|it| it.unasked == Unasked::Dangerous);
    let severity = if is_dangerous { Severity::Danger } else { Severity::Fault };
    let message =
        say!(words::WIRED_ELSEWHERE, load = name(), wired = found.clone(), planned = meant.clone());
    let output = load.place.key(fields::loads::OUTPUT);
    // the plan follows the wire to an output that is free
    let is_free = others().next().is_none();
    let plan = say!(words::DO_PLAN_WIRED, load = name(), wired = found.clone())
        .done_by(vec![output.edit(found.clone()), key.edit("")]);
    let rewire = say!(words::DO_REWIRE, load = name(), wired = found, planned = meant);
    let rewire = rewire.done_by(vec![key.edit("")]);
    Some(
        Finding::new(severity, key, message)
            .cured_by(Some(plan).filter(|_| is_free).into_iter().chain([rewire])),
    )
}
