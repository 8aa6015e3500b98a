//! From each channel to its coil, or to its injectors.

use super::{between, slug};
use crate::{
    car::Car,
    channels::{Ignition, Slot, Target},
    fields::harness::{self, ConnectorFit},
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    quantity::{Area, Length},
    questions::wires::{
        planned::{PlannedWire, WireGroup},
        read::Ways,
        words,
    },
    say,
    schema::Key,
};

/// What the wires of a kind have in common.
struct ChannelWires<'a> {
    group: WireGroup,
    list: Key<Length>,
    ways: &'a Ways,
    works: Vec<Work>,
    size: Option<Area>,
}

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let (typed, channels) = (&car.harness, &car.firing.channels);
    let engine = car.engine.as_ref();
    let coils = ChannelWires {
        group: WireGroup::Coils,
        list: harness::COILS,
        ways: &typed.coils,
        works: work(typed.coil_ends),
        size: None,
    };
    let is_spliced = channels.ignition.mode.value() == Some(Ignition::PairedSingle);
    let of_coil = |slot: Slot| {
        let ends = (say!(words::IGNITION, n = slot.channel), coil(&slot.targets));
        wire(&coils, &slot, ends, splice(&slot).filter(|_| is_spliced))
    };
    let mut wires: Vec<_> = channels.ignition_slots(engine).into_iter().map(of_coil).collect();
    let [first, second] = &typed.injectors;
    let [first_size, second_size] = typed.injector_sizes;
    let sets = [
        (WireGroup::Injectors, harness::INJECTORS, first, first_size, &channels.injection),
        (WireGroup::SecondInjectors, harness::SECOND, second, second_size, &channels.second),
    ];
    for (group, list, ways, size, fired) in sets {
        let kind = ChannelWires { group, list, ways, works: work(typed.injector_ends), size };
        wires.extend(fired.slots(engine).into_iter().map(|slot| {
            let from = if group == WireGroup::Injectors {
                say!(words::INJECTION, n = slot.channel)
            } else {
                say!(words::SECOND_INJECTION, n = slot.channel)
            };
            let to = say!(words::INJECTOR, n = list_of(&slot.targets));
            wire(&kind, &slot, (from, to), splice(&slot))
        }));
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

pub(super) fn list_of(targets: &[Target]) -> String {
    let each: Vec<_> = targets.iter().map(ToString::to_string).collect();
    each.join(" + ")
}

fn coil(targets: &[Target]) -> Message {
    match targets {
        [] => say!(words::THE_COIL),
        _ => say!(words::COIL, n = list_of(targets)),
    }
}

fn wire(
    kind: &ChannelWires<'_>,
    slot: &Slot,
    (from, to): (Message, Message),
    splice: Option<Work>,
) -> PlannedWire {
    let at = (slot.channel as usize).saturating_sub(1);
    let duty = if kind.group == WireGroup::Coils { Duty::Ignition } else { Duty::Injection };
    let (from, to) = (from.into_text(), to.into_text());
    let wire = LoomWire {
        size: kind.size,
        length: kind.ways.get(at).copied().flatten(),
        works: kind.works.iter().copied().chain(splice).collect(),
        ..between(slug(&[&from]), [from, to], duty, Stock::Harness)
    };
    PlannedWire { group: kind.group, wire, key: Some(kind.list.in_cell(at)), pin: None }
}
