//! From the battery through each fuse and contact to what is fed, and the cable to the starter.

use super::slug;
use crate::{
    car::Car,
    channels::{Ignition, Slot},
    fields::{battery, relays},
    loom::{Duty, LoomWire, Stock, Work},
    quantity::{Area, Length},
    questions::{
        feeds::read::{PlannedCircuit, Source},
        wires::{
            planned::{PlannedWire, WireGroup},
            words,
        },
    },
    read::{Purpose, injectors::WhichSet},
    say,
    schema::Key,
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    // that of a load is listed with it
    let is_own = |it: &&PlannedCircuit| !matches!(it.source, Source::Load(..));
    let circuits = car.feeds.circuits.iter().filter(is_own);
    let mut wires: Vec<_> = circuits.filter_map(|it| of_circuit(car, it)).collect();
    if let Some(cable) = car.feeds.cable {
        let name = say!(words::BATTERY_CABLE).into_text();
        let (from, to) = (say!(words::BATTERY_PLUS), say!(words::STARTER));
        let wire = LoomWire {
            id: slug(&[&name]),
            label: name,
            from: from.into_text(),
            to: to.into_text(),
            duty: Duty::Permanent,
            stock: Stock::Reel,
            size: Some(cable.area),
            length: Some(cable.length),
            fuse: None,
            works: Vec::new(),
        };
        let key = Some(battery::LEAD_LENGTH);
        wires.push(PlannedWire { group: WireGroup::Feeds, wire, key, pin: None });
    }
    wires
}

fn of_circuit(car: &Car<'_>, circuit: &PlannedCircuit) -> Option<PlannedWire> {
    let before = circuit.behind.and_then(|at| {
        let name =
            car.feeds.circuits.iter().find(|it| it.source == Source::Relay(at))?.name.clone();
        Some(say!(words::TERMINAL_87, relay = name))
    });
    let (from, to, key): (_, _, Option<Key<Length>>) = match circuit.source {
        Source::Relay(at) => {
            let from = before.unwrap_or_else(|| say!(words::BATTERY_PLUS));
            let to = say!(words::THROUGH, relay = circuit.name.clone(), to = fed(circuit.purpose));
            (from, to, Some(relays::LEAD_LENGTH.at(at)))
        }
        Source::Injectors(_) => {
            let from = before.unwrap_or_else(|| say!(words::BATTERY_PLUS));
            (from, say!(words::NAMED, name = circuit.name.clone()), None)
        }
        Source::Ignition => (say!(words::FEED_15), say!(words::ITS_LOADS), None),
        Source::Battery => (say!(words::BATTERY_PLUS), say!(words::ITS_LOADS), None),
        Source::Load(..) => return None,
    };
    let size: Option<Area> = circuit.inputs.area.or(circuit.found.fitted.map(|it| it.area));
    let fuse = circuit.inputs.fuse.or(circuit.found.fitted.map(|it| it.fuse));
    let is_permanent = circuit.source == Source::Battery;
    let mut works = Vec::new();
    if matches!(circuit.source, Source::Relay(_)) {
        works.push(Work::Halved);
    }
    works.extend(branches(car, circuit).map(Work::Splice));
    let label = match circuit.source {
        Source::Injectors(_) => say!(words::BRANCH_LABEL, name = circuit.name.clone()),
        _ => say!(words::FEED_LABEL, name = circuit.name.clone()),
    };
    let wire = LoomWire {
        id: slug(&["feed", &circuit.name]),
        label: label.into_text(),
        from: from.into_text(),
        to: to.into_text(),
        duty: if is_permanent { Duty::Permanent } else { Duty::Switched },
        stock: Stock::Reel,
        size,
        length: circuit.inputs.length,
        fuse: fuse.filter(|_| !circuit.is_unfused),
        works,
    };
    Some(PlannedWire { group: WireGroup::Feeds, wire, key, pin: None })
}

/// What a relay feeds, in a word.
fn fed(purpose: Option<Purpose>) -> String {
    let wording = match purpose {
        Some(Purpose::Coils) => words::FEEDS_COILS,
        Some(Purpose::Injectors) => words::FEEDS_INJECTORS,
        _ => words::ITS_LOADS,
    };
    crate::say_of!(wording).into_text()
}

/// To how many coils or injectors it branches.
fn branches(car: &Car<'_>, circuit: &PlannedCircuit) -> Option<u32> {
    let (channels, engine) = (&car.firing.channels, car.engine.as_ref());
    let targets = |slots: Vec<Slot>| slots.iter().map(|it| it.targets.len()).sum::<usize>();
    let is_of_coils = |it: &&PlannedCircuit| it.purpose == Some(Purpose::Coils);
    let count = match (circuit.source, circuit.purpose) {
        (Source::Injectors(WhichSet::First), _) => targets(channels.injection.slots(engine)),
        (Source::Injectors(WhichSet::Second), _) => targets(channels.second.slots(engine)),
        (_, Some(Purpose::Injectors)) => {
            targets(channels.injection.slots(engine)) + targets(channels.second.slots(engine))
        }
        (_, Some(Purpose::Coils)) => {
            let slots = channels.ignition_slots(engine);
            // companions on one channel have a coil each, unless it has two ends
            let is_double = channels.ignition.mode.value() == Some(Ignition::PairedDouble);
            let coils = if is_double { slots.len() } else { targets(slots) };
            let relays = car.feeds.circuits.iter().filter(is_of_coils).count().max(1);
            coils.div_ceil(relays)
        }
        _ => 0,
    };
    u32::try_from(count).ok().filter(|it| *it > 1)
}
