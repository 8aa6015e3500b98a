//! The circuit in every key state, as numbers to draw from.

use super::{
    advice,
    case::{LoadAtLevel, Subject},
    figure, names, table,
};
use crate::{
    output::{
        Drive, FarEnd, KeyState, Load, LoadState, PinBranch, PinPart, SolvedCorner, StateRest,
        Suppression,
    },
    quantity::{Current, Measure, amperes},
    questions::outputs::words,
    report::{
        Picture,
        picture::{self, Circuit, CircuitState},
    },
    say, say_of,
};

/// Less than this is not drawn, nor said.
const LEAST_A: f64 = 5e-7;

/// A picture for each on-level that is possible.
pub(super) fn pictures(subject: &Subject<'_>) -> Vec<Picture> {
    subject.cases.iter().filter_map(|case| circuit(subject, case).map(Picture::Circuit)).collect()
}

fn circuit(subject: &Subject<'_>, case: &LoadAtLevel) -> Option<Circuit> {
    let load = subject.solved()?;
    let output = &case.rest.wiring.output;
    let (name, output_name) = (subject.load.name.clone(), subject.output.name.clone());
    let (stage, end) = (names::a_stage(output.stage), names::end(load.far_end));
    let caption = if output.stage.is_two_way() || subject.is_decided_elsewhere() {
        let level = subject.level(case);
        say!(
            words::PICTURE_AT_LEVEL,
            load = name,
            output = output_name,
            stage = stage,
            level = level,
            end = end
        )
    } else {
        say!(words::PICTURE, load = name, output = output_name, stage = stage, end = end)
    };
    Some(Circuit {
        caption,
        stage: names::stage_code(output.stage),
        far_end: names::end_code(load.far_end),
        load: names::kind_code(load.kind),
        is_driven_up: !is_driven_down(load),
        pull_up: output.pull_up.as_ref().map(|(_, rail)| names::rail_code(*rail)),
        pull_down: output.pull_down.is_some(),
        suppressor: match load.suppression {
            Suppression::Unknown | Suppression::None => None,
            Suppression::Diode { is_right_way } => {
                Some(if is_right_way == is_driven_down(load) { "diode-up" } else { "diode-down" })
            }
            Suppression::Resistor(_) => Some("resistor"),
        },
        states: case.rest.states.iter().filter_map(|state| drawn(load, case, state)).collect(),
    })
}

/// Whether the plus is above while the load acts: the pin is drawn above ground and below every feed.
fn is_driven_down(load: &Load) -> bool {
    load.far_end == FarEnd::Ground || !load.is_from_pin()
}

fn drawn(load: &Load, case: &LoadAtLevel, state: &StateRest) -> Option<CircuitState> {
    let (effect, tone) = table::effect(load, case, state);
    let solved = shown(load, state);
    let flow = solved.load()?;
    let is_backwards = flow.current.base() * table::forward(load, case) < -LEAST_A;
    let voltage = advice::size(flow.voltage);
    let size = amperes(flow.current.base().abs()).show();
    let current = table::backwards(size, is_backwards);
    let (effect, corner) = (names::word(effect), solved.name(state.state, &case.rest.wiring));
    let summary = match beside(solved) {
        Some(current_beside) => say!(
            words::PICTURE_STATE_BESIDE,
            voltage = voltage,
            current = current,
            beside = current_beside,
            what = names::part(PinPart::Suppressor(solved.point.subject)),
            effect = effect,
            corner = corner
        ),
        None => say!(
            words::PICTURE_STATE,
            voltage = voltage,
            current = current,
            effect = effect,
            corner = corner
        ),
    };
    Some(CircuitState {
        state: names::state_code(state.state),
        drive: match case.rest.wiring.drive(state.state) {
            Drive::Open => "open",
            Drive::ToGround => "lower",
            Drive::ToSupply => "upper",
        },
        name: say_of!(names::state_of(state.state, &case.rest.wiring, case.rest.subject)),
        summary,
        tone,
        pin: solved.operating.pin.map(Measure::show),
        far: flow.far.map(Measure::show),
        rail: solved.operating.rail.map(Measure::show),
        currents: currents(load, state.state, solved),
    })
}

/// What flows through what lies across the load, where that is more than nothing.
fn beside(solved: &SolvedCorner) -> Option<Current> {
    let part = PinPart::Suppressor(solved.point.subject);
    let branch = solved.operating.branches.iter().find(|it| it.part == part)?;
    let current = amperes(branch.current.base().abs());
    (current.base() >= LEAST_A).then_some(current)
}

/// What is meant, unless a corner is worse: then that corner, so that the picture agrees with the verdict.
fn shown<'a>(load: &Load, state: &'a StateRest) -> &'a SolvedCorner {
    let effect = |solved: &SolvedCorner| {
        let temperature = solved.point.at.temperature;
        solved.load().map_or(LoadState::Released, |it| load.effect(it, temperature))
    };
    match figure::worst(load, state) {
        Some(worst) if !state.state.is_asked() && effect(worst) > effect(&state.nominal) => worst,
        _ => &state.nominal,
    }
}

/// The branches that carry current, from top to bottom of the drawing.
fn currents(load: &Load, state: KeyState, solved: &SolvedCorner) -> Vec<picture::BranchCurrent> {
    let operating = &solved.operating;
    let mut branches: Vec<_> =
        operating.branches.iter().filter_map(|it| branch(it, solved.point.subject)).collect();
    let is_live = operating.into_feed().base().abs() <= 0.0;
    let is_fed = load.far_end != FarEnd::Ground && is_live && state_feeds(load, state);
    if let Some(flow) = solved.load().filter(|_| is_fed) {
        branches.push(("feed", -flow.current));
    }
    branches.push(("feed-consumers", operating.into_feed()));
    branches.push(("rail-consumers", operating.into_rail()));
    let carries = |current: &Current| current.base().abs() >= LEAST_A;
    let drawn = branches.into_iter().filter(|(_, current)| carries(current));
    drawn.map(|(part, current)| picture::BranchCurrent { part, current: current.show() }).collect()
}

fn state_feeds(load: &Load, state: KeyState) -> bool {
    load.far_end == FarEnd::Battery || state != KeyState::KeyOff
}

/// A branch of the pin with its current from top to bottom; other loads on the pin are left out.
fn branch(branch: &PinBranch, subject: usize) -> Option<(&'static str, Current)> {
    let current = branch.current;
    let up = || amperes(-current.base());
    Some(match branch.part {
        PinPart::Load(at) if at == subject => ("load", current),
        PinPart::Suppressor(at) if at == subject => ("suppressor", current),
        PinPart::Load(_) | PinPart::Suppressor(_) | PinPart::Beyond | PinPart::Meter => {
            return None;
        }
        PinPart::UpperSwitch | PinPart::UpperLeak => ("upper-switch", up()),
        PinPart::UpperDiode => ("upper-diode", up()),
        PinPart::PullUp => ("pull-up", up()),
        PinPart::LowerSwitch | PinPart::LowerLeak => ("lower-switch", current),
        PinPart::LowerDiode => ("lower-diode", current),
        PinPart::PullDown => ("pull-down", current),
    })
}
