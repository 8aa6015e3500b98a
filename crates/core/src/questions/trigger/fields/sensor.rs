//! A sensor at the crank or the cam, and its wires.

use crate::{
    quantity::{Current, Length, Resistance, RotationalSpeed, Voltage},
    schema::{Part, choice, choices, fields, quantity},
};

/// What a sensor is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorKind {
    /// A coil about a magnet.
    Reluctance,
    /// A Hall sensor whose switch pulls down.
    OpenCollector,
    /// A Hall sensor that drives both ways.
    PushPull,
}

choices! {
    SensorKind {
        Reluctance = "reluctance", "Variable reluctance: two wires, a coil";
        OpenCollector = "open-collector", "Hall, open collector: three wires";
        PushPull = "push-pull", "Hall, drives both ways: three wires";
    }
}

/// How a voltage was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AmplitudeAs {
    /// Its effective value.
    Effective,
    /// From zero to its peak.
    Peak,
    /// From peak to peak.
    PeakToPeak,
}

choices! {
    AmplitudeAs {
        Effective = "effective", "As an AC voltmeter shows it";
        Peak = "peak", "Peak, on a scope";
        PeakToPeak = "peak-to-peak", "Peak to peak, on a scope";
    }
}

/// Which way round a coil is connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Polarity {
    /// As the input wants it.
    Right,
    /// The other way round.
    Reversed,
}

choices! {
    Polarity {
        Right = "right", "As the input needs it";
        Reversed = "reversed", "The other way round";
    }
}

/// What the pull-up of a sensor’s output goes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SensorRail {
    /// There is none.
    Nothing,
    /// 3.3 V.
    ThreeVolt,
    /// 5 V.
    FiveVolt,
    /// The battery.
    Battery,
}

choices! {
    SensorRail {
        Nothing = "none", "There is none";
        ThreeVolt = "3.3", "3.3 V";
        FiveVolt = "5", "5 V";
        Battery = "battery", "Battery";
    }
}

/// Where a shield is connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shield {
    /// At the controller alone.
    OneEnd,
    /// At both ends.
    BothEnds,
    /// At neither, or there is none.
    Nowhere,
}

choices! {
    Shield {
        OneEnd = "one", "At the controller only";
        BothEnds = "both", "At both ends";
        Nowhere = "none", "Nowhere, or there is none";
    }
}

/// Whether the harness’s connector fits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Connector {
    /// It does.
    Fits,
    /// It must be changed.
    Change,
}

choices! {
    Connector {
        Fits = "fits", "Fits";
        Change = "change", "Must be changed";
    }
}

const RELUCTANCE: &[&str] = &["reluctance"];

const HALL: &[&str] = &["open-collector", "push-pull"];

const OPEN: &[&str] = &["open-collector"];

fields! {
    of Part::CrankSensor;
    /// `reluctance`, `open-collector` or `push-pull`.
    KIND: SensorKind = choice("kind", "Sensor type")
        .measure("Unplugged: two wires and a few hundred to 2000 Ω between them is a coil. Three wires: its data; never an ohmmeter through it.")
        .first();
    /// What a variable-reluctance sensor gives, as measured.
    AMPLITUDE: Voltage = quantity("amplitude", "Its AC voltage", "V", 0.01, 500.0)
        .hint("unplugged, at a known speed")
        .measure("Sensor unplugged, meter on AC volts across its two wires, or a scope; crank with fuel and spark off and note the speed.")
        .only_if("kind", RELUCTANCE)
        .first();
    /// `effective`, `peak` or `peak-to-peak`.
    AMPLITUDE_AS: AmplitudeAs = choice("amplitude_as", "Meter or scope")
        .assumed("effective", "what a meter shows, if a sine: its peak is 1.41 times that")
        .only_if("kind", RELUCTANCE);
    /// Speed at which it was measured.
    AMPLITUDE_SPEED: RotationalSpeed = quantity("amplitude_speed", "Measured at", "rpm", 20.0, 20000.0)
        .hint("blank: the cranking speed")
        .only_if("kind", RELUCTANCE);
    /// Resistance of its coil.
    RESISTANCE: Resistance = quantity("resistance", "Resistance of its coil, 20 °C", "ohm", 10.0, 20000.0)
        .assumed("0.3 to 2 kohm", "common practice, no source")
        .only_if("kind", RELUCTANCE);
    /// `right` or `reversed`.
    POLARITY: Polarity = choice("polarity", "Polarity")
        .measure("A scope, or a moving-coil meter: which way does the pointer swing as a tooth comes near? A digital meter's average shows nothing.")
        .only_if("kind", RELUCTANCE);
    /// What the pull-up of a Hall sensor goes to: `none`, `3.3`, `5` or `battery`.
    PULL_RAIL: SensorRail = choice("pull_rail", "Its output is pulled up to")
        .hint("drives both ways: its own supply")
        .measure("Sensor unplugged, controller on: the voltage at the input's pin is that of its pull-up; 0 V means none.")
        .only_if("kind", HALL)
        .first();
    /// Resistance of the pull-up.
    PULL_UP: Resistance = quantity("pull_up", "Pull-up resistor", "ohm", 50.0, 1e6)
        .assumed("1 to 4.7 kohm", "common practice, no source")
        .only_if("kind", OPEN);
    /// What the sensor's switch drops while it conducts.
    SATURATION: Voltage = quantity("saturation", "Voltage drop of its switch when low", "V", 0.0, 3.0)
        .assumed("0 to 0.4 V", "common practice, no source")
        .only_if("kind", HALL)
        .rare();
    /// Current that the switch may sink.
    SINK: Current = quantity("sink", "Highest current it may sink", "mA", 0.1, 1000.0)
        .hint("from its data")
        .only_if("kind", HALL);
    /// Length of its cable.
    LENGTH: Length = quantity("length", "Length of its cable", "m", 0.0, 50.0)
        .assumed("3 m", "common practice, no source")
        .only_if("kind", OPEN)
        .rare();
    /// Resistance of contacts in the signal's way.
    CONTACT: Resistance = quantity("contact", "Contacts and wire of the signal", "ohm", 0.0, 10000.0)
        .assumed("0 to 1 ohm", "common practice, no source")
        .only_if("kind", HALL)
        .rare();
    /// By how much the sensor's ground lies above the controller's.
    GROUND_OFFSET: Voltage = quantity("ground_offset", "Its ground above the controller's", "V", -5.0, 5.0)
        .assumed("0 to 0.1 V", "common practice, no source")
        .measure("Between sensor ground and controller ground while the starter turns.")
        .only_if("kind", HALL)
        .rare();
    /// Where its shield is connected: `one`, `both` or `none`.
    SHIELD: Shield = choice("shield", "Its shield is connected");
    /// `fits` or `change`.
    CONNECTOR: Connector = choice("connector", "Harness connector");
}
