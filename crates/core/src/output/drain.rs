//! What an output with everything that hangs on it draws from the battery with the key off.
//!
//! Seen from the battery all of it is one pair of terminals without a source behind them. The current into such a pair
//! never rises with any resistance in it (Rayleigh's law), and never falls with the voltage; so the most flows where every
//! resistance is the least, and the least where every one is the most. That is two circuits for each supply, however many
//! outputs hang together: some thousand for the longest plan that is accepted.

use super::{
    Contact, End, FarEnd, KeyState, Operating, Phase, Point, Solver, SupplyCorner, Surroundings,
    Wiring, corner, judge::DRAIN_A,
};
use crate::quantity::{Band, Current, Measure, amperes};

/// A current out of the battery.
#[derive(Clone, Debug, PartialEq)]
pub struct Drain {
    /// From the least at any corner to the most.
    pub current: Band<Current>,
    /// The circuit where it is the most; nothing where nothing links it to the battery.
    pub most: Option<Operating>,
}

/// Whether a drain is so large that the answer about the load tells of it.
pub fn is_told_of_its_load(current: Current) -> bool {
    current.base() >= DRAIN_A
}

/// What flows out of the battery with the key off; nothing where a value is outside what a circuit can have.
pub fn drain(wiring: &Wiring, around: &Surroundings) -> Option<Drain> {
    let state = KeyState::KeyOff;
    if corner::is_dead(state, wiring) {
        return Some(Drain { current: Band::exact(amperes(0.0)), most: None });
    }
    let mut solver = Solver::new(wiring, around);
    let mut at = |point: &Point| solver.operate(state, point);
    let nominal = drawn(&at(&Point::nominal(around.nominal, 0, Contact::Open))?);
    let mut current = Band::exact(nominal);
    let mut most: Option<Operating> = None;
    for supply in around.corners.iter().filter(|corner| state.meets(corner)) {
        let [least, largest] = ends(*supply).map(|point| at(&point));
        current = current.widened_to(drawn(&least?));
        let largest = largest?;
        current = current.widened_to(drawn(&largest));
        let is_more = |before: &Operating| drawn(&largest) > drawn(before);
        if most.as_ref().is_none_or(is_more) {
            most = Some(largest);
        }
    }
    Some(Drain { current, most })
}

/// Every resistance at its most, and at its least: a filament as it glows, and cold.
fn ends(at: SupplyCorner) -> [Point; 2] {
    [Point::alike(at, End::High, Phase::Running), Point::alike(at, End::Low, Phase::Standing)]
}

/// Rounding may leave less than nothing of nothing.
fn drawn(operating: &Operating) -> Current {
    amperes(operating.from_battery.base().max(0.0))
}

impl Wiring {
    /// The same with what hangs on permanent battery (30) fed from the ignition switch (15).
    #[must_use]
    pub fn fed_by_the_key(&self) -> Self {
        let mut wiring = self.clone();
        let beyond = wiring.beyond.iter_mut().flat_map(|pin| &mut pin.loads);
        for load in wiring.loads.iter_mut().chain(beyond) {
            if load.far_end == FarEnd::Battery {
                load.far_end = FarEnd::Ignition;
            }
        }
        wiring
    }
}
