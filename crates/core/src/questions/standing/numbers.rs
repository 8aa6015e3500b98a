//! The numbers, and what draws how much.

use super::{
    drain::{TotalDrain, is_drawn},
    words,
};
use crate::{
    battery::{self, until_half},
    message::Message,
    output::{Operating, PinBranch, PinPart},
    quantity::{Band, Charge, Current, Measure, Value, amperes, volts},
    report::{Detail, Figure, Row, Table},
    say,
    working::{Formula, Step, step},
};

const SUM: Formula = Formula {
    symbols: "I = I_outputs + I_controller + I_other",
    source: "currents into a node sum to zero (Kirchhoff); each output solved as a circuit with the key off, with all that \
             is on it: at most with every resistance at its least",
};

const BRANCH: Formula = Formula {
    symbols: "I = V / R",
    source: "Ohm's law, where most flows: the voltage between battery and pin as the whole output was solved",
};

/// The most that flows, from its parts.
pub(super) fn sum(drain: &TotalDrain) -> Step {
    let values = [
        ("I_outputs", drain.outputs.high.show()),
        ("I_controller", drain.controller.high.show()),
        ("I_other", drain.other.high.show()),
    ];
    step(&SUM, &values, drain.all.high)
}

pub(super) fn detail(drain: &TotalDrain, capacity: Option<&Band<Charge>>) -> Detail {
    let tables = table(drain).into_iter().collect();
    Detail { figures: figures(drain, capacity), tables, ..Detail::default() }
}

fn figures(drain: &TotalDrain, capacity: Option<&Band<Charge>>) -> Vec<Figure> {
    let ends = [drain.all.low, drain.all.nominal, drain.all.high].map(Measure::show);
    let of_drain = figure(say!(words::FIGURE_DRAIN), ends, vec![sum(drain)]);
    let of_time = capacity.map(|capacity| {
        let time = until_half(capacity, &drain.all);
        let ends = [time.low, time.nominal, time.high].map(battery::shown);
        let steps = vec![sum(drain), battery::working(capacity, &drain.all)];
        figure(say!(words::FIGURE_TIME), ends, steps)
    });
    [of_drain].into_iter().chain(of_time).collect()
}

/// Two ends that read alike are one.
fn figure(label: Message, [low, value, high]: [Value; 3], working: Vec<Step>) -> Figure {
    let is_spread = low.shown != high.shown;
    let (low, high) = (is_spread.then_some(low), is_spread.then_some(high));
    Figure { label, value, low, high, working }
}

/// What draws, biggest first.
fn table(drain: &TotalDrain) -> Option<Table> {
    let groups = drain.solved.groups.iter().map(|group| {
        let name = if group.loads.is_empty() {
            group.outputs.clone()
        } else {
            [group.outputs.as_str(), ": ", &group.loads].concat()
        };
        (Value::text(name), group.drain.current)
    });
    let beside = [(words::ROW_CONTROLLER, drain.controller), (words::ROW_OTHER, drain.other)];
    let beside = beside.map(|(name, current)| (Value::text(name.text), current));
    let mut rows: Vec<(Value, Band<Current>)> =
        groups.chain(beside).filter(|(_, current)| is_drawn(current.high)).collect();
    let most = |current: &Band<Current>| current.high.base();
    crate::sorted::by(&mut rows, |(_, one), (_, other)| most(other).total_cmp(&most(one)));
    let row = |(name, current): (Value, Band<Current>)| Row {
        cells: vec![name, current.nominal.into(), current.high.into()],
        tone: None,
    };
    let circuits = drain.solved.groups.iter().filter_map(|group| group.drain.most.as_ref());
    // one row that no output has says no more than the figure
    let is_worth_it = rows.len() > 1 || !drain.solved.groups.is_empty();
    is_worth_it.then(|| Table {
        caption: say!(words::TABLE),
        columns: columns(),
        rows: rows.into_iter().map(row).collect(),
        working: circuits.flat_map(branches).chain([sum(drain)]).collect(),
    })
}

fn columns() -> Vec<Message> {
    vec![say!(words::COLUMN_WHAT), say!(words::COLUMN_MEANT), say!(words::COLUMN_MOST)]
}

/// How much comes to the pin from above through each load and through a pull-up.
fn branches(solved: &Operating) -> Vec<Step> {
    let Some(pin) = solved.pin else { return Vec::new() };
    let brings = |branch: &&PinBranch| {
        matches!(branch.part, PinPart::Load(_) | PinPart::PullUp)
            && is_drawn(amperes(-branch.current.base()))
    };
    let of_branch = |branch: &PinBranch| {
        let across = volts(branch.behind.base() - pin.base());
        let values = [("V", across.show()), ("R", branch.resistance.show())];
        step(&BRANCH, &values, amperes(-branch.current.base()))
    };
    solved.branches.iter().filter(brings).map(of_branch).collect()
}
