//! What a multimeter reads on the bare pin.

use super::{
    Contact, End, KeyState, Operating, PinPart, Point, SupplyCorner, Surroundings, Wiring, corner,
    operate::operate_bare,
};
use crate::quantity::{Band, Measure, Voltage, volts};

/// Input resistance of a usual digital multimeter on its volt ranges: common practice, no source.
pub const METER_OHM: f64 = 10e6;

/// A reading.
#[derive(Clone, Debug, PartialEq)]
pub struct MeterReading {
    /// Nothing but the meter holds the pin: it reads nought, or drifts.
    pub floats: bool,
    /// What it reads, from the lowest supply possible in that state to the highest.
    pub band: Band<Voltage>,
    /// The pin with the meter on it, battery at rest.
    pub metered: Operating,
}

/// The reading from the pin to ground with every load unplugged.
pub fn reading(wiring: &Wiring, state: KeyState, around: &Surroundings) -> Option<MeterReading> {
    if state == KeyState::Pulsed {
        return mean_reading(wiring, around);
    }
    let at = |corner, pulls| {
        let point = Point { pulls, ..Point::nominal(corner, 0, Contact::Closed) };
        operate_bare(wiring, state, &point, around)
    };
    let metered = at(around.nominal, End::Nominal)?;
    let floats = metered.branches.iter().all(|branch| branch.part == PinPart::Meter);
    let mut band = Band::exact(metered.pin.unwrap_or_default());
    if !floats {
        for corner in extremes(state, around) {
            for &pulls in End::ends(corner::has_spread_pulls(&wiring.output)) {
                band = band.widened_to(at(corner, pulls)?.pin.unwrap_or_default());
            }
        }
    }
    Some(MeterReading { floats, band, metered })
}

/// A pulsed pin: the meter shows the mean of what it would show on and off.
fn mean_reading(wiring: &Wiring, around: &Surroundings) -> Option<MeterReading> {
    let duty = wiring.pulse()?.duty;
    let (on, off) =
        (reading(wiring, KeyState::On, around)?, reading(wiring, KeyState::Off, around)?);
    let mixed = |end: End, on: Voltage, off: Voltage| {
        let share = end.of(&duty).base();
        volts(share * on.base() + (1.0 - share) * off.base())
    };
    let mut band = Band::exact(mixed(End::Nominal, on.band.nominal, off.band.nominal));
    for end in [End::Low, End::High] {
        band = band.widened_to(mixed(end, on.band.low, off.band.low));
        band = band.widened_to(mixed(end, on.band.high, off.band.high));
    }
    Some(MeterReading { floats: on.floats && off.floats, band, metered: on.metered })
}

/// The lowest and the highest supply: a pin rises with it throughout.
fn extremes(state: KeyState, around: &Surroundings) -> impl Iterator<Item = SupplyCorner> + use<> {
    let possible = around.corners.iter().filter(|at| state.meets(at));
    let by_supply =
        |a: &&SupplyCorner, b: &&SupplyCorner| a.supply.base().total_cmp(&b.supply.base());
    let ends = [possible.clone().min_by(by_supply).copied(), possible.max_by(by_supply).copied()];
    ends.into_iter().flatten()
}
