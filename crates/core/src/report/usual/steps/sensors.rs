//! What the steps of the question of sensors are for.

use crate::{questions::sensors::words, report::usual::step::purposes};

purposes! {
    // still needed
    words::DO_DATA => Ask "data of the thermistor, or its ohms cold and hot";
    words::DO_PULL => Ask "the input's pull-up";
    words::DO_DRAWS => Ask "what these draw: {list}";
    words::DO_RATING => Ask "what the supply may give";
    // in the controller
    words::DO_LIMITS => Enter "fault limits {low} and {high}";
    words::DO_SET => Enter "{purpose}: {low} at {low_volts}, {high} at {high_volts}";
    words::DO_CALIBRATE => Enter "the table of its data";
    words::CURE_TABLE => Enter "its own table";
    words::CURE_SET => Enter "its input as {purpose}";
    words::CURE_SECOND => Enter "second track {run}";
    // parts
    words::CURE_PULL => Buy "resistor {best}, from {input} to its sensor supply";
    words::CURE_BEST => Buy "pull-up {best}";
    // at the car
    words::DO_STOOD => Prove "cold: all temperatures alike within 3 °C";
    words::DO_OPEN_AIR => Prove "hose off: {air}, or 0 if gauge";
    words::DO_AIR => Prove "hose off: {air}";
    words::DO_NO_PRESSURE => Prove "no pressure on it: 0";
    words::DO_STROKE => Prove "moved from stop to stop: both tracks follow without a gap";
    words::DO_WARM_AIR => Prove "warm, in free air: {volts}";
    // with the hands
    words::CURE_DISCONNECT => ;
    words::CURE_FEED => ;
}
