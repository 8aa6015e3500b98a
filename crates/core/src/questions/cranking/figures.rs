//! The numbers of the answer as the report shows them.

use super::{
    advice::{self, Best},
    extent::often,
};
use crate::{
    cranking::{CrankingAnswer, CrankingInputs, Figured, StartCorner, USUAL_THRESHOLD_RPM},
    message::Message,
    quantity::{Band, CrankAngle, Measure, RotationalSpeed, Value, rpm},
    questions::cranking::words,
    read::Known,
    report::{Figure, Row, Table, Tone},
    say,
    timeline::Interval,
    working::{Formula, step},
};

const CLEARANCE: Formula =
    Formula { symbols: "Δn = n_read − n_on", source: "the lowest reading over the cases" };
const ABOVE_ROCKING: Formula =
    Formula { symbols: "Δn = n_on − n_rock", source: "common practice, no source" };
const OPENINGS: Formula = Formula {
    symbols: "N = openings",
    source: "counted in the simulation, over whole cycles at full cranking speed, in every case from every starting position",
};
const USUAL: Formula = Formula {
    symbols: "n_low < n_usual ≤ n_high",
    source: "100 rpm for the coil feed: common practice, no source",
};

/// The figures, most wanted first.
pub(super) fn figures(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
    best: Option<&Best>,
) -> Vec<Figure> {
    let it = &answer.figures;
    let mut figures = Vec::new();
    figures.extend(power(answer));
    figures.extend(of(say!(words::FIGURE_SPARK), it.spark.as_ref()));
    figures.extend(of(say!(words::FIGURE_MARGIN), it.margin.as_ref()));
    figures.extend(bands(answer));
    figures.extend(super::bounds::figures(inputs, answer, best));
    figures.extend(margins(inputs, answer));
    figures.extend(speeds(known, inputs, answer));
    figures.extend(stop(answer));
    figures.push(relay(answer));
    figures
}

/// How fast the engine turns, and how its teeth follow each other then.
pub(super) fn speeds(
    known: &Known,
    inputs: &CrankingInputs,
    answer: &CrankingAnswer,
) -> Vec<Figure> {
    let it = &answer.figures;
    let mut figures = Vec::new();
    figures.extend(known.dip_is_assumed.then(|| super::bounds::dip(inputs)));
    figures.extend(of(say!(words::FIGURE_SLOWEST), Some(&it.slowest)));
    figures.extend(of(say!(words::FIGURE_SLOWEST_READING), Some(&it.slowest_reading)));
    figures.extend(of(say!(words::FIGURE_TOOTH), Some(&it.tooth_time)));
    figures.extend(of(say!(words::FIGURE_GAP), it.gap_time.as_ref()));
    figures
}

/// What the relay needs.
pub(super) fn relay(answer: &CrankingAnswer) -> Figure {
    let relay = &answer.relay;
    Figure::new(say!(words::FIGURE_RELAY), relay.needed, relay.working.clone())
}

fn of<Q: Measure>(label: Message, figured: Option<&Figured<Q>>) -> Option<Figure> {
    figured.map(|it| Figure::new(label, it.band, it.working.clone()))
}

pub(super) fn power(answer: &CrankingAnswer) -> Vec<Figure> {
    let mut figures = Vec::new();
    figures.extend(of(say!(words::FIGURE_POWER), answer.figures.power.as_ref()));
    figures.extend(answer.figures.turned.as_ref().map(|turned| {
        let mut figure =
            Figure::new(say!(words::FIGURE_TURNED), turned.band, turned.working.clone());
        figure.value = in_turns(turned.band.nominal);
        figure
    }));
    figures
}

/// An angle with the turns that it makes.
pub(super) fn in_turns(angle: CrankAngle) -> Value {
    let turns = crate::quantity::number(angle.degrees() / 360.0);
    let value = angle.show();
    let words = format!("{} ({turns} turns)", value.shown);
    value.said(words)
}

pub(super) fn bands(answer: &CrankingAnswer) -> Vec<Figure> {
    let it = &answer.figures;
    let none = || Value::text("none");
    let shown =
        |band: Option<Interval>| band.map_or_else(none, |band| Value::text(advice::shown(band)));
    let mut figures = vec![
        Figure::plain(say!(words::FIGURE_WORKS), shown(answer.works), it.works.clone()),
        Figure::plain(say!(words::FIGURE_PROMPT), shown(answer.prompt), it.prompt.clone()),
    ];
    figures.extend(answer.works.map(usual));
    figures
}

/// Where the usual threshold lies, and how far off the nearest end.
fn usual(band: Interval) -> Figure {
    let threshold = rpm(USUAL_THRESHOLD_RPM);
    let by = |off: f64| rpm(off).show().shown.clone();
    let place = if USUAL_THRESHOLD_RPM > band.high {
        format!("above the band by {}", by(USUAL_THRESHOLD_RPM - band.high))
    } else if USUAL_THRESHOLD_RPM <= band.low {
        format!("below the band by {}", by(band.low - USUAL_THRESHOLD_RPM))
    } else {
        let (low, high) = (USUAL_THRESHOLD_RPM - band.low, band.high - USUAL_THRESHOLD_RPM);
        format!(
            "inside the band, {} from its {} end",
            by(low.min(high)),
            if low < high { "low" } else { "high" }
        )
    };
    let place = Value::text(place);
    let values = [
        ("n_low", rpm(band.low).show()),
        ("n_usual", threshold.show()),
        ("n_high", rpm(band.high).show()),
    ];
    let working = vec![step(&USUAL, &values, place.clone())];
    Figure::plain(say!(words::FIGURE_USUAL), place, working)
}

fn margins(inputs: &CrankingInputs, answer: &CrankingAnswer) -> Vec<Figure> {
    let Some(threshold) = inputs.threshold else { return Vec::new() };
    let slowest = super::extent::slowest_reading(answer);
    let openings = often(super::extent::most_openings(answer));
    let clearance = slowest - threshold;
    let above = threshold - inputs.rocking.high;
    let below_values = [("n_read", slowest.show()), ("n_on", threshold.show())];
    let above_values = [("n_on", threshold.show()), ("n_rock", inputs.rocking.high.show())];
    vec![
        Figure::plain(
            say!(words::FIGURE_OPENINGS),
            openings.clone(),
            vec![step(&OPENINGS, &[("openings", openings.clone())], openings)],
        ),
        Figure::new(
            say!(words::FIGURE_CLEARANCE),
            Band::<RotationalSpeed>::exact(clearance),
            vec![step(&CLEARANCE, &below_values, clearance)],
        ),
        Figure::new(
            say!(words::FIGURE_ABOVE_ROCKING),
            Band::<RotationalSpeed>::exact(above),
            vec![step(&ABOVE_ROCKING, &above_values, above)],
        ),
    ]
}

pub(super) fn stop(answer: &CrankingAnswer) -> Vec<Figure> {
    let (Some(stop), Some(at_rest)) = (&answer.stop, &answer.figures.on_at_rest) else {
        return Vec::new();
    };
    vec![
        Figure::new(say!(words::FIGURE_OFF), Band::exact(stop.off_after), at_rest.working.clone()),
        Figure::new(say!(words::FIGURE_AT_REST), at_rest.band, at_rest.working.clone()),
    ]
}

/// The corners in a table; none where there is only one.
pub(super) fn table(inputs: &CrankingInputs, answer: &CrankingAnswer) -> Option<Table> {
    if answer.corners.len() < 2 {
        return None;
    }
    let mut columns = vec![
        say!(words::COLUMN_CORNER),
        say!(words::COLUMN_MEAN),
        say!(words::COLUMN_SLOWEST),
        say!(words::COLUMN_SPARK),
    ];
    if inputs.threshold.is_some() {
        columns.push(say!(words::COLUMN_POWER));
        columns.push(say!(words::COLUMN_LOST));
        columns.push(say!(words::COLUMN_OPENINGS));
    }
    Some(Table {
        caption: say!(words::TABLE),
        columns,
        rows: answer.corners.iter().map(|corner| row(inputs, corner)).collect(),
        working: answer.figures.slowest_reading.working.clone(),
    })
}

fn row(inputs: &CrankingInputs, corner: &StartCorner) -> Row {
    let spark = corner.spark.map_or_else(|| Value::text("never"), |spark| spark.0.show());
    let mut cells = vec![
        Value::text(corner.name.clone()),
        corner.mean.show(),
        corner.slowest_reading.show(),
        spark,
    ];
    if inputs.threshold.is_some() {
        let closed = corner.latest.filter(|_| corner.closes);
        cells.push(closed.map_or_else(|| Value::text("never"), |latest| latest.closed.show()));
        cells.push(corner.lost.into());
        cells.push(often(corner.openings));
    }
    let is_bad = inputs.threshold.is_some() && (!corner.closes || corner.openings.count > 0);
    Row { cells, tone: is_bad.then_some(Tone::Bad) }
}

/// A quantity or its two ends, in words.
pub(super) fn band<Q: Measure>(band: Band<Q>) -> Value {
    if band.is_spread() {
        return Value::text(format!("{} to {}", band.low.show().shown, band.high.show().shown));
    }
    band.nominal.show()
}
