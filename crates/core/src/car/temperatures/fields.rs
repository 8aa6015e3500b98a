//! The temperatures.

use crate::{
    quantity::Temperature,
    schema::{Part, fields, quantity},
};

fields! {
    of Part::Temperatures;
    /// Coldest start.
    COLD: Temperature = quantity("cold", "Coldest start", "°C", -50.0, 60.0)
        .assumed("-20 °C", "common practice, no source")
        .rare();
    /// Hottest part of the engine bay where loads sit.
    HOT: Temperature = quantity("hot", "Hottest part of the engine bay", "°C", 0.0, 180.0)
        .assumed("100 °C", "common practice, no source")
        .measure("Thermocouple on the part itself after a hot stop: it is hottest some ten minutes later.")
        .rare();
}
