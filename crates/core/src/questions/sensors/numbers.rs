//! What stands below the answers: what is read cold, now and hot, and the numbers of the input.

use super::{judge, stroke, subject::SensorSubject, supplies::SupplySum, tables, words};
use crate::{
    fields::sensors::{PressureFrom, SensorType},
    message::Message,
    quantity::{Dimension, Measure, Span, Value, Voltage, amperes, celsius, number, volts, watts},
    report::{Detail, Figure, Row, Table, Tone},
    say,
    sensor::{atmosphere, thermocouple},
    working::{Formula, Step, step},
};

const A_STEP: Formula = Formula {
    symbols: "s = U_range / 2^bits / (dU / dx)",
    source: "a converter divides its range into 2^bits steps; the slope of what it reads, where it matters",
};
const BY_OFFSET: Formula = Formula {
    symbols: "d = 10 mV / (dU / dx)",
    source: "the slope of what the input reads, where it matters",
};
const BEST: Formula = Formula {
    symbols: "R = best of E12 for the weaker of both ends",
    source: "IEC 60063; each of its values is tried at the cold and at the hot end of what matters",
};
const WARMED: Formula = Formula {
    symbols: "dT = P / 2 mW",
    source: "2 mW warm a small thermistor in still air by 1 °C: common practice, no source; in a liquid a fifth of it or less",
};
const DRAWN: Formula = Formula {
    symbols: "I = the sum of what each draws",
    source: "currents into a node sum to zero (Kirchhoff)",
};
const SUM: Formula =
    Formula { symbols: "U_1 + U_2", source: "the readings at the same place of the stroke" };

pub(super) fn of_sensor(subject: &SensorSubject<'_>) -> Detail {
    let mut detail = Detail { figures: figures(subject), ..Detail::default() };
    detail.tables.extend(table(subject));
    detail.tables.extend(strokes(subject));
    detail
}

fn figures(subject: &SensorSubject<'_>) -> Vec<Figure> {
    let mut figures = Vec::new();
    if let Some(now) = subject.now() {
        let reads = subject.reads(&now);
        let working = working(subject, now.nominal);
        if let Some(ohms) = reads.ohms {
            figures.push(Figure::new(say!(words::FIGURE_OHMS), ohms, working.clone()));
        }
        if let Some(volts) = reads.volts {
            figures.push(Figure::new(say!(words::FIGURE_VOLTS), volts, working));
        }
    }
    figures.extend(air(subject));
    figures.extend(of_input(subject));
    figures.extend(heat(subject));
    figures.extend(junction(subject));
    figures.retain(|it| !it.working.is_empty());
    figures
}

/// How what is read there was found.
fn working(subject: &SensorSubject<'_>, value: f64) -> Vec<Step> {
    let Some(element) = subject.element() else { return Vec::new() };
    let supply = subject.supply_volts().nominal;
    let ohms = element.resistance(&Span::exact(value)).map(|it| it.nominal);
    let divided = ohms.and_then(|ohms| Some(subject.divider()?.working(ohms)));
    element.working(value, supply).into_iter().chain(divided).collect()
}

/// The air's pressure, where it follows from the altitude.
fn air(subject: &SensorSubject<'_>) -> Option<Figure> {
    let today = &subject.sensing.today;
    let is_absolute = subject.sensor.counted_from() == PressureFrom::Absolute;
    let is_told = subject.sensor.is_told(Dimension::Pressure) && is_absolute;
    (is_told && !today.is_air_measured).then(|| {
        let step = atmosphere::working(today.altitude.nominal);
        Figure::new(say!(words::FIGURE_AIR), today.air, vec![step])
    })
}

fn plain(label: Message, value: Value, formula: &Formula, values: &[(&str, Value)]) -> Figure {
    let step = step(formula, values, value.clone());
    Figure::plain(label, value, vec![step])
}

/// Of its input: a step, ground offset, the best pull-up.
fn of_input(subject: &SensorSubject<'_>) -> Vec<Figure> {
    let mut figures = Vec::new();
    if let Some((input, by)) = subject.input().zip(subject.by_a_step()) {
        let bits = input.bits.unwrap_or_default();
        let values = [("U_range", input.range.nominal.show()), ("bits", bits.into())];
        figures.push(plain(say!(words::FIGURE_STEP), subject.difference(by), &A_STEP, &values));
    }
    if let Some(by) = subject.by_ten_millivolts() {
        figures.push(plain(say!(words::FIGURE_GROUND), subject.difference(by), &BY_OFFSET, &[]));
    }
    let is_pulled =
        subject.element().is_some_and(crate::sensor::element::SensorElement::is_resistive);
    if let Some(best) = judge::best(subject).filter(|_| is_pulled) {
        figures.push(plain(say!(words::FIGURE_BEST), best.show(), &BEST, &[]));
    }
    figures
}

/// What warms it from within.
fn heat(subject: &SensorSubject<'_>) -> Vec<Figure> {
    let heat = |value: f64| {
        let ohms = subject.element()?.resistance(&Span::exact(value))?.nominal;
        Some(subject.divider()?.heat(ohms))
    };
    let mut figures = Vec::new();
    if let Some((heat, step)) = subject.places().and_then(|[_, _, hot]| heat(hot)) {
        figures.push(Figure::plain(say!(words::FIGURE_HEAT), heat, vec![step]));
    }
    let now = subject.now().and_then(|it| heat(it.nominal));
    if let Some((heat, found)) = now.filter(|_| subject.sensor.kind == Some(SensorType::Ntc)) {
        let by = celsius((heat / watts(2e-3)).base());
        let warmed = step(&WARMED, &[("P", heat.show())], by.show());
        figures.push(Figure::plain(say!(words::FIGURE_SELF), by, vec![found, warmed]));
    }
    figures
}

/// What a thermocouple gives its amplifier.
fn junction(subject: &SensorSubject<'_>) -> Option<Figure> {
    if subject.sensor.kind != Some(SensorType::Thermocouple) {
        return None;
    }
    let [_, _, hot] = subject.places()?;
    let (hot, cold) = (celsius(hot), subject.sensing.today.temperature.nominal);
    let label = say!(words::FIGURE_JUNCTION);
    let given: Voltage = thermocouple::between(hot, cold);
    Some(Figure::plain(label, given, vec![thermocouple::working(hot, cold)]))
}

/// What is read cold, now and hot, and what the controller makes of it.
fn table(subject: &SensorSubject<'_>) -> Option<Table> {
    let [low, middle, high] = subject.places()?;
    let now = subject.now().map_or(middle, |it| it.nominal);
    let mut places = vec![low, now.clamp(low.min(high), high.max(low)), high];
    places.dedup_by(|one, other| (*one - *other).abs() < 1e-9);
    let has_ohms = subject.reads(&Span::exact(low)).ohms.is_some();
    let has_volts = subject.reads(&Span::exact(low)).volts.is_some();
    let has_table = subject.sensor.table.is_some();
    let mut columns = vec![say!(words::COL_TOLD)];
    columns.extend(has_ohms.then(|| say!(words::COL_OHMS)));
    columns.extend(has_volts.then(|| say!(words::COL_VOLTS)));
    columns.extend(has_table.then(|| say!(words::COL_SHOWN)));
    let row = |value: &f64| {
        let reads = subject.reads(&Span::exact(*value));
        let shown = tables::tabled(subject, *value);
        let none = || Value::text("unknown");
        let mut cells = vec![subject.show(*value)];
        cells.extend(
            has_ohms.then(|| super::subject::both(reads.ohms.as_ref()).unwrap_or_else(none)),
        );
        cells.extend(
            has_volts.then(|| super::subject::both(reads.volts.as_ref()).unwrap_or_else(none)),
        );
        cells.extend(has_table.then(|| shown.map_or_else(none, |it| subject.show(it.shown))));
        let is_off = shown.is_some_and(|it| it.error.abs() >= subject.doubtful());
        Row { cells, tone: is_off.then_some(Tone::Bad) }
    };
    let rows = places.iter().map(row).collect();
    let working = working(subject, high);
    (!working.is_empty()).then(|| Table { caption: say!(words::TABLE), columns, rows, working })
}

/// Both tracks over the stroke.
fn strokes(subject: &SensorSubject<'_>) -> Option<Table> {
    let pairs = stroke::pairs(subject);
    let last = *pairs.last()?;
    let sum = |(one, other): (Voltage, Voltage)| volts(one.base() + other.base());
    let rows = pairs
        .iter()
        .map(|it| Row { cells: vec![it.0.show(), it.1.show(), sum(*it).show()], tone: None });
    let values = [("U_1", last.0.show()), ("U_2", last.1.show())];
    Some(Table {
        caption: say!(words::TRACKS),
        columns: vec![say!(words::COL_FIRST), say!(words::COL_SECOND), say!(words::COL_SUM)],
        rows: rows.collect(),
        working: vec![step(&SUM, &values, sum(last).show())],
    })
}

/// Of a supply: what its sensors draw together.
pub(super) fn of_supply(sum: &SupplySum) -> Detail {
    let parts: Vec<_> = sum.parts.iter().map(|it| number(it.base() * 1e3) + " mA").collect();
    let values = [("the", Value::text("")), ("I", amperes(0.0).show())];
    let mut step = step(&DRAWN, &values, sum.draws.show());
    step.filled = parts.join(" + ");
    let figures = vec![Figure::plain(say!(words::FIGURE_DRAWS), sum.draws, vec![step])];
    Detail { figures, ..Detail::default() }
}
