//! What is bought for the wires.

use super::{
    planned::{PlannedHarness, PlannedWire},
    words,
};
use crate::{
    loom::{
        LoomWire, WireCut, Work,
        bought::{counted, reels},
    },
    message::Message,
    quantity::{Measure, Value, metres},
    report::{Answer, AnswerRole, Tone},
    say,
};

/// The list.
pub(super) fn answer(planned: &PlannedHarness<'_>) -> Answer {
    let wires = planned.bare();
    let reels = reels(&wires, &planned.typed.lengths);
    let metres_of: f64 = reels.iter().map(|it| whole(it.length.base())).sum();
    let mut list: Vec<Message> = Vec::new();
    for reel in &reels {
        let colour = planned.colour_of(reel.duty).to_owned();
        let length = whole_metres(whole(reel.length.base()));
        list.push(say!(words::BUY_WIRE, length = length, size = reel.size, colour = colour));
    }
    for (fuse, n) in counted(&planned.fuses) {
        list.push(say!(words::BUY_FUSES, n = n.saturating_add(1), fuse = fuse));
    }
    for (rating, n) in counted(&planned.contacts) {
        list.push(say!(words::BUY_RELAYS, n = n.saturating_add(1), rating = rating));
    }
    let works = || wires.iter().flat_map(|it| &it.works);
    // one that is lengthened has a splice too
    let is_short =
        |it: &&LoomWire| matches!(it.cut(&planned.typed.lengths), Some(WireCut::Short(_)));
    let splices = works().filter(|it| matches!(it, Work::Splice(_))).count()
        + wires.iter().filter(is_short).count();
    if splices > 0 {
        list.push(say!(words::BUY_SPLICES, n = splices));
    }
    let connectors = connectors(planned);
    if connectors > 0 {
        list.push(say!(words::BUY_CONNECTORS, n = connectors));
    }
    list.push(say!(words::BUY_SLEEVES, n = 2 * wires.len()));
    let verdict = say!(words::BUY, length = whole_metres(metres_of), fuses = planned.fuses.len());
    // what is done is bought
    let is_done = wires.iter().all(|it| planned.typed.done.contains(&it.id));
    let tone = if is_done { Tone::Good } else { Tone::Open };
    let mut answer = Answer::new("wires.buy", tone, verdict);
    answer.role = AnswerRole::List;
    answer.title = Some(say!(words::TITLE_BUY));
    answer.to_do = list;
    answer
}

/// Connectors that are changed or fitted: one for each part, however many wires end there.
fn connectors(planned: &PlannedHarness<'_>) -> usize {
    let is_changed = |it: &&PlannedWire| {
        it.wire.works.iter().any(|work| matches!(work, Work::Change | Work::Fit))
    };
    let mut parts: Vec<&str> = Vec::new();
    let mut more = 0;
    for it in planned.wires.iter().filter(is_changed) {
        if parts.contains(&it.wire.to.as_str()) {
            continue;
        }
        parts.push(&it.wire.to);
        // a channel that branches ends at several
        more += it
            .wire
            .works
            .iter()
            .map(|work| match work {
                Work::Splice(n) => (*n as usize).saturating_sub(1),
                _ => 0,
            })
            .sum::<usize>();
    }
    parts.len() + more
}

fn whole_metres(length: f64) -> Value {
    metres(length).show().said([crate::math::fixed(length, 0).as_str(), " m"].concat())
}

/// It is sold by the metre.
fn whole(length: f64) -> f64 {
    (length - 1e-9).ceil().max(0.0)
}
