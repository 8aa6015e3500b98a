//! The numbers behind the verdict.

use super::{
    case::{LoadAtLevel, Subject},
    switching, working,
};
use crate::{
    message::Message,
    output::{KeyState, Load, Phase, SolvedCorner, StateRest},
    quantity::{Band, Current, Measure, Voltage, amperes, volts},
    questions::outputs::words,
    report::Figure,
    say,
};

/// The numbers of the first case; a table has those of the other.
pub(super) fn figures(subject: &Subject<'_>) -> Vec<Figure> {
    let Some(case) = subject.cases.first() else { return Vec::new() };
    let mut figures = Vec::new();
    figures.extend(on_current(subject, case, Phase::Running, say!(words::FIGURE_ON_CURRENT)));
    figures.extend(on_current(subject, case, Phase::Standing, say!(words::FIGURE_INRUSH)));
    figures.extend(rest_voltage(subject, case));
    figures.extend(key_off_current(case));
    figures.extend(acts_hot(subject));
    figures.extend(switching::figures(case));
    figures
}

/// The current in the load; the verdict counts all that its output carries.
fn on_current(
    subject: &Subject<'_>,
    case: &LoadAtLevel,
    phase: Phase,
    label: Message,
) -> Option<Figure> {
    let on = case.rest.state(KeyState::On)?;
    let load = subject.solved()?;
    if phase == Phase::Standing && load.kind.running_ratio() <= 1.0 {
        return None;
    }
    let corners = || on.corners.iter().filter(|it| it.point.phase == phase);
    let worst = corners().max_by(|a, b| through(a).base().total_cmp(&through(b).base()))?;
    let nominal = match phase {
        Phase::Running => &on.nominal,
        Phase::Standing => worst,
    };
    let band =
        corners().fold(Band::exact(through(nominal)), |band, it| band.widened_to(through(it)));
    let mut steps = working::state_steps(KeyState::On, nominal);
    if load.kind.is_copper() {
        steps.push(working::resistance_at(load, worst.point.at.temperature));
    }
    steps.extend(working::state_steps(KeyState::On, worst));
    Some(Figure::new(label, band, steps))
}

fn through(solved: &SolvedCorner) -> Current {
    solved.load().map_or_else(|| amperes(0.0), |flow| amperes(flow.current.base().abs()))
}

fn rest_voltage(subject: &Subject<'_>, case: &LoadAtLevel) -> Option<Figure> {
    let load = subject.solved()?;
    let off = case.rest.state(KeyState::Off)?;
    let size = |v: Voltage| volts(v.base().abs());
    let nominal = size(off.nominal.load()?.voltage);
    let corners = off.corners.iter().filter_map(SolvedCorner::load);
    let band = corners.fold(Band::exact(nominal), |band, it| band.widened_to(size(it.voltage)));
    let mut steps = working::state_steps(KeyState::Off, &off.nominal);
    if let Some(worst) = worst(load, off) {
        steps.extend(working::state_steps(KeyState::Off, worst));
    }
    Some(Figure::new(say!(words::FIGURE_REST_VOLTAGE), band, steps))
}

/// The corner that drives the load most.
pub(super) fn worst<'a>(load: &Load, state: &'a StateRest) -> Option<&'a SolvedCorner> {
    let drive = |it: &SolvedCorner| it.acting(load).base();
    state.corners.iter().max_by(|a, b| drive(a).total_cmp(&drive(b)))
}

fn key_off_current(case: &LoadAtLevel) -> Option<Figure> {
    let off = case.rest.state(KeyState::KeyOff)?;
    let into = |solved: &SolvedCorner| solved.operating.into_rail();
    let corners = off.corners.iter();
    let band = corners.fold(Band::exact(into(&off.nominal)), |band, it| band.widened_to(into(it)));
    if band.high.base() < 1e-6 {
        return None;
    }
    let mut steps = working::state_steps(KeyState::KeyOff, &off.nominal);
    let worst = off.corners.iter().max_by(|a, b| into(a).base().total_cmp(&into(b).base()))?;
    steps.extend(working::state_steps(KeyState::KeyOff, worst));
    Some(Figure::new(say!(words::FIGURE_KEY_OFF_CURRENT), band, steps))
}

fn acts_hot(subject: &Subject<'_>) -> Option<Figure> {
    let load = subject.solved().filter(|load| load.kind.is_copper())?;
    let hottest = subject.planned.around.corners.iter().map(|at| at.temperature);
    let hottest = hottest.reduce(|a, b| if b > a { b } else { a })?;
    let (voltage, steps) = working::acts_at(load, hottest);
    Some(Figure::new(say!(words::FIGURE_ACTS_HOT), Band::exact(voltage), steps))
}
