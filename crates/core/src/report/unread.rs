//! What is taken where a field can't be read is said by each answer that rests on it, and such an answer is no yes.

use std::rc::Rc;

use super::{Answer, Section, Tone};
use crate::{
    read::{FieldStates, State, usual_shown},
    say,
    schema::{Kind, Part, Place},
    words::field,
};

/// The answers that rest on a field: how their question and what they are about begin.
#[expect(
    clippy::match_same_arms,
    clippy::too_many_lines,
    reason = "a line for each part, in their order"
)]
pub(super) fn resting_on(place: Place) -> &'static [&'static str] {
    match (place.part(), place.field().name) {
        (Part::Engine, "kind") => &["cranking/", "injectors/", "trigger/", ALL_WIRES],
        (Part::Engine, "highest_speed") => {
            &["injectors/injectors", "injectors/second", "injectors/fuel", "trigger/"]
        }
        (Part::Engine, "cylinders") => &["firing/", "trigger/"],
        (Part::Engine, "spacing") => &["firing/", "trigger/", ALL_WIRES],
        (Part::Engine, "numbering" | "order_numbering") => {
            &["firing/", "injectors/second", "injectors/injector_", ALL_WIRES]
        }
        (Part::Engine, _) => &["firing/"],
        (Part::Controller, "supply_off") => &["outputs/", "pins"],
        (Part::Controller, "after_key_off") => &["outputs/", "pins", "standing/"],
        (Part::Controller, "feed") => &["cranking/", "standing/", WIRES, HARNESS],
        (Part::Controller, "outputs" | "order" | "spacing" | "angles") => &["firing/"],
        (Part::Controller, "dwell") => &["coils/coils", "cranking/cranking", "firing/strip"],
        (Part::Controller, "cranking_dwell") => &["coils/coils", "cranking/cranking"],
        (Part::Controller, "offset") => &["cranking/", "trigger/"],
        (Part::Controller, "locked_advance") => &["firing/light", "trigger/"],
        (Part::Controller, "least_supply") => &["cranking/cranking"],
        (Part::Battery, "kill_switch") => &["feeds/feeds.kill"],
        (Part::Controller, "highest_supply" | "reverse") => &["feeds/feeds.survives"],
        (Part::Battery, "capacity" | "other_draw") | (Part::Controller, _) => &["standing/"],
        (Part::Battery, "lead_length" | "lead_size" | "starter") => {
            &["feeds/feeds.cable", "feeds/feeds.strap"]
        }
        (Part::Battery, "alternator" | "alternator_idle") => {
            &["feeds/feeds.alternator", "feeds/feeds.kill"]
        }
        (Part::Grounds, "minus_length") => &["feeds/feeds.cable"],
        (Part::Grounds, "minus_to") => &["feeds/feeds.strap", "feeds/feeds.cable"],
        (Part::Grounds, "strap" | "strap_size" | "strap_length") => {
            &["feeds/feeds.strap", "feeds/feeds.cable", WIRES, HARNESS]
        }
        (Part::Grounds, "wire_size") => &["feeds/feeds.ground", "feeds/feeds.sensors"],
        (Part::Grounds, "wires" | "wire_length") => {
            &["feeds/feeds.ground", "feeds/feeds.sensors", WIRES, HARNESS]
        }
        (Part::Grounds, "sensors") => &["feeds/feeds.sensors", "sensors/sensors"],
        (Part::Grounds, _) => &["feeds/feeds.sensors"],
        (Part::SwitchedFeeds, "fuse" | "size" | "battery_fuse" | "battery_size") => {
            &["feeds/feeds.", WIRES, HARNESS]
        }
        (Part::Harness, _) => &["wires/"],
        (Part::Loads | Part::Relays, "length" | "other_length") => &["wires/"],
        (Part::Loads | Part::Relays, "wired") => &["outputs/", "pins"],
        (Part::Relays, "to_contact") => &[WIRES, HARNESS],
        (Part::Relays, "ground_length") => &["feeds/feeds.relay", WIRES, HARNESS],
        (Part::Wiring, "bundled") => &["feeds/feeds.", "injectors/injector_feed"],
        (Part::Wiring, "ambient") => &["feeds/feeds.", "coils/coils.feed"],
        (Part::Wiring, _) => &["feeds/feeds."],
        (Part::Channels, "injection_mode") => {
            &["firing/", "injectors/", INJECTORS_FEED, GROUND, ALL_WIRES]
        }
        (Part::Channels, "second_mode") => {
            &["firing/", "injectors/second", "injectors/injector_", SECOND_FEED, GROUND, ALL_WIRES]
        }
        (Part::Channels, "ignition_mode" | "ignition_habit" | "injection_habit") => {
            &["firing/", ALL_WIRES]
        }
        (Part::Channels, _) => &["firing/"],
        (Part::Light, _) => &["firing/light", "trigger/controller.offset"],
        (Part::Strip, _) => &["firing/strip"],
        (Part::Injectors, "count") => {
            &["injectors/injector", "injectors/fuel", INJECTORS_FEED, GROUND]
        }
        (Part::Injectors, "fuse") => &[INJECTORS_FEED, WIRES, HARNESS],
        (
            Part::Injectors,
            "resistance" | "tolerance" | "resistor" | "output_limit" | "output_resistance"
            | "wire_length" | "wire_size" | "contact_resistance",
        ) => &["injectors/injector", INJECTORS_FEED, GROUND],
        (Part::Injectors, _) => &["injectors/injector"],
        (Part::SecondInjectors, "count") => {
            &["injectors/second", "injectors/fuel", SECOND_FEED, GROUND]
        }
        (Part::SecondInjectors, "fuse") => &[SECOND_FEED, WIRES, HARNESS],
        (
            Part::SecondInjectors,
            "resistance" | "tolerance" | "resistor" | "output_limit" | "output_resistance"
            | "wire_length" | "wire_size" | "contact_resistance",
        ) => &["injectors/second", "injectors/injector_", SECOND_FEED, GROUND],
        (Part::SecondInjectors, _) => &["injectors/second", "injectors/injector_"],
        (Part::Fuel, "duty_limit") => {
            &["injectors/fuel", "injectors/injector_", INJECTORS_FEED, SECOND_FEED, GROUND]
        }
        (Part::Fuel, _) => &["injectors/fuel"],
        (Part::Outputs, "stage" | "on_resistance") => &["cranking/"],
        // an answer about an output or a load that can't be read waits
        (Part::Loads | Part::Relays, "far_end") => &[
            "feeds/feeds.relay",
            "feeds/feeds.ignition",
            "feeds/feeds.battery",
            WIRES,
            "wires/wires.loads",
            HARNESS,
        ],
        (Part::Loads, "kind" | "resistance" | "frequency" | "duty") => LOADS_FEEDS,
        (Part::Loads, "wire_size" | "fuse") => &["feeds/feeds.load", "wires/wires.loads"],
        (Part::Outputs | Part::Loads, _) => &[],
        (Part::SwitchedFeeds, "off_resistance") => &["outputs/", "pins"],
        (Part::SwitchedFeeds, _) => &["cranking/"],
        (Part::Relays, "alike") => &["coils/", "feeds/feeds.", WIRES, HARNESS],
        (Part::Relays, "lead_length") => &["coils/coils.feed", "feeds/feeds.", WIRES, HARNESS],
        (Part::Relays, "fuse" | "rating" | "lead_size") => &["coils/coils.feed", "feeds/feeds."],
        (Part::Relays, "draws") => &["coils/coils.feed", "feeds/feeds.", "injectors/injector_feed"],
        (Part::Relays, "interlock") => &["feeds/feeds.relay"],
        (Part::Relays, "ground") => &["feeds/feeds.sensors"],
        (Part::Relays, "inrush" | "behind") => &["feeds/feeds."],
        (Part::Relays, "purpose") => {
            &["cranking/", "coils/", "injectors/injector_", "feeds/feeds.", WIRES, HARNESS]
        }
        (Part::Relays, "switched_by" | "relay_on_at") => {
            &["coils/coils.feed", "cranking/", ALL_WIRES]
        }
        (
            Part::Relays,
            "relay_off_below" | "pull_in" | "drop_out" | "pull_in_time" | "drop_out_time",
        ) => &["cranking/"],
        (Part::Relays, "resistance" | "frequency") => LOADS_FEEDS,
        (Part::Relays, _) => &[],
        (Part::Cranking, "speed" | "cold_speed" | "weak_speed" | "dip") => {
            &["cranking/", "trigger/trigger", "trigger/crank"]
        }
        (Part::Cranking, _) => &["cranking/"],
        (Part::Coils, "resistance" | "inductance" | "current" | "limit" | "drop") => {
            &["coils/", "cranking/cranking"]
        }
        (Part::Coils, _) => &["coils/"],
        (Part::Wheels, _) => &["cranking/", "trigger/"],
        (Part::Trigger | Part::TriggerInput, _) => &["trigger/"],
        (Part::CrankSensor, "kind") => &["trigger/crank", "wires/wires.sensors", HARNESS],
        (Part::CrankSensor, _) => &["trigger/crank"],
        (Part::CamSensor, "kind") => &["trigger/cam", "wires/wires.sensors", HARNESS],
        (Part::CamSensor, _) => &["trigger/cam"],
        (Part::Bus, "bit_rate") => &["bus/bus.termination", "bus/bus.wire", "bus/bus.load"],
        (Part::Bus, "terminators" | "terminated_at" | "reading" | "size") => {
            &["bus/bus.termination"]
        }
        (Part::Bus, "length") => &["bus/bus.termination", "bus/bus.wire"],
        (Part::Bus, "high" | "low") => &["bus/bus.levels"],
        (Part::Bus, _) => &["bus/bus.wire"],
        (Part::Frames, "name") => &[],
        (Part::Frames, _) => &["bus/bus.load"],
        (Part::Sensors, _) => &["pins/pins.sensors"],
        (Part::Inputs, _) => &["pins/pins.sensors", "sensors/sensors"],
        (Part::SensorSupplies | Part::Today, _) => &["sensors/"],
        (Part::Battery, "cold_cranking" | "hot_cranking" | "resting" | "charging") => &[
            "coils/",
            "cranking/",
            "feeds/",
            "injectors/injector",
            "injectors/second",
            "outputs/",
            "pins",
        ],
        (Part::Battery, _) => {
            &["coils/", "injectors/injector", "injectors/second", "outputs/", "pins"]
        }
        (Part::Temperatures, "cold") => &[
            "coils/",
            "cranking/cranking",
            "injectors/injector",
            "injectors/second",
            "outputs/",
            "sensors/sensors",
            "trigger/crank",
        ],
        (Part::Temperatures, _) => &[
            "coils/",
            "cranking/cranking",
            "injectors/injector",
            "injectors/second",
            "outputs/",
            "trigger/crank",
        ],
    }
}

/// What feeds loads.
const LOADS_FEEDS: &[&str] =
    &["feeds/feeds.relay", "feeds/feeds.ignition", "feeds/feeds.battery", WIRES];

/// Whether all wires reach.
const HARNESS: &str = "wires/harness";

/// What rests on each of them.
const ALL_WIRES: &str = "wires/";

/// The wires of the feeds.
const WIRES: &str = "wires/wires.feeds";

/// What comes back through the controller.
const GROUND: &str = "feeds/feeds.ground";

/// The injectors behind a fuse of their own.
const INJECTORS_FEED: &str = "feeds/feeds.injectors";
const SECOND_FEED: &str = "feeds/feeds.second_injectors";

/// Says it in each answer that is given all the same.
pub(super) fn tell(fields: &FieldStates, sections: &mut [Section]) {
    let unread = fields.iter().filter(|(_, field)| field.state == State::Unreadable);
    let places = unread.filter_map(|(path, _)| Place::at_path(path));
    // what stands in a row is told by the question of it
    let unread: Vec<_> = places.filter(|it| !matches!(it.field().kind, Kind::Row)).collect();
    if unread.is_empty() {
        return;
    }
    for section in sections {
        for answer in &mut section.answers {
            let about = [section.id, "/", answer.subject.as_str()].concat();
            let rests = |place: &&Place| resting_on(**place).iter().any(|it| about.starts_with(it));
            let list: Vec<_> = unread.iter().filter(rests).map(|place| taken(*place)).collect();
            if !list.is_empty() && answer.verdict.tone != Tone::Open {
                told(Rc::make_mut(answer), &list);
            }
        }
    }
}

fn taken(place: Place) -> String {
    let field = place.field();
    let usual = usual_shown(field);
    [field.label, ": ", usual.as_ref().map_or("left out", |it| it.shown.as_str())].concat()
}

fn told(answer: &mut Answer, list: &[String]) {
    answer.to_do.insert(0, say!(field::UNREAD, list = list.join("; ")));
    if answer.verdict.tone == Tone::Good {
        answer.verdict.tone = Tone::Doubtful;
    }
}
