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
        PlainSwitch = "plain-switch", "A plain switch to ground";
        CurrentControlled = "current-controlled", "Current-controlled (peak, then hold)";
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
        .hint("continuous, from the pin table; the peak, if current-controlled")
        .first();
    /// `plain-switch` or `current-controlled`.
    OUTPUT_KIND: DriverKind = choice("output_kind", "The output is")
        .assumed("plain-switch", "the usual injector output");
    /// Current to which a current-controlled output falls after the peak.
    HOLD_CURRENT: Current = quantity("hold_current", "Its hold current", "A", 0.01, 50.0)
        .hint("from the driver's data or its setting")
        .only_if("output_kind", &["current-controlled"]);
    /// Longest time that a current-controlled output stays at its peak.
    PEAK_TIME: Time = quantity("peak_time", "Longest time at its peak", "ms", 0.05, 100.0)
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
        .hint("copper; 1 mm2 or 18 AWG")
        .assumed("1 mm2", "common practice, no source");
    /// Resistance of all contacts in that wire.
    CONTACT_RESISTANCE: Resistance = quantity("contact_resistance", "Contacts in that wire, all together", "mohm", 0.0, 5000.0)
        .hint("connectors, relay, fuse")
        .assumed("0 to 50 mohm", "about six contacts of up to 8 mohm: common practice, no source")
        .rare();
    /// A resistor in line with each.
    RESISTOR: Resistance = quantity("resistor", "Resistor in line with each injector", "ohm", 0.0, 100.0)
        .hint("blank: none")
        .rare();
    /// What that resistor bears.
    RESISTOR_RATING: Power = quantity("resistor_rating", "Rating of that resistor", "W", 0.1, 1000.0)
        .hint("on metal, as its data ask")
        .rare();
    /// What lies across each.
    ACROSS: Across = choice("across", "Across each injector")
        .hint("a diode that came with an old loom; blank: nothing")
        .measure("Injector unplugged from the loom: the meter on its diode range at the two ends of the loom's plug, both ways round.")
        .rare();
    /// Current at which one opens.
    OPENING_CURRENT: Current = quantity("opening_current", "Current that opens one", "A", 0.02, 10.0)
        .hint("at full fuel pressure")
        .measure("On the bench, emptied of fuel, in fresh air, a second at a time: 12 V through a lamp, then smaller lamps: the least current at which it clicks. Full pressure asks for more; the maker's figure is better.")
        .rare();
    /// Inductance of one.
    INDUCTANCE: Inductance = quantity("inductance", "Inductance of one", "mH", 0.05, 100.0)
        .measure("A meter with an inductance range, injector unplugged; a plain multimeter can't.")
        .rare();
    /// Tolerance of that resistance, where none stands with it.
    TOLERANCE: Ratio = quantity("tolerance", "Tolerance of that resistance", "%", 0.0, 30.0)
        .assumed("5 %", "common practice, no source; a hand meter reads low ohms no better")
        .rare();
    /// On-resistance of one output.
    OUTPUT_RESISTANCE: Resistance = quantity("output_resistance", "On-resistance of the output", "ohm", 0.0, 5.0)
        .assumed("0 to 0.2 ohm", "common practice, no source")
        .rare();
    /// Voltage to which an output's clamp lets its pin rise.
    CLAMP: Voltage = quantity("clamp", "Voltage of the output's clamp", "V", 10.0, 400.0)
        .hint("pin to ground, from its data")
        .assumed("35 to 60 V", "a usual injector driver: common practice, no source")
        .rare();
    /// Energy that the clamp bears at each turn-off.
    CLAMP_ENERGY: Energy = quantity("clamp_energy", "Energy its clamp bears at each turn-off", "mJ", 0.1, 5000.0)
        .hint("the repetitive figure, hot, from its data")
        .rare();
    /// Heat that one output bears.
    OUTPUT_HEAT: Power = quantity("output_heat", "Heat that one output bears", "W", 0.05, 100.0)
        .hint("at the box's hottest, from its data")
        .rare();
}
