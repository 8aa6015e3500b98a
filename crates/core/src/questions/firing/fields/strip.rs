//! One cycle at a speed.

use crate::{
    quantity::{CrankAngle, RotationalSpeed, Time},
    schema::{Part, fields, quantity},
};

fields! {
    of Part::Strip;
    /// The speed.
    SPEED: RotationalSpeed = quantity("speed", "Show the cycle at", "rpm", 20.0, 30000.0)
        .hint("blank: the highest speed");
    /// How far before top dead centre the spark comes.
    ADVANCE: CrankAngle = quantity("advance", "Spark, before TDC", "deg", -30.0, 90.0)
        .assumed("30 deg", "a usual advance at speed: common practice, no source");
    /// How long an injection lasts.
    INJECTION: Time = quantity("injection", "Each injection lasts", "ms", 0.1, 200.0)
        .hint("blank: 8 ms, or 80% of a turn where that is less");
    /// How far before firing top dead centre it ends.
    INJECTION_END: CrankAngle = quantity("injection_end", "Injection ends, before firing TDC", "deg", 0.0, 720.0)
        .assumed("360 deg", "as the inlet valve opens: common practice, no source");
    /// How long an injection of the second set lasts.
    SECOND_INJECTION: Time = quantity("second_injection", "Each injection of the second set lasts", "ms", 0.1, 200.0)
        .hint("blank: as the first")
        .rare();
}
