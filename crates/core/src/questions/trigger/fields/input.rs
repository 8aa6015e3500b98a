//! The controller’s inputs for crank and cam.

use crate::{
    quantity::{Capacitance, Frequency, Resistance, Time, Voltage},
    schema::{Part, fields, quantity},
};

fields! {
    of Part::TriggerInput;
    /// Highest frequency that they follow.
    HIGHEST_FREQUENCY: Frequency = quantity("highest_frequency", "Highest input frequency", "Hz", 1.0, 1e7)
        .hint("from the controller's data");
    /// Lowest frequency that they follow.
    LOWEST_FREQUENCY: Frequency = quantity("lowest_frequency", "Lowest input frequency", "Hz", 0.0, 1e5)
        .hint("blank if it works down to standstill");
    /// The step in which they measure time.
    TICK: Time = quantity("tick", "Timer resolution", "us", 0.001, 10000.0);
    /// Peak from which a signal about zero is counted.
    COUNTS_FROM: Voltage = quantity("counts_from", "Smallest signal it detects (peak)", "V", 0.001, 50.0)
        .hint("while cranking");
    /// Highest voltage that they bear.
    BEARS: Voltage = quantity("bears", "Highest input voltage", "V", 1.0, 500.0);
    /// A level at or below is low.
    LOW: Voltage = quantity("low", "Reads low at or below", "V", 0.01, 30.0)
        .assumed("0.8 V", "the low level of TTL, from memory");
    /// A level at or above is high.
    HIGH: Voltage = quantity("high", "Reads high at or above", "V", 0.1, 30.0)
        .assumed("2 V", "the high level of TTL, from memory");
    /// Resistance of an input to ground.
    RESISTANCE: Resistance = quantity("resistance", "Resistance of the input to ground", "ohm", 100.0, 1e8)
        .assumed("10 to 100 kohm", "common practice, no source");
    /// Capacitance of its filter.
    CAPACITANCE: Capacitance = quantity("capacitance", "Filter capacitor of the input", "nF", 0.0, 10000.0)
        .assumed("1 nF", "common practice, no source")
        .rare();
}
