//! Question 2: the injectors and their outputs.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Current, Inductance, Length, Resistance, Share, WireSize};

const OUTPUT_KINDS: &[Choice] = &[
    choice("plain-switch", "A plain switch to ground"),
    choice("current-controlled", "Current-controlled (peak, then hold)"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("injectors.resistance", "Resistance of one injector at 20 °C", quantity(Resistance, "ohm", 0.2, 100.0))
        .measure("Meter across the unplugged injector, then the probes touched together: the first reading less the second.")
        .first(),
    Field::new("injectors.per_output", "Injectors on one output", Kind::Whole(1, 16)).assumed("1", "one output each").first(),
    Field::new("injectors.output_limit", "Current limit of one output", quantity(Current, "A", 0.05, 50.0))
        .hint("continuous, from the pin table; the peak, if current-controlled")
        .first(),
    Field::new("injectors.output_kind", "The output is", Kind::Choice(OUTPUT_KINDS))
        .assumed("plain-switch", "the usual injector output"),
    Field::new("injectors.hold_current", "Its hold current", quantity(Current, "A", 0.01, 50.0))
        .hint("from the driver's data or its setting")
        .only_if("injectors.output_kind", &["current-controlled"]),
    Field::new("injectors.count", "Number of injectors", Kind::Whole(1, 32)),
    Field::new("injectors.wire_length", "Wire of one injector, feed and return together", quantity(Length, "m", 0.0, 50.0))
        .hint("relay to injector, injector to controller; each has its own")
        .assumed("2 to 6 m", "a universal harness is long: common practice, no source"),
    Field::new("injectors.wire_size", "Size of that wire", quantity(WireSize, "mm2", 0.05, 120.0))
        .hint("copper; 1 mm2 or 18 AWG")
        .assumed("1 mm2", "common practice, no source"),
    Field::new("injectors.opening_current", "Current that opens one", quantity(Current, "A", 0.02, 10.0))
        .hint("at full fuel pressure")
        .measure("Dry, on the bench, 12 V through a lamp, then through ever smaller lamps: the least current at which it still clicks. \
            Full pressure asks for more; the maker's figure is better.")
        .rare(),
    Field::new("injectors.inductance", "Inductance of one", quantity(Inductance, "mH", 0.05, 100.0))
        .measure("A meter with an inductance range, injector unplugged; a plain multimeter can't.")
        .rare(),
    Field::new("injectors.tolerance", "Tolerance of that resistance", quantity(Share, "%", 0.0, 30.0))
        .assumed("5 %", "common practice, no source; a hand meter reads low ohms no better")
        .rare(),
    Field::new("injectors.output_resistance", "On-resistance of the output", quantity(Resistance, "ohm", 0.0, 5.0))
        .assumed("0 to 0.2 ohm", "common practice, no source")
        .rare(),
];
