//! From each output to its load, or to the coil of its relay; and from there to its other end.

use super::{between, slug};
use crate::{
    car::Car,
    fields::{coils, loads, relays},
    loom::{Duty, LoomWire, Stock, Work},
    message::Message,
    output::FarEnd,
    quantity::{Area, Measure},
    questions::{
        feeds::read::Source,
        wires::{
            planned::{PlannedWire, WireGroup},
            read::{KeyedRelay, LoadWays},
            words,
        },
    },
    read::{LoadPlace, OutputLink, PlannedLoad, rest::same_name},
    say, say_of,
    schema::{Choice as _, Part},
    supply::circuit::BOUGHT_MM2,
    tables::wires::smallest_for,
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    // an igniter's input is on its ignition channel, whose wires are listed with the coils
    let channels = car.firing.channels.ignition_slots(car.engine.as_ref()).len();
    let input = car.text(coils::INPUT);
    let is_listed = |load: &PlannedLoad| channels > 0 && same_name(&load.name, input);
    let loads = car.outputs.loads.iter().zip(&car.harness.loads);
    let each = loads.filter(|(load, _)| !is_listed(load)).flat_map(|(load, ways)| {
        let [pin, other] = terminals(load);
        let own = from_output(car, load, ways, pin);
        own.into_iter().chain(to_other_end(car, load, ways, other))
    });
    each.chain(by_key(car)).collect()
}

/// The two wires of each relay whose coil the key switches: 86 to the switch, 85 to ground; a starter's to where the key cranks.
fn by_key(car: &Car<'_>) -> Vec<PlannedWire> {
    let relays = car.harness.keyed.iter();
    let of = |it: &KeyedRelay| {
        let name = car.text(relays::NAME.at(it.at)).to_owned();
        let name =
            if name.is_empty() { say!(words::RELAY, n = it.at + 1).into_text() } else { name };
        let thinnest = BOUGHT_MM2.first().map(|it| Area::from_base(it * 1e-6));
        let feed = car.feeds.circuits.iter().find(|it| it.source == Source::Ignition);
        let of_feed = feed.and_then(|it| it.inputs.area.or(it.found.fitted.map(|it| it.area)));
        let far = car.text(relays::FAR_END.at(it.at));
        // what is called the other end is at plus, where that was said
        let is_at_plus = !far.is_empty() && far != FarEnd::Ground.choosable().code;
        let own = (it.ways.to_output, loads::LENGTH);
        let other = (it.ways.to_other_end, loads::OTHER_LENGTH);
        let (plus, minus) = if is_at_plus { (other, own) } else { (own, other) };
        let (feed, of_feed) =
            if it.is_of_starter { (words::FEED_50, thinnest) } else { (words::FEED_15, of_feed) };
        let ends = [
            (words::TERMINAL_86, feed, Duty::Switched, of_feed, plus),
            (words::TERMINAL_85, words::GROUND, Duty::Ground, thinnest, minus),
        ];
        let place = LoadPlace { part: Part::Relays, number: it.at };
        ends.map(|(terminal, end, duty, size, (length, key))| {
            let from = say_of!(terminal, relay = name.clone()).into_text();
            let to = say_of!(end).into_text();
            let plain = between(slug(&[&from]), [from, to], duty, Stock::Reel);
            let wire = LoomWire { size, length, ..plain };
            PlannedWire { group: WireGroup::Loads, wire, key: Some(place.key(key)), pin: None }
        })
    };
    relays.flat_map(of).collect()
}

/// As thick as what it is spliced to, which the fuse protects; to ground as thick as what the load takes.
fn size(car: &Car<'_>, load: &PlannedLoad, far_end: FarEnd) -> Option<Area> {
    let of_feed = |source| {
        let circuit = car.feeds.circuits.iter().find(|it| it.source == source)?;
        circuit.inputs.area.or(circuit.found.fitted.map(|it| it.area))
    };
    match far_end {
        FarEnd::Ground => {
            let least = Area::from_base(BOUGHT_MM2.first()? * 1e-6);
            let taken = smallest_for(car.outputs.taken_by_one(load))?;
            Some(if taken.base() < least.base() { least } else { taken })
        }
        FarEnd::Battery => of_feed(Source::Battery),
        FarEnd::Ignition => of_feed(Source::Ignition),
        FarEnd::Relay => of_feed(Source::Relay(load.fed_by?)),
        FarEnd::FiveVolt | FarEnd::Output => None,
    }
}

/// What its two ends are called: of a relay's coil by DIN 72552, 86 at plus; of another load, its name.
fn terminals(load: &PlannedLoad) -> [String; 2] {
    let name = &load.name;
    if load.place.part != Part::Relays {
        return [name.clone(), name.clone()];
    }
    let [plus, minus] = [words::TERMINAL_86, words::TERMINAL_85]
        .map(|it| say_of!(it, relay = name.clone()).into_text());
    if load.far_end == Some(FarEnd::Ground) { [plus, minus] } else { [minus, plus] }
}

/// Relays that are alike are on one output.
fn fork(car: &Car<'_>, load: &PlannedLoad) -> Option<Work> {
    let at = Some(load.place).filter(|it| it.part == Part::Relays)?.number;
    let circuit = car.feeds.circuits.iter().find(|it| it.source == Source::Relay(at))?;
    (circuit.alike > 1).then_some(Work::Splice(circuit.alike))
}

fn from_output(
    car: &Car<'_>,
    load: &PlannedLoad,
    ways: &LoadWays,
    to: String,
) -> Option<PlannedWire> {
    let key = load.place.key(loads::LENGTH);
    // as planned: where it was found is told with the outputs
    let OutputLink::To(found) = load.link else { return None };
    let at = load.meant.unwrap_or(found);
    let outputs = &car.outputs;
    let output = outputs.outputs.get(at)?;
    let from = say!(words::OUTPUT, name = output.name.clone()).into_text();
    let id = slug(&[&output.name, &load.name]);
    let plain = between(id, [from, to], Duty::Output, Stock::Harness);
    let moved = load.meant.map(|_| Work::Move);
    let works = fork(car, load).into_iter().chain(moved).collect();
    let wire = LoomWire { length: ways.to_output, works, ..plain };
    let pin = Some(outputs.taken_by_one(load));
    Some(PlannedWire { group: WireGroup::Loads, wire, key: Some(key), pin })
}

fn to_other_end(
    car: &Car<'_>,
    load: &PlannedLoad,
    ways: &LoadWays,
    from: String,
) -> Option<PlannedWire> {
    let key = load.place.key(loads::OTHER_LENGTH);
    let far_end = load.far_end?;
    let (end, duty) = other_end(car, load, far_end)?;
    let to = end.into_text();
    let stock = match duty {
        Duty::Output | Duty::Sensor => Stock::Harness,
        _ => Stock::Reel,
    };
    let wire = LoomWire {
        size: ways.size.or_else(|| size(car, load, far_end)),
        length: ways.to_other_end,
        fuse: ways.fuse.filter(|_| duty != Duty::Ground),
        works: fork(car, load).into_iter().collect(),
        ..between(slug(&[&load.name, &to]), [from, to], duty, stock)
    };
    Some(PlannedWire { group: WireGroup::Loads, wire, key: Some(key), pin: None })
}

fn other_end(car: &Car<'_>, load: &PlannedLoad, far_end: FarEnd) -> Option<(Message, Duty)> {
    Some(match far_end {
        FarEnd::Ground => (say!(words::GROUND), Duty::Ground),
        FarEnd::Battery => (say!(words::FEED_30), Duty::Permanent),
        FarEnd::Ignition => (say!(words::FEED_15), Duty::Switched),
        FarEnd::Relay => {
            let name = load.fed_by.map(|at| car.text(relays::NAME.at(at)).to_owned());
            match name.filter(|it| !it.is_empty()) {
                Some(relay) => (say!(words::TERMINAL_87, relay = relay), Duty::Switched),
                None => (say!(words::FEED_87), Duty::Switched),
            }
        }
        FarEnd::FiveVolt => (say!(words::FIVE_VOLT), Duty::Sensor),
        FarEnd::Output => {
            let output = car.outputs.outputs.get(load.partner?)?;
            (say!(words::OUTPUT, name = output.name.clone()), Duty::Output)
        }
    })
}
