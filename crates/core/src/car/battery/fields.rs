//! The battery.

use crate::{
    quantity::{Area, Charge, Current, Length, Voltage},
    schema::{Part, choice, choices, fields, quantity},
};

/// What the kill switch cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KillSwitch {
    /// There is none.
    Absent,
    /// The battery alone.
    Battery,
    /// The alternator too: its field, or the ignition feed.
    Both,
}

choices! {
    KillSwitch {
        Absent = "none", "There is none";
        Battery = "battery", "The battery";
        Both = "both", "The battery, and the alternator's field or 15";
    }
}

fields! {
    of Part::Battery;
    /// Battery voltage while the starter turns a cold engine.
    COLD_CRANKING: Voltage = quantity("cold_cranking", "Battery while cranking cold", "V", 4.0, 36.0)
        .assumed("8 V", "common practice, no source")
        .measure("Meter across the battery posts while the starter turns the cold engine, fuel and spark off; take the lowest reading.")
        .rare();
    /// Battery voltage while the starter turns a hot engine.
    HOT_CRANKING: Voltage = quantity("hot_cranking", "Battery while cranking hot", "V", 4.0, 36.0)
        .hint("blank: 1.5 V more than cold")
        .measure("The same with the engine at its hottest: right after a hot stop.")
        .rare();
    /// Battery voltage at rest.
    RESTING: Voltage = quantity("resting", "Battery at rest", "V", 4.0, 36.0)
        .assumed("12.6 V", "common practice, no source: a charged lead battery at rest")
        .measure("Meter across the battery posts after an hour without load.")
        .rare();
    /// Highest charging voltage.
    CHARGING: Voltage = quantity("charging", "Battery while charging", "V", 4.0, 36.0)
        .assumed("14.8 V", "common practice, no source")
        .measure("Meter across the battery posts at 2000 rpm with a cold, charged battery.")
        .rare();
    /// What it gives in 20 hours.
    CAPACITY: Charge = quantity("capacity", "Battery capacity", "Ah", 1.0, 500.0)
        .measure("Printed on the battery: the 20-hour capacity, in Ah. The amperes beside it are the cold-cranking current: not this.")
        .first();
    /// What draws with the key off and stands nowhere else in the plan.
    OTHER_DRAW: Current = quantity("other_draw", "Other draw with the key off", "mA", 0.0, 5000.0)
        .hint("clock, alarm, radio, a leak of the alternator")
        .assumed("0 mA", "nothing outside this plan is counted until it is measured")
        .measure("Key off, everything in this plan unplugged, the rest of the car asleep (up to an hour): ammeter with a fuse in the battery's ground cable. Never crank or switch anything on with the meter in line.");
    /// Length of the cable from the battery's plus to the starter, one way.
    LEAD_LENGTH: Length = quantity("lead_length", "Battery cable to the starter, one way", "m", 0.0, 20.0)
        .hint("with a battery in the rear: all of it");
    /// Size of that cable; the ground return is taken for as good.
    LEAD_SIZE: Area = quantity("lead_size", "Size of the battery cable", "mm2", 4.0, 120.0)
        .hint("copper; 35 mm² or 2 AWG");
    /// What the starter takes while it turns the engine.
    STARTER: Current = quantity("starter", "Starter draws while cranking", "A", 10.0, 2000.0)
        .measure("Clamp meter for direct current around the battery cable while the starter turns the cold engine, fuel and spark off.");
    /// What the alternator gives at idle.
    ALTERNATOR_IDLE: Current = quantity("alternator_idle", "Alternator at idle", "A", 1.0, 500.0)
        .hint("from its curve, hot; often a third of its rating");
    /// What it gives at speed.
    ALTERNATOR: Current = quantity("alternator", "Alternator rating", "A", 1.0, 500.0)
        .hint("on its label; at speed");
    /// What the kill switch cuts: `none`, `battery` or `both`.
    KILL_SWITCH: KillSwitch = choice("kill_switch", "The kill switch cuts")
        .measure("Engine idling, nobody near: throw it. An engine that runs on is fed by its alternator: stop it with the key at once.");
}
