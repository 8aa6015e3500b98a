//! Question 1: one cycle at a speed.

use super::{Field, quantity};
use crate::quantity::Dimension::{Angle, Speed, Time};

pub(super) const FIELDS: &[Field] = &[
    Field::new("strip.speed", "At this speed", quantity(Speed, "rpm", 20.0, 30000.0))
        .hint("blank: the highest speed"),
    Field::new("strip.dwell", "Dwell", quantity(Time, "ms", 0.1, 100.0))
        .hint("blank: what the coils need, else 3 ms"),
    Field::new(
        "strip.advance",
        "Spark before top dead centre",
        quantity(Angle, "deg", -30.0, 90.0),
    )
    .assumed("30 deg", "a usual advance at speed: common practice, no source"),
    Field::new("strip.injection", "Each injection lasts", quantity(Time, "ms", 0.1, 200.0))
        .assumed("8 ms", "a usual pulse at full load: common practice, no source"),
    Field::new(
        "strip.injection_end",
        "It ends before firing top dead centre",
        quantity(Angle, "deg", 0.0, 720.0),
    )
    .assumed("360 deg", "as the inlet valve opens: common practice, no source"),
    Field::new(
        "strip.second_injection",
        "Each injection of the second set lasts",
        quantity(Time, "ms", 0.1, 200.0),
    )
    .hint("blank: as the first")
    .rare(),
];
