//! Question 8: the sensors at crank and cam, the inputs that they are wired to, and where top dead centre lies.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{
    Angle, Capacitance, Current, Frequency, Length, Resistance, Speed, Time, Voltage,
};

const KINDS: &[Choice] = &[
    choice("reluctance", "Variable reluctance: two wires, a coil"),
    choice("open-collector", "Hall, open collector: three wires"),
    choice("push-pull", "Hall, drives both ways: three wires"),
];
const AMPLITUDES: &[Choice] = &[
    choice("effective", "As an AC voltmeter shows it"),
    choice("peak", "Peak, on a scope"),
    choice("peak-to-peak", "Peak to peak, on a scope"),
];
const POLARITIES: &[Choice] =
    &[choice("right", "As the input wants it"), choice("reversed", "The other way round")];
const RAILS: &[Choice] = &[
    choice("none", "There is none"),
    choice("3.3", "3.3 V"),
    choice("5", "5 V"),
    choice("battery", "Battery"),
];
const SHIELDS: &[Choice] = &[
    choice("one", "At the controller alone"),
    choice("both", "At both ends"),
    choice("none", "At neither, or there is none"),
];
const CONNECTORS: &[Choice] = &[choice("fits", "It fits"), choice("change", "Must be changed")];

const RELUCTANCE: &[&str] = &["reluctance"];
const HALL: &[&str] = &["open-collector", "push-pull"];
const OPEN: &[&str] = &["open-collector"];

/// The fields of a sensor, in the record of this name.
macro_rules! of_sensor {
    ($record:literal) => {
        &[
            Field::new(concat!($record, ".kind"), "What it is", Kind::Choice(KINDS))
                .measure("Unplugged: two wires and a few hundred to 2000 ohm between them is a coil. Three wires: its data; never an ohmmeter through it.")
                .first(),
            Field::new(concat!($record, ".amplitude"), "Voltage it gives", quantity(Voltage, "V", 0.01, 500.0))
                .hint("unplugged, at a known speed")
                .measure("Sensor unplugged, meter on AC volts across its two wires, or a scope; crank with fuel and spark off and note the speed.")
                .only_if(concat!($record, ".kind"), RELUCTANCE)
                .first(),
            Field::new(concat!($record, ".amplitude_as"), "Measured as", Kind::Choice(AMPLITUDES))
                .assumed("effective", "what a meter shows, of a sine: its peak is 1.41 times that")
                .only_if(concat!($record, ".kind"), RELUCTANCE),
            Field::new(concat!($record, ".amplitude_speed"), "At a speed of", quantity(Speed, "rpm", 20.0, 20000.0))
                .hint("blank: the cranking speed")
                .only_if(concat!($record, ".kind"), RELUCTANCE),
            Field::new(concat!($record, ".resistance"), "Resistance of its coil, 20 °C", quantity(Resistance, "ohm", 10.0, 20000.0))
                .assumed("0.3 to 2 kohm", "common practice, no source")
                .only_if(concat!($record, ".kind"), RELUCTANCE),
            Field::new(concat!($record, ".polarity"), "Its polarity", Kind::Choice(POLARITIES))
                .measure("A scope, or a moving-coil meter: which way does it kick as iron comes near? A digital meter's average shows nothing.")
                .only_if(concat!($record, ".kind"), RELUCTANCE),
            Field::new(concat!($record, ".pull_rail"), "Its output is pulled up to", Kind::Choice(RAILS))
                .hint("drives both ways: its own supply")
                .measure("Sensor unplugged, controller on: the voltage at the input's pin is that of its pull-up; 0 V means none.")
                .only_if(concat!($record, ".kind"), HALL)
                .first(),
            Field::new(concat!($record, ".pull_up"), "Pull-up resistor", quantity(Resistance, "ohm", 50.0, 1e6))
                .assumed("1 to 4.7 kohm", "common practice, no source")
                .only_if(concat!($record, ".kind"), OPEN),
            Field::new(concat!($record, ".saturation"), "What its switch drops", quantity(Voltage, "V", 0.0, 3.0))
                .assumed("0 to 0.4 V", "common practice, no source")
                .only_if(concat!($record, ".kind"), HALL)
                .rare(),
            Field::new(concat!($record, ".sink"), "Current it may sink", quantity(Current, "mA", 0.1, 1000.0))
                .hint("from its data")
                .only_if(concat!($record, ".kind"), HALL),
            Field::new(concat!($record, ".length"), "Length of its cable", quantity(Length, "m", 0.0, 50.0))
                .assumed("3 m", "common practice, no source")
                .only_if(concat!($record, ".kind"), OPEN)
                .rare(),
            Field::new(concat!($record, ".contact"), "Contacts and wire of the signal", quantity(Resistance, "ohm", 0.0, 10000.0))
                .assumed("0 to 1 ohm", "common practice, no source")
                .only_if(concat!($record, ".kind"), HALL)
                .rare(),
            Field::new(concat!($record, ".ground_offset"), "Its ground, above the controller's", quantity(Voltage, "V", -5.0, 5.0))
                .assumed("0 to 0.1 V", "common practice, no source")
                .measure("Between sensor ground and controller ground while the starter turns.")
                .only_if(concat!($record, ".kind"), HALL)
                .rare(),
            Field::new(concat!($record, ".shield"), "Its shield is connected", Kind::Choice(SHIELDS)),
            Field::new(concat!($record, ".connector"), "The harness's connector", Kind::Choice(CONNECTORS)),
        ]
    };
}

pub(super) const CRANK: &[Field] = of_sensor!("crank_sensor");

pub(super) const CAM: &[Field] = of_sensor!("cam_sensor");

pub(super) const INPUT: &[Field] = &[
    Field::new(
        "trigger_input.highest_frequency",
        "Highest frequency they follow",
        quantity(Frequency, "Hz", 1.0, 1e7),
    )
    .hint("from the controller's data"),
    Field::new(
        "trigger_input.lowest_frequency",
        "Lowest frequency they follow",
        quantity(Frequency, "Hz", 0.0, 1e5),
    )
    .hint("blank if they go down to standstill"),
    Field::new(
        "trigger_input.tick",
        "Step in which they measure time",
        quantity(Time, "us", 0.001, 10000.0),
    ),
    Field::new(
        "trigger_input.counts_from",
        "A coil's signal counts from",
        quantity(Voltage, "V", 0.001, 50.0),
    )
    .hint("peak; while cranking"),
    Field::new(
        "trigger_input.bears",
        "Highest voltage they bear",
        quantity(Voltage, "V", 1.0, 500.0),
    ),
    Field::new("trigger_input.low", "Low at or below", quantity(Voltage, "V", 0.01, 30.0))
        .assumed("0.8 V", "the low level of TTL, from memory"),
    Field::new("trigger_input.high", "High at or above", quantity(Voltage, "V", 0.1, 30.0))
        .assumed("2 V", "the high level of TTL, from memory"),
    Field::new(
        "trigger_input.resistance",
        "Resistance of an input to ground",
        quantity(Resistance, "ohm", 100.0, 1e8),
    )
    .assumed("10 to 100 kohm", "common practice, no source"),
    Field::new(
        "trigger_input.capacitance",
        "Capacitor of an input's filter",
        quantity(Capacitance, "nF", 0.0, 10000.0),
    )
    .assumed("1 nF", "common practice, no source")
    .rare(),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("trigger.cam_teeth", "Teeth or windows on the cam, a turn", Kind::Whole(1, 72)).hint("blank: no cam sensor"),
    Field::new("trigger.offset", "First tooth to top dead centre, as entered", quantity(Angle, "deg", -720.0, 720.0))
        .hint("positive: the tooth passes before")
        .first(),
    Field::new("trigger.tooth", "Tooth at the sensor at top dead centre", Kind::Whole(1, 360))
        .hint("first after the gap: 1")
        .measure("Ignition off. Turn by hand, the way it runs, to top dead centre of cylinder 1; count from the gap, in the order in which teeth pass.")
        .first(),
    Field::new("trigger.advance", "Advance locked in the controller", quantity(Angle, "deg", -60.0, 90.0))
        .hint("before top dead centre: positive"),
    Field::new("trigger.seen_low", "The light shows, at a low speed", quantity(Angle, "deg", -180.0, 180.0))
        .hint("before: positive"),
    Field::new("trigger.speed_low", "That speed", quantity(Speed, "rpm", 50.0, 20000.0)),
    Field::new("trigger.seen_high", "The light shows, at a high speed", quantity(Angle, "deg", -180.0, 180.0))
        .hint("before: positive"),
    Field::new("trigger.speed_high", "That high speed", quantity(Speed, "rpm", 50.0, 20000.0)),
];
