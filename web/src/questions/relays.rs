//! One relay, as each question asks for it: when it is switched, how its coil rests, what its contact bears.

use super::wires::is_way;

use quietpin_core::{
    car,
    fields::relays,
    plan::Plan,
    schema::{Part, Place},
};

/// Asked with the speed at which it is switched.
const SWITCHED: [Place; 10] = [
    relays::NAME.place(),
    relays::PURPOSE.place(),
    relays::SWITCHED_BY.place(),
    relays::RELAY_ON_AT.place(),
    relays::RELAY_OFF_BELOW.place(),
    relays::PRIME.place(),
    relays::CUT.place(),
    relays::PULL_IN.place(),
    relays::PULL_IN_TIME.place(),
    relays::DROP_OUT_TIME.place(),
];

/// The same for the relay of the coils: what it feeds is known.
const OF_COILS: [Place; 5] = [
    relays::RELAY_ON_AT.place(),
    relays::RELAY_OFF_BELOW.place(),
    relays::PULL_IN.place(),
    relays::PULL_IN_TIME.place(),
    relays::DROP_OUT_TIME.place(),
];

/// Asked with the injectors that it feeds.
const OF_INJECTORS: [Place; 2] = [relays::FUSE.place(), relays::RATING.place()];

/// Asked with the coils that it feeds.
const CONTACT: [Place; 5] = [
    relays::ALIKE.place(),
    relays::RATING.place(),
    relays::FUSE.place(),
    relays::LEAD_LENGTH.place(),
    relays::LEAD_SIZE.place(),
];

fn of_record(fields: &[Place], at: usize) -> Vec<Place> {
    fields.iter().map(|place| place.at(at)).collect()
}

/// When it is switched.
pub(super) fn switched(at: usize) -> Vec<Place> {
    of_record(&SWITCHED, at)
}

/// When the coils' relay is switched, and, once there is one, whether it feeds the injectors too.
pub(super) fn of_coils(plan: &Plan) -> Vec<Place> {
    let at = car::relays::of_coils(plan);
    let mut fields = of_record(&OF_COILS, at);
    if at < plan.count(Part::Relays) {
        fields.push(relays::PURPOSE.at(at).into());
    }
    fields
}

/// What the contact of the coils' relay bears, and what lies before and behind it.
pub(super) fn contact_of_coils(plan: &Plan) -> Vec<Place> {
    of_record(&CONTACT, car::relays::of_coils(plan))
}

/// The same of a relay that feeds injectors.
pub(super) fn contact_of_injectors(at: usize) -> Vec<Place> {
    of_record(&OF_INJECTORS, at)
}

/// What its contact feeds, and through what: the fields that are asked here, and those that are asked with the coils or injectors.
pub(super) fn fed(plan: &Plan, at: usize, has_coils: bool) -> (Vec<Place>, Vec<Place>) {
    let elsewhere: &[Place] = if has_coils && at == car::relays::of_coils(plan) {
        &CONTACT
    } else if car::relays::feeding(plan, relays::Purpose::Injectors) == Some(at) {
        &OF_INJECTORS
    } else {
        &[]
    };
    let all = [
        relays::DRAWS.place(),
        relays::FUSE.place(),
        relays::LEAD_SIZE.place(),
        relays::LEAD_LENGTH.place(),
        relays::RATING.place(),
        relays::INRUSH.place(),
        relays::BEHIND.place(),
        relays::GROUND.place(),
        relays::INTERLOCK.place(),
    ];
    let (there, here): (Vec<Place>, Vec<Place>) =
        all.into_iter().partition(|it| elsewhere.contains(it));
    (of_record(&here, at), of_record(&there, at))
}

/// How its coil is connected: as a load is.
pub(super) fn coil(at: usize) -> Vec<Place> {
    let is_of_coil = |it: &Place| {
        let is_load = Part::Loads.places().any(|load| load.field().name == it.field().name);
        // a load's fuse is in the load's own feed, a relay's before its contact
        let is_asked_elsewhere = SWITCHED.contains(it) || OF_INJECTORS.contains(it);
        is_load && !is_asked_elsewhere && !is_way(it)
    };
    Part::Relays.places().filter(is_of_coil).map(|it| it.at(at)).collect()
}
