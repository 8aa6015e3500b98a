//! What a multimeter reads on the bare pin.

use super::{
    Contact, End, KeyState, Operating, PinPart, Point, Solver, SupplyCorner, Surroundings, Wiring,
    corner,
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
    read(&mut Solver::new(wiring, around), state)
}

/// The same with what has solved the output before.
pub(super) fn read(solver: &mut Solver<'_>, state: KeyState) -> Option<MeterReading> {
    let (wiring, around) = (solver.wiring, solver.around);
    if state == KeyState::Pulsed {
        return mean_reading(solver);
    }
    let mut at = |corner, pulls| {
        let point = Point { pulls, ..Point::nominal(corner, 0, Contact::Closed) };
        solver.operate_bare(state, &point)
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
fn mean_reading(solver: &mut Solver<'_>) -> Option<MeterReading> {
    let duty = solver.wiring.pulse()?.duty;
    let (on, off) = (read(solver, KeyState::On)?, read(solver, KeyState::Off)?);
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
