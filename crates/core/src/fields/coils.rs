//! Question 5: the ignition coils, and what feeds them.

use super::{Field, Kind, quantity};
use crate::quantity::Dimension::{
    Current, Inductance, Length, Resistance, Share, Time, Voltage, WireSize,
};

pub(super) const FIELDS: &[Field] = &[
    Field::new("coils.resistance", "Resistance of one coil's primary", quantity(Resistance, "ohm", 0.05, 20.0))
        .measure("Coil unplugged, across its primary, less what the meter reads with its leads held together. A coil with its igniter inside \
            shows nothing sensible: take its data.")
        .assumed("0.3 to 1 ohm", "a coil of an electronic ignition: common practice, no source")
        .first(),
    Field::new("coils.inductance", "Inductance of that primary", quantity(Inductance, "mH", 0.05, 100.0))
        .measure("A meter with an inductance range, coil unplugged; a plain multimeter can't.")
        .assumed("2 to 6 mH", "common practice, no source")
        .first(),
    Field::new("coils.current", "Current to charge it to", quantity(Current, "A", 0.5, 40.0))
        .hint("from the coil's data")
        .assumed("7 A", "6 to 10 A is usual: common practice, no source")
        .first(),
    Field::new("coils.relays", "Relays that feed the coils", Kind::Whole(1, 16))
        .assumed("1", "all coils on one"),
    Field::new("coils.relay", "Rating of one relay's contact", quantity(Current, "A", 0.5, 500.0)).hint("30 and 87, for direct current"),
    Field::new("coils.fuse", "Rating of its fuse", quantity(Current, "A", 0.5, 500.0)),
    Field::new("coils.lead_length", "Lead from the battery to the coils, one way", quantity(Length, "m", 0.0, 50.0)).hint("the longest"),
    Field::new("coils.lead_size", "Size of that lead", quantity(WireSize, "mm2", 0.05, 120.0)).hint("copper; 4 mm2 or 12 AWG"),
    Field::new("coils.limit", "Current that the igniter holds", quantity(Current, "A", 0.5, 60.0))
        .hint("blank if it holds none")
        .rare(),
    Field::new("coils.drop", "What the igniter drops while it conducts", quantity(Voltage, "V", 0.0, 5.0))
        .assumed("0.8 to 2 V", "a usual igniter at its current: common practice, no source")
        .rare(),
    Field::new("coils.spark", "How long a spark burns", quantity(Time, "ms", 0.0, 10.0))
        .assumed("1 to 2 ms", "common practice, no source")
        .rare(),
    Field::new("coils.duty_limit", "The most of the time that it may be charged", quantity(Share, "%", 1.0, 100.0))
        .hint("from the coil's data; blank if they name none")
        .rare(),
];
