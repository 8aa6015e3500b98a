//! A variable-reluctance sensor: enough while cranking, not too much at speed, the right way round.

use super::{Details, sensor::found};
use crate::report::{Answer, Tone};
use crate::{
    fields,
    fields::sensor::Polarity,
    finding::{Finding, Findings, Severity},
    message::Message,
    quantity::{Band, RotationalSpeed, Voltage},
    questions::trigger::words,
    read::{Sensed, Triggered},
    say,
    trigger::reluctance::{Peak, Reluctance, SignalLimiter},
};

pub(super) fn answer(
    read: &Triggered,
    sensor: &Sensed,
    details: Option<&Details>,
    findings: &mut Findings,
) -> Answer {
    let is_reversed = sensor.polarity == Some(Polarity::Reversed);
    if is_reversed {
        let message = say!(words::REVERSED);
        findings.push(found(sensor, Severity::Fault, fields::sensor::POLARITY, message));
    }
    let peaks = sensor.reluctance.and_then(|coil| {
        let highest = read.highest.map(Band::exact);
        let slow = read.slowest.and_then(|speed| coil.at(speed));
        let fast = highest.and_then(|speed| coil.at(speed));
        (slow.is_some() || fast.is_some()).then_some((coil, slow, fast))
    });
    let Some((coil, slow, fast)) = peaks else {
        let verdict = if is_reversed {
            (Tone::Bad, say!(words::IS_REVERSED))
        } else {
            (Tone::Open, say!(words::MEASURE))
        };
        let mut answer = Answer::new(sensor.part.name(), verdict.0, verdict.1);
        answer.to_do = vec![say!(words::DO_MEASURE), say!(words::DO_POLARITY)];
        return answer;
    };
    let mut cures = Vec::new();
    let mut said = vec![
        weak(read, sensor, slow.as_ref(), findings),
        too_much(read, sensor, &coil, fast.as_ref(), (&mut cures, findings)),
    ];
    if is_reversed {
        said.push((Tone::Bad, say!(words::IS_REVERSED)));
    }
    let worst = said.into_iter().min_by_key(|(tone, _)| *tone);
    let (tone, verdict) = worst.unwrap_or((Tone::Open, say!(words::MEASURE)));
    let mut answer = Answer::new(sensor.part.name(), tone, verdict);
    answer.why = Some(say!(words::WHY_COIL));
    answer.to_do = cures;
    answer.to_do.extend(to_do(sensor, read));
    answer.show(details.map(|it| (it.peaks)(slow.as_ref(), fast.as_ref())));
    answer
}

fn to_do(sensor: &Sensed, read: &Triggered) -> Vec<Message> {
    let mut to_do = Vec::new();
    if read.input.counts_from.is_none() || read.input.bears.is_none() {
        to_do.push(say!(words::DO_INPUT));
    }
    match sensor.polarity {
        Some(Polarity::Reversed) => to_do.push(say!(words::DO_SWAP)),
        Some(_) => {}
        None => to_do.push(say!(words::DO_POLARITY)),
    }
    to_do.push(say!(words::DO_GAP_WIDTH));
    to_do
}

/// At the slowest instant of cranking.
fn weak(
    read: &Triggered,
    sensor: &Sensed,
    slow: Option<&Peak>,
    findings: &mut Findings,
) -> (Tone, Message) {
    let Some(peak) = slow else { return (Tone::Open, say!(words::NO_CRANKING)) };
    let of: Band<Voltage> = peak.at_input;
    let Some(counts_from) = read.input.counts_from else {
        return (Tone::Open, say!(words::PEAK_IS, peak = of.low));
    };
    if of.low >= counts_from {
        return (Tone::Good, say!(words::STRONG, peak = of.low, counts_from = counts_from));
    }
    let message = say!(words::WEAK, peak = of.low, counts_from = counts_from);
    // a dip that is only what is usual is no more than a doubt
    let is_sure = read.typed_dip.is_some() && of.nominal < counts_from;
    let (severity, tone) =
        if is_sure { (Severity::Fault, Tone::Bad) } else { (Severity::Doubt, Tone::Doubtful) };
    let finding = found(sensor, severity, fields::sensor::AMPLITUDE, message);
    findings.push(finding.shown_by(peak.working.iter().cloned()));
    (tone, say!(words::IS_WEAK, peak = of.low))
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
        return (Tone::Open, say!(words::NO_SPEED));
    };
    let Some(bears) = read.input.bears else {
        return (Tone::Open, say!(words::TOP_IS, peak = peak.at_input.high));
    };
    if peak.at_input.high <= bears {
        return (Tone::Good, say!(words::BORNE, peak = peak.at_input.high));
    }
    let message =
        say!(words::OVER_VOLTAGE, peak = peak.at_input.high, speed = speed, bears = bears);
    let finding: Finding = found(sensor, Severity::Danger, fields::sensor::AMPLITUDE, message);
    let cured = cure(read, coil, speed, bears);
    findings.push(finding.cured_by(cured.clone()).shown_by(peak.working.iter().cloned()));
    cures.extend(cured);
    (Tone::Bad, say!(words::IS_OVER, peak = peak.at_input.high))
}

fn cure(
    read: &Triggered,
    coil: &Reluctance,
    speed: RotationalSpeed,
    bears: Voltage,
) -> Option<Message> {
    let (slowest, counts_from) = read.slowest.zip(read.input.counts_from)?;
    Some(match coil.cure(slowest, Band::exact(speed), counts_from, bears)? {
        SignalLimiter::Series(series, left) => {
            say!(words::CURE_SERIES, series = series, left = left)
        }
        SignalLimiter::Clamp(series, current) => {
            say!(words::CURE_CLAMP, series = series, current = current, bears = bears)
        }
    })
}
