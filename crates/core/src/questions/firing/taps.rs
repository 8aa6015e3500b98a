//! Firing one channel after the other: what to fire next, what is certain, and what contradicts itself.

use super::{listed, wired::CheckedConnection};
use crate::{
    channels::{Fired, Layout, PlugPosition, Slip, Slot, Standing, standing, usual},
    engine::Engine,
    finding::{Finding, Severity},
    message::Message,
    questions::firing::words,
    read::Seen,
    report::bench::{Bench, BenchChannel},
    say,
};

/// Where the testing stands; the usual slips are those of this engine.
pub(super) fn stands(
    engine: &Engine,
    layout: &Layout,
    other: Option<&Layout>,
    seen: &Seen,
) -> Standing {
    standing(layout, &usual(engine, layout, other), &seen.taps, &seen.again)
}

/// The test as it is worked with a thumb; none where one channel fires all.
pub(super) fn bench(wiring: &CheckedConnection<'_>) -> Option<Bench> {
    let (slots, standing) = (wiring.layout.slots(), &wiring.standing);
    let channel = |slot: &Slot| BenchChannel {
        channel: slot.channel,
        ask: ask(wiring, slot),
        expected: slot.targets.len(),
        found: found(wiring, standing, slot.channel),
        again: is_again(wiring, slot.channel),
        stands: agreement(wiring, standing, slot),
    };
    (slots.len() > 1).then(|| Bench {
        list: wiring.list_path(),
        done: wiring.done_key.path(),
        tool: tool(wiring),
        channels: slots.iter().map(channel).collect(),
        targets: wiring.layout.targets().iter().map(ToString::to_string).collect(),
        next: standing.next,
        says: says(wiring, standing),
        cautions: cautions(wiring),
    })
}

pub(super) fn cautions(wiring: &CheckedConnection<'_>) -> Vec<Message> {
    if wiring.is_ignition() {
        vec![say!(words::CAUTION_SPARK), say!(words::CAUTION_VOLTAGE)]
    } else {
        vec![say!(words::CAUTION_FUEL)]
    }
}

fn ask(wiring: &CheckedConnection<'_>, slot: &Slot) -> Message {
    let n = slot.targets.len();
    let is_rotary = slot.targets.iter().any(|it| it.position != PlugPosition::Only);
    match (wiring.has_towers(), wiring.is_ignition()) {
        (true, _) => say!(words::taps::ASK_TOWER, channel = slot.channel),
        (false, true) if is_rotary => say!(words::taps::ASK_PLUG, channel = slot.channel),
        (false, true) => say!(words::taps::ASK_COIL, channel = slot.channel, n = n),
        (false, false) => say!(words::taps::ASK_INJECTOR, channel = slot.channel, n = n),
    }
}

/// By what the one that was fired is known; the lead of a tower is only followed.
fn tool(wiring: &CheckedConnection<'_>) -> Option<Message> {
    match (wiring.has_towers(), wiring.is_ignition()) {
        (true, _) => None,
        (false, true) => Some(say!(words::taps::TOOL_COIL)),
        (false, false) => Some(say!(words::taps::TOOL_INJECTOR)),
    }
}

fn found(wiring: &CheckedConnection<'_>, standing: &Standing, channel: u32) -> String {
    let must = standing.must_be.as_ref().filter(|it| it.0 == channel).map(|it| &it.1);
    let fired = wiring.seen.taps.get(&channel).or(wiring.seen.again.get(&channel));
    let targets = fired.map(|it| &it.targets).or(must);
    targets.map(listed).unwrap_or_default()
}

/// Whether what answered can't be, and the channel is to be fired again.
fn is_again(wiring: &CheckedConnection<'_>, channel: u32) -> bool {
    wiring.seen.again.contains_key(&channel) || wiring.standing.crowded.contains(&channel)
}

/// How what answered agrees with the plan.
fn agreement(wiring: &CheckedConnection<'_>, standing: &Standing, slot: &Slot) -> Option<Message> {
    let channel = slot.channel;
    if standing.must_be.as_ref().is_some_and(|it| it.0 == channel) {
        return Some(say!(words::taps::TAP_MUST));
    }
    if is_again(wiring, channel) {
        return Some(say!(words::taps::TAP_AGAIN));
    }
    let fired = wiring.seen.taps.get(&channel)?;
    Some(match fired {
        Fired { targets, nothing_else: true } if targets.is_empty() => {
            say!(words::taps::TAP_NOTHING)
        }
        _ if fired.targets.iter().all(|it| slot.targets.contains(it)) => {
            say!(words::taps::TAP_RIGHT)
        }
        _ => say!(words::taps::TAP_OTHER),
    })
}

fn says(wiring: &CheckedConnection<'_>, standing: &Standing) -> Vec<Message> {
    let taps = wiring.seen.taps.len();
    let mut says = Vec::new();
    says.extend(findings(wiring).into_iter().map(|it| it.message));
    says.extend(must_be(standing));
    if says.is_empty() && taps == 0 {
        says.push(say!(words::taps::TAP_MOST, n = standing.left.len().saturating_sub(1)));
    }
    if says.is_empty() && standing.next.is_some() {
        says.push(likely(standing));
        says.push(say!(words::taps::TAP_LEFT, n = standing.left.len().saturating_sub(1)));
    }
    if standing.next.is_none() && standing.must_be.is_none() {
        says.push(say!(words::taps::TAP_CERTAIN));
    }
    says.extend(certain(standing));
    says
}

/// What is certain before all have been fired.
pub(super) fn certain(standing: &Standing) -> Vec<Message> {
    let mut certain = Vec::new();
    let wrong = &standing.certainly_wrong;
    if !wrong.is_empty() {
        certain.push(say!(words::taps::CERTAINLY_WRONG, n = wrong.len(), channels = listed(wrong)));
    }
    if let Some([(one, a), (other, b)]) = standing.either {
        let (a, b) = (a.to_string(), b.to_string());
        certain.push(say!(words::taps::TWO_ARRANGEMENTS, one = one, a = a, other = other, b = b));
    }
    certain
}

/// What the last channel must reach.
pub(super) fn must_be(standing: &Standing) -> Option<Message> {
    let (channel, targets) = standing.must_be.as_ref()?;
    Some(say!(words::taps::MUST_BE, channel = *channel, cylinders = listed(targets)))
}

/// The usual slips that still fit.
fn likely(standing: &Standing) -> Message {
    match standing.likely.as_slice() {
        [] => say!(words::taps::LIKELY_NONE),
        [slip] => say!(words::taps::LIKELY_ONE, slip = slip_words(*slip)),
        [Slip::None, others @ ..] => say!(words::taps::LIKELY_PLANNED, n = others.len()),
        [one, two] => {
            say!(words::taps::LIKELY_TWO, one = slip_words(*one), two = slip_words(*two))
        }
        more => say!(words::taps::LIKELY_MORE, n = more.len()),
    }
}

fn slip_words(slip: Slip) -> String {
    match slip {
        Slip::None => say!(words::taps::SLIP_NONE),
        Slip::OtherHabit => say!(words::taps::SLIP_HABIT),
        Slip::Onward(places) => say!(words::taps::SLIP_ONWARD, n = places),
        Slip::Banks => say!(words::taps::SLIP_BANKS),
        Slip::OtherEnd => say!(words::taps::SLIP_END),
        Slip::Positions => say!(words::taps::SLIP_POSITIONS),
        Slip::Exchange(one, other) => {
            say!(words::taps::SLIP_EXCHANGE, one = one.to_string(), other = other.to_string())
        }
    }
    .into_text()
}

/// Channels to which more answered than the plan has on them, or less.
pub(super) fn findings(wiring: &CheckedConnection<'_>) -> Vec<Finding> {
    let standing = &wiring.standing;
    let finding = |channel: u32, message| {
        let cell = wiring.cell(channel);
        Finding::new(Severity::Fault, cell, message).as_wired()
    };
    let fired = |channel| wiring.seen.taps.get(&channel).map(|it| it.targets.as_slice());
    let crowded = standing.crowded.iter().map(|&channel| {
        let cylinders = listed(fired(channel).unwrap_or_default());
        finding(channel, say!(words::taps::CROWDED, channel = channel, cylinders = cylinders))
    });
    let silent = standing.silent.iter().map(|&channel| match fired(channel) {
        Some(some @ [_, ..]) => finding(
            channel,
            say!(words::taps::HALF_SILENT, channel = channel, cylinders = listed(some)),
        ),
        _ if wiring.is_ignition() => finding(channel, say!(words::taps::SILENT, channel = channel)),
        _ => finding(channel, say!(words::taps::SILENT_INJECTOR, channel = channel)),
    });
    let mut found: Vec<Finding> = crowded.chain(silent).collect();
    let again: Vec<u32> = wiring.seen.again.keys().copied().collect();
    if let [one, other, ..] = again.as_slice() {
        let message = say!(words::taps::TAPS_CONTRADICT, one = *one, other = *other);
        found.push(finding(*other, message));
    }
    found
}
