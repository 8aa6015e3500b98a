//! The ignition coils, and what feeds them.

use crate::{
    quantity::{Current, Inductance, Ratio, Resistance, Time, Voltage},
    schema::{LoadName, Part, Whole, fields, load_name, quantity, whole},
};

fields! {
    of Part::Coils;
    /// Resistance of a primary at 20 °C.
    RESISTANCE: Resistance = quantity("resistance", "Resistance of one coil's primary", "ohm", 0.05, 20.0)
        .measure("Coil unplugged, across its primary, less the reading with the probes together. A coil with its igniter inside shows nothing useful: use its data.")
        .assumed("0.3 to 1 ohm", "a coil of an electronic ignition: common practice, no source")
        .first();
    /// Inductance of a primary.
    INDUCTANCE: Inductance = quantity("inductance", "Inductance of that primary", "mH", 0.05, 100.0)
        .measure("A meter with an inductance range, coil unplugged; a plain multimeter can't.")
        .assumed("2 to 6 mH", "common practice, no source")
        .first();
    /// Current to which it is charged.
    CURRENT: Current = quantity("current", "Target coil current", "A", 0.5, 40.0)
        .hint("from the coil's data")
        .assumed("7 A", "6 to 10 A is usual: common practice, no source")
        .first();
    /// Current that the igniter holds.
    LIMIT: Current = quantity("limit", "Current limit of the igniter", "A", 0.5, 60.0)
        .hint("blank if it has none")
        .rare();
    /// How many coils hang on one igniter.
    PER_IGNITER: Whole = whole("per_igniter", "Coils on one igniter", 1, 8)
        .hint("in parallel: they share its current limit")
        .assumed("1", "an igniter for each coil")
        .rare();
    /// After how long it lets go by itself.
    LETS_GO: Time = quantity("lets_go", "Igniter switches off by itself after", "ms", 1.0, 60000.0)
        .hint("from its data; blank if it does not")
        .rare();
    /// The load that is the input of an igniter.
    INPUT: LoadName = load_name("input", "Igniter's input, as a load")
        .hint("one of those under “Outputs”")
        .rare();
    /// What the igniter drops while it conducts.
    DROP: Voltage = quantity("drop", "Voltage drop of the igniter when on", "V", 0.0, 5.0)
        .assumed("0.8 to 2 V", "a usual igniter at its current: common practice, no source")
        .rare();
    /// How long a spark burns.
    SPARK: Time = quantity("spark", "Spark duration", "ms", 0.0, 10.0)
        .assumed("1 to 2 ms", "common practice, no source")
        .rare();
    /// The most of the time that it may be charged.
    DUTY_LIMIT: Ratio = quantity("duty_limit", "Highest coil duty", "%", 1.0, 100.0)
        .hint("from the coil's data; blank if not stated")
        .rare();
}
