//! How many steps a load takes to solve, counted before it is done: what a [`Budget`](crate::budget::Budget) is spent on.
//!
//! Every key state is solved at every corner, and every corner is one circuit. What a circuit costs grows with its parts,
//! and with the cube of the outputs that hang together; both were measured natively.

use super::{
    Contact, KeyState, Load, Output, Point, Suppression, Surroundings, Wiring, corner,
    hottest::tried,
};

/// A circuit, whatever is in it.
const CIRCUIT: u64 = 1_100;
/// A switch, a resistor, a load in it.
const PART: u64 = 170;
/// A diode in it, or a load that conducts one way: where it bends, the search for the answer turns.
const DIODE: u64 = 220;
/// Nodes beside the pins: the battery, and rails that are dead or the controller's own.
const RAILS: u64 = 4;
/// The part of a node in each step of the elimination, which goes through three nodes at a time, as far as they are joined.
const NODES_IN_A_CUBE: u64 = 5;
/// What a corner is judged by, once it is solved, and what is kept of it.
const JUDGING: u64 = 250;
/// Writing a corner down, before it is solved.
pub(super) const LISTING: u64 = 50;
/// One rhythm of a pulsed load that is tried for its heat.
const RHYTHM: u64 = 150;

/// One circuit.
pub(super) fn circuit(wiring: &Wiring) -> u64 {
    let outputs: u64 = wiring.outputs().map(output).sum();
    let loads: u64 = wiring.all_loads().map(load).sum();
    let nodes = RAILS + count(wiring.beyond.len()) + 1;
    CIRCUIT + outputs + loads + nodes * nodes * nodes / NODES_IN_A_CUBE
}

/// What an output brings into a circuit: a closed switch or what open ones leak, body diodes, resistors at the pin.
fn output(output: &Output) -> u64 {
    let switches = u64::from(output.stage.has_lower()) + u64::from(output.stage.has_upper());
    let leaks = if output.leakage.is_some() { switches } else { 0 };
    let pulls = u64::from(output.pull_up.is_some()) + u64::from(output.pull_down.is_some());
    PART * (1 + leaks + pulls) + DIODE * switches
}

/// A load, and what lies across it.
fn load(load: &Load) -> u64 {
    let itself = if load.is_one_way() { DIODE } else { PART };
    let across = match load.suppression {
        Suppression::Unknown | Suppression::None => 0,
        Suppression::Diode { .. } => DIODE,
        Suppression::Resistor(_) => PART,
    };
    itself + across
}

/// A corner of a key state: one circuit, or two where the load is pulsed.
pub(super) fn point(state: KeyState, wiring: &Wiring, point: &Point) -> u64 {
    let once = circuit(wiring) + JUDGING;
    let Some(pulse) = wiring.pulse().filter(|_| state == KeyState::Pulsed) else { return once };
    let load = wiring.loads.get(point.subject);
    let is_smoothed =
        pulse.frequency.is_spread() || load.is_some_and(|load| load.inductance.is_spread());
    let rhythms = if point.is_hottest { tried([is_smoothed, pulse.duty.is_spread()]) } else { 1 };
    2 * once + RHYTHM * u64::from(rhythms)
}

/// Every corner of a key state.
fn state(state: KeyState, wiring: &Wiring, subject: usize, around: &Surroundings) -> u64 {
    let corners = corner::count(state, wiring, subject, around);
    let nominal = Point::nominal(around.nominal, subject, Contact::Closed);
    let usual = corners.usual.saturating_mul(point(state, wiring, &nominal));
    let hottest = Point { is_hottest: true, ..nominal };
    let hottest = corners.hottest.saturating_mul(point(state, wiring, &hottest));
    // what is meant is solved as often as others can be on
    let commands = count(wiring.commands(state, subject).len());
    let meant = (2 * commands).saturating_mul(point(state, wiring, &nominal));
    usual.saturating_add(hottest).saturating_add(meant)
}

/// Every key state of a load: [`super::rest`], and its judgement.
pub fn resting(wiring: &Wiring, subject: usize, around: &Surroundings) -> u64 {
    let Some(load) = wiring.loads.get(subject) else { return 0 };
    let states: Vec<_> =
        KeyState::ALL.into_iter().filter(|state| state.concerns(wiring, load)).collect();
    let each = states.iter().enumerate().map(|(at, one)| {
        let before = at.checked_sub(1).and_then(|before| states.get(before));
        let is_known = before.is_some_and(|before| wiring.is_the_same(*before, *one));
        if is_known { 0 } else { state(*one, wiring, subject, around) }
    });
    each.fold(0, u64::saturating_add)
}

/// How many circuits that makes.
pub fn circuits(wiring: &Wiring, subject: usize, around: &Surroundings) -> u64 {
    let Some(load) = wiring.loads.get(subject) else { return 0 };
    let states = KeyState::ALL.into_iter().filter(|state| state.concerns(wiring, load));
    let each = states.map(|state| {
        let corners = corner::count(state, wiring, subject, around);
        corners.usual.saturating_add(corners.hottest)
    });
    each.fold(0, u64::saturating_add)
}

fn count(number: usize) -> u64 {
    u64::try_from(number).unwrap_or(u64::MAX)
}

#[cfg(test)]
mod tests;
