//! The wires of the car, one by one.

use super::rows;
use crate::{
    car::Car,
    loom::{Duty, LoomWire, Stock},
    quantity::{Current, Length},
    schema::Key,
};

use super::read::HarnessEntries;

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
#[derive(Debug)]
pub(crate) struct PlannedHarness<'a> {
    pub(crate) wires: Vec<PlannedWire>,
    pub(crate) typed: &'a HarnessEntries,
    /// Whether the harness, or the way of a wire, was measured.
    pub(crate) is_begun: bool,
    /// Fuses and contacts, as typed or as they suit.
    pub(crate) fuses: Vec<(Current, String)>,
    pub(crate) contacts: Vec<(Current, String)>,
}

/// All of it, from what is connected.
pub(crate) fn planned<'a>(car: &'a Car<'_>) -> PlannedHarness<'a> {
    let wires = rows::wires(car);
    // what a feed needs is asked with its fuse
    let is_own = |it: &&PlannedWire| it.group != WireGroup::Feeds;
    let is_measured = wires.iter().filter(is_own).any(|it| it.wire.length.is_some());
    let mut fuses = Vec::new();
    let mut contacts = Vec::new();
    for circuit in &car.feeds.circuits {
        // what is wrong with one is told with the one that is bought instead
        if circuit.found.answer.exposed.is_some() {
            continue;
        }
        let named = |rating| (rating, circuit.name.clone());
        let fitted = circuit.found.fitted.map(|it| it.fuse);
        let fuse = circuit.inputs.fuse.filter(|_| !circuit.is_unfused).or(fitted);
        fuses.extend(fuse.map(named));
        contacts.extend(circuit.inputs.contact.map(named));
    }
    PlannedHarness {
        wires,
        typed: &car.harness,
        is_begun: car.harness.lengths.bought.is_some() || is_measured,
        fuses,
        contacts,
    }
}

impl PlannedWire {
    /// Whether its way has still to be measured.
    pub(crate) fn is_unmeasured(&self) -> bool {
        self.key.is_some() && self.wire.length.is_none() && self.wire.together.is_none()
    }
}

impl PlannedHarness<'_> {
    /// The colour of a wire: its letters where it is cut from a reel.
    pub(crate) fn colour(&self, wire: &LoomWire) -> Option<&str> {
        (wire.stock == Stock::Reel).then(|| self.colour_of(wire.duty))
    }

    /// The colour of a duty that is cut from a reel.
    pub(crate) fn colour_of(&self, duty: Duty) -> &str {
        let found = self.typed.colours.iter().find(|(of, _)| *of == duty);
        found.map_or("", |(_, letters)| letters.as_str())
    }

    /// The wires alone.
    pub(crate) fn bare(&self) -> Vec<LoomWire> {
        self.wires.iter().map(|it| it.wire.clone()).collect()
    }
}
