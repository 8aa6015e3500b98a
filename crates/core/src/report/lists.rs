//! The lists of the harness as a spreadsheet reads them: wires, cuts, labels, what is bought.

use csv::{Terminator, WriterBuilder};

use super::{Report, usual::usual};
use crate::{
    car::Car,
    loom::{Duty, Stock, WireCut, in_cutting_order, on_tape},
    message::Message,
    plan::Plan,
    quantity::{Length, Measure, metres, number},
    questions::{
        Memory,
        wires::{
            planned::{PlannedHarness, PlannedWire, planned},
            tables::{self, work},
            words,
        },
    },
    read::Reader,
    say, say_of,
    words::Wording,
};

/// A list of the harness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HarnessList {
    /// Every wire.
    Wires,
    /// What is cut, in the order in which it is cut.
    Cuts,
    /// Both labels of each wire, to be printed.
    Labels,
    /// What is bought, for wires and cures alike.
    Shopping,
}

impl HarnessList {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Wires, Self::Cuts, Self::Labels, Self::Shopping];

    /// Its name, in commands and files.
    pub fn name(self) -> &'static str {
        match self {
            Self::Wires => "wires",
            Self::Cuts => "cuts",
            Self::Labels => "labels",
            Self::Shopping => "shopping",
        }
    }
}

/// A list as comma-separated values by RFC 4180: a heading, then a record each, lines that end in CR LF.
///
/// What a spreadsheet would take for a formula gets an apostrophe before it: a plan may come from a stranger.
pub fn csv(list: HarnessList, plan: &Plan, report: &Report) -> String {
    let mut table = match list {
        HarnessList::Wires => of_harness(plan, wires),
        HarnessList::Cuts => of_harness(plan, cuts),
        HarnessList::Labels => {
            let each = labels(plan).into_iter().map(|it| vec![it]);
            [vec![said(words::COL_LABEL)]].into_iter().chain(each).collect()
        }
        HarnessList::Shopping => shopping(report),
    };
    let mut writer = WriterBuilder::new().terminator(Terminator::CRLF).from_writer(Vec::new());
    for record in &mut table {
        for cell in record.iter_mut().filter(|it| it.starts_with(['=', '+', '-', '@', '\t', '\r']))
        {
            cell.insert(0, '\'');
        }
        // a list in memory takes every record
        let _ = writer.write_record(&*record);
    }
    let bytes = writer.into_inner().unwrap_or_default();
    String::from_utf8(bytes).unwrap_or_default()
}

/// The labels to print: each twice, for both ends of its wire.
pub fn labels(plan: &Plan) -> Vec<String> {
    let two = |it: &PlannedWire| [it.wire.label.clone(), it.wire.label.clone()];
    of_harness(plan, |harness| harness.wires.iter().flat_map(two).collect())
}

/// What is made of the harness of a plan.
fn of_harness<T>(plan: &Plan, make: impl FnOnce(&PlannedHarness<'_>) -> T) -> T {
    let filled = plan.filled();
    let mut reader = Reader::new(filled.as_ref().map_or(plan, |filled| &filled.plan));
    let car = Car::read(&mut reader, &mut Memory::default());
    make(&planned(&car))
}

fn said(wording: &'static Wording) -> String {
    say_of!(wording).into_text()
}

fn metres_of(length: Option<Length>) -> String {
    length.map_or_else(String::new, |it| crate::math::fixed(it.base(), 2))
}

fn duty(duty: Duty) -> String {
    said(tables::duty(duty))
}

const DONE: &str = "x";

fn wires(harness: &PlannedHarness<'_>) -> Vec<Vec<String>> {
    let heads = [
        words::COL_LABEL,
        words::COL_FROM,
        words::COL_TO,
        words::COL_DUTY,
        words::COL_MM2,
        words::COL_COLOUR,
        words::COL_WAY_M,
        words::COL_BOUGHT_M,
        words::COL_OFF_M,
        words::COL_FUSE_A,
        words::COL_WORK,
        words::COL_DONE,
    ];
    let row = |it: &PlannedWire| {
        let wire = &it.wire;
        let off = wire.cut(&harness.typed.lengths).and_then(|it| match it {
            WireCut::Off(off) => Some(off),
            WireCut::Tight(_) | WireCut::Short(_) => None,
        });
        let is_cut = wire.stock == Stock::Harness;
        let is_done = harness.typed.done.contains(&wire.id);
        vec![
            wire.label.clone(),
            wire.from.clone(),
            wire.to.clone(),
            duty(wire.duty),
            wire.size.map_or_else(String::new, |it| number(it.base() * 1e6)),
            harness.colour(wire).unwrap_or_default().to_owned(),
            metres_of(wire.length),
            metres_of(harness.typed.lengths.bought.filter(|_| is_cut)),
            metres_of(off),
            wire.fuse.map_or_else(String::new, |it| number(it.base())),
            work(&wire.works),
            if is_done { DONE.to_owned() } else { String::new() },
        ]
    };
    let heads = heads.into_iter().map(said).collect();
    [heads].into_iter().chain(harness.wires.iter().map(row)).collect()
}

fn cuts(harness: &PlannedHarness<'_>) -> Vec<Vec<String>> {
    let heads = [
        words::COL_LABEL,
        words::COL_WAY_M,
        words::COL_OFF_M,
        words::COL_PIECE_M,
        words::COL_MM2,
        words::COL_COLOUR,
        words::COL_WORK,
        words::COL_DONE,
    ];
    let row = |it: &PlannedWire| {
        let wire = &it.wire;
        // cables and straps are bought as long as they are
        if wire.stock == Stock::Piece {
            return None;
        }
        let cut = wire.cut(&harness.typed.lengths);
        let off = match cut {
            Some(WireCut::Off(off)) => Some(off),
            Some(WireCut::Tight(_)) => Some(metres(0.0)),
            Some(WireCut::Short(_)) | None => None,
        };
        let kept = |it| harness.typed.lengths.kept(it);
        let piece = wire.length.filter(|_| wire.stock == Stock::Reel).map(kept);
        let is_done = harness.typed.done.contains(&wire.id);
        let first = to_do_first(harness, it);
        let others = Some(work(&wire.works)).filter(|it| !it.is_empty());
        Some(vec![
            wire.label.clone(),
            metres_of(wire.length),
            metres_of(off),
            metres_of(piece),
            wire.size.map_or_else(String::new, |it| number(it.base() * 1e6)),
            harness.colour(wire).unwrap_or_default().to_owned(),
            first.into_iter().chain(others).collect::<Vec<_>>().join(", "),
            if is_done { DONE.to_owned() } else { String::new() },
        ])
    };
    let order = in_cutting_order(&harness.bare(), &harness.typed.lengths);
    let rows = order.into_iter().filter_map(|at| row(harness.wires.get(at)?));
    let heads = heads.into_iter().map(said).collect();
    [heads].into_iter().chain(rows).collect()
}

/// What has to be done before a wire is cut: it is measured, or lengthened.
fn to_do_first(harness: &PlannedHarness<'_>, it: &PlannedWire) -> Option<String> {
    if it.wire.length.is_none() {
        return Some(said(words::NOT_MEASURED));
    }
    let WireCut::Short(short) = it.wire.cut(&harness.typed.lengths)? else { return None };
    let more = metres(short.base() + harness.typed.lengths.spare.base());
    Some(say!(words::WORK_LENGTHEN, length = on_tape(more)).into_text())
}

fn shopping(report: &Report) -> Vec<Vec<String>> {
    let heads = [words::COL_PART, words::COL_COUNT, words::COL_UNIT, words::COL_FOR];
    let rows = usual(report).buy.into_iter().map(|it| {
        let count = it.count.map_or_else(String::new, |it| it.to_string());
        let unit = it.unit.unwrap_or_default().to_owned();
        vec![Message::into_text(it.words), count, unit, it.places.join("; ")]
    });
    let heads = heads.into_iter().map(said).collect();
    [heads].into_iter().chain(rows).collect()
}
