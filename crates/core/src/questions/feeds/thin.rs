//! Loads whose own wire is thinner than the rest of their feed, or that have a fuse of their own.

use super::read::{Consumers, PlannedCircuit, Source, inputs, unsolved};
use crate::{
    fields::loads,
    output::{FarEnd, LoadKind},
    plan::MOST_ENTRIES,
    quantity::{Area, Current, amperes},
    read::{PlannedLoad, Reader},
    schema::Part,
    supply::{
        circuit::{CircuitInputs, Consumer},
        laid::LaidWire,
    },
};

/// What was typed of a load's own feed.
#[derive(Clone, Copy)]
struct OwnFeed {
    fuse: Option<Current>,
    area: Option<Area>,
}

/// Each that has a fuse of its own, or that the fuse before it leaves exposed: what that one protects is no circuit of its own.
pub(super) fn of_loads(
    reader: &mut Reader<'_>,
    circuits: &[PlannedCircuit],
    (among, laid): (&Consumers<'_>, LaidWire),
) -> Vec<PlannedCircuit> {
    let count = reader.plan().count(Part::Loads).min(MOST_ENTRIES);
    let own: Vec<OwnFeed> = (0..count)
        .map(|at| OwnFeed {
            fuse: reader.band(loads::FUSE.at(at)).value().map(|it| it.nominal),
            area: reader.band(loads::WIRE_SIZE.at(at)).value().map(|it| it.low),
        })
        .collect();
    let one = |load: &std::rc::Rc<PlannedLoad>| {
        let number = Some(load.place.number).filter(|_| load.place.part == Part::Loads)?;
        let own = own.get(number).filter(|it| it.fuse.is_some() || it.area.is_some())?;
        let (source, far_end) = source(load)?;
        let feed = circuits.iter().find(|it| it.source == source);
        let plain = || inputs(reader, loads::FUSE.at(number), None, (among, laid));
        let inputs = feed.map_or_else(plain, |feed| feed.inputs.clone());
        let before = CircuitInputs { fuse: feed.and_then(|it| it.inputs.fuse), ..inputs };
        let inputs = behind(load, *own, &before, among)?;
        Some(of_load(load, (number, far_end), own.fuse.is_none(), inputs))
    };
    among.rest.loads.iter().filter_map(one).collect()
}

/// What feeds a load: an output that does has no fuse.
fn source(load: &PlannedLoad) -> Option<(Source, FarEnd)> {
    let far_end = load.far_end?;
    let source = match far_end {
        FarEnd::Relay => Source::Relay(load.fed_by?),
        FarEnd::Ignition => Source::Ignition,
        FarEnd::Battery => Source::Battery,
        FarEnd::Ground | FarEnd::FiveVolt | FarEnd::Output => return None,
    };
    Some((source, far_end))
}

/// Its wire behind its fuse, or behind the fuse before it, where that is to be judged.
fn behind(
    load: &PlannedLoad,
    own: OwnFeed,
    feed: &CircuitInputs,
    among: &Consumers<'_>,
) -> Option<CircuitInputs> {
    // a feed that is no thicker is told as a whole
    let is_thinner = || own.area.is_some_and(|area| feed.area.is_none_or(|it| it > area));
    if own.fuse.is_none() && !is_thinner() {
        return None;
    }
    let before = feed.fuse;
    let takes = among.rest.taken_by_one(load);
    let inputs = CircuitInputs {
        draws: (!load.assumed.resistance).then(|| vec![takes]),
        consumer: starts(load),
        inrush: None,
        fuse: own.fuse.or(before),
        contact: None,
        area: own.area.or(feed.area),
        length: None,
        ..feed.clone()
    };
    let is_exposed = |fuse: Current| inputs.exposed(fuse).is_some();
    match (own.fuse, before) {
        (None, before) => before.is_some_and(is_exposed).then_some(inputs),
        // the smaller of both is what blows
        (Some(own), Some(before)) if before < own && is_exposed(own) && !is_exposed(before) => {
            Some(CircuitInputs { fuse: Some(before), ..inputs })
        }
        (Some(_), _) => Some(inputs),
    }
}

/// How it starts; what is pulsed starts softly.
fn starts(load: &PlannedLoad) -> Consumer {
    match load.kind {
        _ if load.pulse.is_some() => Consumer::Steady,
        LoadKind::Motor => Consumer::Motor,
        LoadKind::Lamp => Consumer::Lamps,
        _ => Consumer::Steady,
    }
}

fn of_load(
    load: &PlannedLoad,
    (number, far_end): (usize, FarEnd),
    is_unfused: bool,
    inputs: CircuitInputs,
) -> PlannedCircuit {
    PlannedCircuit {
        source: Source::Load(number, far_end),
        name: load.name.clone(),
        purpose: None,
        alike: 1,
        behind: load.fed_by.filter(|_| far_end == FarEnd::Relay),
        // it is counted with its feed
        carries: Some(amperes(0.0)),
        own: Some(amperes(0.0)),
        pulsed: amperes(0.0),
        of_engine: None,
        wants_draws: false,
        is_judged_there: false,
        interlock: None,
        is_unfused,
        fused_behind: None,
        found: unsolved(),
        inputs,
    }
}
