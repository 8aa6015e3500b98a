//! The numbers behind the answer, in the units of both habits.

use crate::report::{Detail, Figure, Row, Table};
use crate::{
    fuel::{
        DeliveryEnd, FuelAnswer, FuelInputs, Limit, Regulator, cures::Larger, delivery::Delivery,
        flow::Rated,
    },
    message::Message,
    quantity::{Band, Density, Dimension, MassFlow, Measure, Power, Pressure, Value, VolumeRate},
    questions::fuel::words,
    say, say_of,
    working::{Formula, Step, step},
};

const AT_BOOST: Formula = Formula {
    symbols: "p = p_r + p_b",
    source: "a manifold-referenced regulator holds the difference: common practice, no source",
};

/// `300 kW (402 hp)`.
pub(super) fn power(power: Power) -> Value {
    let hp = Dimension::Power.shown_in(power.base(), "hp");
    both(power.show(), &hp)
}

/// `3 bar (43.5 psi)`.
pub(super) fn pressure(pressure: Pressure) -> Value {
    let psi = Dimension::Pressure.shown_in(pressure.base(), "psi");
    both(pressure.show(), &psi)
}

/// `550 cc/min (54.2 lb/h)`, or the other way round: as it is stated first.
pub(super) fn rated(flow: Rated, inputs: &FuelInputs) -> Value {
    let fluid = inputs.test_density.nominal;
    let (volume, mass) = (flow.volume(fluid).show(), pounds(flow.mass(fluid)));
    match flow {
        Rated::Volume(_) => both(volume, &mass.shown),
        Rated::Mass(_) => both(mass, &volume.shown),
    }
}

/// As it is typed.
pub(super) fn alone(flow: Rated) -> String {
    match flow {
        Rated::Volume(flow) => flow.nominal.show().into_shown(),
        Rated::Mass(flow) => flow.nominal.show().into_shown(),
    }
}

fn pounds(flow: MassFlow) -> Value {
    flow.show().said(Dimension::MassFlow.shown_in(flow.base(), "lb/h"))
}

fn both(value: Value, other: &str) -> Value {
    let shown = format!("{} ({other})", value.shown);
    value.said(shown)
}

/// A figure from the least to the most that may be delivered, its numbers shown so.
fn figure<Q: Measure>(
    label: Message,
    found: &FuelAnswer,
    of: impl Fn(&Delivery) -> Option<Q>,
    shown: impl Fn(Q) -> Value,
    working: impl Fn(&Delivery) -> &[Step],
) -> Option<Figure> {
    let ends = [of(&found.nominal)?, of(&found.least)?, of(&found.most)?];
    let [nominal, one, other] = ends;
    let band = Band { nominal, ..Band::between(one, other) };
    let (low, high) = if band.is_spread() {
        (Some(shown(band.low)), Some(shown(band.high)))
    } else {
        (None, None)
    };
    let mut steps = working(&found.nominal).to_vec();
    if band.is_spread() {
        steps.extend_from_slice(working(&found.least));
    }
    Some(Figure { label, value: shown(band.nominal), low, high, working: steps })
}

/// Pressure across an injector.
fn of_drop(found: &FuelAnswer) -> Figure {
    let (least, most) = (found.least.drop, found.most.drop);
    let band = Band { nominal: found.nominal.drop, ..Band::between(least, most) };
    let first = |at: &Delivery| at.flow_working.first().cloned();
    let working = first(&found.nominal).into_iter().chain(first(&found.least)).collect();
    Figure::new(say!(words::DROP), band, working)
}

/// Injectors that would be enough.
fn of_larger(larger: &Larger, inputs: &FuelInputs) -> Figure {
    Figure::plain(say!(words::LARGER), rated(larger.flow, inputs), larger.working.clone())
}

/// Of what is delivered.
pub(super) fn detail(inputs: &FuelInputs, found: &FuelAnswer) -> Detail {
    let tables = vec![table(inputs, found)];
    Detail { figures: figures(inputs, found), tables, ..Detail::default() }
}

/// Where the manifold may push as hard as the fuel.
pub(super) fn of_stopped(found: &FuelAnswer) -> Detail {
    Detail { figures: vec![of_drop(found)], ..Detail::default() }
}

/// Of injectors that would be enough, where there are none yet.
pub(super) fn of_wanted(larger: &Larger, inputs: &FuelInputs) -> Detail {
    Detail { figures: vec![of_larger(larger, inputs)], ..Detail::default() }
}

/// The figures that there are.
fn figures(inputs: &FuelInputs, found: &FuelAnswer) -> Vec<Figure> {
    let feeds =
        if inputs.pace.is_some() { words::FEEDS_AT_SPEED } else { words::FEEDS_WITHOUT_SPEED };
    let mut figures = Vec::new();
    figures.extend(figure(
        say_of!(feeds),
        found,
        |at| Some(at.feeds),
        power,
        |at| &at.feeds_working,
    ));
    figures.extend(figure(
        say!(words::DUTY),
        found,
        |at| at.duty,
        Measure::show,
        |at| &at.duty_working,
    ));
    figures.push(of_drop(found));
    if inputs.regulator == Regulator::Referenced && inputs.boost.high.base() > 0.0 {
        let (rail, boost) = (inputs.rail.high, inputs.boost.high);
        let shown = [("p_r", rail.show()), ("p_b", boost.show())];
        let sum = pressure(rail + boost);
        let working = vec![step(&AT_BOOST, &shown, sum.clone())];
        figures.push(Figure::plain(say!(words::RAIL_AT_BOOST), sum, working));
    }
    if let Some(window) = found.least.window {
        let working = found.least.window_working.iter().take(1).cloned().collect();
        figures.push(Figure::plain(say!(words::WINDOW), window, working));
    }
    figures.extend(figure(
        say!(words::DEAD_SHARE),
        found,
        |at| at.dead_share,
        Measure::show,
        |at| &at.window_working,
    ));
    if found.limit_at(DeliveryEnd::Nominal) == Limit::DeadTime {
        figures.extend(found.nominal.reaches.map(|speed| {
            Figure::plain(say!(words::REACHES), speed, found.nominal.reaches_working.clone())
        }));
    }
    figures.extend(found.cures.pressure.as_ref().map(|it| {
        Figure::plain(say!(words::MORE_PRESSURE), pressure(it.rail), it.working.clone())
    }));
    figures.extend(found.cures.larger.as_ref().map(|it| of_larger(it, inputs)));
    figures
}

/// What one injector passes, as stated and in this car.
fn table(inputs: &FuelInputs, found: &FuelAnswer) -> Table {
    let mut rows = Vec::new();
    for (at, set) in inputs.sets.iter().enumerate() {
        let of_set =
            if inputs.sets.len() > 1 { format!("set {}: ", at + 1) } else { String::new() };
        let fluid = inputs.test_density.nominal;
        let stated = inputs.stated_at.nominal;
        rows.push(row(&of_set, "as stated", stated, set.flow.mass(fluid), fluid));
        let ends = [
            (DeliveryEnd::Nominal, "in this car"),
            (DeliveryEnd::Least, "in this car, at its leanest"),
        ];
        for (end, words) in ends {
            let delivery = found.at(end);
            let mass = delivery.each.get(at).copied();
            let density = end.of_help(inputs.density);
            rows.extend(mass.map(|mass| row(&of_set, words, delivery.drop, mass, density)));
        }
    }
    let columns = [
        words::COLUMN_WHEN,
        words::COLUMN_PRESSURE,
        words::COLUMN_VOLUME,
        words::COLUMN_POUNDS,
        words::COLUMN_GRAMS,
    ];
    Table {
        caption: say!(words::TABLE),
        columns: columns.map(|code| say_of!(code)).to_vec(),
        rows,
        working: [found.nominal.flow_working.as_slice(), &found.least.flow_working].concat(),
    }
}

fn row(set: &str, words: &str, at: Pressure, mass: MassFlow, density: Density) -> Row {
    let volume: VolumeRate = mass / density;
    let cells = vec![
        Value::text([set, words].concat()),
        pressure(at),
        volume.show(),
        pounds(mass),
        mass.show(),
    ];
    Row { cells, tone: None }
}
