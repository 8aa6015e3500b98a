//! How the wires are laid.

use crate::{
    quantity::Temperature,
    schema::{Part, Whole, choice, choices, fields, quantity, whole},
    supply::laid::Insulation,
};

choices! {
    Insulation {
        A = "a", "85 °C (class A)";
        B = "b", "100 or 105 °C (class B, usual PVC)";
        C = "c", "125 °C (class C, crosslinked)";
        D = "d", "150 °C (class D)";
    }
}

fields! {
    of Part::Wiring;
    /// Temperature class of the insulation: `a`, `b`, `c` or `d`.
    INSULATION: Insulation = choice("insulation", "Insulation of the wires, rated for")
        .assumed("b", "common automotive PVC, thin-wall: common practice, no source")
        .measure("Printed on the wire or its reel.");
    /// The hottest air that the loom lies in.
    AMBIENT: Temperature = quantity("ambient", "Hottest air around the wires", "°C", -20.0, 140.0)
        .assumed("20 °C", "free air, as in the tables of wires: hotter is worse")
        .measure("Thermocouple in the harness after a hot stop.");
    /// How many wires of a bundle carry their current at once.
    BUNDLED: Whole = whole("bundled", "Feeds loaded at once in one bundle", 1, 20)
        .assumed("1", "a feed that lies alone, or among signals")
        .hint("signals and pulsed wires don't count");
}
