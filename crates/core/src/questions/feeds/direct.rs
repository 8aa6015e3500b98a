//! What hangs on the ignition switch (15) and on permanent battery (30), past the contacts of relays.

use super::read::{Consumers, PlannedCircuit, Source, inputs, unsolved};
use crate::{
    car::relays::is_switched_by_key,
    fields::{relays, switched_feeds},
    output::FarEnd,
    plan::MOST_ENTRIES,
    quantity::{Current, Measure, amperes},
    questions::feeds::words,
    read::{Purpose, Reader},
    say_of,
    schema::Part,
    supply::{circuit::CircuitInputs, laid::LaidWire},
};

/// What hangs on 30 or 15 without a relay's contact.
pub(super) fn direct(
    reader: &mut Reader<'_>,
    (source, far_end): (Source, FarEnd),
    is_begun: bool,
    (among, laid): (&Consumers<'_>, LaidWire),
) -> Option<PlannedCircuit> {
    let (fuse, size) = match source {
        Source::Ignition => (switched_feeds::FUSE, switched_feeds::SIZE),
        _ => (switched_feeds::BATTERY_FUSE, switched_feeds::BATTERY_SIZE),
    };
    let rating = reader.band(fuse).value();
    let area = reader.band(size).value().map(|it| it.low);
    let taken = among.rest.taken_from(far_end) + of_keyed(reader, source, among);
    let is_typed = rating.is_some() || area.is_some();
    if !is_typed && (taken.base() <= 0.0 || !is_begun) {
        return None;
    }
    let (wording, inputs) = match source {
        Source::Ignition => (words::ON_IGNITION, inputs(reader, fuse, None, (among, laid))),
        _ => (words::ON_BATTERY, inputs(reader, fuse, None, (among, laid))),
    };
    Some(PlannedCircuit {
        source,
        name: say_of!(wording).into_text(),
        purpose: None,
        alike: 1,
        behind: None,
        carries: Some(taken),
        own: Some(taken),
        pulsed: among.rest.pulsed_from(far_end),
        of_engine: None,
        wants_draws: false,
        is_judged_there: false,
        interlock: None,
        is_unfused: false,
        fused_behind: None,
        found: unsolved(),
        inputs: CircuitInputs { draws: (taken.base() > 0.0).then(|| vec![taken]), area, ..inputs },
    })
}

/// What the coils of relays take that the key switches past the controller; a starter's hangs on 50, not on 15.
fn of_keyed(reader: &Reader<'_>, source: Source, among: &Consumers<'_>) -> Current {
    let relays = 0..reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let is_there = |at: &usize| {
        let purpose = reader.choice_elsewhere(relays::PURPOSE.at(*at));
        source == Source::Ignition
            && purpose != Some(Purpose::Starter)
            && is_switched_by_key(reader.plan(), *at)
    };
    let supply = among.conditions.supply.high.base();
    let one = |at: usize| {
        let ohm = reader
            .band_elsewhere(relays::RESISTANCE.at(at))
            .map_or(USUAL_COIL_OHM, |it| it.low.base());
        let alike = reader.whole_elsewhere(relays::ALIKE.at(at)).unwrap_or(1).max(1);
        supply / ohm.max(1.0) * f64::from(alike)
    };
    amperes(relays.filter(is_there).map(one).sum())
}

/// A plug-in relay's coil: common practice, no source.
const USUAL_COIL_OHM: f64 = 85.0;
