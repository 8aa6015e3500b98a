//! Question 2: the injectors and their outputs.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Current, Inductance, Length, Resistance, WireSize};

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
        .hint("continuous, from the pin table")
        .first(),
    Field::new("injectors.output_kind", "The output is", Kind::Choice(OUTPUT_KINDS))
        .assumed("plain-switch", "the usual injector output"),
    Field::new("injectors.count", "Number of injectors", Kind::Whole(1, 32)),
    Field::new("injectors.opening_current", "Current that opens one", quantity(Current, "A", 0.05, 10.0)),
    Field::new("injectors.inductance", "Inductance of one", quantity(Inductance, "mH", 0.05, 100.0)).rare(),
    Field::new("injectors.output_resistance", "On-resistance of the output", quantity(Resistance, "ohm", 0.0, 5.0))
        .assumed("0.1 ohm", "common practice, no source")
        .rare(),
    Field::new("injectors.wire_length", "Wire, feed and return together", quantity(Length, "m", 0.0, 50.0))
        .assumed("4 m", "a universal harness is long: common practice, no source"),
    Field::new("injectors.wire_size", "Size of that wire", quantity(WireSize, "mm2", 0.05, 120.0))
        .assumed("1 mm2", "common practice, no source"),
];
