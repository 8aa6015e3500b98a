//! From each output to its load, or to the coil of its relay; and from there to its other end.

use super::{label, slug};
use crate::{
    car::Car,
    fields::{loads, relays},
    loom::{Duty, LoomWire, Stock},
    message::Message,
    output::FarEnd,
    quantity::{Area, Measure},
    questions::{
        feeds::read::Source,
        wires::{
            planned::{PlannedWire, WireGroup},
            read::LoadWays,
            words,
        },
    },
    read::{OutputLink, PlannedLoad, PlannedRest},
    say,
    schema::Part,
    supply::circuit::BOUGHT_MM2,
    tables::wires::smallest_for,
};

pub(super) fn wires(car: &Car<'_>) -> Vec<PlannedWire> {
    let each = car.outputs.loads.iter().zip(&car.harness.loads).flat_map(|(load, ways)| {
        let [pin, other] = terminals(load);
        let own = from_output(load, ways, &car.outputs, pin);
        own.into_iter().chain(to_other_end(car, load, ways, other))
    });
    each.collect()
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
        .map(|it| crate::say_of!(it, relay = name.clone()).into_text());
    if load.far_end == Some(FarEnd::Ground) { [plus, minus] } else { [minus, plus] }
}

fn from_output(
    load: &PlannedLoad,
    ways: &LoadWays,
    outputs: &PlannedRest,
    to: String,
) -> Option<PlannedWire> {
    let key = load.place.key(loads::LENGTH);
    let OutputLink::To(at) = load.link else { return None };
    let output = outputs.outputs.get(at)?;
    let from = say!(words::OUTPUT, name = output.name.clone()).into_text();
    let wire = LoomWire {
        id: slug(&[&output.name, &load.name]),
        label: label(&from, &to),
        from,
        to,
        duty: Duty::Output,
        stock: Stock::Harness,
        size: None,
        length: ways.to_output,
        fuse: None,
        works: Vec::new(),
    };
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
        id: slug(&[&load.name, &to]),
        label: label(&from, &to),
        from,
        to,
        duty,
        stock,
        size: ways.size.or_else(|| size(car, load, far_end)),
        length: ways.to_other_end,
        fuse: None,
        works: Vec::new(),
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
