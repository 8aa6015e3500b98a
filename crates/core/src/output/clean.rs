//! Whether a load on an output is clean in every key state at every corner, as fast as that can be told.

use super::{
    Alternative, Change, Contact, KeyState, Phase, Point, SolvedCorner, Solver, Surroundings,
    Trouble, Wiring, corner, cost,
    judge::{swing, troubles_at},
};
use crate::{
    budget::Budget,
    quantity::{Current, Measure, Voltage, amperes, volts},
};

/// The most that is across a load when it is not asked to act, and what is across it when it is on, if that is clean
/// in every key state at every corner. Nothing as well where that is more than may be spent.
pub fn suits(
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
    budget: &Budget,
) -> Option<(Voltage, Voltage)> {
    let change = Change::Level(wiring.level);
    solve_clean(change, wiring, subject, around, (budget, &[]))
        .map(|found| (found.unasked, found.on))
}

/// Whether a load may be connected so: clean in every key state at every corner, but for what is `borne`. Not where that is more than
/// may be spent.
pub fn may_connect(
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
    spent: (&Budget, &[Trouble]),
) -> bool {
    solve_clean(Change::Level(wiring.level), wiring, subject, around, spent).is_some()
}

/// States in which a load should rest, in the order in which they fail most.
pub(super) const RESTING: [KeyState; 3] = [KeyState::Off, KeyState::KeyOff, KeyState::Starting];

/// The change, if the load solves clean but for what is `borne`, and that is not more than may be spent.
pub(super) fn solve_clean(
    change: Change,
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
    (budget, borne): (&Budget, &[Trouble]),
) -> Option<Alternative> {
    budget.take_spare(cost::circuit(wiring))?;
    let mut solver = Solver::new(wiring, around);
    let nominal = Point::nominal(around.nominal, subject, Contact::Closed);
    let on = solver.operate(KeyState::On, &nominal)?;
    let mut found = Alternative {
        change,
        level: None,
        is_turned: false,
        unasked: volts(0.0),
        on: volts(on.loads.get(subject)?.voltage.base().abs()),
        current: amperes(0.0),
        inrush: amperes(0.0),
    };
    let states = [
        KeyState::Off,
        KeyState::On,
        KeyState::KeyOff,
        KeyState::Starting,
        KeyState::Outlived,
        KeyState::OtherOn,
        KeyState::Pulsed,
    ];
    let load = wiring.loads.get(subject)?;
    let (mut on, mut off) = (Vec::new(), Vec::new());
    for state in states.into_iter().filter(|state| state.concerns(wiring, load)) {
        if state == KeyState::Starting && wiring.is_the_same(state, KeyState::Off) {
            continue;
        }
        for solved in clean_corners(state, &mut solver, subject, (budget, borne))? {
            let is_turned = wiring.is_turned(subject, solved.point.commanded);
            found.widen(state, &solved, is_turned);
            match state {
                KeyState::On => on.push(solved),
                KeyState::Off => off.push(solved),
                _ => {}
            }
        }
    }
    let swing = swing(load, on.iter().collect(), off.iter().collect());
    if swing.is_some_and(|(trouble, ..)| !borne.contains(&trouble)) {
        return None;
    }
    // what may be weak must act all the same
    let acts = !borne.contains(&Trouble::Weak) || found.on >= load.pull_in.low;
    acts.then_some(found)
}

/// Whether no corner of a state shows a trouble; not where that is more than may be spent.
pub(super) fn is_clean_in(
    state: KeyState,
    wiring: &Wiring,
    subject: usize,
    around: &Surroundings,
    (budget, borne): (&Budget, &[Trouble]),
) -> bool {
    let mut solver = Solver::new(wiring, around);
    clean_corners(state, &mut solver, subject, (budget, borne)).is_some()
}

/// Every corner of a state, solved; nothing as soon as one shows a trouble. The highest supplies come first: they fail
/// most.
fn clean_corners(
    state: KeyState,
    solver: &mut Solver<'_>,
    subject: usize,
    (budget, borne): (&Budget, &[Trouble]),
) -> Option<Vec<SolvedCorner>> {
    let (wiring, around) = (solver.wiring, solver.around);
    let corners = corner::count(state, wiring, subject, around);
    budget.take_spare(cost::LISTING.saturating_mul(corners.usual + corners.hottest))?;
    let points = corner::points(state, wiring, subject, around).into_iter().rev();
    points
        .map(|point| {
            budget.take_spare(cost::point(state, wiring, &point))?;
            let solved = SolvedCorner { point, operating: solver.operate(state, &point)? };
            let troubles = troubles_at(wiring, subject, state, &solved);
            let is_clean = |it: &Trouble| it.is_bearable() || borne.contains(it);
            troubles.iter().all(is_clean).then_some(solved)
        })
        .collect()
}

impl Alternative {
    fn widen(&mut self, state: KeyState, solved: &SolvedCorner, is_turned: bool) {
        let larger = |one: Current, other: Current| if other > one { other } else { one };
        let carried = solved.operating.switch_current();
        match (state, solved.point.phase) {
            (KeyState::On, Phase::Running) => self.current = larger(self.current, carried),
            (KeyState::On, Phase::Standing) => self.inrush = larger(self.inrush, carried),
            // a pair of half-bridges is there to turn its load
            (KeyState::OtherOn, _) if is_turned => {}
            // what outlives the key is no rest: it is told by itself
            (KeyState::Pulsed | KeyState::Outlived, _) => {}
            _ => {
                let across = solved.load().map_or(0.0, |flow| flow.voltage.base().abs());
                self.unasked = volts(self.unasked.base().max(across));
            }
        }
    }
}
