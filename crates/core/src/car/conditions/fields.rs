//! The conditions between which every answer must hold.

use crate::{
    quantity::{Resistance, Temperature, Voltage},
    schema::{Part, fields, quantity},
};

fields! {
    of Part::Conditions;
    /// Battery voltage while the starter turns a cold engine.
    CRANKING: Voltage = quantity("cranking", "Battery while cranking cold", "V", 4.0, 36.0)
        .assumed("8 V", "common practice, no source")
        .measure("Meter across the battery posts while the starter turns the cold engine, fuel and spark off; take the lowest reading.")
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
    /// Coldest start.
    COLD: Temperature = quantity("cold", "Coldest start", "°C", -50.0, 60.0)
        .assumed("-20 °C", "common practice, no source")
        .rare();
    /// Hottest part of the engine bay where loads sit.
    HOT: Temperature = quantity("hot", "Hottest part of the engine bay", "°C", 0.0, 180.0)
        .assumed("100 °C", "common practice, no source")
        .measure("Thermocouple on the part itself after a hot stop: it is hottest some ten minutes later.")
        .rare();
    /// Resistance to ground of the controller's supply with the key off.
    DEAD_SUPPLY: Resistance = quantity("dead_supply", "Controller's supply to ground, key off", "ohm", 0.5, 1e6)
        .hint("what else hangs on that feed")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with relays and injectors on it to a bare controller")
        .measure("Battery disconnected, controller plugged in: meter from its supply wire to ground, then with the probes exchanged; take the lower reading.")
        .rare();
    /// Resistance to ground of a switched feed (15 or 87) while it is off.
    DEAD_FEED: Resistance = quantity("dead_feed", "Switched feed (15 or 87) to ground, switched off", "ohm", 0.5, 1e6)
        .hint("what else hangs on it")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with coils and injectors on it to a single relay")
        .measure("Battery disconnected, this load unplugged: meter from its feed wire to ground.")
        .rare();
}
