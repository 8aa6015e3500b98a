//! Where the engine may stand when the starter begins to turn it.

use super::{CrankingInputs, course::Course};

/// Starting positions spread evenly over the cycle.
pub(super) const EVEN_STARTS: u32 = 20;

/// Starting positions beside them for each tooth that tells where the engine is: one just before the last from which it can,
/// one just after.
pub(super) const MOST_STARTS_FOR_MARK: u32 = 2;

/// Just off a tooth: less than any wheel's accuracy.
const NUDGE_DEG: f64 = 0.01;

/// Starting positions, degrees in the cycle: all round it, and just before and just after the last position from
/// which the gap can still be told, where the wait for it jumps from the shortest to the longest.
pub(super) fn starts(inputs: &CrankingInputs, course: &Course) -> Vec<f64> {
    let cycle = inputs.cycle.degrees();
    let even = (0..EVEN_STARTS).map(|n| cycle * f64::from(n) / f64::from(EVEN_STARTS));
    let mut starts: Vec<f64> = even.collect();
    for (at, tooth) in course.teeth.iter().enumerate() {
        // from just before this tooth the wait for sync is short, from just after it long
        let jumps = match (course.teeth_to_sync(at), course.teeth_to_sync(at + 1)) {
            (Some(before), Some(after)) => after > before,
            _ => false,
        };
        if jumps {
            starts.push((tooth.angle_deg - NUDGE_DEG).rem_euclid(cycle));
            starts.push((tooth.angle_deg + NUDGE_DEG).rem_euclid(cycle));
        }
    }
    starts
}
