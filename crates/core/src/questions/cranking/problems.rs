//! From the simulated answer to the findings.

use super::{
    advice::Advice,
    extent::{
        dips, longest_delay, longest_interval, longest_silence, lowest_once_on, most_lost,
        most_openings, often, silence, slowest_reading,
    },
    judge::{corners_where, one_turn},
    supply,
};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, Openings, StartCorner, StopAnswer},
    fields,
    finding::{Finding, Severity},
    quantity::{Holds, Measure, RotationalSpeed, seconds},
    questions::cranking::words,
    read::{Known, Purpose},
    say,
};

/// Longer than this, power on at standstill is more than a note: a usual prime of the pump lasts as long
/// (common practice, no source).
const LONG_AT_REST_S: f64 = 2.0;

/// What the fitter should know.
pub(super) fn findings(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    advice: Option<Advice>,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    if let Some(threshold) = inputs.threshold {
        findings.extend(of_threshold(known, inputs, answer, threshold, advice));
        findings.extend(of_readings(known, inputs, answer, threshold, advice));
        findings.extend(of_sparks(known, inputs, answer));
    }
    findings.extend(no_mark(inputs));
    findings.extend(supply::feed_cut(known));
    findings.extend(supply::other_lets_go(known));
    findings.extend(supply::controller_restarts(known, inputs));
    findings.extend(timeout_in_gap(inputs, answer));
    findings.extend(supply::weak_relay(known, inputs, &answer.relay));
    findings.extend(answer.stop.as_ref().and_then(|stop| on_after_stop(answer, stop)));
    if known.is_even_guess {
        let message = say!(words::EVEN_GUESS, n = inputs.firings.len());
        findings.push(Finding::new(Severity::Note, fields::engine::ORDER, message));
    }
    findings
}

/// What the fitter should know of a further relay: what is the engine's is said once, with the first.
pub(super) fn of_relay(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    advice: Option<Advice>,
    purpose: Purpose,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    if let Some(threshold) = inputs.threshold {
        findings.extend(of_threshold(known, inputs, answer, threshold, advice));
        findings.extend(of_readings(known, inputs, answer, threshold, advice));
        if purpose.feeds(Purpose::Coils) {
            findings.extend(of_sparks(known, inputs, answer));
        }
    }
    findings.extend(supply::weak_relay(known, inputs, &answer.relay));
    findings
}

fn where_so(answer: &CrankingAnswer, so: impl Fn(&StartCorner) -> bool) -> Holds {
    Holds::from_corners(answer.corners.iter().map(|corner| (corner.name.clone(), so(corner))))
}

/// The threshold against the two speeds between which it must lie.
fn of_threshold(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    threshold: RotationalSpeed,
    advice: Option<Advice>,
) -> Option<Finding> {
    let remedy = advice.map(|advice| advice.remedy(known));
    if threshold.base() <= 0.0 {
        let always = Finding::new(Severity::Danger, known.keys.threshold, say!(words::ALWAYS_ON));
        return Some(always.cured_by(remedy));
    }
    if threshold <= inputs.rocking.high {
        let message =
            say!(words::ON_AT_STANDSTILL, threshold = threshold, rocking = inputs.rocking.high);
        return Some(Finding::new(Severity::Doubt, known.keys.threshold, message).cured_by(remedy));
    }
    let waits = |corner: &StartCorner| corner.closes && threshold > corner.slowest_reading;
    if answer.corners.iter().all(|corner| corner.closes) && threshold > slowest_reading(answer) {
        let message =
            say!(words::WAITS_FOR_CREST, threshold = threshold, slowest = slowest_reading(answer));
        let finding = Finding::new(Severity::Doubt, known.keys.threshold, message);
        return Some(finding.holding(where_so(answer, waits)).cured_by(remedy));
    }
    None
}

/// Whether the relay closes, and stays closed.
fn of_readings(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    threshold: RotationalSpeed,
    advice: Option<Advice>,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let remedy = advice.map(|advice| advice.remedy(known));
    // where the time-out cuts power, that is the finding
    let is_heard = |corner: &StartCorner| corner.longest_interval <= inputs.stall_timeout.low;
    let stays_out = |corner: &StartCorner| !corner.closes && is_heard(corner);
    if answer.corners.iter().any(stays_out) {
        let corners = corners_where(answer, stays_out);
        let message = say!(words::NEVER_CLOSES, threshold = threshold, corners = corners);
        let finding = Finding::new(Severity::Fault, known.keys.threshold, message);
        findings.push(
            finding.holding(where_so(answer, stays_out)).cured_by(remedy.clone()).at_its_field(),
        );
    }
    let chatters = |corner: &StartCorner| dips(inputs, corner);
    if answer.corners.iter().any(chatters) {
        let message = say!(
            words::CHATTERS,
            openings = often(most_openings(answer)),
            lowest = lowest_once_on(answer),
            release = inputs.release.of(threshold)
        );
        let finding = Finding::new(Severity::Fault, known.keys.release, message);
        findings.push(finding.holding(where_so(answer, chatters)).cured_by(remedy));
    } else if longest_silence(inputs, answer).is_none() {
        findings.extend(gap_as_tooth(known, answer));
    }
    findings
}

fn gap_as_tooth(known: &Known, answer: &CrankingAnswer) -> Option<Finding> {
    let each = answer.corners.iter().map(|corner| corner.openings_with_gap_as_tooth);
    let openings = each.reduce(Openings::max)?;
    if openings.count == 0 || !known.is_first() {
        return None;
    }
    let finding = Finding::new(
        Severity::Note,
        fields::wheels::MISSING,
        say!(words::GAP_AS_TOOTH, openings = often(openings)),
    );
    Some(finding.holding(where_so(answer, |corner| corner.openings_with_gap_as_tooth.count > 0)))
}

fn of_sparks(known: &Known, inputs: &CrankingInputs, answer: &CrankingAnswer) -> Option<Finding> {
    let lost = most_lost(answer);
    if lost == 0 {
        return None;
    }
    let delay = longest_delay(answer);
    let severity = if delay > one_turn(inputs) { Severity::Doubt } else { Severity::Note };
    // a moment that no threshold saves is no choice of the fitter's
    if severity == Severity::Note && answer.prompt.is_none() {
        return None;
    }
    let message = say!(words::SPARKS_LOST, lost = lost, delay = delay);
    let mut finding = Finding::new(severity, known.keys.threshold, message);
    // where no threshold is prompt, a lower one is no cure
    if let Some(prompt) = answer.prompt.filter(|_| severity == Severity::Doubt) {
        let threshold = super::advice::ends(prompt).1;
        let release = inputs.release.of(threshold);
        let remedy = Advice { threshold, release }.remedy(known);
        finding = finding.cured_by([remedy]);
    }
    Some(finding.holding(where_so(answer, |corner| corner.lost > 0)))
}

fn no_mark(inputs: &CrankingInputs) -> Option<Finding> {
    if inputs.sync == crate::cranking::Sync::Cam || inputs.wheel.has_mark() {
        return None;
    }
    let message = say!(words::NO_MARK, positions = inputs.wheel.positions);
    let finding = Finding::new(Severity::Fault, fields::cranking::SYNC, message);
    Some(finding.cured_by([say!(words::USE_CAM)]))
}

/// Whether the time-out cuts power however the relay is switched.
pub(super) fn is_silent_at_speed(inputs: &CrankingInputs, answer: &CrankingAnswer) -> bool {
    longest_interval(answer) > inputs.stall_timeout.low
}

pub(super) fn timeout_in_gap(inputs: &CrankingInputs, answer: &CrankingAnswer) -> Option<Finding> {
    let interval = longest_silence(inputs, answer)?;
    let message =
        say!(words::TIMEOUT_IN_GAP, timeout = inputs.stall_timeout.low, interval = interval);
    // half as much again for an engine that turns slower still, in whole hundredths of a second
    let enough = seconds((interval.base() * 150.0).ceil() / 100.0);
    let finding = Finding::new(Severity::Fault, fields::cranking::STALL_TIMEOUT, message)
        .cured_by([say!(words::SET_TIMEOUT, timeout = enough)
            .done_by(vec![fields::cranking::STALL_TIMEOUT.edit(enough.show().into_shown())])]);
    Some(finding.holding(where_so(answer, |corner| silence(inputs, corner).is_some())))
}

fn on_after_stop(answer: &CrankingAnswer, stop: &StopAnswer) -> Option<Finding> {
    // a time-out that is no longer than usual is not worth a word
    if stop.on_at_rest.base() <= LONG_AT_REST_S {
        return None;
    }
    let message = say!(words::ON_AFTER_STOP, on = stop.on_at_rest);
    let remedy = say!(words::SHORTER_TIMEOUT, interval = longest_interval(answer));
    Some(Finding::new(Severity::Doubt, fields::cranking::STALL_TIMEOUT, message).cured_by([remedy]))
}
