//! Every key state in a row, and what was taken for it.

use super::{
    advice::{range, reading_range},
    case::{Case, Subject},
    names::{self, word},
    switching, working,
};
use crate::{
    output::{
        DIODE_FORWARD_V, DIODE_ON_OHM, DayStep, Effect, FarEnd, Found, KeyState, Load, Position,
        Solved, StateRest, Trouble, day,
    },
    quantity::{Band, Measure, Value, ohms, volts},
    report::{Row, Table, Tone},
    say,
};

/// A table for each on-level that is possible, then what was taken.
pub(super) fn tables(subject: &Subject<'_>) -> Vec<Table> {
    let is_one = subject.cases.len() == 1;
    let mut tables: Vec<_> =
        subject.cases.iter().filter_map(|case| states(subject, case, is_one)).collect();
    tables.extend(subject.cases.iter().filter_map(through_a_day));
    tables.extend(taken(subject));
    tables
}

fn states(subject: &Subject<'_>, case: &Case, is_one: bool) -> Option<Table> {
    let load = subject.solved()?;
    let caption = if is_one {
        say!("rest.table-states")
    } else {
        say!(
            "rest.table-states-at-level",
            level = names::level(case.level, case.rest.wiring.output.stage)
        )
    };
    let columns = vec![
        say!("rest.column-state"),
        say!("rest.column-effect"),
        say!("rest.column-across"),
        say!("rest.column-through"),
        say!("rest.column-pin"),
        say!("rest.column-bare"),
    ];
    let rows = case.rest.states.iter().map(|state| row(load, case, state)).collect();
    let mut steps = Vec::new();
    for state in &case.rest.states {
        steps.extend(working::state_steps(state.state, &state.nominal));
        steps.extend(working::bare_step(state.state, &state.bare.metered));
    }
    Some(Table { caption, columns, rows, working: steps })
}

/// Where the load is through a day, where what was before decides.
fn through_a_day(case: &Case) -> Option<Table> {
    let steps = day(&case.rest);
    if steps.iter().all(|step| step.position != Position::MayStayIn) {
        return None;
    }
    let is_reversible = case.rest.wiring.is_reversible(case.rest.subject);
    let is_meant =
        |state: KeyState| state.is_asked() || (state == KeyState::OtherOn && is_reversible);
    let row = |step: &DayStep| {
        let state = word(names::state(step.state));
        let name = match (step.state, step.is_after_on) {
            (KeyState::Starting, true) => word("rest.day-again"),
            (KeyState::On | KeyState::OtherOn, _) | (_, false) => state,
            (_, true) => Value::text(say!("rest.day-on-before", state = state).into_text()),
        };
        let (position, tone) = match step.position {
            Position::Out => ("rest.position-out", None),
            Position::MayStayIn => ("rest.position-may-stay", Some(Tone::Doubtful)),
            Position::In if is_meant(step.state) => ("rest.position-in", None),
            Position::In => ("rest.position-in", Some(Tone::Bad)),
        };
        Row { cells: vec![name, word(position)], tone }
    };
    let mut working = Vec::new();
    for state in case.rest.states.iter().filter(|it| !it.state.is_fault()) {
        working.extend(working::state_steps(state.state, &state.nominal));
    }
    Some(Table {
        caption: say!("rest.table-day"),
        columns: vec![say!("rest.column-step"), say!("rest.column-effect")],
        rows: steps.iter().map(row).collect(),
        working,
    })
}

fn row(load: &Load, case: &Case, state: &StateRest) -> Row {
    let (effect, tone) = effect(load, case, state);
    let nothing = || Value::text("");
    let pin = pin(state);
    let forward = forward(load, case);
    Row {
        cells: vec![
            word(names::state_of(state.state, &case.rest.wiring, case.rest.subject)),
            word(effect),
            state.voltage().map_or_else(nothing, |band| sized(&band, forward)),
            state.current().map_or_else(nothing, |band| sized(&band, forward)),
            pin.map_or_else(nothing, |band| range(&band)),
            reading_range(&state.bare),
        ],
        tone: Some(tone),
    }
}

/// The sign of the current, from the pin, with which the load is meant to work.
pub(super) fn forward(load: &Load, case: &Case) -> f64 {
    let on = case.rest.state(KeyState::On).and_then(|on| on.nominal.load());
    match on.map_or(0.0, |flow| flow.current.base()) {
        current if current > 1e-6 => 1.0,
        current if current < -1e-6 => -1.0,
        _ if load.far_end == FarEnd::Ground => 1.0,
        _ => -1.0,
    }
}

/// Without a sign, and "backwards" where it runs against the way in which the load is meant to work.
fn sized<Q: Measure>(band: &Band<Q>, forward: f64) -> Value {
    let ends = [band.low, band.nominal, band.high].map(|it| it.base() * forward);
    let most =
        ends.into_iter().fold(0.0, |most: f64, it| if it.abs() > most.abs() { it } else { most });
    let sizes = [band.low, band.high, band.nominal].map(|it| it.base().abs());
    // a band that spans nought has its least size there
    let least = if band.low.base() * band.high.base() < 0.0 { 0.0 } else { sizes[0].min(sizes[1]) };
    let value = range(&Band {
        low: Q::from_base(least),
        nominal: Q::from_base(sizes[2]),
        high: Q::from_base(most.abs()),
    });
    let is_backwards =
        most < 0.0 && Q::from_base(most).show().shown != Q::from_base(0.0).show().shown;
    backwards(value, is_backwards)
}

/// Says "backwards" where it is so.
pub(super) fn backwards(value: Value, is_backwards: bool) -> Value {
    if !is_backwards {
        return value;
    }
    let words = say!("rest.backwards", value = value).into_text();
    value.said(words)
}

fn pin(state: &StateRest) -> Option<Band<crate::quantity::Voltage>> {
    let nominal = state.nominal.operating.pin?;
    let corners = state.corners.iter().filter_map(|solved| solved.operating.pin);
    Some(corners.fold(Band::exact(nominal), |band, pin| band.widened_to(pin)))
}

/// What the load does over all corners of a state: the code of the words, and how it sounds.
pub(super) fn effect(load: &Load, case: &Case, state: &StateRest) -> (&'static str, Tone) {
    let is_reversible = case.rest.wiring.is_reversible(case.rest.subject);
    let is_shorted = |it: &Found| it.trouble == Trouble::ShortedByDiode && it.state == state.state;
    match state.state {
        _ if case.judgement.found.iter().any(is_shorted) => {
            return ("rest.effect-shorted", Tone::Bad);
        }
        KeyState::OtherOn if is_reversible => return when_turned(load, state),
        KeyState::On => return when_on(load, state),
        KeyState::Pulsed => return switching::effect(load, state),
        _ => {}
    }
    let at = |solved: &Solved| {
        let temperature = solved.point.at.temperature;
        solved.load().map_or(Effect::Released, |it| load.effect(it.voltage, temperature))
    };
    let worst = state.corners.iter().map(at).max().unwrap_or(Effect::Released);
    let least = state.corners.iter().map(at).min().unwrap_or(Effect::Released);
    let feeds = |trouble| {
        let mut found = case.judgement.found.iter();
        state.state == KeyState::KeyOff && found.any(|it| it.trouble == trouble)
    };
    if state.state.is_fault() {
        return if worst == Effect::Released {
            ("rest.effect-rests", Tone::Good)
        } else {
            ("rest.effect-may-act", Tone::Doubtful)
        };
    }
    match (worst, least) {
        (Effect::Energised, Effect::Energised) => ("rest.effect-live", Tone::Bad),
        (Effect::Energised, _) => ("rest.effect-live-at-some", Tone::Bad),
        (Effect::MayHold, _) => ("rest.effect-may-hold", Tone::Doubtful),
        (Effect::Released, _) if feeds(Trouble::WakesController) => {
            ("rest.effect-rests-feeds", Tone::Bad)
        }
        (Effect::Released, _) => ("rest.effect-rests", Tone::Good),
    }
}

/// A load that the other output of its pair drives backwards; where one conducts one way only it rests.
fn when_turned(load: &Load, state: &StateRest) -> (&'static str, Tone) {
    match when_on(load, state) {
        ("rest.effect-never", _) => ("rest.effect-rests", Tone::Good),
        (_, tone) => ("rest.effect-turned", tone),
    }
}

fn when_on(load: &Load, state: &StateRest) -> (&'static str, Tone) {
    let is_sure = |solved: &&Solved| {
        let temperature = solved.point.at.temperature;
        solved.load().is_some_and(|it| load.is_sure_to_act(it.voltage, temperature))
    };
    let may_act = |solved: &Solved| {
        let temperature = solved.point.at.temperature;
        solved.load().is_some_and(|it| load.effect(it.voltage, temperature) == Effect::Energised)
    };
    let unsure: Vec<_> = state.corners.iter().filter(|it| !is_sure(it)).collect();
    if unsure.is_empty() {
        ("rest.effect-acts", Tone::Good)
    } else if unsure.iter().all(|it| it.point.at.is_cranking) {
        ("rest.effect-acts-not-cranking", Tone::Good)
    } else if state.corners.iter().any(may_act) {
        ("rest.effect-not-sure", Tone::Doubtful)
    } else {
        ("rest.effect-never", Tone::Bad)
    }
}

/// What the answer was worked out with, and where each value comes from.
fn taken(subject: &Subject<'_>) -> Option<Table> {
    let load = subject.solved()?;
    let (planned, around) = (subject.planned, &subject.planned.around);
    let from = |is_assumed: bool, code: &'static str| {
        word(if is_assumed { code } else { "rest.taken-given" })
    };
    let row = |what, value, basis| Row { cells: vec![word(what), value, basis], tone: None };
    let usual = "rest.taken-usual";
    let practice = "rest.taken-practice";
    let mut rows = vec![
        row(
            "rest.taken-resistance",
            ends(&load.resistance),
            from(subject.load.assumed.resistance, usual),
        ),
        row("rest.taken-pull-in", ends(&load.pull_in), from(subject.load.assumed.pull_in, usual)),
    ];
    if load.inductance.high.base() > 0.0 {
        let basis = from(subject.load.assumed.inductance, practice);
        rows.push(row("rest.taken-inductance", ends(&load.inductance), basis));
    }
    if subject.wiring()?.output.stage.has_upper() || subject.wiring()?.output.pull_up.is_some() {
        let basis = from(planned.is_dead_rail_assumed, practice);
        rows.push(row("rest.taken-dead-supply", ends(&around.dead_rail), basis));
    }
    if matches!(load.far_end, FarEnd::Ignition | FarEnd::Relay) {
        let basis = from(planned.is_dead_feed_assumed, practice);
        rows.push(row("rest.taken-dead-feed", ends(&around.dead_feed), basis));
    }
    if load.far_end == FarEnd::Relay {
        let states = word("rest.taken-contact-states");
        rows.push(row("rest.taken-contact", states, word(practice)));
    }
    rows.push(row("rest.taken-start", Value::text("0.1 to 1 s"), word(practice)));
    let (forward, slope) = (volts(DIODE_FORWARD_V).show(), ohms(DIODE_ON_OHM).show());
    let diode = Value::text(format!("{} + {}", forward.shown, slope.shown));
    rows.push(row("rest.taken-diode", diode, word(practice)));
    Some(Table {
        caption: say!("rest.table-taken"),
        columns: vec![
            say!("rest.column-what"),
            say!("rest.column-value"),
            say!("rest.column-basis"),
        ],
        rows,
        working: vec![working::resistance_at(load, around.nominal.temperature)],
    })
}

fn ends<Q: Measure>(band: &Band<Q>) -> Value {
    let value = band.nominal.show();
    if !band.is_spread() {
        return value;
    }
    value.said(format!("{} to {}", band.low.show().shown, band.high.show().shown))
}
