//! What is bought for the wires.

use super::{
    planned::{PlannedHarness, PlannedWire},
    tables, words,
};
use crate::{
    loom::{
        Duty, LoomWire, Stock, WireCut, Work,
        bought::{Reel, counted, reels, rings},
    },
    message::Message,
    quantity::{Measure, Value, metres},
    report::{Answer, AnswerRole, Tone},
    say, say_of,
};

/// The list.
pub(super) fn answer(planned: &PlannedHarness<'_>) -> Answer {
    let wires = planned.bare();
    let reels = reels(&wires, &planned.typed.lengths);
    let metres_of: f64 = reels.iter().map(|it| whole(it.length.base())).sum();
    let mut list: Vec<Message> = reels.iter().map(|it| of_reel(planned, it)).collect();
    list.extend(of_pieces(&wires));
    list.extend(of_shield(planned, &wires));
    list.extend(of_fuses(planned));
    list.extend(of_ends(planned, &wires));
    let verdict =
        say!(words::BUY, length = whole_metres(metres_of), fuses = planned.bought.holders);
    // what is done is bought
    let is_done = wires.iter().all(|it| planned.typed.done.contains(&it.id));
    let tone = if is_done { Tone::Good } else { Tone::Open };
    let mut answer = Answer::new("wires.buy", tone, verdict);
    answer.role = AnswerRole::List;
    answer.title = Some(say!(words::TITLE_BUY));
    answer.to_do = list;
    answer
}

fn of_reel(planned: &PlannedHarness<'_>, reel: &Reel) -> Message {
    let colour = |duty| planned.colour_of(duty).to_owned();
    let duty = |duty| say_of!(tables::duty(duty)).into_text();
    let both = [Duty::Permanent, Duty::Switched];
    let (colour, at) = if reel.is_unsplit {
        (both.map(colour).join(" + "), both.map(duty).join(", "))
    } else {
        (colour(reel.duty), duty(reel.duty))
    };
    let n = counted_metres(reel.length.base());
    if reel.least < reel.size {
        let (size, least) = (reel.size, reel.least);
        let wording = words::BUY_WIRE_FOR;
        return say_of!(wording, metres = n, size = size, colour = colour, at = at, least = least);
    }
    say!(words::BUY_WIRE, metres = n, size = reel.size, colour = colour, at = at)
}

/// Battery cables and straps.
fn of_pieces(wires: &[LoomWire]) -> impl Iterator<Item = Message> {
    let pieces = wires.iter().filter(|it| it.stock == Stock::Piece);
    pieces.filter_map(|it| {
        let (length, size, at) = (it.length?, it.size?, it.label.clone());
        Some(say!(words::BUY_PIECE, length = length, size = size, at = at))
    })
}

/// The wires of a sensor lie in one shield.
fn of_shield(planned: &PlannedHarness<'_>, wires: &[LoomWire]) -> Option<Message> {
    let mut of: Vec<&str> = Vec::new();
    let mut length = 0.0;
    for wire in wires.iter().filter(|it| it.works.contains(&Work::Shield)) {
        let Some(way) = wire.length.filter(|_| !of.contains(&wire.to.as_str())) else { continue };
        length += planned.typed.lengths.kept(way).base();
        of.push(&wire.to);
    }
    let at = of.join(", ");
    (!of.is_empty()).then(|| say!(words::BUY_SHIELD, metres = counted_metres(length), at = at))
}

fn of_fuses(planned: &PlannedHarness<'_>) -> Vec<Message> {
    let bought = &planned.bought;
    let spare = |of: &Vec<String>| of.len().saturating_add(1);
    let mut list = Vec::new();
    for (fuse, of) in counted(&bought.fuses) {
        list.push(say!(words::BUY_FUSES, n = spare(&of), fuse = fuse, at = of.join(", ")));
    }
    if bought.holders > 0 {
        list.push(say!(words::BUY_HOLDERS, n = bought.holders));
    }
    for (rating, of) in counted(&bought.contacts) {
        list.push(say!(words::BUY_RELAYS, n = spare(&of), rating = rating, at = of.join(", ")));
    }
    if bought.sockets > 0 {
        list.push(say!(words::BUY_SOCKETS, n = bought.sockets));
    }
    list
}

/// What the wires end in.
fn of_ends(planned: &PlannedHarness<'_>, wires: &[LoomWire]) -> Vec<Message> {
    let bolts = [words::GROUND, words::BATTERY_PLUS].map(|it| say_of!(it).into_text());
    let ring = |(size, mut ends): (_, Vec<String>)| {
        let n = ends.len();
        ends.sort();
        ends.dedup();
        say!(words::BUY_RINGS, n = n, size = size, bolts = ends.join(", "))
    };
    let rings = rings(wires, |end| bolts.contains(end)).into_iter();
    let mut list: Vec<Message> = rings.map(ring).collect();
    let works = wires.iter().flat_map(|it| &it.works);
    // one that is lengthened has a splice too
    let is_short =
        |it: &&LoomWire| matches!(it.cut(&planned.typed.lengths), Some(WireCut::Short(_)));
    let splices = works.filter(|it| matches!(it, Work::Splice(_))).count()
        + wires.iter().filter(is_short).count();
    if splices > 0 {
        list.push(say!(words::BUY_SPLICES, n = splices));
    }
    let connectors = connectors(planned);
    if connectors > 0 {
        list.push(say!(words::BUY_CONNECTORS, n = connectors));
    }
    list.push(say!(words::BUY_SLEEVES, n = 2 * wires.len()));
    list
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

/// How many metres of it are bought.
fn counted_metres(length: f64) -> Value {
    let number = whole(length);
    Value::from(crate::math::fixed(number, 0).parse::<u32>().unwrap_or(u32::MAX))
}

fn whole_metres(length: f64) -> Value {
    metres(length).show().said([crate::math::fixed(length, 0).as_str(), " m"].concat())
}

/// It is sold by the metre.
fn whole(length: f64) -> f64 {
    (length - 1e-9).ceil().max(0.0)
}
