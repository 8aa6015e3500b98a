//! Which relay is which.

use crate::{
    fields::relays::{self, Purpose, SwitchedBy},
    output::FarEnd,
    plan::Plan,
    quantity::{Current, Measure},
    read::Reader,
    schema::{Choice, Key, Part, Place},
};

/// The fields of the speeds: where one is typed, the relay is switched at a speed.
const SPEEDS: [Place; 2] = [relays::RELAY_ON_AT.place(), relays::RELAY_OFF_BELOW.place()];

/// The fields of the coil: where one is typed, it is asked how it rests.
const COIL: [Place; 3] =
    [relays::OUTPUT.place(), relays::FAR_END.place(), relays::RESISTANCE.place()];

/// The first relay that feeds this.
pub fn feeding(plan: &Plan, purpose: Purpose) -> Option<usize> {
    let mut relays = 0..plan.count(Part::Relays);
    let is_it = |it: Purpose| it.feeds(purpose);
    relays.find(|at| chosen(plan, relays::PURPOSE.at(*at)).is_some_and(is_it))
}

/// The relay of the coils; while there is none, the record that the next one would have.
pub fn of_coils(plan: &Plan) -> usize {
    feeding(plan, Purpose::Coils).unwrap_or_else(|| plan.count(Part::Relays))
}

/// Whether the controller switches it at an engine speed, as far as that is said.
pub(crate) fn is_switched_at_speed(plan: &Plan, at: usize) -> bool {
    match chosen(plan, relays::SWITCHED_BY.at(at)) {
        Some(SwitchedBy::Speed) => true,
        Some(SwitchedBy::Key | SwitchedBy::Otherwise) => false,
        None => {
            let purpose = chosen(plan, relays::PURPOSE.at(at));
            let is_usual = purpose.is_some_and(|it| it.feeds(Purpose::Coils) || is_at_start(it));
            is_usual || SPEEDS.iter().any(|place| is_typed(plan, place.at(at)))
        }
    }
}

/// Switched at a speed as a rule: common practice, no source.
fn is_at_start(purpose: Purpose) -> bool {
    matches!(purpose, Purpose::Pump | Purpose::AlternatorField)
}

/// The relays that are switched at a speed, but for that of the coils.
pub(crate) fn further(plan: &Plan) -> Vec<usize> {
    let coils = of_coils(plan);
    let relays = 0..plan.count(Part::Relays);
    relays.filter(|at| *at != coils && is_switched_at_speed(plan, *at)).collect()
}

/// The pumps that the key keeps running: no relay of theirs follows the engine, neither their own nor one that feeds its coil or its
/// contact.
pub(crate) fn pumps_on_key(plan: &Plan) -> Vec<usize> {
    let relays = 0..plan.count(Part::Relays);
    let is_it = |at: &usize| {
        chosen(plan, relays::PURPOSE.at(*at)) == Some(Purpose::Pump)
            && chosen(plan, relays::SWITCHED_BY.at(*at)) == Some(SwitchedBy::Key)
            && !follows_engine(plan, *at)
    };
    relays.filter(is_it).collect()
}

/// Whether a relay, or one that it is fed through, is switched at a speed.
fn follows_engine(plan: &Plan, at: usize) -> bool {
    let count = plan.count(Part::Relays);
    let named = |place: Place, at: usize| {
        let name = plan.text(place.at(at)).trim();
        let is_it =
            |it: &usize| plan.text(relays::NAME.place().at(*it)).trim().eq_ignore_ascii_case(name);
        (0..count).find(|it| !name.is_empty() && is_it(it))
    };
    let mut fed_through = vec![at];
    let mut next = 0;
    while let Some(at) = fed_through.get(next).copied() {
        if is_switched_at_speed(plan, at) {
            return true;
        }
        let by_coil = chosen(plan, relays::FAR_END.at(at)) == Some(FarEnd::Relay);
        let coil = named(relays::FAR_RELAY.place(), at).filter(|_| by_coil);
        for it in [coil, named(relays::BEHIND.place(), at)].into_iter().flatten() {
            if !fed_through.contains(&it) {
                fed_through.push(it);
            }
        }
        next += 1;
    }
    false
}

/// The relays of which it is said where their coil is connected; not those that the key switches, past the controller.
pub fn with_coil(plan: &Plan) -> Vec<usize> {
    let relays = 0..plan.count(Part::Relays);
    let is_said = |at: &usize| COIL.iter().any(|place| is_typed(plan, place.at(*at)));
    relays.filter(|at| is_said(at) && !is_switched_by_key(plan, *at)).collect()
}

/// Whether the key switches its coil, or a switch: an output that is named all the same counts more.
pub fn is_switched_by_key(plan: &Plan, at: usize) -> bool {
    let by = chosen(plan, relays::SWITCHED_BY.at(at));
    by == Some(SwitchedBy::Key) && !is_typed(plan, relays::OUTPUT.place().at(at))
}

/// What is said to draw behind a relay's contact, beside what stands elsewhere in the plan.
pub(crate) fn drawn_beside(reader: &Reader<'_>, at: usize) -> Current {
    let draws = reader.band_elsewhere(relays::DRAWS.at(at));
    draws.map_or_else(|| Current::from_base(0.0), |it| it.high)
}

fn is_typed(plan: &Plan, place: Place) -> bool {
    !plan.text(place).trim().is_empty()
}

/// What is chosen in a field; what is wrong with it is said where it is read. A page asks this before it has what reads.
fn chosen<C: Choice>(plan: &Plan, key: Key<C>) -> Option<C> {
    let typed = plan.text(key).trim();
    let at = C::TABLE
        .iter()
        .position(|it| [it.code, it.label].iter().any(|it| it.eq_ignore_ascii_case(typed)))?;
    C::ALL.get(at).copied()
}
