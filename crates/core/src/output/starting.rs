//! What a load does while the controller starts, its stages open.

use super::{KeyState, LoadState, SolvedCorner, Solver, Surroundings, Wiring, corner, cost, judge};

/// What it does then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Starting {
    /// It acts at every corner.
    Acts,
    /// At some it may.
    MayAct,
    /// It rests.
    Rests,
}

/// More steps than this are not taken for it: it then counts as resting, and the answer about the load tells.
const MOST: u64 = 10_000_000;

/// What the load with the number `subject` does while the controller starts; nothing where there is no such load.
pub fn while_starting(wiring: &Wiring, subject: usize, around: &Surroundings) -> Option<Starting> {
    let load = wiring.loads.get(subject)?;
    let state = KeyState::Starting;
    if cost::resting(wiring, subject, around) > MOST {
        return None;
    }
    let mut solver = Solver::new(wiring, around);
    let (mut all, mut some) = (true, false);
    for point in corner::points(state, wiring, subject, around) {
        let operating = solver.operate(state, &point)?;
        let solved = SolvedCorner { point, operating };
        let temperature = solved.point.at.temperature;
        let flow = solved.load();
        all &= flow.is_some_and(|it| load.is_sure_to_act(it.voltage, temperature));
        some |= judge::effect(load, &solved) == LoadState::Energised;
    }
    Some(match (all, some) {
        (true, _) => Starting::Acts,
        (false, true) => Starting::MayAct,
        (false, false) => Starting::Rests,
    })
}
