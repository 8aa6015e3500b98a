//! The two tracks of a pedal or a throttle.

use super::{
    judge::{FoundOf, found},
    subject::SensorSubject,
    words,
};
use crate::{
    fields::{self, sensors::SensorType},
    finding::Severity,
    quantity::{Voltage, volts},
    say,
    schema::Choice as _,
    sensor::tracks::{Compared, TrackRun, compare},
    words::Wording,
};

/// The readings of both at the same places.
pub(super) fn pairs(subject: &SensorSubject<'_>) -> Vec<(Voltage, Voltage)> {
    let [first, second] = &subject.sensor.strokes;
    first.iter().zip(second).map(|(one, other)| (volts(*one), volts(*other))).collect()
}

fn compared(subject: &SensorSubject<'_>) -> Option<(TrackRun, Compared)> {
    let run = subject.sensor.second?;
    Some((run, compare(run, &pairs(subject))?))
}

pub(super) fn found_of(subject: &SensorSubject<'_>) -> Vec<FoundOf> {
    if subject.sensor.kind != Some(SensorType::Pot) {
        return Vec::new();
    }
    differ(subject).into_iter().chain(alike(subject)).chain(one_supply(subject)).collect()
}

/// How a track runs, within a sentence.
fn as_run(run: TrackRun) -> &'static Wording {
    match run {
        TrackRun::Mirrored => words::AS_MIRRORED,
        TrackRun::Half => words::AS_HALF,
        TrackRun::Alike => words::AS_ALIKE,
    }
}

fn differ(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let (run, compared) = compared(subject)?;
    if compared.suits() {
        return None;
    }
    let (low, high) = compared.sum;
    let message = say!(
        words::TRACKS_DIFFER,
        apart = compared.apart,
        run = as_run(run).text,
        low = low,
        high = high
    );
    let other = compared.found.filter(|it| *it != run && *it != TrackRun::Alike);
    let cure = other.map(|run| {
        let edit = fields::sensors::SECOND.at(subject.at).edit(run.choosable().code);
        say!(words::CURE_SECOND, run = as_run(run).text).done_by(vec![edit])
    });
    let finding = found(subject, Severity::Fault, fields::sensors::SECOND_STROKE, message);
    Some((finding.cured_by(cure), words::IS_APART))
}

/// Alike, by what was typed or by what was read.
fn alike(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let by_readings = compared(subject).and_then(|(_, it)| it.found) == Some(TrackRun::Alike);
    if subject.sensor.second != Some(TrackRun::Alike) && !by_readings {
        return None;
    }
    let message = say!(words::TRACKS_ALIKE);
    let finding = found(subject, Severity::Fault, fields::sensors::SECOND, message);
    Some((finding, words::IS_APART))
}

fn one_supply(subject: &SensorSubject<'_>) -> Option<FoundOf> {
    let sensor = subject.sensor;
    let first = sensor.second.and(sensor.on.supply)?;
    if sensor.on.second_supply.is_some_and(|it| it != first) {
        return None;
    }
    // where the controller has no other, there is nothing to be told
    if subject.sensing.supplies.len() < 2 {
        return None;
    }
    let message = say!(words::ONE_SUPPLY);
    let key = fields::sensors::SECOND_SUPPLY;
    Some((found(subject, Severity::Note, key, message), words::IS_APART))
}
