//! The wheels at crank and cam.

use crate::{
    quantity::CrankAngle,
    schema::{Part, Whole, fields, quantity, whole},
};

fields! {
    of Part::Wheels;
    /// Positions on the crank wheel, missing teeth counted.
    CRANK_TEETH: Whole = whole("crank_teeth", "Positions on the crank wheel", 1, 360)
        .hint("missing ones counted")
        .assumed("60", "a common wheel, 60 positions less two: common practice, no source")
        .measure("Count the teeth and add those that would fit into the gap.");
    /// Missing teeth.
    MISSING: Whole = whole("missing", "Missing teeth", 0, 10)
        .hint("0: evenly spaced");
    /// Crank angle from the first tooth after the gap to the first firing top dead centre.
    GAP_ANGLE: CrankAngle = quantity("gap_angle", "From the gap to TDC", "deg", 0.0, 360.0)
        .hint("first tooth after the gap at the sensor, to firing TDC (top dead centre); blank: the offset entered, else 90°")
        .measure("Turn the engine by hand until the first tooth after the gap is at the sensor; the degree wheel shows how far it is to TDC.")
        .rare();
    /// Teeth or windows that pass the cam's sensor in a turn of it.
    CAM_TEETH: Whole = whole("cam_teeth", "Teeth or windows on the cam, per turn", 1, 72)
        .hint("blank: no cam sensor");
}
