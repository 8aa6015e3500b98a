//! What is worth knowing once, and holds of several loads: said of the first, and of the others by name.

use std::rc::Rc;

use crate::{
    finding::{Finding, Findings, Severity},
    questions::outputs::words,
    say,
    words::Wording,
};

/// Findings that are said once for a car where they are no danger.
const ONCE: [&Wording; 9] = [
    words::ACTS_WITHOUT_FEED,
    words::ACTS_WITHOUT_GROUND,
    words::ACTS_WITHOUT_SUPPLY,
    words::KEEPS_FEED_ALIVE,
    words::KEEPS_CONTROLLER_ALIVE,
    words::KICK_UNCAUGHT,
    words::DIODE_UNKNOWN,
    words::PERHAPS_LIVE_OUTLIVED,
    words::PERHAPS_DRIVES_DEAD_FEED,
];

/// Gathers those behind the first `before` findings.
pub(super) fn gather(findings: &mut Findings, before: usize) {
    // each with the names of the other loads of which it holds
    let mut gathered: Vec<(Rc<Finding>, Vec<String>)> = Vec::new();
    for finding in findings.split_off(before) {
        let is_once = |it: &Finding| {
            it.severity >= Severity::Fault && ONCE.iter().any(|once| once.code == it.message.code)
        };
        let said = gathered.iter_mut().filter(|_| is_once(&finding)).find(|(it, _)| {
            let is_as_grave = it.severity == finding.severity;
            is_once(it) && is_as_grave && it.message.code == finding.message.code
        });
        match (said, finding.message.values.get("load")) {
            (Some((_, others)), Some(load)) => others.push(load.shown.clone()),
            _ => gathered.push((finding, Vec::new())),
        }
    }
    let told = gathered.into_iter().map(|(mut finding, others)| {
        if !others.is_empty() {
            let also = say!(words::ALSO, also = others.join(", "));
            let finding = Rc::make_mut(&mut finding);
            finding.message = finding.message.clone().and_then(&also);
        }
        finding
    });
    findings.share(&told.collect::<Vec<_>>());
}
