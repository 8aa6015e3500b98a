//! The wires of the car, one by one.

use super::rows;
use crate::{
    car::Car,
    loom::{Duty, LoomWire, Stock},
    quantity::{Current, Length},
    questions::feeds::{judge, read::PlannedCircuit},
    schema::Key,
    tables::fuses,
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
    /// Fuses and relays.
    pub(crate) bought: BoughtRatings,
}

/// All of it, from what is connected.
pub(crate) fn planned<'a>(car: &'a Car<'_>) -> PlannedHarness<'a> {
    let wires = rows::wires(car);
    // what a feed needs is asked with its fuse
    let is_own = |it: &&PlannedWire| it.group != WireGroup::Feeds;
    let is_measured = wires.iter().filter(is_own).any(|it| it.wire.length.is_some());
    let mut bought = BoughtRatings::default();
    for circuit in &car.feeds.circuits {
        for _ in 0..circuit.alike {
            bought.count(circuit);
        }
    }
    PlannedHarness {
        wires,
        typed: &car.harness,
        is_begun: car.harness.lengths.bought.is_some() || is_measured,
        bought,
    }
}

/// Fuses and contacts, as typed or as they suit.
#[derive(Debug, Default)]
pub(crate) struct BoughtRatings {
    /// The rating of each and what it is for: not of those that are bought with the cure of what is wrong with them.
    pub(crate) fuses: Vec<(Current, String)>,
    pub(crate) contacts: Vec<(Current, String)>,
    /// What they are plugged into.
    pub(crate) holders: usize,
    pub(crate) sockets: usize,
}

impl BoughtRatings {
    fn count(&mut self, circuit: &PlannedCircuit) {
        let named = |rating| (rating, circuit.name.clone());
        let answer = &circuit.found.answer;
        let fitted = circuit.found.fitted.map(|it| it.fuse);
        let fuse = circuit.inputs.fuse.filter(|_| !circuit.is_unfused).or(fitted);
        // a branch behind another's fuse gets none, but as the cure
        let fuse = fuse.filter(|_| !circuit.is_unfused);
        let each = circuit.carries.map(|it| it / f64::from(circuit.alike.max(1)));
        let is_small = |fuse: &Current| {
            let carries = each.map(|it| it / fuses::LASTING);
            [answer.least, carries].into_iter().flatten().any(|least| *fuse < least * SLACK)
        };
        self.holders += usize::from(fuse.is_some());
        self.sockets += usize::from(circuit.inputs.contact.is_some());
        let replaced = judge::replaced(circuit);
        let stays = |path: String| !replaced.contains(&path);
        // that of coils or injectors is judged with them
        let is_right = |fuse: &Current| !circuit.is_judged_there || !is_small(fuse);
        // one that is still to be chosen is bought where it is asked for
        let typed = fuse.filter(|_| circuit.inputs.fuse.is_some() && stays(circuit.fuse().into()));
        self.fuses.extend(typed.filter(is_right).map(named));
        let is_over = |rating: &Current| each.is_some_and(|it| it > *rating);
        let stays = circuit.rating().is_some_and(|it| stays(it.into()));
        let contact = circuit.inputs.contact.filter(|it| stays && !is_over(it));
        self.contacts.extend(contact.map(named));
    }
}

/// To a hair: a rating that was worked out is as large as that.
const SLACK: f64 = 1.0 - 1e-9;

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
