//! The worst over the corners.

use crate::{
    cranking::{CrankingAnswer, StartCorner},
    quantity::{CrankAngle, RotationalSpeed, Time, rpm, seconds},
};

/// Slowest reading while cranking at any corner.
pub(super) fn slowest_reading(answer: &CrankingAnswer) -> RotationalSpeed {
    let all = answer.corners.iter().map(|corner| corner.slowest_reading);
    all.fold(rpm(f64::INFINITY), RotationalSpeed::min)
}

/// Lowest reading after the relay was first switched on, at any corner where it opens again.
pub(super) fn lowest_once_on(answer: &CrankingAnswer) -> RotationalSpeed {
    let chattering = answer.corners.iter().filter(|corner| corner.openings > 0);
    let all = chattering.filter_map(|corner| corner.lowest_once_on);
    all.reduce(RotationalSpeed::min).unwrap_or(rpm(0.0))
}

/// Longest time between two teeth at any corner.
pub(super) fn longest_interval(answer: &CrankingAnswer) -> Time {
    longest(answer, |corner| corner.longest_interval)
}

/// Longest wait for a spark that was lost.
pub(super) fn longest_delay(answer: &CrankingAnswer) -> Time {
    longest(answer, |corner| corner.delay)
}

/// Most sparks lost at any corner.
pub(super) fn most_lost(answer: &CrankingAnswer) -> usize {
    answer.corners.iter().map(|corner| corner.lost).max().unwrap_or(0)
}

/// Most openings at any corner.
pub(super) fn most_openings(answer: &CrankingAnswer) -> usize {
    answer.corners.iter().map(|corner| corner.openings).max().unwrap_or(0)
}

/// Power at the latest, and the crank angle by then.
pub(super) fn latest(answer: &CrankingAnswer) -> (Time, CrankAngle) {
    let all = answer.corners.iter().filter_map(|corner| corner.latest);
    let none = (seconds(0.0), CrankAngle::new(0.0));
    all.fold(
        none,
        |worst, reach| {
            if reach.closed > worst.0 { (reach.closed, reach.turned) } else { worst }
        },
    )
}

fn longest(answer: &CrankingAnswer, of: impl Fn(&StartCorner) -> Time) -> Time {
    answer.corners.iter().map(of).fold(seconds(0.0), Time::max)
}
