//! Loads whose own wire is thinner than the rest of their feed.

use super::read::{PlannedCircuit, Source, unsolved};
use crate::{
    fields::loads,
    output::FarEnd,
    plan::MOST_ENTRIES,
    quantity::{Area, amperes},
    read::{PlannedLoad, PlannedRest, Reader},
    schema::Part,
    supply::circuit::{CircuitInputs, Consumer},
};

/// Each that the fuse before it leaves exposed: what it protects is no circuit of its own.
pub(super) fn of_loads(
    reader: &mut Reader<'_>,
    circuits: &[PlannedCircuit],
    rest: &PlannedRest,
) -> Vec<PlannedCircuit> {
    let count = reader.plan().count(Part::Loads).min(MOST_ENTRIES);
    let sizes: Vec<Option<Area>> = (0..count)
        .map(|at| reader.band(loads::WIRE_SIZE.at(at)).value().map(|it| it.low))
        .collect();
    let one = |load: &std::rc::Rc<PlannedLoad>| {
        let number = Some(load.place.number).filter(|_| load.place.part == Part::Loads)?;
        let area = sizes.get(number).copied().flatten()?;
        of_load(load, area, circuits, rest)
    };
    rest.loads.iter().filter_map(one).collect()
}

fn of_load(
    load: &PlannedLoad,
    area: Area,
    circuits: &[PlannedCircuit],
    rest: &PlannedRest,
) -> Option<PlannedCircuit> {
    let far_end = load.far_end?;
    let source = match far_end {
        FarEnd::Relay => Source::Relay(load.fed_by?),
        FarEnd::Ignition => Source::Ignition,
        FarEnd::Battery => Source::Battery,
        FarEnd::Ground | FarEnd::FiveVolt | FarEnd::Output => return None,
    };
    let feed = circuits.iter().find(|it| it.source == source)?;
    // a feed that is no thicker is told as a whole
    if feed.inputs.area.is_some_and(|of_feed| of_feed <= area) {
        return None;
    }
    let takes = rest.taken_by_one(load);
    let inputs = CircuitInputs {
        draws: (!load.assumed.resistance).then(|| vec![takes]),
        consumer: Consumer::Steady,
        inrush: None,
        contact: None,
        area: Some(area),
        length: None,
        ..feed.inputs.clone()
    };
    let is_exposed = inputs.fuse.is_some_and(|fuse| inputs.exposed(fuse).is_some());
    is_exposed.then(|| PlannedCircuit {
        source: Source::Load(load.place.number, far_end),
        name: load.name.clone(),
        purpose: None,
        behind: load.fed_by.filter(|_| far_end == FarEnd::Relay),
        // it is counted with its feed
        carries: Some(amperes(0.0)),
        own: Some(amperes(0.0)),
        of_engine: None,
        wants_draws: false,
        is_judged_there: false,
        interlock: None,
        is_unfused: true,
        found: unsolved(),
        inputs,
    })
}
