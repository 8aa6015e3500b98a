//! Question 1: which channel fires what.

use super::{Choice, Field, Kind, choice};

const IGNITION: &[Choice] = &[
    choice("sequential", "A coil per cylinder, each fired once a cycle"),
    choice("every-turn", "A coil per cylinder, each fired every turn"),
    choice("paired-single", "A coil per cylinder, companions on one channel"),
    choice("paired-double", "Double-ended coils, one per companion pair"),
    choice("distributor", "One coil and a distributor"),
];

const INJECTION: &[Choice] = &[
    choice("each-once", "Each injector once a cycle, in sequence"),
    choice("companions", "Companion pairs"),
    choice("by-bank", "Bank by bank"),
    choice("together", "All together"),
];

const HABITS: &[Choice] = &[
    choice("by-cylinder", "Channel 3 goes to cylinder 3"),
    choice("by-order", "Channel 3 goes to the third to fire"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("channels.ignition_mode", "How the coils are fired", Kind::Choice(IGNITION)).first(),
    Field::new(
        "channels.ignition_count",
        "Ignition channels the controller has",
        Kind::Whole(0, 32),
    ),
    Field::new(
        "channels.ignition_habit",
        "Numbering of the ignition channels",
        Kind::Choice(HABITS),
    )
    .assumed("by-order", "common practice, no source"),
    Field::new("channels.coils_wired.#", "Ignition channel reaches cylinder", Kind::Row)
        .hint("as found at the car; 1 6 for a pair, 1L or 1T on a rotary; none")
        .measure("Injectors unplugged, no fuel vapour: fire one channel at a time and note which cylinder's coil answers. Of a distributor: follow the lead from each tower, in the direction of the rotor."),
    Field::new("channels.injection_mode", "How the injectors are fired", Kind::Choice(INJECTION)),
    Field::new(
        "channels.injection_count",
        "Injection channels the controller has",
        Kind::Whole(0, 32),
    ),
    Field::new(
        "channels.injection_habit",
        "Numbering of the injection channels",
        Kind::Choice(HABITS),
    )
    .assumed("by-order", "common practice, no source"),
    Field::new("channels.injectors_wired.#", "Injection channel reaches cylinder", Kind::Row)
        .hint("as found at the car; none where nothing clicks")
        .measure("No pressure in the rail, coils unplugged: fire one channel at a time and note which injector clicks."),
    Field::new("channels.second_mode", "How the second set is fired", Kind::Choice(INJECTION)),
    Field::new(
        "channels.second_count",
        "Injection channels there are for the second set",
        Kind::Whole(0, 32),
    ),
    Field::new("channels.second_habit", "Numbering of the second set’s channels", Kind::Choice(HABITS))
        .assumed("by-order", "common practice, no source"),
    Field::new("channels.second_wired.#", "Channel of the second set reaches cylinder", Kind::Row)
        .hint("as found at the car; none where nothing clicks")
        .measure("No pressure in the rail, coils unplugged: fire one channel at a time and note which injector clicks."),
    Field::new("channels.coils_done", "Done of the ignition’s cure", Kind::Text),
    Field::new("channels.injectors_done", "Done of the injection’s cure", Kind::Text),
    Field::new("channels.second_done", "Done of the second set’s cure", Kind::Text),
];
