//! From the battery through each fuse and contact to what is fed, and the cable to the starter.

use super::slug;
use crate::{
    car::Car,
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
    read::Purpose,
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
    let wire = LoomWire {
        id: slug(&["feed", &circuit.name]),
        label: say!(words::FEED_LABEL, name = circuit.name.clone()).into_text(),
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
    let cylinders = car.engine.as_ref()?.cylinders();
    let is_of_all = matches!(circuit.purpose, Some(Purpose::Coils | Purpose::Injectors))
        || matches!(circuit.source, Source::Injectors(_));
    (is_of_all && cylinders > 1).then_some(cylinders)
}
