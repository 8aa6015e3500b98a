//! What a timing light shows.

use crate::{
    channels::light::SparkStroke,
    quantity::CrankAngle,
    schema::{Part, choice, choices, fields, quantity},
};

choices! {
    SparkStroke {
        Compression = "compression", "Compression: both valves shut";
        Exhaust = "exhaust", "Exhaust: a valve open, or the cork stays on";
    }
}

fields! {
    of Part::Light;
    /// Advance seen on each cylinder: entry 1 is cylinder 1.
    SEEN: CrankAngle = quantity("seen", "Advance seen on cylinder", "deg", -360.0, 360.0)
        .each()
        .hint("after TDC: minus")
        .measure("The light's clamp on this cylinder's lead, the beam on its own mark of the crank: the degrees before its TDC; after it with a minus.");
    /// `compression` or `exhaust`.
    STROKE: SparkStroke = choice("stroke", "The spark falls on the stroke of")
        .measure("Fuel off, spark plug out, its lead on a grounded spark tester well away, a cork on the hole (no thumb). Crank: on compression the cork pops, just before the spark. Or look at the valves.");
    /// How far a reading may be off.
    TOLERANCE: CrankAngle = quantity("tolerance", "A reading may be off by", "deg", 0.1, 20.0)
        .assumed("2 deg", "a mark on a pulley read by eye: common practice, no source")
        .rare();
}
