//! A load through a day of the car: what was pulled in stays in down to its drop-out, what was let go stays so up to
//! its pull-in.

use super::{KeyState, LoadState, Rest, StateRest, judge::effect};

/// A step of that day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DayStep {
    /// The key state.
    pub state: KeyState,
    /// Whether the output has been on before.
    pub is_after_on: bool,
    /// Where the load may be, at the corner that does most.
    pub position: Position,
}

/// Where a load may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Position {
    /// It has let go, at every corner.
    Out,
    /// It was in, and may stay so.
    MayStayIn,
    /// It may act, or acts.
    In,
}

/// The states in the order of a day: the battery is connected, the key turned, the engine runs; the output is switched on
/// and off; the controller restarts while it is on (a dip at a compression does it); another output comes on; the key is
/// turned off, the controller some seconds later.
const DAY: [(KeyState, bool); 10] = [
    (KeyState::KeyOff, false),
    (KeyState::Starting, false),
    (KeyState::Off, false),
    (KeyState::On, true),
    (KeyState::Starting, true),
    (KeyState::On, true),
    (KeyState::Off, true),
    (KeyState::OtherOn, true),
    (KeyState::Outlived, true),
    (KeyState::KeyOff, true),
];

/// The steps of a day for the load that is asked about.
///
/// Supply and temperature may change from step to step, so that each is judged by the corner that does most.
pub fn day(rest: &Rest) -> Vec<DayStep> {
    let mut before = Position::Out;
    let step = |(state, is_after_on): (KeyState, bool)| {
        let position = next(before, most(rest, rest.state(state)?));
        before = position;
        Some(DayStep { state, is_after_on, position })
    };
    DAY.into_iter().filter_map(step).collect()
}

/// Where a load may be that was at `before`, and is now driven like this.
fn next(before: Position, driven: LoadState) -> Position {
    match (driven, before) {
        (LoadState::Energised, _) => Position::In,
        (LoadState::MayHold, Position::MayStayIn | Position::In) => Position::MayStayIn,
        (LoadState::MayHold, Position::Out) | (LoadState::Released, _) => Position::Out,
    }
}

/// What the corner that does most does in a state.
fn most(rest: &Rest, state: &StateRest) -> LoadState {
    let Some(load) = rest.wiring.loads.get(rest.subject) else { return LoadState::Released };
    let corners = state.corners.iter().map(|solved| effect(load, solved));
    corners.max().unwrap_or(LoadState::Released)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn between_drop_out_and_pull_in_a_load_stays_where_it_was() {
        assert_eq!(next(Position::Out, LoadState::MayHold), Position::Out);
        assert_eq!(next(Position::In, LoadState::MayHold), Position::MayStayIn);
        assert_eq!(next(Position::MayStayIn, LoadState::MayHold), Position::MayStayIn);
        assert_eq!(next(Position::In, LoadState::Released), Position::Out);
        assert_eq!(next(Position::Out, LoadState::Energised), Position::In);
    }
}
