//! Question 2: the injectors, a second set of them, and the feed of both.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{
    Current, Energy, Inductance, Length, Power, Resistance, Share, Time, Voltage, WireSize,
};

const OUTPUT_KINDS: &[Choice] = &[
    choice("plain-switch", "A plain switch to ground"),
    choice("current-controlled", "Current-controlled (peak, then hold)"),
];

/// The fields of a set, in the record of this name.
macro_rules! of_set {
    ($record:literal) => {
        &[
            Field::new(concat!($record, ".resistance"), "Resistance of one injector at 20 °C", quantity(Resistance, "ohm", 0.2, 100.0))
                .measure("Meter across the unplugged injector, then the probes touched together: the first reading less the second.")
                .first(),
            Field::new(concat!($record, ".per_output"), "Injectors on one output", Kind::Whole(1, 16)).assumed("1", "one output each").first(),
            Field::new(concat!($record, ".output_limit"), "Current limit of one output", quantity(Current, "A", 0.05, 50.0))
                .hint("continuous, from the pin table; the peak, if current-controlled")
                .first(),
            Field::new(concat!($record, ".output_kind"), "The output is", Kind::Choice(OUTPUT_KINDS))
                .assumed("plain-switch", "the usual injector output"),
            Field::new(concat!($record, ".hold_current"), "Its hold current", quantity(Current, "A", 0.01, 50.0))
                .hint("from the driver's data or its setting")
                .only_if(concat!($record, ".output_kind"), &["current-controlled"]),
            Field::new(concat!($record, ".peak_time"), "Longest time at its peak", quantity(Time, "ms", 0.05, 100.0))
                .hint("blank if it waits for the peak however long")
                .only_if(concat!($record, ".output_kind"), &["current-controlled"]),
            Field::new(concat!($record, ".count"), "Number of injectors", Kind::Whole(1, 32)),
            Field::new(concat!($record, ".wire_length"), "Wire of one injector, feed and return together", quantity(Length, "m", 0.0, 50.0))
                .hint("relay to injector, injector to controller; each has its own")
                .assumed("2 to 6 m", "a universal harness is long: common practice, no source"),
            Field::new(concat!($record, ".wire_size"), "Size of that wire", quantity(WireSize, "mm2", 0.05, 120.0))
                .hint("copper; 1 mm2 or 18 AWG")
                .assumed("1 mm2", "common practice, no source"),
            Field::new(concat!($record, ".contact_resistance"), "Contacts in that wire, all together", quantity(Resistance, "mohm", 0.0, 5000.0))
                .hint("connectors, relay, fuse")
                .assumed("0 to 50 mohm", "about six contacts of up to 8 mohm: common practice, no source")
                .rare(),
            Field::new(concat!($record, ".opening_current"), "Current that opens one", quantity(Current, "A", 0.02, 10.0))
                .hint("at full fuel pressure")
                .measure("On the bench, emptied of fuel, in fresh air, a second at a time: 12 V through a lamp, then smaller lamps: the least current at which it clicks. \
                    Full pressure asks for more; the maker's figure is better.")
                .rare(),
            Field::new(concat!($record, ".inductance"), "Inductance of one", quantity(Inductance, "mH", 0.05, 100.0))
                .measure("A meter with an inductance range, injector unplugged; a plain multimeter can't.")
                .rare(),
            Field::new(concat!($record, ".tolerance"), "Tolerance of that resistance", quantity(Share, "%", 0.0, 30.0))
                .assumed("5 %", "common practice, no source; a hand meter reads low ohms no better")
                .rare(),
            Field::new(concat!($record, ".output_resistance"), "On-resistance of the output", quantity(Resistance, "ohm", 0.0, 5.0))
                .assumed("0 to 0.2 ohm", "common practice, no source")
                .rare(),
            Field::new(concat!($record, ".clamp"), "Voltage of the output's clamp", quantity(Voltage, "V", 10.0, 400.0))
                .hint("pin to ground, from its data")
                .assumed("35 to 60 V", "a usual injector driver: common practice, no source")
                .rare(),
            Field::new(concat!($record, ".clamp_energy"), "Energy its clamp bears at each turn-off", quantity(Energy, "mJ", 0.1, 5000.0))
                .hint("the repetitive figure, hot, from its data")
                .rare(),
            Field::new(concat!($record, ".output_heat"), "Heat that one output bears", quantity(Power, "W", 0.05, 100.0))
                .hint("at the box's hottest, from its data")
                .rare(),
        ]
    };
}

pub(super) const FIELDS: &[Field] = of_set!("injectors");

pub(super) const SECOND: &[Field] = of_set!("second_injectors");

pub(super) const FEED: &[Field] = &[
    Field::new(
        "injector_feed.fuse",
        "Fuse of the injectors' feed",
        quantity(Current, "A", 0.5, 200.0),
    )
    .hint("all sets that hang on it"),
    Field::new(
        "injector_feed.relay",
        "Rating of its relay's contact",
        quantity(Current, "A", 0.5, 200.0),
    )
    .hint("for long, from its label"),
];
