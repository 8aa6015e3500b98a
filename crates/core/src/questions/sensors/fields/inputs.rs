//! The controller's inputs for sensors.

use crate::{
    quantity::{Resistance, Voltage},
    schema::{Part, Text, Whole, choice, choices, fields, quantity, text, whole},
};

/// What an input can read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InputTakes {
    /// A voltage, in steps.
    Analogue,
    /// High or low, and how often it changes.
    Digital,
    /// The noise of a knock sensor.
    Knock,
}

choices! {
    InputTakes {
        Analogue = "analogue", "A voltage (analogue)";
        Digital = "digital", "On or off, and frequency (digital)";
        Knock = "knock", "A knock sensor";
    }
}

/// Whether an input is pulled up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InputPull {
    /// It is.
    Up,
    /// Nothing pulls it.
    Nothing,
}

choices! {
    InputPull {
        Up = "up", "A pull-up, to its sensor supply";
        Nothing = "none", "None";
    }
}

fields! {
    of Part::Inputs;
    /// Its name on the pin table.
    NAME: Text = text("name", "Name of the input")
        .hint("as on the pin table; “A1 to A8” describes eight that are alike")
        .first();
    /// What it reads: `analogue`, `digital` or `knock`.
    TAKES: InputTakes = choice("takes", "It reads").first();
    /// Whether it is pulled up: `up` or `none`.
    PULL: InputPull = choice("pull", "Its pull-up")
        .measure("Sensor unplugged, key on: about 5 V at the pin is a pull-up. It floats or reads 0 V: none.");
    /// The pull-up.
    PULL_UP: Resistance = quantity("pull_up", "Its pull-up resistor", "ohm", 100.0, 1e6)
        .hint("from the pin table")
        .measure("Sensor unplugged, key on: volts at the pin, then with 1 kΩ from the pin to sensor ground. Pull-up in kΩ = first / second - 1.")
        .only_if("pull", &["up"]);
    /// What the pull-up goes to, and the highest voltage that it reads.
    RANGE: Voltage = quantity("range", "It reads up to", "V", 1.0, 30.0)
        .assumed("4.9 to 5.1 V", "common practice, no source")
        .rare();
    /// How many bits it reads with.
    BITS: Whole = whole("bits", "Its bits", 8, 24)
        .hint("10 bits are 1024 steps; from its data")
        .rare();
}
