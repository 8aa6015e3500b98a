//! What can be wrong with the engine's fields, as a sentence at the field.

use super::{ANGLES, BANKS, CYLINDERS, ORDER};
use crate::{
    engine::{Kind, MOST_CYLINDERS, Misfit, Spacing},
    finding::{Finding, Severity},
    message::Message,
    quantity::{CrankAngle, Measure},
    read::problem::shortened,
    say,
};

/// A token that is no number.
pub(super) fn unreadable(path: &str, code: &'static str, token: &str) -> Finding {
    Finding::new(Severity::Fault, path, say!(code, typed = shortened(token)))
}

/// The finding at the field that a misfit comes from.
pub(super) fn finding(misfit: &Misfit, cylinders: u32, spacing: &Spacing, kind: Kind) -> Finding {
    let (path, message) = match misfit {
        Misfit::Cylinders(count) => {
            (CYLINDERS, say!("engine.cylinders-many", count = *count, most = MOST_CYLINDERS))
        }
        Misfit::OrderLength { entries, cylinders } => {
            (ORDER, say!("engine.order-length", entries = *entries, cylinders = *cylinders))
        }
        Misfit::NoSuchCylinder(stray) => {
            (ORDER, say!("engine.order-stray", stray = *stray, cylinders = cylinders))
        }
        Misfit::Twice { cylinder, missing } => {
            (ORDER, say!("engine.order-twice", cylinder = *cylinder, missing = *missing))
        }
        Misfit::BankStray(stray) => {
            (BANKS, say!("engine.banks-stray", stray = *stray, cylinders = cylinders))
        }
        Misfit::BankMissing(missing) => (BANKS, say!("engine.banks-missing", missing = *missing)),
        Misfit::AngleCount { .. }
        | Misfit::FirstAngle(_)
        | Misfit::Falling { .. }
        | Misfit::BeyondCycle(_) => (ANGLES, of_angles(misfit, spacing, kind.cycle())),
    };
    Finding::new(Severity::Fault, path, message)
}

fn of_angles(misfit: &Misfit, spacing: &Spacing, cycle: CrankAngle) -> Message {
    let typed = match spacing {
        Spacing::Even => &[],
        Spacing::Angles(angles) => angles.as_slice(),
    };
    if let (Misfit::FirstAngle(_) | Misfit::Falling { .. }, Some(angles)) =
        (misfit, summed(typed, cycle))
    {
        return say!("engine.angles-are-intervals", cycle = cycle, angles = angles);
    }
    match misfit {
        Misfit::AngleCount { angles, cylinders } => {
            say!("engine.angles-count", angles = *angles, cylinders = *cylinders)
        }
        Misfit::FirstAngle(angle) => say!("engine.angles-first", angle = *angle),
        Misfit::Falling { angle, before } => {
            say!("engine.angles-falling", angle = *angle, before = *before)
        }
        Misfit::BeyondCycle(angle) => {
            say!("engine.angles-beyond", angle = *angle, cycle = cycle)
        }
        _ => say!("engine.angles-unreadable", typed = ""),
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
