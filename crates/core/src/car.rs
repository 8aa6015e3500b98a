//! The car as a plan describes it: every part is read once, before any question is answered.

pub mod battery;
pub mod conditions;
pub mod controller;
pub mod engine;
pub mod grounds;
pub mod relays;
pub mod switched_feeds;
pub mod temperatures;
pub mod today;
pub mod wheels;
pub mod wiring;

use std::rc::Rc;

use crate::{
    engine::Engine,
    injector::InjectorAnswer,
    plan::{MOST_ENTRIES, Plan},
    quantity::{Band, RotationalSpeed},
    questions::{Memory, bus, feeds, firing, sensors, standing, wires},
    read::{
        self, Coiled, Conditions, FeedParts, Fuelled, Injectors, KeyPump, Known, PlannedRest,
        Reader, SpeedRelay, Triggered, WhichSet,
    },
    schema::{Part, Place},
};

/// What a plan says of the car. Every question is answered from it, and from nothing else.
#[derive(Debug)]
pub(crate) struct Car<'a> {
    plan: &'a Plan,
    /// The engine, where enough of it is known.
    pub(crate) engine: Option<Engine>,
    /// Whether a field of the engine can't be used.
    pub(crate) engine_is_spoiled: bool,
    /// The channels, what they were found to reach, the timing light, one cycle.
    pub(crate) firing: firing::read::FiringEntries,
    /// Both sets of injectors.
    pub(crate) injectors: [Injectors; 2],
    /// What comes of each set; nothing of one of which too little is known.
    pub(crate) injected: [Option<Rc<InjectorAnswer>>; 2],
    /// What they are fed through.
    pub(crate) injector_feed: FeedParts,
    /// The fuel, where anything is said of it.
    pub(crate) fuel: Option<Fuelled>,
    /// Outputs and loads.
    pub(crate) outputs: PlannedRest,
    /// The sensors at crank and cam, where anything is said of them.
    pub(crate) trigger: Option<Triggered>,
    /// The other sensors, where anything is said of them.
    pub(crate) sensing: Option<sensors::read::Sensing>,
    /// The start of the engine, and the coils' relay.
    pub(crate) cranking: Rc<Known>,
    /// Further relays that are switched at a speed.
    pub(crate) relays: Vec<SpeedRelay>,
    /// Pumps that the key keeps running.
    pub(crate) key_pumps: Vec<KeyPump>,
    /// The coils, where anything is said of them.
    pub(crate) coils: Option<Coiled>,
    /// All that is fed, and by what.
    pub(crate) feeds: feeds::read::PlannedFeeds,
    /// What is typed of its wires.
    pub(crate) harness: wires::read::HarnessEntries,
    /// What the battery holds and what draws from it beside the outputs, where anything is said of either.
    pub(crate) standing: Option<standing::read::StandingCar>,
    /// The bus between controllers, where anything is said of it.
    pub(crate) bus: Option<bus::read::PlannedBus>,
}

impl<'a> Car<'a> {
    /// Reads the whole plan; how its fields stand is kept by the reader.
    pub(crate) fn read(reader: &mut Reader<'a>, memory: &mut Memory) -> Self {
        let conditions = read::conditions(reader);
        let engine = read::engine(reader);
        let engine_is_spoiled = reader.has_unusable("engine.");
        let highest_speed = read::highest_speed(reader);
        let known = engine.as_ref();
        let channels = firing::read::channels_of(reader, known);
        let injectors = both_sets(reader, &conditions, (known, highest_speed), &channels);
        let injected = memory.injectors.recall(&injectors);
        let fuel = read::fuel(reader, injectors.each_ref().map(|set| set.count), highest_speed);
        let outputs = read::rest(reader, &conditions, memory.outputs.read_before());
        let injector_feed = read::feed_parts(reader, &outputs);
        let firings = read::cranking::firings(reader, known, &mut memory.cranking.firings);
        let usual_dip = firings.as_ref().map(|it| it.usual_dip);
        let trigger = read::trigger(reader, &conditions, known, usual_dip, highest_speed);
        let sensing = sensors::read::sensing(reader, &conditions);
        let coils = {
            let around = (&conditions, highest_speed, &outputs);
            read::coils(reader, known, around, &mut memory.coils)
        };
        let needed = coils.as_ref().and_then(Coiled::cranking_dwell);
        let cranking =
            Rc::new(read::cranking(reader, &conditions, firings.as_ref(), (&outputs, needed)));
        let relays = read::relays(reader, &outputs);
        let key_pumps = read::key_pumps(reader);
        let dwell = coils.as_ref().and_then(Coiled::dwell);
        let strip = read::strip(reader, highest_speed, dwell);
        let standing = standing::read::standing(reader, &outputs);
        let bus = bus::read::bus(reader);
        let injecting = (&injectors, &injected, injector_feed);
        let among = (&conditions, &outputs, coils.as_ref(), injecting);
        let feeds = feeds::read::feeds(reader, among, &mut memory.feeds);
        let harness = wires::read::harness(reader, known, &channels, &outputs);
        unasked(reader);
        Self {
            plan: reader.plan(),
            firing: firing::read::FiringEntries { channels, strip },
            engine,
            engine_is_spoiled,
            injectors,
            injected,
            injector_feed,
            fuel,
            outputs,
            trigger,
            sensing,
            cranking,
            relays,
            key_pumps,
            coils,
            feeds,
            harness,
            standing,
            bus,
        }
    }

    /// Whether something was typed at a place.
    pub(crate) fn is_typed(&self, place: impl Into<Place>) -> bool {
        !self.text(place).is_empty()
    }

    /// What was typed at a place.
    pub(crate) fn text(&self, place: impl Into<Place>) -> &'a str {
        self.plan.text(place).trim()
    }

    /// Whether something but blanks was typed in a part.
    pub(crate) fn is_begun(&self, part: Part) -> bool {
        self.plan.part(part).iter().any(|(_, text)| !text.trim().is_empty())
    }

    /// Whether something but blanks was typed in the cells of a field.
    pub(crate) fn has_cells(&self, place: impl Into<Place>) -> bool {
        self.plan.cells(place).iter().any(|(_, text)| !text.trim().is_empty())
    }

    /// Whether anything at all stands in a part.
    pub(crate) fn has(&self, part: Part) -> bool {
        !self.plan.is_blank(part)
    }
}

/// Reads both sets of injectors; how many share an output follows from how they are fired.
fn both_sets(
    reader: &mut Reader<'_>,
    conditions: &Conditions,
    (engine, highest_speed): (Option<&Engine>, Option<Band<RotationalSpeed>>),
    channels: &firing::read::ChannelsOf,
) -> [Injectors; 2] {
    [WhichSet::First, WhichSet::Second].map(|set| {
        let fired = match set {
            WhichSet::First => &channels.injection,
            WhichSet::Second => &channels.second,
        };
        let sharing = fired.sharing(engine);
        let around = read::InjectorSurroundings { conditions, engine, highest_speed, sharing };
        read::injectors(reader, &around, set)
    })
}

/// Reads what no question has asked of the parts that several share: what is typed stands, or is told to be unreadable.
fn unasked(reader: &mut Reader<'_>) {
    let plan = reader.plan();
    for part in [Part::Controller, Part::Relays, Part::Wheels] {
        for record in 0..plan.count(part).min(MOST_ENTRIES) {
            for place in part.places() {
                reader.stand(place.at(record));
            }
        }
    }
}
