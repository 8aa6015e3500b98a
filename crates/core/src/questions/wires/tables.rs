//! The wires of a kind, a row each.

use super::{
    planned::{PlannedHarness, PlannedWire, WireGroup},
    words,
};
use crate::{
    loom::{Duty, Lengths, WireCut, Work, on_tape},
    message::Message,
    quantity::{Measure, Value, metres},
    report::{Detail, Row, Table, Tone},
    say, say_of,
    words::Wording,
};

/// Nothing while none of them is measured.
pub(super) fn of_group(planned: &PlannedHarness<'_>, group: WireGroup) -> Detail {
    let wires: Vec<_> = planned.wires.iter().filter(|it| it.group == group).collect();
    let lengths = &planned.typed.lengths;
    let known = |it: &&PlannedWire| it.wire.length.or(it.wire.together);
    let Some(first) = wires.iter().find_map(known) else { return Detail::default() };
    let working = lengths.step(first).filter(|_| group != WireGroup::Feeds);
    let columns = columns(&wires, lengths);
    let table = Table {
        caption: group.title(),
        columns: columns.iter().map(|it| (it.head)()).collect(),
        rows: wires.iter().map(|it| row(it, lengths, &columns)).collect(),
        working: vec![working.unwrap_or_else(|| lengths.kept_step(first))],
    };
    Detail { tables: vec![table], ..Detail::default() }
}

/// A column: its head, and what stands in it.
struct Column {
    head: fn() -> Message,
    cell: fn(&PlannedWire, &Lengths) -> Option<Value>,
}

const COLUMNS: [Column; 6] = [
    Column {
        head: || say!(words::COL_WIRE),
        cell: |it, _| Some(Value::text(it.wire.label.clone())),
    },
    Column {
        head: || say!(words::COL_WAY),
        cell: |it, _| {
            let open = || Value::text(say!(words::NOT_MEASURED).into_text());
            let both = it.wire.together.map(|it| say!(words::WAY_BOTH, length = on_tape(it)));
            let both = both.map(|it| Value::text(it.into_text()));
            it.wire.length.map(on_tape).or(both).or_else(|| it.key.map(|_| open()))
        },
    },
    Column { head: || say!(words::COL_OFF), cell: off },
    Column {
        head: || say!(words::COL_PIECE),
        cell: |it, lengths| {
            let piece = it.wire.length.filter(|_| it.wire.cut(lengths).is_none());
            piece
                .filter(|_| it.wire.stock == crate::loom::Stock::Reel)
                .map(|it| on_tape(lengths.kept(it)))
        },
    },
    Column { head: || say!(words::COL_SIZE), cell: |it, _| it.wire.size.map(Measure::show) },
    Column {
        head: || say!(words::COL_WORK),
        cell: |it, _| (!it.wire.works.is_empty()).then(|| Value::text(work(&it.wire.works))),
    },
];

/// Those in which something stands.
fn columns(wires: &[&PlannedWire], lengths: &Lengths) -> Vec<&'static Column> {
    let has = |column: &&Column| wires.iter().any(|it| (column.cell)(it, lengths).is_some());
    COLUMNS.iter().filter(has).collect()
}

fn off(it: &PlannedWire, lengths: &Lengths) -> Option<Value> {
    Some(match it.wire.cut(lengths)? {
        WireCut::Off(off) => on_tape(off),
        WireCut::Tight(_) => on_tape(metres(0.0)),
        WireCut::Short(by) => Value::text(say!(words::LACKS, short = on_tape(by)).into_text()),
    })
}

fn row(it: &PlannedWire, lengths: &Lengths, columns: &[&Column]) -> Row {
    let blank = || Value::text("");
    let cells = columns.iter().map(|column| (column.cell)(it, lengths).unwrap_or_else(blank));
    let is_short = matches!(it.wire.cut(lengths), Some(WireCut::Short(_)));
    Row { cells: cells.collect(), tone: is_short.then_some(Tone::Bad) }
}

/// What is done with a wire, in words.
pub(crate) fn work(works: &[Work]) -> String {
    let one = |work: &Work| {
        let wording = match work {
            Work::Splice(n) => return say!(words::WORK_SPLICE, n = *n).into_text(),
            Work::Twist => words::WORK_TWIST,
            Work::Shield => words::WORK_SHIELD,
            Work::Move => words::WORK_MOVE,
            Work::Change => words::WORK_CHANGE,
            Work::Fit => words::WORK_FIT,
        };
        say_of!(wording).into_text()
    };
    works.iter().map(one).collect::<Vec<_>>().join(", ")
}

/// What a wire is for, in words.
pub(crate) fn duty(duty: Duty) -> &'static Wording {
    match duty {
        Duty::Permanent => words::DUTY_PERMANENT,
        Duty::Switched => words::DUTY_SWITCHED,
        Duty::Ground => words::DUTY_GROUND,
        Duty::Ignition => words::DUTY_IGNITION,
        Duty::Injection => words::DUTY_INJECTION,
        Duty::Output => words::DUTY_OUTPUT,
        Duty::Sensor => words::DUTY_SENSOR,
    }
}
