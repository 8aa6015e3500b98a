//! Every key state in a row, and what was taken for it.

use super::{
    advice::{range, reading_range},
    case::{LoadAtLevel, Subject},
    names::{self, word},
    switching, working,
};
use crate::{
    output::{
        Commanded, DIODE_FORWARD_V, DIODE_ON_OHM, DayStep, FarEnd, Found, KeyState, Load,
        LoadState, Position, SolvedCorner, StateRest, Trouble, day,
    },
    quantity::{Band, Measure, Value, ohms, volts},
    questions::outputs::words,
    report::{Row, Table, Tone},
    say,
    words::Wording,
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

fn states(subject: &Subject<'_>, case: &LoadAtLevel, is_one: bool) -> Option<Table> {
    let load = subject.solved()?;
    let caption = if is_one {
        say!(words::TABLE_STATES)
    } else {
        say!(words::TABLE_STATES_AT_LEVEL, level = subject.level(case))
    };
    let columns = vec![
        say!(words::COLUMN_STATE),
        say!(words::COLUMN_EFFECT),
        say!(words::COLUMN_ACROSS),
        say!(words::COLUMN_THROUGH),
        say!(words::COLUMN_PIN),
        say!(words::COLUMN_BARE),
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
fn through_a_day(case: &LoadAtLevel) -> Option<Table> {
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
            (KeyState::Starting, true) => word(words::DAY_AGAIN),
            (KeyState::On | KeyState::OtherOn, _) | (_, false) => state,
            (_, true) => Value::text(say!(words::DAY_ON_BEFORE, state = state).into_text()),
        };
        let (position, tone) = match step.position {
            Position::Out => (words::POSITION_OUT, None),
            Position::MayStayIn => (words::POSITION_MAY_STAY, Some(Tone::Doubtful)),
            Position::In if is_meant(step.state) => (words::POSITION_IN, None),
            Position::In => (words::POSITION_IN, Some(Tone::Bad)),
        };
        Row { cells: vec![name, word(position)], tone }
    };
    let mut working = Vec::new();
    for state in case.rest.states.iter().filter(|it| !it.state.is_fault()) {
        working.extend(working::state_steps(state.state, &state.nominal));
    }
    Some(Table {
        caption: say!(words::TABLE_DAY),
        columns: vec![say!(words::COLUMN_STEP), say!(words::COLUMN_EFFECT)],
        rows: steps.iter().map(row).collect(),
        working,
    })
}

fn row(load: &Load, case: &LoadAtLevel, state: &StateRest) -> Row {
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
pub(super) fn forward(load: &Load, case: &LoadAtLevel) -> f64 {
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
    let words = say!(words::BACKWARDS, value = value).into_text();
    value.said(words)
}

fn pin(state: &StateRest) -> Option<Band<crate::quantity::Voltage>> {
    let nominal = state.nominal.operating.pin?;
    let corners = state.corners.iter().filter_map(|solved| solved.operating.pin);
    Some(corners.fold(Band::exact(nominal), |band, pin| band.widened_to(pin)))
}

/// What the load does over all corners of a state: the code of the words, and how it sounds.
pub(super) fn effect(
    load: &Load,
    case: &LoadAtLevel,
    state: &StateRest,
) -> (&'static Wording, Tone) {
    let is_reversible = case.rest.wiring.is_reversible(case.rest.subject);
    let is_shorted = |it: &Found| it.trouble == Trouble::ShortedByDiode && it.state == state.state;
    match state.state {
        _ if case.judgement.found.iter().any(is_shorted) => {
            return (words::EFFECT_SHORTED, Tone::Bad);
        }
        KeyState::OtherOn if is_reversible => return when_turned(load, state),
        KeyState::On | KeyState::Cranking => return when_on(load, state),
        KeyState::Pulsed => return switching::effect(load, state),
        _ => {}
    }
    let at = |solved: &SolvedCorner| {
        let temperature = solved.point.at.temperature;
        solved.load().map_or(LoadState::Released, |it| load.effect(it, temperature))
    };
    // what is commanded on acts as it should
    let is_off = |it: &&SolvedCorner| {
        state.state != KeyState::Outlived || it.point.commanded == Commanded::AsStated
    };
    let unasked = || state.corners.iter().filter(is_off).map(at);
    let worst = unasked().max().unwrap_or(LoadState::Released);
    let least = unasked().min().unwrap_or(LoadState::Released);
    let feeds = |trouble| {
        let mut found = case.judgement.found.iter();
        found.any(|it| it.trouble == trouble && it.state == state.state)
    };
    if state.state.is_fault() {
        return if worst == LoadState::Released {
            (words::EFFECT_RESTS, Tone::Good)
        } else {
            (words::EFFECT_MAY_ACT, Tone::Doubtful)
        };
    }
    match (worst, least) {
        (LoadState::Energised, LoadState::Energised) => (words::EFFECT_LIVE, Tone::Bad),
        (LoadState::Energised, _) => (words::EFFECT_LIVE_AT_SOME, Tone::Bad),
        _ if feeds(Trouble::DrivesDeadFeed) => (words::EFFECT_DRIVES_FEED, Tone::Bad),
        _ if feeds(Trouble::PerhapsDrivesDeadFeed) => (words::EFFECT_DRIVES_FEED, Tone::Doubtful),
        (LoadState::MayHold, _) => (words::EFFECT_MAY_HOLD, Tone::Doubtful),
        (LoadState::Released, _) if feeds(Trouble::WakesController) => {
            (words::EFFECT_RESTS_FEEDS, Tone::Bad)
        }
        (LoadState::Released, _) => (words::EFFECT_RESTS, Tone::Good),
    }
}

/// A load that the other output of its pair drives backwards; where one conducts one way only it rests.
fn when_turned(load: &Load, state: &StateRest) -> (&'static Wording, Tone) {
    match when_on(load, state) {
        (words::EFFECT_NEVER, _) => (words::EFFECT_RESTS, Tone::Good),
        (_, tone) => (words::EFFECT_TURNED, tone),
    }
}

fn when_on(load: &Load, state: &StateRest) -> (&'static Wording, Tone) {
    let is_sure = |solved: &SolvedCorner| {
        let temperature = solved.point.at.temperature;
        solved.load().is_some_and(|it| load.is_sure_to_act(it.voltage, temperature))
    };
    let may_act = |solved: &SolvedCorner| {
        let temperature = solved.point.at.temperature;
        solved.load().is_some_and(|it| load.effect(it, temperature) == LoadState::Energised)
    };
    let is_enough = |solved: &SolvedCorner| match state.state {
        // what only some of its kind need is no doubt while the starter turns
        KeyState::Cranking => may_act(solved),
        _ => is_sure(solved),
    };
    if state.corners.iter().all(is_enough) {
        (words::EFFECT_ACTS, Tone::Good)
    } else if state.corners.iter().any(may_act) {
        (words::EFFECT_NOT_SURE, Tone::Doubtful)
    } else {
        (words::EFFECT_NEVER, Tone::Bad)
    }
}

/// What the answer was worked out with, and where each value comes from.
fn taken(subject: &Subject<'_>) -> Option<Table> {
    let load = subject.solved()?;
    let (planned, around) = (subject.planned, &subject.planned.around);
    let from = |is_assumed: bool, code: &'static Wording| {
        word(if is_assumed { code } else { words::TAKEN_GIVEN })
    };
    let row = |what, value, basis| Row { cells: vec![word(what), value, basis], tone: None };
    let usual = words::TAKEN_USUAL;
    let practice = words::TAKEN_PRACTICE;
    let mut rows = vec![
        row(
            words::TAKEN_RESISTANCE,
            ends(&load.resistance),
            from(subject.load.assumed.resistance, usual),
        ),
        row(words::TAKEN_PULL_IN, ends(&load.pull_in), from(subject.load.assumed.pull_in, usual)),
    ];
    if load.inductance.high.base() > 0.0 {
        let basis = from(subject.load.assumed.inductance, practice);
        rows.push(row(words::TAKEN_INDUCTANCE, ends(&load.inductance), basis));
    }
    if subject.wiring()?.output.stage.has_upper() || subject.wiring()?.output.pull_up.is_some() {
        let basis = from(planned.is_dead_rail_assumed, practice);
        rows.push(row(words::TAKEN_DEAD_SUPPLY, ends(&around.dead_rail), basis));
    }
    if matches!(load.far_end, FarEnd::Ignition | FarEnd::Relay) {
        let basis = from(planned.is_dead_feed_assumed, practice);
        rows.push(row(words::TAKEN_DEAD_FEED, ends(&around.dead_feed), basis));
    }
    if load.far_end == FarEnd::Relay {
        let states = word(words::TAKEN_CONTACT_STATES);
        rows.push(row(words::TAKEN_CONTACT, states, word(practice)));
    }
    rows.push(row(words::TAKEN_START, Value::text("0.1 to 1 s"), word(practice)));
    let (forward, slope) = (volts(DIODE_FORWARD_V).show(), ohms(DIODE_ON_OHM).show());
    let diode = Value::text(format!("{} + {}", forward.shown, slope.shown));
    rows.push(row(words::TAKEN_DIODE, diode, word(practice)));
    Some(Table {
        caption: say!(words::TABLE_TAKEN),
        columns: vec![
            say!(words::COLUMN_WHAT),
            say!(words::COLUMN_VALUE),
            say!(words::COLUMN_BASIS),
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
