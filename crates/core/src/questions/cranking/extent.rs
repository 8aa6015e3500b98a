//! The worst over the corners.

use crate::{
    cranking::{CrankingAnswer, CrankingInputs, Openings, StartCorner},
    quantity::{CrankAngle, RotationalSpeed, Time, Value, number, rpm, seconds},
    questions::cranking::words,
    say,
};

/// Slowest reading while cranking at any corner.
pub(super) fn slowest_reading(answer: &CrankingAnswer) -> RotationalSpeed {
    let all = answer.corners.iter().map(|corner| corner.slowest_reading);
    all.fold(rpm(f64::INFINITY), RotationalSpeed::min)
}

/// Lowest reading after the relay was first switched on, at any corner where it opens again.
pub(super) fn lowest_once_on(answer: &CrankingAnswer) -> RotationalSpeed {
    let chattering = answer.corners.iter().filter(|corner| corner.openings.count > 0);
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
pub(super) fn most_openings(answer: &CrankingAnswer) -> Openings {
    answer.corners.iter().map(|corner| corner.openings).fold(Openings::default(), Openings::max)
}

/// How often the contact opens, in words.
pub(super) fn often(openings: Openings) -> Value {
    let Openings { count, a_second } = openings;
    if count == 0 {
        return count.into();
    }
    if a_second > 0.0 {
        let rate =
            if a_second < 10.0 { (a_second * 10.0).round() / 10.0 } else { a_second.round() };
        return Value::text(say!(words::A_SECOND, rate = number(rate)).into_text());
    }
    Value::text(say!(words::IN_RUN_UP, count = count).into_text())
}

/// The longest time without a tooth that cuts power at a corner, the time-out or longer.
pub(super) fn silence(inputs: &CrankingInputs, corner: &StartCorner) -> Option<Time> {
    let at_speed = Some(corner.longest_interval).filter(|it| *it > inputs.stall_timeout.low);
    let once_on = corner.silence.filter(|_| corner.openings.count > 0);
    at_speed.into_iter().chain(once_on).reduce(Time::max)
}

/// The same at any corner.
pub(super) fn longest_silence(inputs: &CrankingInputs, answer: &CrankingAnswer) -> Option<Time> {
    answer.corners.iter().filter_map(|corner| silence(inputs, corner)).reduce(Time::max)
}

/// Whether a dip opens the contact, at a corner; what silence opens is another matter.
pub(super) fn dips(inputs: &CrankingInputs, corner: &StartCorner) -> bool {
    let release = inputs.threshold.map(|threshold| inputs.release.of(threshold));
    let is_low = || corner.lowest_once_on.zip(release).is_some_and(|(low, release)| low < release);
    corner.openings.count > 0 && (silence(inputs, corner).is_none() || is_low())
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rate_has_tenths_below_ten_and_none_from_there_on() {
        for (a_second, shown) in [
            (0.26, "0.3 "),
            (9.44, "9.4 "),
            (9.86, "9.9 "),
            (10.0, "10 "),
            (10.4, "10 "),
            (33.6, "34 "),
        ] {
            let said = often(Openings { count: 3, a_second }).into_shown();
            assert!(said.starts_with(shown), "{a_second}: {said}");
        }
        let said = often(Openings { count: 3, a_second: 0.0 }).into_shown();
        assert!(said.starts_with("3 ") && said.contains("run-up"), "{said}");
        assert_eq!(often(Openings::default()).into_shown(), "0");
    }
}
