//! From the battery through each fuse and contact to what is fed, and the cables of battery and engine.

use super::{bare, between, branches, slug};
use crate::{
    car::Car,
    fields::{
        battery,
        grounds::{self, MinusTo},
        relays,
    },
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    quantity::{Area, Length, Measure, metres},
    questions::{
        feeds::read::{PlannedCircuit, Source},
        wires::{
            planned::{PlannedWire, WireGroup},
            words,
        },
    },
    read::Purpose,
    say, say_of,
    schema::Key,
    supply::cable::{CableInputs, is_too_much},
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let circuits = car.feeds.circuits.iter();
    let mut wires: Vec<_> = circuits.flat_map(|it| of_circuit(car, it)).collect();
    wires.extend(branches::wires(car));
    wires.extend(cables(car));
    wires
}

/// The size of a feed's wire: as typed, or as it suits. One that is too thin is bought with the cure of that, not with these.
pub(super) fn size(circuit: &PlannedCircuit) -> Option<Area> {
    let is_right = |it: &Area| !circuit.inputs.is_too_thin(*it);
    match circuit.inputs.area {
        Some(typed) => Some(typed).filter(is_right),
        None => circuit.found.fitted.map(|it| it.area),
    }
}

fn of_feed(wire: LoomWire, key: Option<Key<Length>>) -> PlannedWire {
    PlannedWire { group: WireGroup::Feeds, wire, key, pin: None }
}

fn of_circuit(car: &Car<'_>, circuit: &PlannedCircuit) -> Vec<PlannedWire> {
    let name = circuit.name.clone();
    let fuse = circuit.inputs.fuse.or(circuit.found.fitted.map(|it| it.fuse));
    let fuse = fuse.filter(|_| !circuit.is_unfused);
    let (from, to, duty) = match circuit.source {
        Source::Relay(at) => return of_relay(car, circuit, at),
        // that of a load is listed with the load
        Source::Load(..) => return Vec::new(),
        Source::Ignition => (say!(words::FEED_15), say!(words::ITS_LOADS), Duty::Switched),
        Source::Battery => (say!(words::BATTERY_PLUS), say!(words::ITS_LOADS), Duty::Permanent),
        Source::Injectors(_) => {
            let to = say!(words::NAMED, name = name.clone());
            match circuit.behind {
                None => (say!(words::BATTERY_PLUS), to, Duty::Permanent),
                // what is all that the relay feeds has its fuse in that wire
                Some(at) if !branches::is_apart(car, circuit, at) => return Vec::new(),
                Some(at) => (contact_of(car, at), to, Duty::Switched),
            }
        }
    };
    let label = say!(words::FEED_LABEL, name = name.clone()).into_text();
    let plain = bare(slug(&["feed", &name]), label, ends(from, to), duty, Stock::Reel);
    let works = branches::of_feed(car, circuit, 1).map(Work::Splice).into_iter().collect();
    let is_of_set = matches!(circuit.source, Source::Injectors(_));
    let size = if is_of_set { branches::of_set(circuit) } else { size(circuit) };
    let wire = LoomWire { size, length: circuit.inputs.length, fuse, works, ..plain };
    vec![of_feed(wire, None)]
}

fn ends(from: Message, to: Message) -> [String; 2] {
    [from.into_text(), to.into_text()]
}

/// The contact (87) of a relay of the plan.
fn contact_of(car: &Car<'_>, at: usize) -> Message {
    let relay = car.feeds.circuits.iter().find(|it| it.source == Source::Relay(at));
    say!(words::TERMINAL_87, relay = relay.map_or_else(String::new, |it| it.name.clone()))
}

/// The wires of each relay that is one of several alike.
fn of_relay(car: &Car<'_>, circuit: &PlannedCircuit, at: usize) -> Vec<PlannedWire> {
    let alike = circuit.alike;
    let named = |n: u32| match alike {
        1 => circuit.name.clone(),
        _ => say!(words::OF_ALIKE, relay = circuit.name.clone(), n = n).into_text(),
    };
    (1..=alike).flat_map(|n| of_contact(car, circuit, (at, alike), &named(n))).collect()
}

/// Its contact's two wires: to 30, and from 87 to what it feeds; and the ground of that.
fn of_contact(
    car: &Car<'_>,
    circuit: &PlannedCircuit,
    (at, alike): (usize, u32),
    name: &str,
) -> Vec<PlannedWire> {
    let relay = || name.to_owned();
    let fuse = circuit.inputs.fuse.or(circuit.found.fitted.map(|it| it.fuse));
    let whole = circuit.inputs.length;
    let part = car.harness.to_contacts.get(at).copied().flatten();
    let rest = whole.zip(part).map(|(whole, part)| metres(whole.base() - part.base()));
    let duty = if circuit.behind.is_some() { Duty::Switched } else { Duty::Permanent };
    let from = circuit.behind.map_or_else(|| say!(words::BATTERY_PLUS), |at| contact_of(car, at));
    let contact = ends(from, say!(words::TERMINAL_30, relay = relay()));
    let first = LoomWire {
        size: size(circuit),
        length: part,
        fuse: fuse.filter(|_| !circuit.is_branch()),
        ..between(slug(&["feed", name]), contact, duty, Stock::Reel)
    };
    let contact = ends(say!(words::TERMINAL_87, relay = relay()), fed(circuit.purpose));
    let second = LoomWire {
        size: size(circuit),
        length: rest,
        together: whole.filter(|_| part.is_none()),
        works: branches::of_feed(car, circuit, alike).map(Work::Splice).into_iter().collect(),
        fuse: branches::own_fuse(car, circuit, at),
        ..between(slug(&[name, "87"]), contact, Duty::Switched, Stock::Reel)
    };
    let lead = if whole.is_none() { relays::LEAD_LENGTH } else { relays::TO_CONTACT };
    // while only both together are known, that is said of the second
    let key = Some(relays::TO_CONTACT.at(at)).filter(|_| whole.is_none() || part.is_some());
    let mut wires = vec![of_feed(first, key)];
    // what feeds nothing but loads of the plan ends where their wires begin
    let is_for_loads = circuit.purpose.is_none_or(|it| it == Purpose::Other);
    if !is_for_loads || whole.is_some() || branches::loads_behind(car, at) == 0 {
        wires.push(of_feed(second, Some(lead.at(at))));
    }
    wires.extend(ground(car, circuit, at, name));
    wires
}

/// The ground wire of a motor, lamps or a heater.
fn ground(car: &Car<'_>, circuit: &PlannedCircuit, at: usize, name: &str) -> Option<PlannedWire> {
    let usual = [Purpose::Pump, Purpose::Fan, Purpose::Lamps, Purpose::Heater];
    let length = car.harness.ground_wires.get(at).copied().flatten();
    let is_usual = circuit.purpose.is_some_and(|it| usual.contains(&it));
    if !is_usual && length.is_none() {
        return None;
    }
    let from = say!(words::FED_BY, relay = name.to_owned());
    let plain =
        between(slug(&[name, "31"]), ends(from, say!(words::GROUND)), Duty::Ground, Stock::Reel);
    let wire = LoomWire { size: size(circuit), length, ..plain };
    Some(of_feed(wire, Some(relays::GROUND_LENGTH.at(at))))
}

/// What a relay feeds, in a word.
fn fed(purpose: Option<Purpose>) -> Message {
    say_of!(match purpose {
        Some(Purpose::Coils) => words::FEEDS_COILS,
        Some(Purpose::Injectors) => words::FEEDS_INJECTORS,
        Some(Purpose::Engine) => words::FEEDS_ENGINE,
        _ => words::ITS_LOADS,
    })
}

/// The cables of battery and engine: bought as long as they are.
fn cables(car: &Car<'_>) -> Vec<PlannedWire> {
    let minus = car.feeds.grounds.strap.and_then(|it| it.minus_to);
    let minus_to = match minus {
        Some(MinusTo::Engine) => Some(words::ENGINE),
        Some(MinusTo::Body) => Some(words::BODY),
        None => None,
    };
    let plus = car.feeds.cable.map(|cable| {
        let to = ends(say!(words::BATTERY_PLUS), say!(words::STARTER));
        let size = (thick(cable), Some(cable.length));
        piece(words::BATTERY_CABLE, to, Duty::Permanent, size, Some(battery::LEAD_LENGTH))
    });
    let minus = car.feeds.cable.zip(minus_to).map(|(cable, to)| {
        let to = ends(say!(words::BATTERY_MINUS), say_of!(to));
        piece(
            words::MINUS_CABLE,
            to,
            Duty::Ground,
            (thick(cable), car.harness.minus),
            Some(grounds::MINUS_LENGTH),
        )
    });
    let strap = car.feeds.grounds.strap.and_then(|it| it.sized).map(|(area, length)| {
        let to = ends(say!(words::ENGINE), say!(words::BODY));
        let key = Some(grounds::STRAP_LENGTH);
        piece(words::STRAP, to, Duty::Ground, (Some(area), Some(length)), key)
    });
    [plus, minus, strap].into_iter().flatten().collect()
}

fn piece(
    name: &'static crate::words::Wording,
    ends: [String; 2],
    duty: Duty,
    (size, length): (Option<Area>, Option<Length>),
    key: Option<Key<Length>>,
) -> PlannedWire {
    let name = say_of!(name).into_text();
    let plain = bare(slug(&[&name]), name, ends, duty, Stock::Piece);
    of_feed(LoomWire { size, length, ..plain }, key)
}

/// Of a cable that is too thin both are bought with the cure of that.
fn thick(cable: CableInputs) -> Option<Area> {
    let is_thin = is_too_much(cable.answer().drop) && !cable.is_strap_worse();
    (!is_thin).then_some(cable.area)
}
