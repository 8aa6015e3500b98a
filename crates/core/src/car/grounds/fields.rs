//! The grounds.

use crate::{
    quantity::{Area, Length, Resistance},
    schema::{Part, Whole, choice, choices, fields, quantity, whole},
};

/// Where the battery's minus cable ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MinusTo {
    /// At the engine.
    Engine,
    /// At the body.
    Body,
}

choices! {
    MinusTo {
        Engine = "engine", "The engine";
        Body = "body", "The body";
    }
}

/// Whether engine and body are joined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StrapFitted {
    /// By a strap.
    Fitted,
    /// By nothing that is meant to.
    Nothing,
}

choices! {
    StrapFitted {
        Fitted = "fitted", "Fitted";
        Nothing = "none", "None";
    }
}

/// Where the sensors are grounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorGround {
    /// At a pin of the controller that is there for them.
    Pin,
    /// At a bolt that others share.
    Bolt,
    /// At the block.
    Engine,
}

choices! {
    SensorGround {
        Pin = "pin", "The controller's sensor ground";
        Bolt = "bolt", "A bolt that others share";
        Engine = "engine", "The engine block";
    }
}

fields! {
    of Part::Grounds;
    /// Where the battery's minus cable ends: `engine` or `body`.
    MINUS_TO: MinusTo = choice("minus_to", "Battery's minus cable goes to");
    /// Length of that cable.
    MINUS_LENGTH: Length = quantity("minus_length", "Length of that cable", "m", 0.0, 20.0)
        .rare();
    /// Whether a strap joins engine and body: `fitted` or `none`.
    STRAP: StrapFitted = choice("strap", "Strap between engine and body");
    /// Size of that strap.
    STRAP_SIZE: Area = quantity("strap_size", "Size of the strap", "mm2", 0.5, 120.0)
        .only_if("strap", &["fitted"]);
    /// Length of that strap.
    STRAP_LENGTH: Length = quantity("strap_length", "Length of the strap", "m", 0.0, 20.0)
        .only_if("strap", &["fitted"]);
    /// How many wires the controller is grounded with.
    WIRES: Whole = whole("wires", "Controller's ground wires", 1, 16);
    /// Size of each of them.
    WIRE_SIZE: Area = quantity("wire_size", "Size of each ground wire", "mm2", 0.05, 120.0);
    /// Length of each of them.
    WIRE_LENGTH: Length = quantity("wire_length", "Length of each ground wire", "m", 0.0, 20.0);
    /// Where the sensors are grounded: `pin`, `bolt` or `engine`.
    SENSORS: SensorGround = choice("sensors", "Sensors are grounded at")
        .measure("Battery disconnected, sensors unplugged: a few tenths of an ohm between a sensor's ground wire and the block, with the controller unplugged too, means a bolt or the block.");
    /// Between that bolt and the battery's minus.
    BOLT: Resistance = quantity("bolt", "Resistance from that bolt to minus", "mohm", 0.01, 1000.0)
        .assumed("1 to 20 mohm", "a clean bolt to a painted or rusty one: common practice, no source")
        .measure("Pump or fan running: millivolts from the bolt to the battery's minus post, divided by the amperes that flow.")
        .only_if("sensors", &["bolt"]);
}
