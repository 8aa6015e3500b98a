//! The numbers behind the answer.

use super::cures::sold;
use crate::report::{Figure, Row, Table, Tone};
use crate::{
    conditions::Corner,
    injector::{
        CORNERS, InjectorAnswer, InjectorInputs, On,
        ballast::Resistor,
        branch::{self, AtCorner, Ballast, CurrentEnd},
        controlled::Controlled,
        opening::Opening,
        rise::Rising,
    },
    message::Message,
    quantity::{Band, Current, Measure, Time, Value},
    questions::injectors::words,
    say, say_of,
    working::{Formula, Step, Working, step},
};

const OUTPUTS: Formula =
    Formula { symbols: "N_out = N / n", source: "definition, rounded up to whole outputs" };

/// The currents of an output, and of one injector where several share it.
pub(super) fn of_currents(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Figure> {
    let working = currents_working(inputs, found);
    let (of_output, of_injector) = if is_limited(found) {
        (words::OUTPUT_UNLIMITED, words::INJECTOR_UNLIMITED)
    } else {
        (words::OUTPUT_CURRENT, words::INJECTOR_CURRENT)
    };
    let mut figures = vec![Figure::new(
        say_of!(of_output),
        range(&found.corners, |at| at.output),
        working.clone(),
    )];
    if inputs.per_output > 1 {
        let band = range(&found.corners, |at| at.injector);
        figures.push(Figure::new(say_of!(of_injector), band, working));
    }
    if let (Some(outputs), Some(count)) = (found.outputs, inputs.count) {
        let shown = [("N", count.into()), ("n", inputs.per_output.into())];
        let working = vec![step(&OUTPUTS, &shown, outputs)];
        figures.push(Figure::plain(say!(words::OUTPUTS_USED), outputs, working));
    }
    if !is_limited(found) {
        let needed = &found.limit_needed;
        let label = say!(words::LIMIT_NEEDED);
        figures.push(Figure::plain(label, needed.limit, needed.working.clone()));
    }
    figures
}

/// Whether the output itself limits the current.
fn is_limited(found: &InjectorAnswer) -> bool {
    matches!(found.on, On::CurrentControlled(_))
}

/// How the nominal, the highest and the lowest current of an output were found.
fn currents_working(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Step> {
    let none = &Ballast::NONE;
    let mut working = branch::working_at(inputs, &found.usual().corner, CurrentEnd::Nominal, none);
    working.extend(branch::working_at(inputs, &found.highest.corner, CurrentEnd::Most, none));
    working.extend(branch::working_at(inputs, &found.lowest.corner, CurrentEnd::Least, none));
    working
}

/// What it takes to open one, and the voltage that does.
pub(super) fn of_opening(found: &InjectorAnswer) -> Vec<Figure> {
    let Opening { current, is_given, working } = &found.opening;
    let label = if *is_given { words::OPENING_CURRENT } else { words::OPENING_ASSUMED };
    let from = &found.opens_from;
    vec![
        Figure::new(say_of!(label), *current, working.clone()),
        Figure::plain(say!(words::OPENING_SUPPLY), from.supply, from.working.clone()),
    ]
}

/// How long the current takes to open one: at rest, and where it takes longest.
pub(super) fn of_rise(inputs: &InjectorInputs, found: &InjectorAnswer) -> Vec<Figure> {
    rises(inputs, found, &Ballast::NONE, "")
}

/// The same with a resistor.
pub(super) fn of_rise_with(
    inputs: &InjectorInputs,
    found: &InjectorAnswer,
    resistor: &Resistor,
) -> Vec<Figure> {
    rises(inputs, found, &resistor.ballast(), " with the resistor")
}

fn rises(
    inputs: &InjectorInputs,
    found: &InjectorAnswer,
    ballast: &Ballast,
    with: &str,
) -> Vec<Figure> {
    let rising = Rising { inputs, winding: &found.winding, ballast };
    let opening = found.opening.current;
    let [_, hot_cranking, at_rest, _, _] = rising.at_corners(opening);
    let figure = |corner: &Corner, end, time: Option<Time>| {
        let label = say!(words::RISE, corner = corner.name, with = with);
        let shown = time.map_or(Value::text("never reached"), Measure::show);
        Figure::plain(label, shown, rising.working_at(opening, corner, end))
    };
    vec![
        figure(&at_rest.corner, CurrentEnd::Nominal, at_rest.nominal),
        figure(&hot_cranking.corner, CurrentEnd::Least, hot_cranking.longest),
    ]
}

/// How long the current takes to the peak at each supply, and how long the driver must wait.
fn to_peak(inputs: &InjectorInputs, found: &InjectorAnswer, channel: &Controlled) -> Vec<Figure> {
    let (Some(peak), Some(rises)) = (channel.peak, channel.to_peak) else { return Vec::new() };
    let rising = Rising { inputs, winding: &found.winding, ballast: &Ballast::NONE };
    let n = f64::from(inputs.per_output.max(1));
    let peak = peak.map(|peak| peak / n);
    let [_, cranking, rest, _, charging] = rises;
    let figure = |corner: &Corner, end, time: Option<Time>| {
        let shown = time.map_or(Value::text("never reached"), Measure::show);
        let working = rising.working_at(peak, corner, end);
        Figure::plain(say!(words::parts::PEAK_AFTER, corner = corner.name), shown, working)
    };
    let mut figures = vec![
        figure(&cranking.corner, CurrentEnd::Least, cranking.longest),
        figure(&rest.corner, CurrentEnd::Nominal, rest.nominal),
        figure(&charging.corner, CurrentEnd::Nominal, charging.nominal),
    ];
    if let Some(limit) = channel.time_limit {
        let (corner, end) = (&cranking.corner, CurrentEnd::Least);
        let mut working = Some(Working::new());
        let current = rising.current_at(limit.low, corner, end, &mut working);
        let working = working.map(Working::into_steps).unwrap_or_default();
        let label = say!(words::parts::CURRENT_AT_LIMIT, corner = corner.name);
        figures.extend(current.map(|current| Figure::plain(label, current, working)));
    }
    figures
}

/// The resistor, its heat, and what it leaves.
pub(super) fn of_resistor(inputs: &InjectorInputs, resistor: &Resistor) -> Vec<Figure> {
    let bounds = resistor.bounds.working.clone();
    let heat = resistor.working.clone();
    let left =
        branch::working_at(inputs, &resistor.least_at, CurrentEnd::Least, &resistor.ballast());
    let most =
        branch::working_at(inputs, &resistor.carrying.worst, CurrentEnd::Most, &resistor.ballast());
    let margin = resistor.carrying.working.clone();
    vec![
        Figure::plain(
            say!(words::RESISTOR_VALUE, series = resistor.series.name()),
            sold(resistor.value),
            bounds,
        ),
        Figure::plain(say!(words::RESISTOR_HEAT), resistor.heat, heat.clone()),
        Figure::plain(say!(words::RESISTOR_RATING), resistor.rating, heat),
        Figure::plain(
            say!(words::RESISTOR_MARGIN),
            resistor.carrying.margin,
            [most, margin].concat(),
        ),
        Figure::plain(
            say!(words::RESISTOR_LEAVES, corner = resistor.least_at.name),
            resistor.least_current,
            left,
        ),
        Figure::plain(
            say!(words::RESISTOR_OPENS_FROM),
            resistor.opens_from.supply,
            resistor.opens_from.working.clone(),
        ),
    ]
}

/// The peaks that work, each injector's share, and the hold it needs.
pub(super) fn of_channel(
    inputs: &InjectorInputs,
    found: &InjectorAnswer,
    channel: &Controlled,
) -> Vec<Figure> {
    let window = &channel.window;
    let mut figures = vec![
        Figure::plain(say!(words::PEAK_LEAST), window.least, window.working.clone()),
        Figure::plain(
            say!(words::PEAK_MOST, corner = window.most_at.name),
            window.most,
            window.working.clone(),
        ),
        Figure::plain(say!(words::HOLD_NEEDED), channel.hold_needed, channel.working.clone()),
    ];
    if let Some(share) = channel.share {
        let label = say!(words::PEAK_SHARE);
        figures.insert(0, Figure::plain(label, share, channel.working.clone()));
    }
    figures.extend(to_peak(inputs, found, channel));
    let (heat, working) = &channel.linear;
    figures.push(Figure::plain(say!(words::parts::LINEAR_HEAT), *heat, working.clone()));
    figures
}

/// The currents at every corner, as wired.
pub(super) fn of_corners(inputs: &InjectorInputs, found: &InjectorAnswer) -> Table {
    let none = &Ballast::NONE;
    let caption =
        if is_limited(found) { say!(words::CORNERS_UNLIMITED) } else { say!(words::CORNERS) };
    Table {
        working: branch::working_at(inputs, &found.highest.corner, CurrentEnd::Most, none),
        ..table(caption, &found.corners, &found.opening, inputs)
    }
}

/// The same with a resistor.
pub(super) fn of_corners_with(
    inputs: &InjectorInputs,
    found: &InjectorAnswer,
    resistor: &Resistor,
) -> Table {
    let caption = say!(words::CORNERS_WITH, value = sold(resistor.value));
    let (worst, ballast) = (&resistor.carrying.worst, resistor.ballast());
    Table {
        working: branch::working_at(inputs, worst, CurrentEnd::Most, &ballast),
        ..table(caption, &resistor.corners, &found.opening, inputs)
    }
}

fn table(
    caption: Message,
    corners: &[AtCorner; CORNERS],
    opening: &Opening,
    inputs: &InjectorInputs,
) -> Table {
    let columns = [
        words::COLUMN_WHEN,
        words::COLUMN_SUPPLY,
        words::COLUMN_TEMPERATURE,
        words::COLUMN_INJECTOR,
        words::COLUMN_OUTPUT,
        words::COLUMN_RESULT,
    ];
    let row = |at: &AtCorner| {
        let (result, tone) = result(at, opening, inputs);
        let cells = vec![
            at.corner.name.into(),
            at.corner.supply.show(),
            at.corner.temperature.show(),
            shown(at.injector),
            shown(at.output),
            Value::text(result),
        ];
        Row { cells, tone }
    };
    Table {
        caption,
        columns: columns.map(|code| say_of!(code)).to_vec(),
        rows: corners.iter().map(row).collect(),
        working: Vec::new(),
    }
}

/// What comes of it at a corner, in words.
fn result(at: &AtCorner, opening: &Opening, inputs: &InjectorInputs) -> (String, Option<Tone>) {
    use crate::injector::{DriverKind, carrying};
    let opens = !opening.is_missed(at);
    let limit = inputs.output.limit.filter(|_| inputs.output.stage == DriverKind::PlainSwitch);
    let (load, tone) = match limit.map(|limit| carrying::margin(at.output.high, limit.low).base()) {
        None => ("", None),
        Some(margin) if margin < -1e-9 => ("over the limit", Some(Tone::Bad)),
        Some(margin) if margin < carrying::MARGIN_WANTED - 1e-9 => {
            ("within the limit, no margin", Some(Tone::Doubtful))
        }
        Some(_) => ("within the limit", None),
    };
    let movement = if opens { "opens" } else { "may not open" };
    let words = if load.is_empty() { movement.to_owned() } else { format!("{load}; {movement}") };
    let missed = (!opens).then_some(Tone::Doubtful);
    (words, tone.into_iter().chain(missed).min())
}

/// From the lowest to the highest at any corner; the nominal value at rest.
fn range(corners: &[AtCorner; CORNERS], of: impl Fn(&AtCorner) -> Band<Current>) -> Band<Current> {
    let usual = of(InjectorAnswer::usual_of(corners)).nominal;
    corners
        .iter()
        .map(of)
        .fold(Band::exact(usual), |wide, band| wide.widened_to(band.low).widened_to(band.high))
}

/// A band as it is shown in a cell.
fn shown(band: Band<Current>) -> Value {
    let nominal = band.nominal.show();
    let (low, high) = (band.low.show().into_shown(), band.high.show().into_shown());
    if low == high {
        return nominal;
    }
    nominal.said(format!("{low} to {high}"))
}
