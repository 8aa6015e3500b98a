//! The answer for outputs that control the current.

use super::{
    super::{Answer, Tone},
    Solved, corners, numbers,
};
use crate::{
    finding::{Finding, Findings, Severity},
    injector::{
        Answer as Found, Inputs,
        controlled::{Controlled, Serves},
    },
    message::Message,
    quantity::{Measure, Value},
    say,
};

/// What a channel that controls the current does with its injectors.
pub(super) fn answer(solved: &Solved<'_>, channel: &Controlled, findings: &mut Findings) -> Answer {
    let Solved { set, inputs, found } = solved;
    let (tone, verdict) = verdict(inputs, channel);
    let mut answer = Answer::new(set.record(), tone, verdict);
    answer.why = Some(why(inputs, found, channel));
    answer.figures = numbers::of_channel(inputs, found, channel);
    let cures = cures(channel);
    if let Some(finding) = finding(solved, channel) {
        let working = channel.window.working.iter().chain(&channel.working).cloned();
        findings.push(finding.cured_by(cures.iter().cloned()).shown_by(working));
    }
    if let Some(finding) = hold(solved, channel) {
        findings.push(finding.shown_by(channel.working.iter().cloned()));
        answer.verdict.tone = answer.verdict.tone.min(Tone::Doubtful);
    }
    answer.to_do = cures;
    answer.cautions.extend([say!("injectors.no-diode"), say!("injectors.hot-driver")]);
    answer
}

fn verdict(inputs: &Inputs, channel: &Controlled) -> (Tone, Message) {
    let window = &channel.window;
    let missed = corners(&channel.not_reached);
    match channel.serves {
        Serves::UnknownPeak if window.is_open() => {
            let verdict = say!("injectors.peak-wanted", least = window.least, most = window.most);
            (Tone::Open, verdict)
        }
        Serves::UnknownPeak => {
            (Tone::Bad, say!("injectors.peak-impossible", corner = window.most_at.name))
        }
        Serves::Always => (Tone::Good, say!("injectors.peak-good")),
        Serves::AsPlainSwitch => (Tone::Good, say!("injectors.peak-unused")),
        Serves::PeakNotEverywhere => {
            (Tone::Doubtful, say!("injectors.peak-missed", corners = missed))
        }
        Serves::PeakNowhere => (Tone::Bad, say!("injectors.peak-never")),
        Serves::TooSmall => (Tone::Bad, say!("injectors.peak-small", n = inputs.per_output)),
        Serves::CutShort => {
            (Tone::Bad, say!("injectors.peak-cut-short", corners = corners(&channel.cut_short)))
        }
        Serves::ByTime => (Tone::Good, say!("injectors.peak-by-time")),
    }
}

fn why(inputs: &Inputs, found: &Found, channel: &Controlled) -> Message {
    let window = &channel.window;
    let (n, resistance) = (inputs.per_output, inputs.resistance.nominal);
    match (channel.peak, channel.share) {
        (Some(peak), Some(share)) => say!(
            "injectors.channel-gives",
            n = n,
            resistance = resistance,
            peak = peak.nominal,
            share = share,
            opening = found.opening.current.high,
            most = window.most,
            corner = window.most_at.name
        ),
        _ => say!(
            "injectors.channel-needs",
            n = n,
            resistance = resistance,
            least = window.least,
            most = window.most,
            corner = window.most_at.name
        ),
    }
}

fn cures(channel: &Controlled) -> Vec<Message> {
    let window = &channel.window;
    match channel.serves {
        Serves::Always | Serves::AsPlainSwitch | Serves::ByTime => Vec::new(),
        Serves::CutShort => channel
            .time_needed
            .map(|time| say!("injectors.longer-peak", time = time))
            .into_iter()
            .collect(),
        Serves::UnknownPeak => vec![say!("injectors.wants-peak")],
        _ if window.is_open() => {
            vec![say!("injectors.set-peak", least = window.least, most = window.most)]
        }
        Serves::PeakNotEverywhere => {
            vec![say!("injectors.time-out"), not_even(channel)]
        }
        _ => vec![not_even(channel)],
    }
}

fn not_even(channel: &Controlled) -> Message {
    let window = &channel.window;
    say!(
        "injectors.no-peak-fits",
        least = window.least,
        most = window.most,
        corner = window.most_at.name
    )
}

fn finding(solved: &Solved<'_>, channel: &Controlled) -> Option<Finding> {
    let path = || solved.path("output_limit");
    let peak = channel.peak?.nominal;
    let (window, n) = (&channel.window, solved.inputs.per_output);
    match channel.serves {
        Serves::TooSmall => {
            let message =
                say!("injectors.peak-too-small", peak = peak, n = n, least = window.least);
            Some(Finding::new(Severity::Fault, path(), message))
        }
        Serves::PeakNotEverywhere | Serves::PeakNowhere => {
            let severity = match channel.serves {
                Serves::PeakNowhere => Severity::Fault,
                _ => Severity::Doubt,
            };
            let message = say!(
                "injectors.peak-not-reached",
                peak = peak,
                most = window.most,
                corner = window.most_at.name
            );
            Some(Finding::new(severity, path(), message).holding(channel.not_reached.clone()))
        }
        Serves::AsPlainSwitch => {
            let message = say!("injectors.peak-not-used", peak = peak);
            Some(Finding::new(Severity::Note, path(), message))
        }
        Serves::CutShort => {
            let (limit, needed) = (channel.time_limit?.low, channel.time_needed);
            let needed = needed.map_or(Value::text("more than any"), Measure::show);
            let message = say!("injectors.peak-time-too-short", limit = limit, needed = needed);
            let finding = Finding::new(Severity::Fault, solved.path("peak_time"), message);
            Some(finding.holding(channel.cut_short.clone()))
        }
        Serves::ByTime => {
            let limit = channel.time_limit?.nominal;
            let message = say!("injectors.peak-ends-by-time", peak = peak, limit = limit);
            let finding = Finding::new(Severity::Note, solved.path("peak_time"), message);
            Some(finding.holding(channel.not_reached.clone()))
        }
        Serves::Always | Serves::UnknownPeak => None,
    }
}

fn hold(solved: &Solved<'_>, channel: &Controlled) -> Option<Finding> {
    let inputs = solved.inputs;
    let hold = inputs.output.hold.filter(|_| channel.hold_too_small)?;
    let message = say!(
        "injectors.hold-too-small",
        hold = hold.low,
        needed = channel.hold_needed,
        n = inputs.per_output
    );
    Some(Finding::new(Severity::Doubt, solved.path("hold_current"), message))
}
