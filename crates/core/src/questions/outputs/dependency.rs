//! What was taken or left out, where the answer hangs on it.

use std::rc::Rc;

use super::{case::Subject, verdict};
use crate::{
    fields,
    finding::{Finding, Severity},
    message::Message,
    output::{End, Point, judge},
    quantity::{Band, Measure},
    questions::outputs::words,
    read::{OutputLink, PlannedLoad},
    say, say_of,
    words::Wording,
};

/// What was taken rather than typed, where the answer hangs on it.
pub(super) fn dependencies(subject: &Subject<'_>) -> Vec<Finding> {
    let around = &subject.planned.around;
    let load = subject.load;
    let mut findings = Vec::new();
    if subject.cases.iter().any(|case| case.ends.is_some()) {
        let case = subject.cases.first().filter(|_| !verdict::depends_on_level(subject));
        let ends = case.and_then(|case| case.ends.as_ref()).and_then(|[low, high]| {
            let told = |at| verdict::of_judgement(at, load.unasked);
            let (low, high) = (told(low), told(high));
            (low != high).then_some((low, high))
        });
        let path = load.place.key(fields::loads::RESISTANCE).path();
        findings.extend(dependency(
            subject,
            words::DEPENDS_ON_RESISTANCE,
            path,
            &load.resistance,
            ends,
        ));
    }
    if subject.planned.is_dead_rail_assumed {
        let ends = ends(subject, |point| point.dead_rail);
        let path = fields::controller::SUPPLY_OFF.path();
        findings.extend(dependency(
            subject,
            words::DEPENDS_ON_DEAD_SUPPLY,
            path,
            &around.dead_rail,
            ends,
        ));
    }
    if subject.planned.is_dead_feed_assumed {
        let ends = ends(subject, |point| point.dead_feed);
        let path = fields::switched_feeds::OFF_RESISTANCE.path();
        findings.extend(dependency(
            subject,
            words::DEPENDS_ON_DEAD_FEED,
            path,
            &around.dead_feed,
            ends,
        ));
    }
    findings
}

/// The verdicts with something at its lowest and at its highest, where they differ.
fn ends(subject: &Subject<'_>, of: impl Fn(&Point) -> End) -> Option<(Message, Message)> {
    if verdict::depends_on_level(subject) {
        return None;
    }
    let case = subject.cases.first()?;
    let unasked = subject.load.unasked;
    let at = |end: End| {
        let judgement = judge(&case.rest, |point| of(point) != end.opposite());
        verdict::of_judgement(&judgement, unasked)
    };
    let (low, high) = (at(End::Low), at(End::High));
    (low != high).then_some((low, high))
}

fn dependency<Q: Measure>(
    subject: &Subject<'_>,
    code: &'static Wording,
    path: String,
    band: &Band<Q>,
    ends: Option<(Message, Message)>,
) -> Option<Finding> {
    let (at_low, at_high) = ends?;
    let message = say_of!(
        code,
        load = subject.load.name.clone(),
        low = band.low,
        high = band.high,
        at_low = at_low.text,
        at_high = at_high.text
    );
    Some(Finding::new(Severity::Doubt, path, message))
}

/// Loads on the same output, or on one that hangs together with it, that the answer had to leave out.
pub(super) fn left_out(subject: &Subject<'_>) -> Vec<Finding> {
    let others = subject.hanging.len();
    // said once, with the first of those that are answered
    let is_first = subject.hanging.first().is_some_and(|first| first.place == subject.load.place);
    let output_of = |load: &PlannedLoad| match load.link {
        OutputLink::To(number) => subject.planned.outputs.get(number),
        OutputLink::Blank | OutputLink::Nowhere => None,
    };
    let left_out = subject.left_out.iter().filter(|_| is_first);
    left_out
        .map(|load| {
            let message = say!(
                words::SOLVED_WITHOUT,
                load = load.name.clone(),
                output = output_of(load).map_or(subject.output, Rc::as_ref).name.clone(),
                others = if others == 1 {
                    "the other load".to_owned()
                } else {
                    format!("the other {others}")
                },
                n = others
            );
            Finding::new(Severity::Doubt, load.path(), message)
        })
        .collect()
}
