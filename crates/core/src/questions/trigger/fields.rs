//! The cam’s wheel, and where top dead centre lies.

pub mod input;
pub mod sensor;

use crate::{
    quantity::{CrankAngle, RotationalSpeed},
    schema::{Part, Whole, fields, quantity, whole},
};

fields! {
    of Part::Trigger;
    /// Teeth or windows that pass the cam's sensor in a turn of it.
    CAM_TEETH: Whole = whole("cam_teeth", "Teeth or windows on the cam, a turn", 1, 72)
        .hint("blank: no cam sensor");
    /// Angle from that first tooth to top dead centre, as entered in the controller.
    OFFSET: CrankAngle = quantity("offset", "First tooth to top dead centre, as entered", "deg", -720.0, 720.0)
        .hint("positive: the tooth passes before")
        .first();
    /// The tooth at the sensor with cylinder 1 at top dead centre, counted from the first after the gap.
    TOOTH: Whole = whole("tooth", "Tooth at the sensor at top dead centre", 1, 360)
        .hint("first after the gap: 1")
        .measure("Ignition off. Turn by hand, the way it runs, to top dead centre of cylinder 1; count from the gap, in the order in which teeth pass.")
        .first();
    /// Advance at which the controller is locked for the timing light.
    ADVANCE: CrankAngle = quantity("advance", "Advance locked in the controller", "deg", -60.0, 90.0)
        .hint("before top dead centre: positive");
    /// Advance that the light shows at the lower speed.
    SEEN_LOW: CrankAngle = quantity("seen_low", "The light shows, at a low speed", "deg", -180.0, 180.0)
        .hint("before: positive");
    /// The lower speed.
    SPEED_LOW: RotationalSpeed = quantity("speed_low", "That speed", "rpm", 50.0, 20000.0);
    /// Advance that the light shows at the higher speed.
    SEEN_HIGH: CrankAngle = quantity("seen_high", "The light shows, at a high speed", "deg", -180.0, 180.0)
        .hint("before: positive");
    /// The higher speed.
    SPEED_HIGH: RotationalSpeed = quantity("speed_high", "That high speed", "rpm", 50.0, 20000.0);
}
