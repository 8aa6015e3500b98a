//! Today, at the car.

use crate::{
    quantity::{Length, Pressure, Temperature},
    schema::{Part, fields, quantity},
};

fields! {
    of Part::Today;
    /// How warm the engine and the air are, before it was run.
    TEMPERATURE: Temperature = quantity("temperature", "Temperature now", "°C", -40.0, 60.0)
        .assumed("10 to 30 °C", "a workshop: common practice, no source")
        .hint("of an engine that stood overnight, and of the air")
        .measure("A room thermometer beside the engine, which was not run since yesterday.");
    /// How high above the sea the car stands.
    ALTITUDE: Length = quantity("altitude", "Altitude", "m", -450.0, 6000.0)
        .assumed("0 to 600 m", "where most people live: common practice, no source")
        .hint("above the sea, from a map");
    /// The air's pressure there, where it was measured.
    AIR: Pressure = quantity("air", "Air pressure now", "kPa", 45.0, 108.0)
        .hint("as measured here, not reduced to sea level; blank: from the altitude")
        .rare();
}
