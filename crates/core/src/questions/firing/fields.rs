//! Which channel fires what.

pub mod light;
pub mod strip;

use crate::{
    channels::Habit,
    channels::Ignition,
    channels::Injection,
    schema::{NumberRow, Part, Text, Whole, choice, choices, fields, row, text, whole},
};

choices! {
    Ignition {
        Sequential = "sequential", "Coil per cylinder, fired once a cycle (sequential)";
        EveryTurn = "every-turn", "Coil per cylinder, fired every turn (wasted spark)";
        PairedSingle = "paired-single", "Coil per cylinder, companions on one channel (wasted spark)";
        PairedDouble = "paired-double", "Double-ended coils, one per companion pair (wasted spark)";
        Distributor = "distributor", "One coil and a distributor";
    }
}

choices! {
    Injection {
        EachOnce = "each-once", "Sequential: each injector once a cycle";
        Companions = "companions", "Companion pairs";
        ByBank = "by-bank", "Bank by bank";
        Together = "together", "All together";
    }
}

choices! {
    Habit {
        ByCylinder = "by-cylinder", "Channel 3 goes to cylinder 3";
        ByOrder = "by-order", "Channel 3 goes to the third to fire";
    }
}

fields! {
    of Part::Channels;
    /// How the coils are fired.
    IGNITION_MODE: Ignition = choice("ignition_mode", "How the coils are fired")
        .first();
    /// Ignition channels the controller has.
    IGNITION_COUNT: Whole = whole("ignition_count", "Ignition channels the controller has", 0, 32);
    /// `by-cylinder` or `by-order`.
    IGNITION_HABIT: Habit = choice("ignition_habit", "Numbering of the ignition channels")
        .assumed("by-order", "common practice, no source");
    /// Cylinders that each ignition channel was found to reach: entry 1 is channel 1.
    COILS_WIRED: NumberRow = row("coils_wired", "Ignition channel reaches cylinder")
        .each()
        .hint("as found at the car; 1 6 for a pair, 1L or 1T on a rotary; none")
        .measure("Injectors unplugged, no fuel vapour: fire one channel at a time and note which cylinder's coil sparks. Distributor: follow the lead from each tower, in rotor direction.");
    /// How the injectors are fired.
    INJECTION_MODE: Injection = choice("injection_mode", "How the injectors are fired");
    /// Injection channels the controller has.
    INJECTION_COUNT: Whole = whole("injection_count", "Injection channels the controller has", 0, 32);
    /// `by-cylinder` or `by-order`.
    INJECTION_HABIT: Habit = choice("injection_habit", "Numbering of the injection channels")
        .assumed("by-order", "common practice, no source");
    /// Cylinders that each injection channel was found to reach.
    INJECTORS_WIRED: NumberRow = row("injectors_wired", "Injection channel reaches cylinder")
        .each()
        .hint("as found at the car; none where nothing clicks")
        .measure("Fuel pressure let off, coils unplugged: fire one channel at a time and note which injector clicks.");
    /// How the second set of injectors is fired.
    SECOND_MODE: Injection = choice("second_mode", "How the second set is fired");
    /// Injection channels that the controller has for it.
    SECOND_COUNT: Whole = whole("second_count", "Injection channels there are for the second set", 0, 32);
    /// `by-cylinder` or `by-order`.
    SECOND_HABIT: Habit = choice("second_habit", "Numbering of the second set's channels")
        .assumed("by-order", "common practice, no source");
    /// Cylinders that each channel of the second set was found to reach.
    SECOND_WIRED: NumberRow = row("second_wired", "Channel of the second set reaches cylinder")
        .each()
        .hint("as found at the car; none where nothing clicks")
        .measure("Fuel pressure let off, coils unplugged: fire one channel at a time and note which injector clicks.");
    /// What is done of the cure of the ignition: the names of its steps.
    COILS_DONE: Text = text("coils_done", "Ignition fix: steps done");
    /// The same of the injection.
    INJECTORS_DONE: Text = text("injectors_done", "Injection fix: steps done");
    /// The same of the second set.
    SECOND_DONE: Text = text("second_done", "Second set's fix: steps done");
}
