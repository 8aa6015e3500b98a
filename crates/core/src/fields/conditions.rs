//! The conditions between which every answer must hold.

use super::{Field, quantity};
use crate::quantity::Dimension::{Resistance, Temperature, Voltage};

pub(super) const FIELDS: &[Field] = &[
    Field::new("conditions.cranking", "Battery while cranking cold", quantity(Voltage, "V", 4.0, 36.0))
        .assumed("8 V", "common practice, no source")
        .measure("Meter across the battery posts while the starter turns the cold engine, fuel and spark off; take the lowest reading.")
        .rare(),
    Field::new("conditions.resting", "Battery at rest", quantity(Voltage, "V", 4.0, 36.0))
        .assumed("12.6 V", "common practice, no source: a charged lead battery at rest")
        .measure("Meter across the battery posts after an hour without load.")
        .rare(),
    Field::new("conditions.charging", "Battery while charging", quantity(Voltage, "V", 4.0, 36.0))
        .assumed("14.8 V", "common practice, no source")
        .measure("Meter across the battery posts at 2000 rpm with a cold, charged battery.")
        .rare(),
    Field::new("conditions.cold", "Coldest start", quantity(Temperature, "°C", -50.0, 60.0))
        .assumed("-20 °C", "common practice, no source")
        .rare(),
    Field::new("conditions.hot", "Hottest part of the engine bay", quantity(Temperature, "°C", 0.0, 180.0))
        .assumed("100 °C", "common practice, no source")
        .measure("Thermocouple on the part itself after a hot stop: it is hottest some ten minutes later.")
        .rare(),
    Field::new("conditions.dead_supply", "Controller's supply to ground, key off", quantity(Resistance, "ohm", 0.5, 1e6))
        .hint("what else hangs on that feed")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with relays and injectors on it to a bare controller")
        .measure("Battery disconnected, controller plugged in: meter from its supply wire to ground, then with the probes exchanged; take the lower reading.")
        .rare(),
    Field::new("conditions.dead_feed", "Switched feed (15 or 87) to ground, switched off", quantity(Resistance, "ohm", 0.5, 1e6))
        .hint("what else hangs on it")
        .assumed("5 to 1000 ohm", "common practice, no source: from a feed with coils and injectors on it to a single relay")
        .measure("Battery disconnected, this load unplugged: meter from its feed wire to ground.")
        .rare(),
];
