//! From the simulated answer to the verdict.

use super::{
    advice,
    extent::{
        latest, longest_delay, longest_interval, lowest_once_on, most_lost, most_openings,
        slowest_reading,
    },
};
use crate::{
    questions::cranking::words,
    cranking::{Answer, Corner, Inputs},
    message::Message,
    quantity::{Measure, RotationalSpeed, Time, rpm, seconds},
    read::Known,
    report::Tone,
    say,
};

/// What decides the verdict, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Case {
    AlwaysOn,
    ReleaseAbove,
    Timeout,
    Never,
    MayNever,
    Chatters,
    NoMark,
    Rocking,
    Crest,
    Late,
    MissesSpark,
    Suits,
}

pub(super) fn case(
    known: &Known,
    inputs: &Inputs,
    answer: &Answer,
    threshold: RotationalSpeed,
) -> Case {
    let any = |so: fn(&Corner) -> bool| answer.corners.iter().any(so);
    let tests = [
        (Case::AlwaysOn, threshold.base() <= 0.0),
        (Case::ReleaseAbove, known.release_above.is_some()),
        (Case::Timeout, longest_interval(answer) > inputs.stall_timeout.low),
        (Case::Never, answer.corners.iter().all(|corner| corner.earliest_power.is_none())),
        (Case::MayNever, any(|corner| !corner.closes)),
        (Case::Chatters, any(|corner| corner.openings > 0)),
        (Case::NoMark, any(|corner| corner.spark.is_none())),
        (Case::Rocking, threshold <= inputs.rocking.high),
        (Case::Crest, threshold > slowest_reading(answer)),
        (Case::Late, longest_delay(answer) > one_turn(inputs)),
        (Case::MissesSpark, any(|corner| corner.lost > 0)),
    ];
    tests.into_iter().find(|(_, so)| *so).map_or(Case::Suits, |(case, _)| case)
}

/// Time of one turn at the slowest mean cranking speed: a start that waits longer is felt.
pub(super) fn one_turn(inputs: &Inputs) -> Time {
    seconds(60.0 / inputs.speed.low.base())
}

/// The verdict, how it sounds, and why.
pub(super) fn verdict(known: &Known, inputs: &Inputs, answer: &Answer) -> (Tone, Message, Message) {
    let Some(threshold) = inputs.threshold else { return without_threshold(inputs, answer) };
    let case = case(known, inputs, answer, threshold);
    let tone = match case {
        Case::Suits | Case::MissesSpark => Tone::Good,
        Case::Rocking | Case::Crest | Case::Late => Tone::Doubtful,
        _ => Tone::Bad,
    };
    (tone, words(case, threshold), why(case, known, inputs, answer, threshold))
}

fn without_threshold(inputs: &Inputs, answer: &Answer) -> (Tone, Message, Message) {
    let Some(band) = answer.works else {
        let why = say!(
            words::NONE_WORKS_WHY,
            slowest = slowest_reading(answer),
            rocking = inputs.rocking.high
        );
        return (Tone::Bad, say!(words::NONE_WORKS), why);
    };
    let (low, high) = advice::ends(band);
    let why = say!(words::ANY_WORKS_WHY, low_end = rpm(band.low), high_end = high);
    (Tone::Open, say!(words::ANY_WORKS, low = low, high = high), why)
}

fn words(case: Case, threshold: RotationalSpeed) -> Message {
    match case {
        Case::AlwaysOn => say!(words::ALWAYS),
        Case::ReleaseAbove => say!(words::RELEASE, threshold = threshold),
        Case::Timeout => say!(words::TIMEOUT),
        Case::Never => say!(words::NEVER),
        Case::MayNever => say!(words::MAY_NEVER),
        Case::Chatters => say!(words::CHATTER),
        Case::NoMark => say!(words::SUITS_NO_SPARK, threshold = threshold),
        Case::Rocking => say!(words::ROCKING, threshold = threshold),
        Case::Crest => say!(words::CREST, threshold = threshold),
        Case::Late => say!(words::LATE, threshold = threshold),
        Case::MissesSpark => say!(words::SUITS_LATE, threshold = threshold),
        Case::Suits => say!(words::SUITS, threshold = threshold),
    }
}

fn why(
    case: Case,
    known: &Known,
    inputs: &Inputs,
    answer: &Answer,
    threshold: RotationalSpeed,
) -> Message {
    let release = inputs.release.of(threshold);
    let agree = inputs.confirmation;
    match case {
        Case::AlwaysOn => say!(words::ALWAYS_WHY),
        Case::ReleaseAbove => {
            let typed = known.release_above.unwrap_or(release);
            say!(words::RELEASE_WHY, release = typed, usual = release)
        }
        Case::Timeout => say!(
            words::TIMEOUT_WHY,
            interval = longest_interval(answer),
            timeout = inputs.stall_timeout.low
        ),
        Case::Never => {
            let speed = super::figures::band(inputs.speed);
            say!(words::NEVER_WHY, threshold = threshold, agree = agree, speed = speed)
        }
        Case::MayNever => {
            let corners = corners_where(answer, |corner| !corner.closes);
            say!(words::MAY_NEVER_WHY, corners = corners, agree = agree, threshold = threshold)
        }
        Case::Chatters => say!(
            words::CHATTER_WHY,
            lowest = lowest_once_on(answer),
            release = release,
            openings = most_openings(answer)
        ),
        Case::NoMark => say!(words::NO_MARK, positions = inputs.wheel.positions),
        Case::Rocking => say!(words::ROCKING_WHY, rocking = inputs.rocking.high),
        Case::Crest => say!(words::CREST_WHY, slowest = slowest_reading(answer)),
        Case::Late | Case::MissesSpark => late(answer),
        Case::Suits => suits(answer),
    }
}

fn late(answer: &Answer) -> Message {
    let (power, turned) = latest(answer);
    say!(
        words::LATE_WHY,
        power = power,
        turned = turned,
        lost = most_lost(answer),
        delay = longest_delay(answer)
    )
}

fn suits(answer: &Answer) -> Message {
    let (power, turned) = latest(answer);
    let margins = answer.corners.iter().filter_map(|corner| corner.margin);
    let margin = margins.fold(seconds(f64::INFINITY), Time::min);
    say!(words::SUITS_WHY, power = power, turned = turned, margin = margin)
}

/// The corners of which something is true, in words.
pub(super) fn corners_where(answer: &Answer, so: impl Fn(&Corner) -> bool) -> String {
    let names: Vec<_> =
        answer.corners.iter().filter(|it| so(it)).map(|it| it.name.as_str()).collect();
    names.join("; ")
}
