//! The numbers: what is read, how far it reaches, how busy it is.

use super::{
    load,
    pair::ohms,
    read::{PlannedBus, PlannedFrame},
    words,
};
use crate::{
    bus::{
        frame::{self, AT_MOST, IdentifierKind},
        load::SHARE,
        pair::{self, CONTACT, PairState, SIDE_BY_SIDE, TERMINATOR_OHM, expected},
        reach,
    },
    quantity::{Band, BitRate, Measure, Ratio, Resistance, Value, seconds, share},
    report::{Detail, Figure, Row, Table},
    say,
    working::{Step, step},
};

fn terminator() -> Value {
    Resistance::from_base(TERMINATOR_OHM).show()
}

pub(super) fn of_pair(bus: &PlannedBus) -> Detail {
    let mut figures = Vec::new();
    let count = bus.terminators.value().filter(|it| *it > 0);
    if let Some(count) = count.or(bus.reading.is_missing().then_some(2)) {
        let band = expected(count, bus.wires);
        let values = [("n", Value::from(count)), ("R_T", terminator())];
        let steps = vec![step(&SIDE_BY_SIDE, &values, band.nominal)];
        figures.push(Figure::new(say!(words::FIGURE_READ), band, steps));
    }
    if let Some(read) = bus.reading.value().and_then(ohms)
        && let PairState::Between { contact, .. } = pair::told(Some(read), bus.wires)
    {
        let steps = self::contact(read, bus.wires);
        figures.push(Figure::plain(say!(words::FIGURE_CONTACT), contact, steps));
    }
    Detail { figures, ..Detail::default() }
}

/// How what is too much in one branch was found, where that is what is read.
pub(super) fn contact(read: Resistance, wires: Resistance) -> Vec<Step> {
    let PairState::Between { right, contact } = pair::told(Some(read), wires) else {
        return Vec::new();
    };
    let values = [("R", read.show()), ("n", Value::from(right)), ("R_T", terminator())];
    vec![step(&CONTACT, &values, contact)]
}

pub(super) fn of_wire(bus: &PlannedBus) -> Detail {
    let both = bus.rate.value().zip(bus.length);
    let figure = both.map(|(rate, length)| {
        let part = reach::turnaround(rate, length);
        Figure::plain(say!(words::FIGURE_TURN), part, vec![reach::turned(rate, length)])
    });
    Detail { figures: figure.into_iter().collect(), ..Detail::default() }
}

/// How the load was summed, at the most.
pub(super) fn sum(load: &Band<Ratio>, rate: BitRate) -> Step {
    let bits = BitRate::from_base(load.high.base() * rate.base());
    let values = [("B", bits.show()), ("f", rate.show())];
    step(&SHARE, &values, load.high)
}

pub(super) fn of_load(bus: &PlannedBus) -> Detail {
    let Some((load, rate)) = load::of(bus) else { return Detail::default() };
    let figure = Figure::new(say!(words::FIGURE_LOAD), load, vec![sum(&load, rate)]);
    let rows = bus.frames.iter().filter_map(|it| row(it, rate)).collect();
    let table = Table {
        caption: say!(words::TABLE_FRAMES),
        columns: vec![
            say!(words::COLUMN_NAME),
            say!(words::COLUMN_SEEN),
            say!(words::COLUMN_BITS),
            say!(words::COLUMN_TIME),
            say!(words::COLUMN_SHARE),
        ],
        rows,
        working: bus.frames.iter().find_map(at_most).into_iter().collect(),
    };
    Detail { figures: vec![figure], tables: vec![table], ..Detail::default() }
}

fn row(it: &PlannedFrame, rate: BitRate) -> Option<Row> {
    let periodic = it.periodic?;
    let bits = periodic.bits.high;
    let most = bits.base() / periodic.period.low.base() / rate.base();
    let seen = it.known.map_or_else(|| Value::text(""), |known| Value::from(known.all));
    let bits_in_all = Value::text(crate::math::shortest(bits.base()));
    let time = seconds(bits.base() / rate.base());
    Some(Row {
        cells: vec![
            Value::text(load::name(it)),
            seen,
            bits_in_all,
            time.show(),
            share(most).show(),
        ],
        tone: None,
    })
}

/// How the bits of the first were counted.
fn at_most(it: &PlannedFrame) -> Option<Step> {
    let bits = it.periodic?.bits.high.base();
    let all = |kind, bytes| f64::from(frame::bits_at_most(kind, bytes));
    let kinds = [IdentifierKind::Standard, IdentifierKind::Extended];
    let sizes = kinds.iter().flat_map(|kind| (0..=frame::MOST_BYTES).map(|n| (*kind, n)));
    let (kind, bytes) = sizes.into_iter().find(|(kind, n)| (all(*kind, *n) - bits).abs() < 0.5)?;
    let values = [
        ("f", Value::from(kind.fields())),
        ("s", Value::from(kind.stuffed())),
        ("n", Value::from(bytes)),
    ];
    Some(step(&AT_MOST, &values, Value::text(crate::math::shortest(bits))))
}
