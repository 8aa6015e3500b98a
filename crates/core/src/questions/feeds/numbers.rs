//! The numbers, feed by feed.

use super::{read::PlannedCircuit, words};
use crate::{
    message::Message,
    quantity::{Measure, Value},
    report::{Detail, Figure, Row, Table, Tone},
    say,
    supply::{
        cable::{AlternatorAnswer, CableAnswer},
        circuit::Exposed,
    },
};

pub(super) fn of_feeds(circuits: &[PlannedCircuit]) -> Detail {
    let rows = circuits.iter().map(row).collect();
    let columns = vec![
        say!(words::COLUMN_FEED),
        say!(words::COLUMN_DRAWS),
        say!(words::COLUMN_FUSE),
        say!(words::COLUMN_WIRE),
        say!(words::COLUMN_DROP),
    ];
    let working = circuits.iter().flat_map(|it| it.found.answer.working.iter().cloned());
    let working = working.collect();
    let table = Table { caption: say!(words::TABLE), columns, rows, working };
    Detail { tables: vec![table], ..Detail::default() }
}

fn row(circuit: &PlannedCircuit) -> Row {
    let (inputs, answer) = (&circuit.inputs, &circuit.found.answer);
    let cell = |value: Option<Value>| value.unwrap_or_else(|| Value::text("–"));
    Row {
        cells: vec![
            Value::text(circuit.name.clone()),
            cell(answer.draws.map(Measure::show)),
            cell(inputs.fuse.map(Measure::show)),
            cell(inputs.area.map(Measure::show)),
            cell(answer.drop.map(|(drop, _)| drop.show())),
        ],
        tone: match answer.exposed {
            Some(Exposed::WireBarely) => Some(Tone::Doubtful),
            Some(_) => Some(Tone::Bad),
            None => None,
        },
    }
}

pub(super) fn of_cable(found: &CableAnswer) -> Detail {
    let drop = figure(say!(words::FIGURE_DROP), found.drop.show());
    let figures = vec![Figure { working: found.working.clone(), ..drop }];
    Detail { figures, ..Detail::default() }
}

pub(super) fn of_alternator(found: &AlternatorAnswer) -> Detail {
    let needed = figure(say!(words::FIGURE_NEEDED), found.needed.show());
    let mut figures = vec![Figure { working: found.working.clone(), ..needed }];
    figures.extend(found.idle.map(|left| figure(say!(words::FIGURE_IDLE), left.show())));
    figures.extend(found.speed.map(|left| figure(say!(words::FIGURE_SPEED), left.show())));
    Detail { figures, ..Detail::default() }
}

fn figure(label: Message, value: Value) -> Figure {
    Figure { label, value, low: None, high: None, working: Vec::new() }
}
