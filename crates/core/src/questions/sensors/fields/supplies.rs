//! The controller's supplies for sensors.

use crate::{
    quantity::{Current, Voltage},
    schema::{Part, Text, fields, quantity, text},
};

fields! {
    of Part::SensorSupplies;
    /// Its name on the pin table.
    NAME: Text = text("name", "Name of the sensor supply").hint("as on the pin table").first();
    /// Its voltage.
    VOLTS: Voltage = quantity("volts", "Voltage of the sensor supply", "V", 1.0, 30.0)
        .assumed("4.9 to 5.1 V", "common practice, no source")
        .measure("Key on: from its pin to sensor ground.");
    /// What it may give.
    RATING: Current = quantity("rating", "It may give", "mA", 1.0, 5000.0)
        .hint("from the pin table");
    /// What it feeds beside the sensors of this plan.
    OTHERS: Current = quantity("others", "What else it feeds draws", "mA", 0.0, 5000.0)
        .hint("Hall sensors at crank and cam, displays; blank: not counted");
}
