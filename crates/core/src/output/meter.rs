//! What a multimeter reads on the bare pin.

use super::{
    Contact, End, KeyState, Operating, Part, Point, SupplyCorner, Surroundings, Wiring, corner,
    operate::operate_bare,
};
use crate::quantity::{Band, Measure, Voltage};

/// Input resistance of a usual digital multimeter on its volt ranges: common practice, no source.
pub const METER_OHM: f64 = 10e6;

/// A reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// Nothing but the meter holds the pin: it reads nought, or drifts.
    pub floats: bool,
    /// What it reads, from the lowest supply possible in that state to the highest.
    pub band: Band<Voltage>,
    /// The pin with the meter on it, battery at rest.
    pub metered: Operating,
}

/// The reading from the pin to ground with every load unplugged.
pub(super) fn reading(wiring: &Wiring, state: KeyState, around: &Surroundings) -> Option<Reading> {
    let at = |corner, pulls| {
        let point = Point { pulls, ..Point::nominal(corner, 0, Contact::Closed) };
        operate_bare(wiring, state, &point, around)
    };
    let metered = at(around.nominal, End::Nominal)?;
    let floats = metered.branches.iter().all(|branch| branch.part == Part::Meter);
    let mut band = Band::exact(metered.pin.unwrap_or_default());
    if !floats {
        for corner in extremes(state, around) {
            for &pulls in End::ends(corner::has_spread_pulls(&wiring.output)) {
                band = band.widened_to(at(corner, pulls)?.pin.unwrap_or_default());
            }
        }
    }
    Some(Reading { floats, band, metered })
}

/// The lowest and the highest supply: a pin rises with it throughout.
fn extremes(state: KeyState, around: &Surroundings) -> impl Iterator<Item = SupplyCorner> + use<> {
    let possible = around.corners.iter().filter(|at| state != KeyState::KeyOff || !at.is_cranking);
    let by_supply =
        |a: &&SupplyCorner, b: &&SupplyCorner| a.supply.base().total_cmp(&b.supply.base());
    let ends = [possible.clone().min_by(by_supply).copied(), possible.max_by(by_supply).copied()];
    ends.into_iter().flatten()
}
