//! When each cylinder fires, and which two are companions.

use crate::{
    channels,
    engine::{Engine, EngineKind, Firing, SpacingBasis, TURN},
    message::Message,
    quantity::{CrankAngle, Measure, Value},
    questions::firing::{
        Details, places,
        read::{ChannelsOf, entered::EnteredFirings},
        words,
    },
    read::written,
    report::{Answer, Detail, Figure, Row, Table, Tone},
    say, say_of,
    working::{Formula, Step, step},
};

const INTERVAL: Formula =
    Formula { symbols: "α = cycle / n", source: "geometry: n even firings fill the cycle" };
const EVEN_ANGLE: Formula = Formula {
    symbols: "θ = (k − 1) × α",
    source: "geometry: the k-th to fire, from the first",
};
const TYPED_INTERVAL: Formula =
    Formula { symbols: "α = θ_next − θ", source: "geometry: from this firing to the next" };
const LAST_INTERVAL: Formula =
    Formula { symbols: "α = cycle − θ", source: "geometry: from the last firing to the first" };
const COMPANION: Formula = Formula {
    symbols: "θ_companion = θ + 360°",
    source: "geometry: 360° on, less the cycle where that is passed",
};
const CYCLE: Formula =
    Formula { symbols: "cycle = turns × 360°", source: "definition of the working cycle" };

pub(super) fn answer(engine: &Engine, read: &ChannelsOf, details: Option<&Details>) -> Answer {
    let order = written(&engine.order());
    let interval = engine.cycle().degrees() / f64::from(engine.cylinders());
    let verdict = match (engine.cylinders(), engine.is_even()) {
        (1, _) => say!(words::FIRES_ALONE, cycle = engine.cycle()),
        (_, true) => {
            say!(words::FIRES_EVEN, order = order, interval = CrankAngle::new(interval))
        }
        (..=4, false) => {
            let angles = engine.firings().iter().map(|firing| firing.angle.show().into_shown());
            say!(words::FIRES_ODD_AT, order = order, angles = super::listed(angles))
        }
        (_, false) => say!(words::FIRES_ODD, order = order),
    };
    let tone = match engine.spacing_basis() {
        SpacingBasis::Told if !places::is_tie(engine) => Tone::Good,
        SpacingBasis::Told | SpacingBasis::Doubted => Tone::Doubtful,
        SpacingBasis::Contradicted => Tone::Bad,
    };
    let mut answer = Answer::new("engine", tone, verdict);
    answer.title = Some(say!(words::TITLE_ENGINE));
    answer.why = Some(companions(engine));
    answer.to_do = places::translated(engine).into_iter().chain(check(engine)).collect();
    answer.to_do.extend(check_angles(engine, read));
    answer.show(details.map(|it| (it.engine)(engine)));
    answer
}

/// Its angles, and its cylinders by their places.
pub(super) fn detail(engine: &Engine) -> Detail {
    let tables = [table(engine)].into_iter().chain(places::table(engine)).collect();
    Detail { figures: figures(engine), tables, ..Detail::default() }
}

fn rotary(engine: &Engine) -> bool {
    engine.kind() == EngineKind::Rotary
}

/// Which cylinders are companions; or that there are none, and how near the nearest is.
fn companions(engine: &Engine) -> Message {
    if engine.cycle() == TURN {
        return say!(words::COMPANIONS_ONE_TURN);
    }
    let pairs: Vec<String> = engine
        .order()
        .into_iter()
        .filter_map(|cylinder| Some((cylinder, engine.companion(cylinder)?)))
        .filter(|(one, other)| engine.place_of(*one) < engine.place_of(*other))
        .map(|(one, other)| format!("{one} + {other}"))
        .collect();
    if engine.has_companions() {
        return say!(words::COMPANIONS, pairs = super::listed(pairs));
    }
    let first = engine.firings().first().map_or(1, |firing| firing.cylinder);
    match engine.nearest_companion(first) {
        Some((other, miss)) => {
            say!(words::COMPANIONS_NONE, cylinder = first, other = other, apart = TURN + miss)
        }
        None => say!(words::COMPANIONS_ALONE),
    }
}

/// How to check the order at the engine.
fn check(engine: &Engine) -> Vec<Message> {
    let first = engine.firings().first().map(|firing| firing.cylinder);
    let second = engine.firings().get(1).map(|firing| firing.cylinder);
    match (first, second) {
        (Some(first), Some(second)) if !rotary(engine) => {
            match engine.companion(first).filter(|_| engine.kind() == EngineKind::FourStroke) {
                Some(other) => {
                    vec![say!(words::CHECK_ROCKING, cylinder = first, companion = other)]
                }
                None => vec![say!(words::CHECK_PUSH, first = first, second = second)],
            }
        }
        _ => Vec::new(),
    }
}

/// How to prove angles that nothing but a hand typed: that of the first that does not fire where an even engine would. Where
/// the plan's engine is even and the controller's angles are not, that of the first that differs.
fn check_angles(engine: &Engine, read: &ChannelsOf) -> Option<Message> {
    let first = engine.firings().first()?;
    let entered = match &read.entered.spacing {
        Some(EnteredFirings::At(angles)) if engine.is_even() => angles.as_slice(),
        _ => &[],
    };
    let interval = engine.cycle().degrees() / f64::from(engine.cylinders());
    let is_off = |(place, firing): &(u32, &Firing)| {
        let even = CrankAngle::new(interval * f64::from(*place));
        let typed = entered.get(*place as usize).zip(entered.first());
        let typed = typed.map_or(firing.angle, |(typed, from)| *typed - *from);
        (typed - even).as_error(engine.cycle()).degrees().abs() > 1.0
    };
    let (_, second) = (0..).zip(engine.firings()).skip(1).find(is_off)?;
    let is_seen = read.lit().is_some_and(|it| {
        let is_read = it.seen.iter().any(|seen| seen.0 == second.cylinder);
        is_read && it.seen.len() > 1 && channels::light::is_right(engine, it)
    });
    let (angle, first, second) = (second.angle - first.angle, first.cylinder, second.cylinder);
    // a mark that was set by the angles shows them right whatever they are
    Some(if is_seen {
        say!(words::CHECK_MARKS, first = first, second = second, angle = angle)
    } else {
        say!(words::CHECK_ANGLES, first = first, second = second, angle = angle)
    })
}

fn figures(engine: &Engine) -> Vec<Figure> {
    let turns: u32 = if engine.kind() == EngineKind::FourStroke { 2 } else { 1 };
    let cycle = step(&CYCLE, &[("turns", turns.into())], engine.cycle());
    let mut figures = vec![Figure::plain(say!(words::FIGURE_CYCLE), engine.cycle(), vec![cycle])];
    if engine.is_even() {
        let interval = interval_step(engine);
        let value = interval.result.clone();
        figures.push(Figure::plain(say!(words::FIGURE_INTERVAL), value, vec![interval]));
    }
    figures
}

fn interval_step(engine: &Engine) -> Step {
    let interval = CrankAngle::new(engine.cycle().degrees() / f64::from(engine.cylinders()));
    let values = [("cycle", engine.cycle().show()), ("n", engine.cylinders().into())];
    step(&INTERVAL, &values, interval)
}

fn table(engine: &Engine) -> Table {
    let cylinder = if rotary(engine) { words::COL_ROTOR } else { words::COL_CYLINDER };
    let row = |firing: &Firing| {
        let companion = engine.companion(firing.cylinder);
        let next = engine.interval_after(firing.cylinder).unwrap_or_default();
        Row {
            cells: vec![
                firing.cylinder.into(),
                firing.angle.into(),
                next.into(),
                companion.map_or_else(|| Value::text(say!(words::NONE).into_text()), Value::from),
            ],
            tone: None,
        }
    };
    Table {
        caption: say!(words::TABLE_FIRING),
        columns: vec![
            say_of!(cylinder),
            say!(words::COL_FIRES),
            say!(words::COL_NEXT),
            say!(words::COL_COMPANION),
        ],
        rows: engine.firings().iter().map(row).collect(),
        working: steps(engine),
    }
}

fn steps(engine: &Engine) -> Vec<Step> {
    let mut steps = places::steps(engine);
    let interval = interval_step(engine);
    if engine.is_even() && steps.is_empty() {
        let shown = interval.result.clone();
        steps.push(interval);
        for (place, firing) in (1_u32..).zip(engine.firings()) {
            let values = [("k", place.into()), ("α", shown.clone())];
            steps.push(step(&EVEN_ANGLE, &values, firing.angle));
        }
    } else {
        for (firing, next) in engine.firings().iter().zip(engine.firings().iter().skip(1)) {
            let values = [("θ_next", next.angle.show()), ("θ", firing.angle.show())];
            steps.push(step(&TYPED_INTERVAL, &values, next.angle - firing.angle));
        }
        if let Some(last) = engine.firings().last() {
            let values = [("cycle", engine.cycle().show()), ("θ", last.angle.show())];
            steps.push(step(&LAST_INTERVAL, &values, engine.cycle() - last.angle));
        }
    }
    let pair = engine.firings().iter().find_map(|firing| {
        Some((firing.angle, engine.angle_of(engine.companion(firing.cylinder)?)?))
    });
    if let Some((angle, companion)) = pair.filter(|_| engine.kind() == EngineKind::FourStroke) {
        steps.push(step(&COMPANION, &[("θ", angle.show())], companion));
    }
    steps
}
