//! The battery's cable, and the alternator.

use super::{
    Details,
    read::{PlannedCircuit, PlannedFeeds},
    words,
};
use crate::{
    fields::battery,
    finding::{Finding, Findings, Severity},
    quantity::{Current, Measure},
    read::Purpose,
    report::{Answer, Tone},
    say, say_of,
    supply::cable,
};

/// What the cable to the starter loses; nothing while it isn't known.
pub(super) fn cable(
    feeds: &PlannedFeeds,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Option<Answer> {
    let Some(inputs) = feeds.cable else {
        let open = || Answer::new("feeds.cable", Tone::Open, say!(words::CABLE_OPEN));
        return feeds
            .is_cable_begun
            .then(|| Answer { title: Some(say!(words::CABLE_TITLE)), ..open() });
    };
    let found = inputs.answer();
    let is_thin = cable::is_too_much(found.drop);
    let (tone, verdict) = if is_thin {
        let is_most = cable::is_most(found.drop, inputs.cranking);
        let tone = if is_most { Tone::Bad } else { Tone::Doubtful };
        let of = if inputs.is_strap_worse() { words::CABLE_BACK } else { words::CABLE_THIN };
        (tone, say_of!(of, drop = found.drop))
    } else {
        (Tone::Good, say!(words::CABLE_GOOD, left = found.left))
    };
    let mut answer = Answer::new("feeds.cable", tone, verdict);
    answer.title = Some(say!(words::CABLE_TITLE));
    answer.why = Some(say!(
        words::CABLE_WHY,
        starter = inputs.starter,
        length = inputs.length,
        size = inputs.area,
        drop = found.drop,
        cranking = inputs.cranking
    ));
    answer.cautions.push(say!(words::CAUTION_CABLE));
    answer.show(details.map(|it| (it.cable)(&found)));
    // a strap that is worse than the cable is told by itself
    if is_thin && !inputs.is_strap_worse() {
        let message = say!(
            words::CABLE_DROPS,
            drop = found.drop,
            left = found.left,
            cranking = inputs.cranking
        );
        let cure = found.area.map_or_else(
            || say!(words::DO_CABLES),
            |size| {
                let edit = battery::LEAD_SIZE.edit(size.show().into_shown());
                say!(words::DO_CABLE, size = size, length = inputs.length).done_by(vec![edit])
            },
        );
        let is_most = cable::is_most(found.drop, inputs.cranking);
        let severity = if is_most { Severity::Fault } else { Severity::Doubt };
        let finding = Finding::new(severity, battery::LEAD_SIZE, message);
        findings.push(finding.cured_by([cure]).shown_by(found.working));
    }
    Some(answer)
}

/// Whether the alternator feeds it all; nothing while nothing is known of it.
pub(super) fn alternator(
    feeds: &PlannedFeeds,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Option<Answer> {
    let inputs = feeds.alternator?;
    // a starter turns while nothing charges
    let is_charged =
        |it: &&PlannedCircuit| it.behind.is_none() && it.purpose != Some(Purpose::Starter);
    let first = || feeds.circuits.iter().filter(is_charged);
    let draws: Vec<Current> = first().filter_map(|it| it.carries).collect();
    let is_all_known = !draws.is_empty() && first().all(|it| it.carries.is_some());
    let engine = feeds.circuits.iter().filter_map(|it| it.of_engine).map(Current::base).sum();
    let found = inputs.answer(&draws, Current::from_base(engine));
    let lacks = |left: Option<Current>| {
        // to a hair within which no ampere of it is known
        let hair = 0.05 * found.needed.base();
        left.filter(|it| it.base() < -hair).map(|it| Current::from_base(-it.base()))
    };
    let (at_speed, at_idle) = (lacks(found.speed), lacks(found.idle));
    let (tone, verdict) = match (at_speed, at_idle, inputs.idle) {
        (Some(short), ..) => (Tone::Bad, say!(words::ALTERNATOR_SHORT, short = short)),
        (_, Some(short), _) => (Tone::Doubtful, say!(words::ALTERNATOR_IDLE, short = short)),
        _ if !is_all_known => (Tone::Open, say!(words::ALTERNATOR_OPEN, needed = found.needed)),
        (_, _, Some(_)) => (Tone::Good, say!(words::ALTERNATOR_GOOD)),
        _ => (Tone::Good, say!(words::ALTERNATOR_SPEED)),
    };
    let mut answer = Answer::new("feeds.alternator", tone, verdict);
    answer.title = Some(say!(words::ALTERNATOR_TITLE));
    answer.why = Some(say!(words::ALTERNATOR_WHY, needed = found.needed));
    answer.show(details.map(|it| (it.alternator)(&found)));
    if let Some(short) = at_speed {
        let message = say!(words::ALTERNATOR_LACKS, needed = found.needed, short = short);
        let finding = Finding::new(Severity::Fault, battery::ALTERNATOR, message);
        let cure = say!(words::DO_SHED, rating = cable::rated_for(found.needed));
        findings.push(finding.cured_by([cure]).shown_by(found.working));
    } else if let Some(short) = at_idle {
        let message = say!(words::IDLE_LACKS, short = short);
        let finding = Finding::new(Severity::Note, battery::ALTERNATOR_IDLE, message);
        findings.push(finding.shown_by(found.working));
    }
    Some(answer)
}
