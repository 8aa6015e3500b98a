//! The wires of the car, from all that is connected, and how long each has to be.

use super::{rows, words};
use crate::{
    channels::words_of,
    engine::Engine,
    fields::harness,
    finding::{Finding, Severity},
    loom::{Duty, Lengths, LoomWire, colour},
    quantity::{Area, Band, Current, Length, metres},
    questions::{feeds::read::PlannedFeeds, firing::read::ChannelsOf},
    read::{PlannedRest, Reader, Triggered},
    say,
    schema::{Key, Text},
};

/// What a wire is listed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum WireGroup {
    Coils,
    Injectors,
    SecondInjectors,
    Loads,
    Sensors,
    Feeds,
}

/// A wire of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedWire {
    pub(crate) group: WireGroup,
    pub(crate) wire: LoomWire,
    /// Where its length is typed, where it is.
    pub(crate) key: Option<Key<Length>>,
    /// What flows through it for long, where it goes to a pin of the controller.
    pub(crate) pin: Option<Current>,
}

/// The harness of the plan.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PlannedHarness {
    pub(crate) wires: Vec<PlannedWire>,
    pub(crate) lengths: Lengths,
    /// Whether the harness, or the way of a wire, was measured.
    pub(crate) is_begun: bool,
    /// What a pin carries, and the sizes that it takes.
    pub(crate) pin_current: Option<Current>,
    pub(crate) pin_wire: Option<Band<Area>>,
    /// The colours of those that are cut from a reel.
    pub(crate) colours: [(Duty, String); 3],
    /// The names of the wires that are done.
    pub(crate) done: Vec<String>,
    /// Fuses and contacts, as typed or as they suit.
    pub(crate) fuses: Vec<Current>,
    pub(crate) contacts: Vec<Current>,
}

/// What the wires follow from.
#[derive(Clone, Copy)]
pub(crate) struct Connected<'a> {
    pub(crate) engine: Option<&'a Engine>,
    pub(crate) channels: &'a ChannelsOf,
    pub(crate) outputs: &'a PlannedRest,
    pub(crate) trigger: Option<&'a Triggered>,
    pub(crate) feeds: &'a PlannedFeeds,
}

/// The fields of the colours, each with what is proposed.
const COLOURS: [(Duty, Key<Text>, &str); 3] = [
    (Duty::Permanent, harness::PERMANENT, "RD"),
    (Duty::Switched, harness::SWITCHED, "OG"),
    (Duty::Ground, harness::GROUND, "BK"),
];

/// Reads it; what can't be read is told where it is asked for.
pub(crate) fn harness(reader: &mut Reader<'_>, connected: Connected<'_>) -> PlannedHarness {
    let bought = reader.band(harness::LENGTH).value().map(|it| it.nominal);
    let spare = reader.band(harness::SPARE).value().map_or(metres(0.1), |it| it.nominal);
    let pin_current = reader.band(harness::PIN_CURRENT).value().map(|it| it.low);
    let pin_wire = reader.band(harness::PIN_WIRE).value();
    let colours = COLOURS.map(|(duty, key, usual)| (duty, colour(reader, key, usual)));
    reader.stand(harness::DONE.place());
    let done = words_of(reader.text(harness::DONE)).into_iter().map(str::to_owned).collect();
    let wires = rows::wires(reader, connected);
    // what a feed needs is asked with its fuse
    let is_own = |it: &&PlannedWire| it.group != WireGroup::Feeds;
    let is_measured = wires.iter().filter(is_own).any(|it| it.wire.length.is_some());
    let mut fuses = Vec::new();
    let mut contacts = Vec::new();
    for circuit in &connected.feeds.circuits {
        let fitted = circuit.found.fitted.map(|it| it.fuse);
        fuses.extend(circuit.inputs.fuse.filter(|_| !circuit.is_unfused).or(fitted));
        contacts.extend(circuit.inputs.contact);
    }
    PlannedHarness {
        wires,
        lengths: Lengths { bought, spare },
        is_begun: bought.is_some() || is_measured,
        pin_current,
        pin_wire,
        colours,
        done,
        fuses,
        contacts,
    }
}

/// The letters of a colour that is typed, or what is proposed.
fn colour(reader: &mut Reader<'_>, key: Key<Text>, usual: &str) -> String {
    let typed = reader.text(key);
    if typed.is_empty() {
        reader.missing(key);
        return usual.to_owned();
    }
    if let Some(letters) = colour::read(typed) {
        reader.given(key, crate::quantity::Value::text(letters.clone()));
        return letters;
    }
    let shown = crate::read::problem::shortened(typed);
    let message = say!(words::NO_COLOUR, typed = shown);
    reader.unusable(Finding::new(Severity::Fault, key, message));
    usual.to_owned()
}

impl PlannedHarness {
    /// The colour of a wire: its letters where it is cut from a reel.
    pub(crate) fn colour(&self, wire: &LoomWire) -> Option<&str> {
        let of_duty = self.colours.iter().find(|(duty, _)| *duty == wire.duty);
        of_duty
            .filter(|_| wire.stock == crate::loom::Stock::Reel)
            .map(|(_, letters)| letters.as_str())
    }

    /// The wires alone.
    pub(crate) fn bare(&self) -> Vec<LoomWire> {
        self.wires.iter().map(|it| it.wire.clone()).collect()
    }
}
