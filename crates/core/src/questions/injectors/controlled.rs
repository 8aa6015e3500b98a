//! The answer for outputs that control the current.

use super::{SolvedSet, corners};
use crate::report::{Answer, Tone};
use crate::{
    fields,
    finding::{Finding, Findings, Severity},
    injector::{
        InjectorInputs,
        controlled::{self, Controlled, Serves},
    },
    message::Message,
    quantity::{Holds, Measure, Value, seconds},
    questions::injectors::words,
    say, say_of,
};

/// What a channel that controls the current does with its injectors.
pub(super) fn answer(
    solved: &SolvedSet<'_>,
    channel: &Controlled,
    findings: &mut Findings,
) -> Answer {
    let SolvedSet { set, inputs, .. } = solved;
    let (tone, verdict) = verdict(inputs, channel);
    let mut answer = Answer::new(set.part().name(), tone, verdict);
    answer.why = Some(why(solved, channel));
    let cures = cures(solved, channel);
    if let Some(finding) = finding(solved, channel) {
        let working = channel.window.working.iter().chain(&channel.working).cloned();
        findings.push(finding.cured_by(cures.iter().cloned()).shown_by(working));
    }
    if let Some(finding) = hold(solved, channel) {
        findings.push(finding.shown_by(channel.working.iter().cloned()));
        answer.verdict.tone = answer.verdict.tone.min(Tone::Doubtful);
    }
    answer.to_do = cures;
    answer.cautions.extend([say!(words::NO_DIODE), say!(words::parts::HOT_DRIVER)]);
    answer
}

fn verdict(inputs: &InjectorInputs, channel: &Controlled) -> (Tone, Message) {
    let window = &channel.window;
    let missed = corners(&channel.not_reached);
    match channel.serves {
        Serves::UnknownPeak if window.is_open() => {
            let verdict = say!(words::PEAK_WANTED, peak = window.best());
            (Tone::Open, verdict)
        }
        Serves::UnknownPeak => {
            (Tone::Bad, say!(words::PEAK_IMPOSSIBLE, corner = window.most_at.name))
        }
        Serves::PeakNotEverywhere if is_cranking_alone(inputs, channel) => {
            (Tone::Good, say!(words::PEAK_GOOD))
        }
        Serves::Always => (Tone::Good, say!(words::PEAK_GOOD)),
        Serves::AsPlainSwitch => (Tone::Good, say!(words::PEAK_UNUSED)),
        Serves::PeakNotEverywhere => (Tone::Doubtful, say!(words::PEAK_MISSED, corners = missed)),
        Serves::PeakNowhere => (Tone::Bad, say!(words::PEAK_NEVER)),
        Serves::TooSmall => (Tone::Bad, say!(words::PEAK_SMALL, n = inputs.per_output)),
        Serves::CutShort => {
            (Tone::Bad, say!(words::PEAK_CUT_SHORT, corners = corners(&channel.cut_short)))
        }
        Serves::ByTime => (Tone::Good, say!(words::PEAK_BY_TIME)),
    }
}

fn why(solved: &SolvedSet<'_>, channel: &Controlled) -> Message {
    let SolvedSet { inputs, found, .. } = solved;
    let window = &channel.window;
    let (n, resistance) = (inputs.per_output, solved.in_line());
    match (channel.peak, channel.share) {
        (Some(peak), Some(share)) => say!(
            words::CHANNEL_GIVES,
            n = n,
            resistance = resistance,
            peak = peak.nominal,
            share = share,
            opening = found.opening.current.high,
            most = window.most,
            corner = window.most_at.name
        ),
        _ => say!(
            words::CHANNEL_NEEDS,
            n = n,
            resistance = resistance,
            least = window.least,
            most = window.most,
            corner = window.most_at.name
        ),
    }
}

/// What does it, least work first: a setting, then fewer injectors on a channel.
fn cures(solved: &SolvedSet<'_>, channel: &Controlled) -> Vec<Message> {
    let mut cures = settings(solved, channel);
    let is_served = matches!(
        channel.serves,
        Serves::Always | Serves::AsPlainSwitch | Serves::ByTime | Serves::UnknownPeak
    );
    let fewer = controlled::fewer(solved.inputs, &solved.found.opening).filter(|_| !is_served);
    cures.extend(fewer.map(|it| {
        say!(words::parts::FEWER_ON_CHANNEL, n = it.per_output)
            .done_by(super::cures::sharing(solved, it.per_output))
    }));
    cures
}

fn settings(solved: &SolvedSet<'_>, channel: &Controlled) -> Vec<Message> {
    let window = &channel.window;
    match channel.serves {
        Serves::Always | Serves::AsPlainSwitch | Serves::ByTime => Vec::new(),
        Serves::CutShort => channel
            .time_needed
            .map(|time| {
                // in whole tenths of a millisecond, so that what is typed is enough
                let time = seconds((time.base() * 1e4).ceil() / 1e4);
                let edit = solved.key(fields::injectors::PEAK_TIME).edit(time.show().into_shown());
                say!(words::parts::LONGER_PEAK, time = time).done_by(vec![edit])
            })
            .into_iter()
            .collect(),
        Serves::UnknownPeak => vec![say!(words::WANTS_PEAK)],
        _ if window.is_open() => {
            let key = solved.key(fields::injectors::OUTPUT_LIMIT);
            let best = window.best();
            let edit = key.edit(best.show().into_shown());
            let peak = say!(words::SET_PEAK, peak = best, least = window.least, most = window.most);
            vec![peak.done_by(vec![edit])]
        }
        Serves::PeakNotEverywhere => {
            vec![say!(words::TIME_OUT), not_even(channel)]
        }
        _ => vec![not_even(channel)],
    }
}

fn not_even(channel: &Controlled) -> Message {
    let window = &channel.window;
    say!(
        words::NO_PEAK_FITS,
        least = window.least,
        most = window.most,
        corner = window.most_at.name
    )
}

/// Whether the peak is missed only while the starter turns.
fn is_cranking_alone(inputs: &InjectorInputs, channel: &Controlled) -> bool {
    let Holds::AtSome(corners) = &channel.not_reached else { return false };
    let [cold, hot, ..] = &inputs.corners;
    corners.iter().all(|name| [cold.name, hot.name].contains(&name.as_str()))
}

fn finding(solved: &SolvedSet<'_>, channel: &Controlled) -> Option<Finding> {
    let key = || solved.key(fields::injectors::OUTPUT_LIMIT);
    let peak = channel.peak?.nominal;
    let (window, n) = (&channel.window, solved.inputs.per_output);
    match channel.serves {
        Serves::TooSmall => {
            let message = say!(words::PEAK_TOO_SMALL, peak = peak, n = n, least = window.least);
            Some(Finding::new(Severity::Fault, key(), message))
        }
        Serves::PeakNotEverywhere | Serves::PeakNowhere => {
            // for seconds at a few hundredths of the time nothing runs hot, and it opens all the same
            let is_cranking = channel.serves == Serves::PeakNotEverywhere
                && is_cranking_alone(solved.inputs, channel);
            let (severity, wording) = match channel.serves {
                Serves::PeakNowhere => (Severity::Fault, words::PEAK_NOT_REACHED),
                _ if is_cranking => (Severity::Note, words::PEAK_NOT_WHILE_CRANKING),
                _ => (Severity::Doubt, words::PEAK_NOT_REACHED),
            };
            let message =
                say_of!(wording, peak = peak, most = window.most, corner = window.most_at.name);
            Some(Finding::new(severity, key(), message).holding(channel.not_reached.clone()))
        }
        Serves::AsPlainSwitch => {
            let message = say!(words::PEAK_NOT_USED, peak = peak);
            Some(Finding::new(Severity::Note, key(), message))
        }
        Serves::CutShort => {
            let (limit, needed) = (channel.time_limit?.low, channel.time_needed);
            let needed = needed.map_or(Value::text("more than any"), Measure::show);
            let message = say!(words::parts::PEAK_TIME_TOO_SHORT, limit = limit, needed = needed);
            let finding =
                Finding::new(Severity::Fault, solved.key(fields::injectors::PEAK_TIME), message);
            Some(finding.holding(channel.cut_short.clone()))
        }
        Serves::ByTime => {
            let limit = channel.time_limit?.nominal;
            let message = say!(words::parts::PEAK_ENDS_BY_TIME, peak = peak, limit = limit);
            let finding =
                Finding::new(Severity::Note, solved.key(fields::injectors::PEAK_TIME), message);
            Some(finding.holding(channel.not_reached.clone()))
        }
        Serves::Always | Serves::UnknownPeak => None,
    }
}

fn hold(solved: &SolvedSet<'_>, channel: &Controlled) -> Option<Finding> {
    let inputs = solved.inputs;
    let hold = inputs.output.hold.filter(|_| channel.hold_too_small)?;
    let message = say!(
        words::HOLD_TOO_SMALL,
        hold = hold.low,
        needed = channel.hold_needed,
        n = inputs.per_output
    );
    Some(Finding::new(Severity::Doubt, solved.key(fields::injectors::HOLD_CURRENT), message))
}
