//! Where top dead centre lies.

pub mod input;
pub mod sensor;

use crate::{
    quantity::{CrankAngle, RotationalSpeed},
    schema::{Part, Whole, fields, quantity, whole},
};

fields! {
    of Part::Trigger;
    /// The tooth at the sensor with cylinder 1 at top dead centre, counted from the first after the gap.
    TOOTH: Whole = whole("tooth", "Tooth at the sensor at TDC", 1, 360)
        .hint("first after the gap: 1")
        .measure("Ignition off. Turn by hand, the way it runs, to TDC of cylinder 1; count from the gap, in the order in which teeth pass.")
        .first();
    /// Advance that the light shows at the lower speed.
    SEEN_LOW: CrankAngle = quantity("seen_low", "The light shows, at a low speed", "deg", -180.0, 180.0)
        .hint("before: positive");
    /// The lower speed.
    SPEED_LOW: RotationalSpeed = quantity("speed_low", "That low speed", "rpm", 50.0, 20000.0);
    /// Advance that the light shows at the higher speed.
    SEEN_HIGH: CrankAngle = quantity("seen_high", "The light shows, at a high speed", "deg", -180.0, 180.0)
        .hint("before: positive");
    /// The higher speed.
    SPEED_HIGH: RotationalSpeed = quantity("speed_high", "That high speed", "rpm", 50.0, 20000.0);
}
