//! From the simulated answer to the verdict.

use super::{
    advice,
    extent::{
        dips, latest, longest_delay, longest_silence, lowest_once_on, most_lost, most_openings,
        often, slowest_reading,
    },
    supply,
};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, RelayAnswer, StartCorner},
    finding::Severity,
    message::Message,
    quantity::{Measure, RotationalSpeed, Time, rpm, seconds},
    questions::cranking::words,
    read::Known,
    report::Tone,
    say,
};

/// What decides the verdict, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum StartCase {
    AlwaysOn,
    NoFeed,
    Restarts,
    RelayOut,
    LetsGo,
    ReleaseAbove,
    Timeout,
    Never,
    MayNever,
    Chatters,
    NoMark,
    Rocking,
    Crest,
    Late,
    MayRestart,
    RelayUnsure,
    MissesSpark,
    Suits,
}

pub(super) fn case(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    threshold: RotationalSpeed,
) -> StartCase {
    let graver = whatever_speed(known, inputs, &answer.relay);
    let any = |so: fn(&StartCorner) -> bool| answer.corners.iter().any(so);
    let tests = [
        (StartCase::AlwaysOn, threshold.base() <= 0.0),
        (StartCase::NoFeed, graver == Some(StartCase::NoFeed)),
        (StartCase::Restarts, graver == Some(StartCase::Restarts)),
        (StartCase::RelayOut, graver == Some(StartCase::RelayOut)),
        (StartCase::ReleaseAbove, known.release_above.is_some()),
        (StartCase::Timeout, longest_silence(inputs, answer).is_some()),
        (StartCase::Never, answer.corners.iter().all(|corner| corner.earliest_power.is_none())),
        (StartCase::MayNever, any(|corner| !corner.closes)),
        (StartCase::Chatters, answer.corners.iter().any(|corner| dips(inputs, corner))),
        (StartCase::NoMark, any(|corner| corner.spark.is_none())),
        (StartCase::Rocking, threshold <= inputs.rocking.high),
        (StartCase::Crest, threshold > slowest_reading(answer)),
        (StartCase::Late, longest_delay(answer) > one_turn(inputs)),
        (StartCase::LetsGo, known.lets_go.is_some()),
        (StartCase::MayRestart, supply::restarts(known, inputs).is_some()),
        (StartCase::RelayUnsure, supply::weak(known, &answer.relay).is_some()),
        (StartCase::MissesSpark, any(|corner| corner.lost > 0)),
    ];
    tests.into_iter().find(|(_, so)| *so).map_or(StartCase::Suits, |(case, _)| case)
}

/// What is wrong at whatever speed it is switched, worst first.
fn whatever_speed(
    known: &Known,
    inputs: &CrankingInputs,
    relay: &RelayAnswer,
) -> Option<StartCase> {
    let is_fault = Some(Severity::Fault);
    let tests = [
        (StartCase::NoFeed, !known.unfed.is_empty()),
        (StartCase::Restarts, supply::restarts(known, inputs) == is_fault),
        (StartCase::RelayOut, supply::weak(known, relay) == is_fault),
    ];
    tests.into_iter().find(|(_, so)| *so).map(|(case, _)| case)
}

/// Time of one turn at the slowest mean cranking speed: a start that waits longer is felt.
pub(super) fn one_turn(inputs: &CrankingInputs) -> Time {
    seconds(60.0 / inputs.speed.low.base())
}

/// The verdict, how it sounds, and why.
pub(super) fn verdict(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
) -> (Tone, Message, Message) {
    let Some(threshold) = inputs.threshold else {
        return match whatever_speed(known, inputs, &answer.relay) {
            None => without_threshold(inputs, answer),
            Some(case) => {
                let why = why(case, known, inputs, answer, rpm(0.0));
                (Tone::Bad, words(case, rpm(0.0)), why)
            }
        };
    };
    let case = case(known, inputs, answer, threshold);
    let tone = match case {
        StartCase::Suits | StartCase::MissesSpark => Tone::Good,
        StartCase::Rocking
        | StartCase::Crest
        | StartCase::Late
        | StartCase::LetsGo
        | StartCase::MayRestart
        | StartCase::RelayUnsure => Tone::Doubtful,
        _ => Tone::Bad,
    };
    (tone, words(case, threshold), why(case, known, inputs, answer, threshold))
}

/// The verdict that can be told without following a start, and why; nothing where that is none.
pub(super) fn without_search(
    known: &Known,
    inputs: &CrankingInputs,
    outline: &CrankingAnswer,
) -> Option<(Tone, Message, Message)> {
    let threshold = inputs.threshold?;
    let graver = whatever_speed(known, inputs, &outline.relay);
    let tests = [
        (StartCase::AlwaysOn, threshold.base() <= 0.0),
        (StartCase::NoFeed, graver == Some(StartCase::NoFeed)),
        (StartCase::Restarts, graver == Some(StartCase::Restarts)),
        (StartCase::RelayOut, graver == Some(StartCase::RelayOut)),
        (StartCase::ReleaseAbove, known.release_above.is_some()),
        (StartCase::Timeout, longest_silence(inputs, outline).is_some()),
        (StartCase::Never, outline.corners.iter().all(|corner| !corner.closes)),
        (StartCase::MayNever, outline.corners.iter().any(|corner| !corner.closes)),
    ];
    let (case, _) = tests.into_iter().find(|(_, so)| *so)?;
    Some((Tone::Bad, words(case, threshold), why(case, known, inputs, outline, threshold)))
}

fn without_threshold(inputs: &CrankingInputs, answer: &CrankingAnswer) -> (Tone, Message, Message) {
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

fn words(case: StartCase, threshold: RotationalSpeed) -> Message {
    match case {
        StartCase::AlwaysOn => say!(words::ALWAYS),
        StartCase::NoFeed => say!(words::supply::NO_FEED),
        StartCase::Restarts => say!(words::supply::RESTARTS),
        StartCase::RelayOut => say!(words::supply::RELAY_OUT),
        StartCase::LetsGo => say!(words::supply::OTHER_LETS_GO, threshold = threshold),
        StartCase::MayRestart => say!(words::supply::MAY_RESTART, threshold = threshold),
        StartCase::RelayUnsure => say!(words::supply::RELAY_UNSURE, threshold = threshold),
        StartCase::ReleaseAbove => say!(words::RELEASE, threshold = threshold),
        StartCase::Timeout => say!(words::TIMEOUT),
        StartCase::Never => say!(words::NEVER),
        StartCase::MayNever => say!(words::MAY_NEVER),
        StartCase::Chatters => say!(words::CHATTER),
        StartCase::NoMark => say!(words::SUITS_NO_SPARK, threshold = threshold),
        StartCase::Rocking => say!(words::ROCKING, threshold = threshold),
        StartCase::Crest => say!(words::CREST, threshold = threshold),
        StartCase::Late => say!(words::LATE, threshold = threshold),
        StartCase::MissesSpark => say!(words::SUITS_LATE, threshold = threshold),
        StartCase::Suits => say!(words::SUITS, threshold = threshold),
    }
}

fn why(
    case: StartCase,
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    threshold: RotationalSpeed,
) -> Message {
    let release = inputs.release.of(threshold);
    let agree = inputs.confirmation;
    match case {
        StartCase::AlwaysOn => say!(words::ALWAYS_WHY),
        StartCase::NoFeed => supply::without_feed(known),
        StartCase::Restarts | StartCase::MayRestart => {
            supply::restarting(inputs, known.least_supply.unwrap_or_default())
        }
        StartCase::LetsGo => supply::letting_go(known).unwrap_or_else(|| late(answer)),
        StartCase::RelayOut | StartCase::RelayUnsure => supply::weakness(inputs, &answer.relay),
        StartCase::ReleaseAbove => {
            let typed = known.release_above.unwrap_or(release);
            say!(words::RELEASE_WHY, release = typed, usual = release)
        }
        StartCase::Timeout => say!(
            words::TIMEOUT_WHY,
            interval = longest_silence(inputs, answer).unwrap_or_default(),
            timeout = inputs.stall_timeout.low
        ),
        StartCase::Never => {
            let speed = super::figures::band(inputs.speed);
            say!(words::NEVER_WHY, threshold = threshold, agree = agree, speed = speed)
        }
        StartCase::MayNever => {
            let corners = corners_where(answer, |corner| !corner.closes);
            say!(words::MAY_NEVER_WHY, corners = corners, agree = agree, threshold = threshold)
        }
        StartCase::Chatters => say!(
            words::CHATTER_WHY,
            lowest = lowest_once_on(answer),
            release = release,
            openings = often(most_openings(answer))
        ),
        StartCase::NoMark => say!(words::NO_MARK, positions = inputs.wheel.positions),
        StartCase::Rocking => say!(words::ROCKING_WHY, rocking = inputs.rocking.high),
        StartCase::Crest => say!(words::CREST_WHY, slowest = slowest_reading(answer)),
        StartCase::Late | StartCase::MissesSpark => late(answer),
        StartCase::Suits => suits(answer),
    }
}

fn late(answer: &CrankingAnswer) -> Message {
    let (power, turned) = latest(answer);
    say!(
        words::LATE_WHY,
        power = power,
        turned = turned,
        lost = most_lost(answer),
        delay = longest_delay(answer)
    )
}

fn suits(answer: &CrankingAnswer) -> Message {
    let (power, turned) = latest(answer);
    let margins = answer.corners.iter().filter_map(|corner| corner.margin);
    let margin = margins.fold(seconds(f64::INFINITY), Time::min);
    say!(words::SUITS_WHY, power = power, turned = turned, margin = margin)
}

/// The corners of which something is true, in words.
pub(super) fn corners_where(answer: &CrankingAnswer, so: impl Fn(&StartCorner) -> bool) -> String {
    let names: Vec<_> =
        answer.corners.iter().filter(|it| so(it)).map(|it| it.name.as_str()).collect();
    names.join("; ")
}
