//! A variable-reluctance sensor: enough while cranking, not too much at speed, the right way round.

use super::{
    super::{Answer, Figure, Tone},
    sensor::found,
};
use crate::{
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Band, RotationalSpeed, Voltage},
    read::{Sensed, Triggered},
    say,
    trigger::reluctance::{Cure, Peak, Reluctance},
};

pub(super) fn answer(read: &Triggered, sensor: &Sensed, findings: &mut Findings) -> Answer {
    let is_reversed = sensor.polarity == Some("reversed");
    if is_reversed {
        let message = say!("trigger.reversed");
        findings.push(found(sensor, Severity::Fault, "polarity", message));
    }
    let peaks = sensor.reluctance.and_then(|coil| {
        let highest = read.highest.map(Band::exact);
        let slow = read.slowest.and_then(|speed| coil.at(speed));
        let fast = highest.and_then(|speed| coil.at(speed));
        (slow.is_some() || fast.is_some()).then_some((coil, slow, fast))
    });
    let Some((coil, slow, fast)) = peaks else {
        let verdict = if is_reversed {
            (Tone::Bad, say!("trigger.is-reversed"))
        } else {
            (Tone::Open, say!("trigger.measure"))
        };
        let mut answer = Answer::new(sensor.record, verdict.0, verdict.1);
        answer.to_do = vec![say!("trigger.do-measure"), say!("trigger.do-polarity")];
        return answer;
    };
    let mut cures = Vec::new();
    let mut said = vec![
        weak(read, sensor, slow.as_ref(), findings),
        too_much(read, sensor, &coil, fast.as_ref(), (&mut cures, findings)),
    ];
    if is_reversed {
        said.push((Tone::Bad, say!("trigger.is-reversed")));
    }
    let worst = said.into_iter().min_by_key(|(tone, _)| *tone);
    let (tone, verdict) = worst.unwrap_or((Tone::Open, say!("trigger.measure")));
    let mut answer = Answer::new(sensor.record, tone, verdict);
    answer.why = Some(say!("trigger.why-coil"));
    answer.to_do = cures;
    answer.to_do.extend(to_do(sensor, read));
    answer.figures = figures(slow.as_ref(), fast.as_ref());
    answer
}

fn to_do(sensor: &Sensed, read: &Triggered) -> Vec<Message> {
    let mut to_do = Vec::new();
    if read.input.counts_from.is_none() || read.input.bears.is_none() {
        to_do.push(say!("trigger.do-input"));
    }
    match sensor.polarity {
        Some("reversed") => to_do.push(say!("trigger.do-swap")),
        Some(_) => {}
        None => to_do.push(say!("trigger.do-polarity")),
    }
    to_do.push(say!("trigger.do-gap-width"));
    to_do
}

fn figures(slow: Option<&Peak>, fast: Option<&Peak>) -> Vec<Figure> {
    let mut figures = Vec::new();
    if let Some(peak) = slow {
        let label = say!("trigger.figure-peak-slow");
        figures.push(Figure::new(label, peak.at_input, peak.working.clone()));
    }
    if let Some(peak) = fast {
        let label = say!("trigger.figure-peak-fast");
        figures.push(Figure::new(label, peak.at_input, peak.working.clone()));
    }
    figures
}

/// At the slowest instant of cranking.
fn weak(
    read: &Triggered,
    sensor: &Sensed,
    slow: Option<&Peak>,
    findings: &mut Findings,
) -> (Tone, Message) {
    let Some(peak) = slow else { return (Tone::Open, say!("trigger.no-cranking")) };
    let of: Band<Voltage> = peak.at_input;
    let Some(counts_from) = read.input.counts_from else {
        return (Tone::Open, say!("trigger.peak-is", peak = of.low));
    };
    if of.low >= counts_from {
        return (Tone::Good, say!("trigger.strong", peak = of.low, counts_from = counts_from));
    }
    let message = say!("trigger.weak", peak = of.low, counts_from = counts_from);
    let (severity, tone) = if of.high < counts_from || of.nominal < counts_from {
        (Severity::Fault, Tone::Bad)
    } else {
        (Severity::Doubt, Tone::Doubtful)
    };
    let finding = found(sensor, severity, "amplitude", message);
    findings.push(finding.shown_by(peak.working.iter().cloned()));
    (tone, say!("trigger.is-weak", peak = of.low))
}

/// At the highest speed.
fn too_much(
    read: &Triggered,
    sensor: &Sensed,
    coil: &Reluctance,
    fast: Option<&Peak>,
    (cures, findings): (&mut Vec<Message>, &mut Findings),
) -> (Tone, Message) {
    let Some((peak, speed)) = fast.zip(read.highest) else {
        return (Tone::Open, say!("trigger.no-speed"));
    };
    let Some(bears) = read.input.bears else {
        return (Tone::Open, say!("trigger.top-is", peak = peak.at_input.high));
    };
    if peak.at_input.high <= bears {
        return (Tone::Good, say!("trigger.borne", peak = peak.at_input.high));
    }
    let message =
        say!("trigger.over-voltage", peak = peak.at_input.high, speed = speed, bears = bears);
    let finding: Finding = found(sensor, Severity::Danger, "amplitude", message);
    let cured = cure(read, coil, speed, bears);
    findings.push(finding.cured_by(cured.clone()).shown_by(peak.working.iter().cloned()));
    cures.extend(cured);
    (Tone::Bad, say!("trigger.is-over", peak = peak.at_input.high))
}

fn cure(
    read: &Triggered,
    coil: &Reluctance,
    speed: RotationalSpeed,
    bears: Voltage,
) -> Option<Message> {
    let (slowest, counts_from) = read.slowest.zip(read.input.counts_from)?;
    Some(match coil.cure(slowest, Band::exact(speed), counts_from, bears)? {
        Cure::Series(series, left) => say!("trigger.cure-series", series = series, left = left),
        Cure::Clamp(series, current) => {
            say!("trigger.cure-clamp", series = series, current = current, bears = bears)
        }
    })
}
