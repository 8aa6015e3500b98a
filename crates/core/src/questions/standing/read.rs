//! What the battery holds, and what draws from it beside the outputs.

use crate::{
    fields,
    fields::controller::{AfterKeyOff, ControllerFeed},
    quantity::{Band, Charge, Current, amperes},
    read::{Entry, PlannedRest, Reader},
    schema::Place,
};

/// What the fields say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct StandingCar {
    /// What the battery gives in 20 hours.
    pub(crate) capacity: Entry<Band<Charge>>,
    /// What draws and stands nowhere else in the plan.
    pub(crate) other: Entry<Band<Current>>,
    /// What the controller itself draws.
    pub(crate) controller: Entry<Band<Current>>,
}

/// Reads them; each, whatever stands in the others. Nothing where none of it was typed and no output stands in the plan:
/// then it was not asked about, and nothing is taken.
pub(crate) fn standing(reader: &mut Reader<'_>, rest: &PlannedRest) -> Option<StandingCar> {
    let places: [Place; 3] = [
        fields::battery::CAPACITY.into(),
        fields::battery::OTHER_DRAW.into(),
        fields::controller::KEY_OFF_DRAW.into(),
    ];
    let is_asked = places.iter().any(|place| reader.is_typed(*place));
    if !is_asked && rest.outputs.is_empty() && rest.loads.is_empty() {
        for place in places {
            reader.missing(place);
        }
        return None;
    }
    let controller = controller(reader);
    Some(StandingCar {
        capacity: reader.band(fields::battery::CAPACITY),
        other: reader.band(fields::battery::OTHER_DRAW),
        controller,
    })
}

/// What the controller draws: nothing of its own behind a feed that the key cuts.
fn controller(reader: &mut Reader<'_>) -> Entry<Band<Current>> {
    let key = fields::controller::KEY_OFF_DRAW;
    let entry = reader.band(key);
    let feed = reader.choice_elsewhere(fields::controller::FEED);
    let after = reader.choice_elsewhere(fields::controller::AFTER_KEY_OFF);
    let is_cut = feed == Some(ControllerFeed::Ignition)
        || feed.is_none() && after == Some(AfterKeyOff::Dies);
    if entry.is_assumed() && is_cut {
        let none = amperes(0.0);
        return reader.or_assume(key, Entry::Missing, Band::exact(none), none, CUT_BASIS);
    }
    entry
}

const CUT_BASIS: &str = "the key cuts its feed";
