//! The numbers behind it: the dwell to enter, and everything at the highest speed.

use crate::report::{Curve, Detail, Figure, Level, Panel, Picture, Row, Table, Tone, Traces};
use crate::{
    coil::{AtSpeed, CoilAnswer, CoilInputs, Dwell, charging::CoilCorner},
    quantity::{Band, Measure, RotationalSpeed, Value, celsius},
    questions::coils::{judge, words},
    say,
};

pub(super) fn detail(inputs: &CoilInputs, found: &CoilAnswer) -> Detail {
    Detail {
        figures: figures(inputs, found),
        tables: vec![table(inputs, found)],
        pictures: picture(inputs, found).into_iter().collect(),
    }
}

fn figures(inputs: &CoilInputs, found: &CoilAnswer) -> Vec<Figure> {
    let charge = &found.charge;
    let mut figures = Vec::new();
    if charge.time.base() > 0.0 {
        figures.push(Figure::plain(
            say!(words::FIGURE_DWELL, supply = inputs.conditions.supply.high),
            charge.time,
            charge.working.clone(),
        ));
        figures.push(Figure::plain(
            say!(words::FIGURE_ENERGY),
            charge.energy,
            charge.working.clone(),
        ));
    }
    if let Some(at) = &found.at_speed {
        figures.extend(at_speed(inputs, at));
    }
    let held = &found.held;
    figures.push(Figure::new(say!(words::FIGURE_HELD), held.current, held.working.clone()));
    figures.push(Figure::new(say!(words::FIGURE_HELD_HEAT), held.in_coil, held.working.clone()));
    figures.push(Figure::new(say!(words::FIGURE_HELD_TIME), held.rises_in, held.working.clone()));
    figures
}

fn at_speed(inputs: &CoilInputs, at: &AtSpeed) -> Vec<Figure> {
    let steps = || at.working.clone();
    let mut figures = vec![
        Figure::plain(say!(words::FIGURE_NEEDED), at.needed, steps()),
        Figure::plain(say!(words::FIGURE_AVAILABLE), at.available, steps()),
    ];
    if judge::runs_out_near(inputs, at) {
        figures.push(Figure::plain(say!(words::FIGURE_RUNS_OUT), at.runs_out, steps()));
    }
    let is_below = |out: RotationalSpeed| inputs.speed.is_none_or(|speed| out < speed);
    if let Some((speed, steps)) = at.runs_out_at_rest.as_ref().filter(|(out, _)| is_below(*out)) {
        figures.push(Figure::plain(say!(words::FIGURE_RUNS_OUT_AT_REST), *speed, steps.clone()));
    }
    figures.push(Figure::plain(say!(words::FIGURE_DUTY), at.duty, steps()));
    let taken = &at.taken;
    let steps = || taken.working.clone();
    figures.push(Figure::plain(say!(words::FIGURE_COIL_HEAT), taken.in_coil, steps()));
    figures.push(Figure::plain(say!(words::FIGURE_IGNITER_HEAT), taken.in_igniter, steps()));
    figures
}

/// The dwell to enter, a row for each supply.
fn table(inputs: &CoilInputs, found: &CoilAnswer) -> Table {
    let row = |dwell: &Dwell| {
        let never = || Value::text(words::CELL_NEVER.text);
        let range = match (dwell.least, dwell.most) {
            (Some(least), Some(most)) => shown(&Band::between(least, most)),
            (Some(least), None) => Value::text(say!(words::CELL_FROM, least = least).into_text()),
            _ => never(),
        };
        let current =
            dwell.current.map_or_else(never, |(low, high)| shown(&Band::between(low, high)));
        Row {
            cells: vec![
                dwell.supply.show(),
                dwell.nominal.map_or_else(never, Measure::show),
                range,
                current,
            ],
            tone: dwell.nominal.is_none().then_some(Tone::Bad),
        }
    };
    Table {
        caption: say!(words::TABLE, current = inputs.wanted),
        columns: vec![
            say!(words::COLUMN_SUPPLY),
            say!(words::COLUMN_DWELL),
            say!(words::COLUMN_RANGE),
            say!(words::COLUMN_CURRENT),
        ],
        rows: found.dwells.iter().map(row).collect(),
        working: found.dwells.iter().flat_map(|it| it.working.iter().cloned()).collect(),
    }
}

fn shown<Q: Measure>(band: &Band<Q>) -> Value {
    let (low, high) = (band.low.show().into_shown(), band.high.show().into_shown());
    Value::text(if low == high { low } else { format!("{low} to {high}") })
}

/// Points of a curve.
const POINTS: u32 = 60;

/// The current against time at the lowest, the resting and the highest supply, as meant; up to somewhat more than the
/// longest dwell that reaches the current wanted. None where no supply reaches it.
fn picture(inputs: &CoilInputs, found: &CoilAnswer) -> Option<Picture> {
    let longest = found.dwells.iter().filter_map(|dwell| dwell.nominal).map(Measure::base);
    let end = 1.15 * longest.fold(0.0, f64::max);
    if end <= 0.0 {
        return None;
    }
    let supply = inputs.conditions.supply;
    let mut supplies = vec![supply.low, supply.nominal, supply.high];
    supplies.dedup();
    let curve = |supply| {
        let coil = CoilCorner::nominal(inputs, supply, celsius(20.0)).charging()?;
        let at = |step: u32| {
            let time = end * f64::from(step) / f64::from(POINTS);
            Some((time, coil.current_at(time)?))
        };
        let mut points: Vec<(f64, f64)> = (0..=POINTS).filter_map(at).collect();
        // where the igniter begins to hold it there is a corner
        if let Some(from) = coil.limited_from_s().filter(|from| *from < end) {
            points.push((from, coil.last_a()));
            crate::sorted::by(&mut points, |one, other| one.0.total_cmp(&other.0));
        }
        Some(Curve { name: say!(words::CURVE, supply = supply), points })
    };
    let mut levels = vec![Level { name: say!(words::LEVEL_WANTED), at: inputs.wanted.base() }];
    let limit = inputs.limit.filter(|limit| limit.nominal > inputs.wanted);
    levels.extend(
        limit.map(|limit| Level { name: say!(words::LEVEL_LIMIT), at: limit.nominal.base() }),
    );
    let curves = supplies.into_iter().filter_map(curve).collect();
    let caption = say!(words::PICTURE, current = inputs.wanted);
    Some(Picture::Traces(Traces {
        caption,
        span: (0.0, end),
        panels: vec![Panel { unit: "A", curves, levels }],
    }))
}
