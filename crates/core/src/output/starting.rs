//! What a load does in a state in which nothing is asked of it: while the controller starts, its stages open, or with its output off.

use super::{KeyState, LoadState, SolvedCorner, Solver, Surroundings, Wiring, corner, cost, judge};

/// What it does then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Resting {
    /// It acts at every corner.
    Acts,
    /// At some it may.
    MayAct,
    /// It rests.
    Rests,
}

/// More steps than this are not taken for it: it then counts as resting, and the answer about the load tells.
const MOST: u64 = 10_000_000;

/// What the load with the number `subject` does in that state; nothing where there is no such load.
pub fn while_unasked(
    wiring: &Wiring,
    subject: usize,
    state: KeyState,
    around: &Surroundings,
) -> Option<Resting> {
    let load = wiring.loads.get(subject)?;
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
        (true, _) => Resting::Acts,
        (false, true) => Resting::MayAct,
        (false, false) => Resting::Rests,
    })
}
