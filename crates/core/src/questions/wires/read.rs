//! What is typed of the harness, and of the way of each wire.

use super::words;
use crate::{
    car::relays::is_switched_by_key,
    channels::words_of,
    engine::Engine,
    fields::{
        controller::{self, ControllerFeed},
        grounds,
        harness::{self, ConnectorFit},
        injectors, loads, relays,
    },
    finding::{Finding, Severity},
    loom::{Duty, Lengths, colour},
    plan::MOST_ENTRIES,
    quantity::{Area, Band, Current, Length, Value, metres},
    questions::firing::read::ChannelsOf,
    read::{LoadPlace, PlannedRest, Purpose, Reader, problem::shortened},
    say,
    schema::{Key, Part, Text},
};

/// The ways of the wires of one kind of channel: entry 1 is channel 1.
pub(crate) type Ways = Vec<Option<Length>>;

/// The harness as it is typed.
#[derive(Clone, Debug)]
pub(crate) struct HarnessEntries {
    pub(crate) lengths: Lengths,
    /// What a pin carries, and the sizes that it takes.
    pub(crate) pin_current: Option<Current>,
    pub(crate) pin_wire: Option<Band<Area>>,
    /// The colours of those that are cut from a reel.
    pub(crate) colours: [(Duty, String); 3],
    /// The names of the wires that are done.
    pub(crate) done: Vec<String>,
    pub(crate) coil_ends: Option<ConnectorFit>,
    pub(crate) injector_ends: Option<ConnectorFit>,
    pub(crate) coils: Ways,
    /// Of both sets.
    pub(crate) injectors: [Ways; 2],
    /// The sizes of their wires, where they were typed.
    pub(crate) injector_sizes: [Option<Area>; 2],
    /// The branches of their feeds, and the grounds of coils.
    pub(crate) coil_feed: Option<Length>,
    pub(crate) coil_ground: Option<Length>,
    pub(crate) injector_feed: Option<Length>,
    /// Of each relay: what of its cable is before its contact.
    pub(crate) to_contacts: Ways,
    /// The ground wire of what each feeds.
    pub(crate) ground_wires: Ways,
    /// The battery's minus cable.
    pub(crate) minus: Option<Length>,
    pub(crate) crank: Option<Length>,
    pub(crate) cam: Option<Length>,
    pub(crate) controller_feed: Option<ControllerFeed>,
    pub(crate) grounds: GroundsTyped,
    /// Of each load, in the order of the plan's.
    pub(crate) loads: Vec<LoadWays>,
    /// The relays that the key switches.
    pub(crate) keyed: Vec<KeyedRelay>,
}

/// The controller's ground wires, as they are typed with the grounds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct GroundsTyped {
    pub(crate) count: u32,
    pub(crate) size: Option<Area>,
    pub(crate) length: Option<Length>,
}

/// The wires of a load, or of a relay's coil.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LoadWays {
    pub(crate) to_output: Option<Length>,
    pub(crate) to_other_end: Option<Length>,
    /// The size of the wire that feeds it, where it has one of its own.
    pub(crate) size: Option<Area>,
    /// The fuse of its own, where that wire branches off.
    pub(crate) fuse: Option<Current>,
}

/// A relay whose coil the key switches, past the controller.
#[derive(Clone, Copy, Debug)]
pub(crate) struct KeyedRelay {
    pub(crate) at: usize,
    pub(crate) is_of_starter: bool,
    pub(crate) ways: LoadWays,
}

/// The fields of the colours, each with what is proposed.
const COLOURS: [(Duty, Key<Text>, &str); 3] = [
    (Duty::Permanent, harness::PERMANENT, "RD"),
    (Duty::Switched, harness::SWITCHED, "OG"),
    (Duty::Ground, harness::GROUND, "BK"),
];

/// Reads it; what can't be read is told where it is asked for.
pub(crate) fn harness(
    reader: &mut Reader<'_>,
    engine: Option<&Engine>,
    channels: &ChannelsOf,
    outputs: &PlannedRest,
) -> HarnessEntries {
    let lengths = Lengths {
        bought: way(reader, harness::LENGTH),
        spare: way(reader, harness::SPARE).unwrap_or_else(|| metres(0.1)),
    };
    reader.stand(harness::DONE.place());
    let done = words_of(reader.text(harness::DONE)).into_iter().map(str::to_owned).collect();
    let coils = channels.ignition_slots(engine).len();
    let count = reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let relays = || 0..count;
    let [first, second] = [&channels.injection, &channels.second].map(|it| it.slots(engine).len());
    HarnessEntries {
        lengths,
        pin_current: reader.band(harness::PIN_CURRENT).value().map(|it| it.low),
        pin_wire: reader.band(harness::PIN_WIRE).value(),
        colours: COLOURS.map(|(duty, key, usual)| (duty, colour(reader, key, usual))),
        done,
        coil_ends: reader.choice(harness::COIL_ENDS).value(),
        injector_ends: reader.choice(harness::INJECTOR_ENDS).value(),
        coils: ways(reader, harness::COILS, coils),
        injectors: [ways(reader, harness::INJECTORS, first), ways(reader, harness::SECOND, second)],
        injector_sizes: [Part::Injectors, Part::SecondInjectors]
            .map(|part| typed_size(reader, injectors::WIRE_SIZE.of(part))),
        coil_feed: way(reader, harness::COIL_FEED),
        coil_ground: way(reader, harness::COIL_GROUND),
        injector_feed: way(reader, harness::INJECTOR_FEED),
        to_contacts: relays().map(|at| to_contact(reader, at)).collect(),
        ground_wires: relays().map(|at| way(reader, relays::GROUND_LENGTH.at(at))).collect(),
        minus: way(reader, grounds::MINUS_LENGTH),
        crank: way(reader, harness::CRANK),
        cam: way(reader, harness::CAM),
        controller_feed: reader.choice_elsewhere(controller::FEED),
        grounds: GroundsTyped {
            count: reader.whole_elsewhere(grounds::WIRES).unwrap_or(0),
            size: typed_size(reader, grounds::WIRE_SIZE),
            length: reader.band_elsewhere(grounds::WIRE_LENGTH).map(|it| it.nominal),
        },
        loads: outputs.loads.iter().map(|it| of_load(reader, it.place)).collect(),
        keyed: keyed(reader),
    }
}

fn keyed(reader: &mut Reader<'_>) -> Vec<KeyedRelay> {
    let relays = 0..reader.plan().count(Part::Relays).min(MOST_ENTRIES);
    let is_keyed = |at: &usize| is_switched_by_key(reader.plan(), *at);
    let keyed: Vec<usize> = relays.filter(is_keyed).collect();
    let of = |at| {
        let place = LoadPlace { part: Part::Relays, number: at };
        let purpose = reader.choice_elsewhere(relays::PURPOSE.at(at));
        let is_of_starter = purpose == Some(Purpose::Starter);
        KeyedRelay { at, is_of_starter, ways: of_load(reader, place) }
    };
    keyed.into_iter().map(of).collect()
}

fn of_load(reader: &mut Reader<'_>, place: LoadPlace) -> LoadWays {
    LoadWays {
        to_output: way(reader, place.key(loads::LENGTH)),
        to_other_end: way(reader, place.key(loads::OTHER_LENGTH)),
        size: (place.part == Part::Loads)
            .then(|| typed_size(reader, loads::WIRE_SIZE.at(place.number)))
            .flatten(),
        fuse: (place.part == Part::Loads)
            .then(|| reader.band_elsewhere(loads::FUSE.at(place.number)).map(|it| it.nominal))
            .flatten(),
    }
}

/// The way before a relay's contact is part of its cable.
fn to_contact(reader: &mut Reader<'_>, at: usize) -> Option<Length> {
    let key = relays::TO_CONTACT.at(at);
    let part = way(reader, key)?;
    let whole = reader.band_elsewhere(relays::LEAD_LENGTH.at(at)).map(|it| it.high);
    let Some(whole) = whole.filter(|whole| *whole < part) else { return Some(part) };
    let message = say!(words::BEYOND_CABLE, part = part, whole = whole);
    reader.unusable(Finding::new(Severity::Fault, key, message));
    None
}

fn typed_size(reader: &Reader<'_>, key: Key<Area>) -> Option<Area> {
    reader.band_elsewhere(key).filter(|_| reader.is_typed(key)).map(|it| it.low)
}

fn way(reader: &mut Reader<'_>, key: Key<Length>) -> Option<Length> {
    reader.band(key).value().map(|it| it.nominal)
}

/// A row for each channel of the plan, typed or still blank.
fn ways(reader: &mut Reader<'_>, list: Key<Length>, channels: usize) -> Ways {
    (0..channels).map(|at| way(reader, list.in_cell(at))).collect()
}

/// The letters of a colour that is typed, or what is proposed.
fn colour(reader: &mut Reader<'_>, key: Key<Text>, usual: &str) -> String {
    let typed = reader.text(key);
    if typed.is_empty() {
        reader.missing(key);
        return usual.to_owned();
    }
    if let Some(letters) = colour::read(typed) {
        reader.given(key, Value::text(letters.clone()));
        return letters;
    }
    let message = say!(words::NO_COLOUR, typed = shortened(typed));
    reader.unusable(Finding::new(Severity::Fault, key, message));
    usual.to_owned()
}
