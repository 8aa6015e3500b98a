//! Firing one channel after the other: what to fire next, what is certain, and what contradicts itself.

use super::{listed, wired::Wiring};
use crate::{
    channels::{Fired, Layout, Position, Slip, Slot, Standing, standing, usual},
    engine::Engine,
    finding::{Finding, Severity},
    message::Message,
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
    let again: Vec<u32> = seen.again.keys().copied().collect();
    standing(layout, &usual(engine, layout, other), &seen.taps, &again)
}

/// The test as it is worked with a thumb; none where one channel fires all.
pub(super) fn bench(wiring: &Wiring<'_>) -> Option<Bench> {
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
        list: wiring.paths.wired,
        done: wiring.paths.done,
        tool: tool(wiring),
        channels: slots.iter().map(channel).collect(),
        targets: wiring.layout.targets().iter().map(ToString::to_string).collect(),
        next: standing.next,
        says: says(wiring, standing),
        cautions: cautions(wiring),
    })
}

pub(super) fn cautions(wiring: &Wiring<'_>) -> Vec<Message> {
    if wiring.is_ignition() {
        vec![say!("channels.caution-spark"), say!("channels.caution-voltage")]
    } else {
        vec![say!("channels.caution-fuel")]
    }
}

fn ask(wiring: &Wiring<'_>, slot: &Slot) -> Message {
    let n = slot.targets.len();
    let is_rotary = slot.targets.iter().any(|it| it.position != Position::Only);
    match (wiring.has_towers(), wiring.is_ignition()) {
        (true, _) => say!("channels.ask-tower", channel = slot.channel),
        (false, true) if is_rotary => say!("channels.ask-plug", channel = slot.channel),
        (false, true) => say!("channels.ask-coil", channel = slot.channel, n = n),
        (false, false) => say!("channels.ask-injector", channel = slot.channel, n = n),
    }
}

/// By what the one that was fired is known; the lead of a tower is only followed.
fn tool(wiring: &Wiring<'_>) -> Option<Message> {
    match (wiring.has_towers(), wiring.is_ignition()) {
        (true, _) => None,
        (false, true) => Some(say!("channels.tool-coil")),
        (false, false) => Some(say!("channels.tool-injector")),
    }
}

fn found(wiring: &Wiring<'_>, standing: &Standing, channel: u32) -> String {
    let must = standing.must_be.as_ref().filter(|it| it.0 == channel).map(|it| &it.1);
    let fired = wiring.seen.taps.get(&channel).or(wiring.seen.again.get(&channel));
    let targets = fired.map(|it| &it.targets).or(must);
    targets.map(listed).unwrap_or_default()
}

/// Whether what answered can't be, and the channel is to be fired again.
fn is_again(wiring: &Wiring<'_>, channel: u32) -> bool {
    wiring.seen.again.contains_key(&channel) || wiring.standing.crowded.contains(&channel)
}

/// How what answered agrees with the plan.
fn agreement(wiring: &Wiring<'_>, standing: &Standing, slot: &Slot) -> Option<Message> {
    let channel = slot.channel;
    if standing.must_be.as_ref().is_some_and(|it| it.0 == channel) {
        return Some(say!("channels.tap-must"));
    }
    if is_again(wiring, channel) {
        return Some(say!("channels.tap-again"));
    }
    let fired = wiring.seen.taps.get(&channel)?;
    Some(match fired {
        Fired { targets, nothing_else: true } if targets.is_empty() => say!("channels.tap-nothing"),
        _ if fired.targets.iter().all(|it| slot.targets.contains(it)) => say!("channels.tap-right"),
        _ => say!("channels.tap-other"),
    })
}

fn says(wiring: &Wiring<'_>, standing: &Standing) -> Vec<Message> {
    let taps = wiring.seen.taps.len();
    let mut says = Vec::new();
    says.extend(findings(wiring).into_iter().map(|it| it.message));
    says.extend(must_be(standing));
    if says.is_empty() && taps == 0 {
        says.push(say!("channels.tap-most", n = standing.left.len().saturating_sub(1)));
    }
    if says.is_empty() && standing.next.is_some() {
        says.push(likely(standing));
        says.push(say!("channels.tap-left", n = standing.left.len().saturating_sub(1)));
    }
    if standing.next.is_none() && standing.must_be.is_none() {
        says.push(say!("channels.tap-certain"));
    }
    says
}

/// What the last channel must reach.
pub(super) fn must_be(standing: &Standing) -> Option<Message> {
    let (channel, targets) = standing.must_be.as_ref()?;
    Some(say!("channels.must-be", channel = *channel, cylinders = listed(targets)))
}

/// The usual slips that still fit.
fn likely(standing: &Standing) -> Message {
    match standing.likely.as_slice() {
        [] => say!("channels.likely-none"),
        [slip] => say!("channels.likely-one", slip = slip_words(*slip)),
        [Slip::None, others @ ..] => say!("channels.likely-planned", n = others.len()),
        [one, two] => {
            say!("channels.likely-two", one = slip_words(*one), two = slip_words(*two))
        }
        more => say!("channels.likely-more", n = more.len()),
    }
}

fn slip_words(slip: Slip) -> String {
    match slip {
        Slip::None => say!("channels.slip-none"),
        Slip::OtherHabit => say!("channels.slip-habit"),
        Slip::Onward(places) => say!("channels.slip-onward", n = places),
        Slip::Banks => say!("channels.slip-banks"),
        Slip::OtherEnd => say!("channels.slip-end"),
        Slip::Positions => say!("channels.slip-positions"),
        Slip::Exchange(one, other) => {
            say!("channels.slip-exchange", one = one.to_string(), other = other.to_string())
        }
    }
    .into_text()
}

/// Channels to which more answered than the plan has on them, or less.
pub(super) fn findings(wiring: &Wiring<'_>) -> Vec<Finding> {
    let standing = &wiring.standing;
    let finding = |channel: u32, message| {
        let path = format!("{}.{}", wiring.paths.wired, channel.saturating_sub(1));
        Finding::new(Severity::Fault, path, message).as_wired()
    };
    let fired = |channel| wiring.seen.taps.get(&channel).map(|it| it.targets.as_slice());
    let crowded = standing.crowded.iter().map(|&channel| {
        let cylinders = listed(fired(channel).unwrap_or_default());
        finding(channel, say!("channels.crowded", channel = channel, cylinders = cylinders))
    });
    let silent = standing.silent.iter().map(|&channel| match fired(channel) {
        Some(some @ [_, ..]) => finding(
            channel,
            say!("channels.half-silent", channel = channel, cylinders = listed(some)),
        ),
        _ if wiring.is_ignition() => finding(channel, say!("channels.silent", channel = channel)),
        _ => finding(channel, say!("channels.silent-injector", channel = channel)),
    });
    let mut found: Vec<Finding> = crowded.chain(silent).collect();
    let again: Vec<u32> = wiring.seen.again.keys().copied().collect();
    if let [one, other, ..] = again.as_slice() {
        let message = say!("channels.taps-contradict", one = *one, other = *other);
        found.push(finding(*other, message));
    }
    found
}
