//! A set of injectors, and the outputs that carry them.

use crate::{
    fields::loads::Across,
    injector::DriverKind,
    quantity::{
        Area, Current, Energy, Inductance, Length, Power, Ratio, Resistance, Time, Voltage,
    },
    schema::{Part, Whole, choice, choices, fields, quantity, whole},
};

choices! {
    DriverKind {
        PlainSwitch = "plain-switch", "Plain switch to ground (saturated)";
        CurrentControlled = "current-controlled", "Peak-and-hold (controls the current)";
    }
}

fields! {
    of Part::Injectors;
    /// Resistance of one at 20 °C.
    RESISTANCE: Resistance = quantity("resistance", "Resistance of one injector at 20 °C", "ohm", 0.2, 100.0)
        .measure("Meter across the unplugged injector, then the probes touched together: the first reading less the second.")
        .first();
    /// How many share one output.
    PER_OUTPUT: Whole = whole("per_output", "Injectors on one output", 1, 16)
        .assumed("1", "one output each")
        .first();
    /// Continuous current limit of one output; its peak, where it controls the current.
    OUTPUT_LIMIT: Current = quantity("output_limit", "Current limit of one output", "A", 0.05, 50.0)
        .hint("continuous, from the pin table; the peak, if peak-and-hold")
        .first();
    /// `plain-switch` or `current-controlled`.
    OUTPUT_KIND: DriverKind = choice("output_kind", "Injector driver")
        .assumed("plain-switch", "the usual injector output");
    /// Current to which a current-controlled output falls after the peak.
    HOLD_CURRENT: Current = quantity("hold_current", "Hold current", "A", 0.01, 50.0)
        .hint("from the driver's data or its setting")
        .only_if("output_kind", &["current-controlled"]);
    /// Longest time that a current-controlled output stays at its peak.
    PEAK_TIME: Time = quantity("peak_time", "Longest time at peak", "ms", 0.05, 100.0)
        .hint("blank if it waits for the peak however long")
        .only_if("output_kind", &["current-controlled"]);
    /// How many there are.
    COUNT: Whole = whole("count", "Number of injectors", 1, 32);
    /// Length of wire from the relay to the injector and on to the controller.
    WIRE_LENGTH: Length = quantity("wire_length", "Wire of one injector, feed and return together", "m", 0.0, 50.0)
        .hint("relay to injector, injector to controller; each has its own")
        .assumed("2 to 6 m", "a universal harness is long: common practice, no source");
    /// Size of that wire.
    WIRE_SIZE: Area = quantity("wire_size", "Size of that wire", "mm2", 0.05, 120.0)
        .hint("copper; 1 mm² or 18 AWG")
        .assumed("1 mm2", "common practice, no source");
    /// The fuse of the injectors alone, behind their relay.
    FUSE: Current = quantity("fuse", "Fuse of the injectors alone", "A", 0.5, 100.0)
        .hint("behind their relay; blank: none, or not known");
    /// Resistance of all contacts in that wire.
    CONTACT_RESISTANCE: Resistance = quantity("contact_resistance", "Resistance of all contacts in that wire", "mohm", 0.0, 5000.0)
        .hint("connectors, relay, fuse")
        .assumed("0 to 50 mohm", "about six contacts of up to 8 mΩ: common practice, no source")
        .rare();
    /// A resistor in line with each.
    RESISTOR: Resistance = quantity("resistor", "Resistor in series with each injector", "ohm", 0.0, 100.0)
        .hint("blank: none")
        .rare();
    /// What that resistor bears.
    RESISTOR_RATING: Power = quantity("resistor_rating", "Rating of that resistor", "W", 0.1, 1000.0)
        .hint("on metal, as its data ask")
        .rare();
    /// What lies across each.
    ACROSS: Across = choice("across", "Across each injector")
        .hint("a diode from an old harness; blank: nothing")
        .measure("Injector unplugged: the meter on its diode range across the harness connector, both ways round.")
        .rare();
    /// Current at which one opens.
    OPENING_CURRENT: Current = quantity("opening_current", "Current that opens one", "A", 0.02, 10.0)
        .hint("at full fuel pressure")
        .measure("On the bench, emptied of fuel, in fresh air, a second at a time: 12 V through a lamp, then smaller lamps: the lowest current at which it clicks. Full pressure needs more; the maker's figure is better.")
        .rare();
    /// Inductance of one.
    INDUCTANCE: Inductance = quantity("inductance", "Inductance of one", "mH", 0.05, 100.0)
        .measure("A meter with an inductance range, injector unplugged; a plain multimeter can't.")
        .rare();
    /// Tolerance of that resistance, where none stands with it.
    TOLERANCE: Ratio = quantity("tolerance", "Tolerance of that resistance", "%", 0.0, 30.0)
        .assumed("5%", "common practice, no source; a hand meter reads low ohms no better")
        .rare();
    /// On-resistance of one output.
    OUTPUT_RESISTANCE: Resistance = quantity("output_resistance", "On-resistance of the output", "ohm", 0.0, 5.0)
        .assumed("0 to 0.2 ohm", "common practice, no source")
        .rare();
    /// Voltage to which an output's clamp lets its pin rise.
    CLAMP: Voltage = quantity("clamp", "Clamp voltage of the output", "V", 10.0, 400.0)
        .hint("pin to ground, from its data")
        .assumed("35 to 60 V", "a usual injector driver: common practice, no source")
        .rare();
    /// Energy that the clamp bears at each turn-off.
    CLAMP_ENERGY: Energy = quantity("clamp_energy", "Clamp energy limit at each turn-off", "mJ", 0.1, 5000.0)
        .hint("the repetitive figure, hot, from its data")
        .rare();
    /// Heat that one output bears.
    OUTPUT_HEAT: Power = quantity("output_heat", "Heat limit of one output", "W", 0.05, 100.0)
        .hint("with the controller at its hottest, from its data")
        .rare();
}
