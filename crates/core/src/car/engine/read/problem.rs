//! What can be wrong with the engine's fields, as a sentence at the field.

use super::{ANGLES, BANKS, CYLINDERS, ORDER};
use crate::{
    engine::{EngineKind, MOST_CYLINDERS, Misfit, Spacing},
    finding::{Finding, Severity},
    message::Message,
    quantity::{CrankAngle, Measure},
    read::problem::shortened,
    say, say_of,
    schema::{Key, NumberRow},
    words::Wording,
};

/// A token that is no number.
pub(super) fn unreadable(key: Key<NumberRow>, code: &'static Wording, token: &str) -> Finding {
    Finding::new(Severity::Fault, key, say_of!(code, typed = shortened(token)))
}

/// The finding at the field that a misfit comes from.
pub(super) fn finding(
    misfit: &Misfit,
    cylinders: u32,
    spacing: &Spacing,
    kind: EngineKind,
) -> Finding {
    let (place, message) = match misfit {
        Misfit::Cylinders(count) => (
            CYLINDERS.place(),
            say!(crate::car::engine::words::CYLINDERS_MANY, count = *count, most = MOST_CYLINDERS),
        ),
        Misfit::OrderLength { entries, cylinders } => (
            ORDER.place(),
            say!(
                crate::car::engine::words::ORDER_LENGTH,
                entries = *entries,
                cylinders = *cylinders
            ),
        ),
        Misfit::NoSuchCylinder(stray) => (
            ORDER.place(),
            say!(crate::car::engine::words::ORDER_STRAY, stray = *stray, cylinders = cylinders),
        ),
        Misfit::Twice { cylinder, missing } => (
            ORDER.place(),
            say!(crate::car::engine::words::ORDER_TWICE, cylinder = *cylinder, missing = *missing),
        ),
        Misfit::BankStray(stray) => (
            BANKS.place(),
            say!(crate::car::engine::words::BANKS_STRAY, stray = *stray, cylinders = cylinders),
        ),
        Misfit::BankMissing(missing) => {
            (BANKS.place(), say!(crate::car::engine::words::BANKS_MISSING, missing = *missing))
        }
        Misfit::AngleCount { .. }
        | Misfit::FirstAngle(_)
        | Misfit::Falling { .. }
        | Misfit::BeyondCycle(_) => (ANGLES.place(), of_angles(misfit, spacing, kind.cycle())),
    };
    Finding::new(Severity::Fault, place, message)
}

fn of_angles(misfit: &Misfit, spacing: &Spacing, cycle: CrankAngle) -> Message {
    let typed = match spacing {
        Spacing::Even => &[],
        Spacing::Angles(angles) => angles.as_slice(),
    };
    if let (Misfit::FirstAngle(_) | Misfit::Falling { .. }, Some(angles)) =
        (misfit, summed(typed, cycle))
    {
        return say!(
            crate::car::engine::words::ANGLES_ARE_INTERVALS,
            cycle = cycle,
            angles = angles
        );
    }
    match misfit {
        Misfit::AngleCount { angles, cylinders } => {
            say!(crate::car::engine::words::ANGLES_COUNT, angles = *angles, cylinders = *cylinders)
        }
        Misfit::FirstAngle(angle) => say!(crate::car::engine::words::ANGLES_FIRST, angle = *angle),
        Misfit::Falling { angle, before } => {
            say!(crate::car::engine::words::ANGLES_FALLING, angle = *angle, before = *before)
        }
        Misfit::BeyondCycle(angle) => {
            say!(crate::car::engine::words::ANGLES_BEYOND, angle = *angle, cycle = cycle)
        }
        _ => say!(crate::car::engine::words::ANGLES_UNREADABLE, typed = ""),
    }
}

/// The angles that a row of intervals stands for: `90 150 90 150 …` adds up to the cycle.
fn summed(intervals: &[CrankAngle], cycle: CrankAngle) -> Option<String> {
    let mut sum = CrankAngle::default();
    let mut angles = Vec::with_capacity(intervals.len());
    for &interval in intervals {
        angles.push(sum.show().shown.replace('°', ""));
        sum = sum + interval;
    }
    sum.is_near(cycle).then(|| angles.join(" "))
}
