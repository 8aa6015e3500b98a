//! From each channel to its coil, or to its injectors.

use super::{label, slug};
use crate::{
    channels::{Ignition, Layout, Slot, Target},
    fields::{harness, injectors},
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    quantity::{Area, Length},
    questions::wires::{
        read::{Connected, PlannedWire, WireGroup},
        words,
    },
    read::{Channels, Reader, injectors::WhichSet},
    say,
    schema::Key,
};

use crate::fields::harness::ConnectorFit;

pub(super) fn wires(reader: &mut Reader<'_>, connected: Connected<'_>) -> Vec<PlannedWire> {
    let ends = reader.choice(harness::COIL_ENDS).value();
    let coil_work = work(ends);
    let ends = reader.choice(harness::INJECTOR_ENDS).value();
    let injector_work = work(ends);
    let mut wires = Vec::new();
    for slot in of_ignition(connected) {
        let key = harness::COILS.in_cell(cell(&slot));
        let words = (say!(words::IGNITION, n = slot.channel), coil(&slot.targets));
        let mut works = coil_work.clone();
        if connected.channels.ignition.mode.value() == Some(Ignition::PairedSingle) {
            works.extend(splice(&slot));
        }
        wires.push(wire(reader, WireGroup::Coils, key, words, &works, None));
    }
    let ChannelsParts { first, second } = of_injection(connected);
    for (group, set, list, slots) in [
        (WireGroup::Injectors, WhichSet::First, harness::INJECTORS, first),
        (WireGroup::SecondInjectors, WhichSet::Second, harness::SECOND, second),
    ] {
        let size = typed_size(reader, set);
        for slot in slots {
            let key = list.in_cell(cell(&slot));
            let from = match set {
                WhichSet::First => say!(words::INJECTION, n = slot.channel),
                WhichSet::Second => say!(words::SECOND_INJECTION, n = slot.channel),
            };
            let mut works = injector_work.clone();
            works.extend(splice(&slot));
            wires.push(wire(reader, group, key, (from, injector(&slot.targets)), &works, size));
        }
    }
    wires
}

/// Connectors that don't fit are work.
fn work(ends: Option<ConnectorFit>) -> Vec<Work> {
    match ends {
        Some(ConnectorFit::Wrong) => vec![Work::Change],
        Some(ConnectorFit::Bare) => vec![Work::Fit],
        Some(ConnectorFit::Fit) | None => Vec::new(),
    }
}

/// A channel of several branches.
fn splice(slot: &Slot) -> Option<Work> {
    let count = u32::try_from(slot.targets.len()).unwrap_or(u32::MAX);
    (count > 1).then_some(Work::Splice(count))
}

fn cell(slot: &Slot) -> usize {
    (slot.channel as usize).saturating_sub(1)
}

/// In the order of their numbers, as they stand on the connector.
fn by_number(layout: Option<Layout>) -> Vec<Slot> {
    let mut slots = layout.map_or_else(Vec::new, |it| it.slots().to_vec());
    crate::sorted::by(&mut slots, |one, other| one.channel.cmp(&other.channel));
    slots
}

fn of_ignition(connected: Connected<'_>) -> Vec<Slot> {
    let Channels { mode, habit, .. } = &connected.channels.ignition;
    let (Some(engine), Some(mode), Some(habit)) = (connected.engine, mode.value(), habit.value())
    else {
        return Vec::new();
    };
    let layout = Layout::ignition(engine, mode, habit).ok();
    if mode != Ignition::Distributor {
        return by_number(layout);
    }
    // its towers are leads; there is one coil for each cap
    let positions = Layout::positions(engine.kind());
    let slot = |(channel, _)| Slot { channel, targets: Vec::new(), times: Vec::new() };
    (1..).zip(positions).map(slot).collect()
}

struct ChannelsParts {
    first: Vec<Slot>,
    second: Vec<Slot>,
}

fn of_injection(connected: Connected<'_>) -> ChannelsParts {
    let of = |channels: &Channels<_>| {
        let parts = (connected.engine, channels.mode.value(), channels.habit.value());
        let (Some(engine), Some(mode), Some(habit)) = parts else { return Vec::new() };
        by_number(Layout::injection(engine, mode, habit).ok())
    };
    ChannelsParts {
        first: of(&connected.channels.injection),
        second: of(&connected.channels.second),
    }
}

fn typed_size(reader: &Reader<'_>, set: WhichSet) -> Option<Area> {
    let key = injectors::WIRE_SIZE.of(set.part());
    let size = reader.band_elsewhere(key).filter(|_| reader.is_typed(key));
    size.map(|it| it.low)
}

fn list(targets: &[Target]) -> String {
    let each: Vec<_> = targets.iter().map(ToString::to_string).collect();
    each.join(" + ")
}

fn coil(targets: &[Target]) -> Message {
    match targets {
        [] => say!(words::THE_COIL),
        _ => say!(words::COIL, n = list(targets)),
    }
}

fn injector(targets: &[Target]) -> Message {
    say!(words::INJECTOR, n = list(targets))
}

fn wire(
    reader: &mut Reader<'_>,
    group: WireGroup,
    key: Key<Length>,
    (from, to): (Message, Message),
    works: &[Work],
    size: Option<Area>,
) -> PlannedWire {
    let length = reader.band(key).value().map(|it| it.nominal);
    let duty = if group == WireGroup::Coils { Duty::Ignition } else { Duty::Injection };
    let (from, to) = (from.into_text(), to.into_text());
    let wire = LoomWire {
        id: slug(&[&from]),
        label: label(&from, &to),
        from,
        to,
        duty,
        stock: Stock::Harness,
        size,
        length,
        fuse: None,
        works: works.to_vec(),
    };
    PlannedWire { group, wire, key: Some(key), pin: None }
}
