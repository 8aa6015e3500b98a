//! What is cut, in the order in which it is cut, to be ticked off.

use super::{
    planned::{PlannedHarness, PlannedWire},
    words,
};
use crate::{
    fields::harness,
    loom::{LEAST_CUT_M, WireCut, in_cutting_order, on_tape},
    message::Message,
    quantity::Measure,
    report::{
        Answer, Tone,
        bench::{Checklist, Item},
    },
    say,
};

/// The list; nothing while no wire is measured.
pub(super) fn answer(planned: &PlannedHarness<'_>) -> Option<Answer> {
    let order = in_cutting_order(&planned.bare(), &planned.typed.lengths);
    let wires = order.into_iter().filter_map(|at| planned.wires.get(at));
    let item = |planned_wire: &PlannedWire| {
        let name = planned_wire.wire.id.clone();
        let is_done = planned.typed.done.contains(&name);
        Some(Item { name, words: words_of(planned, planned_wire)?, is_done })
    };
    let items: Vec<Item> = wires.filter_map(item).collect();
    let (n, done) = (items.len(), items.iter().filter(|it| it.is_done).count());
    if n == 0 {
        return None;
    }
    let (tone, verdict) = if done == n {
        (Tone::Good, say!(words::CUT_DONE, n = n))
    } else {
        (Tone::Open, say!(words::CUT_OPEN, done = done, n = n))
    };
    let mut answer = Answer::new("wires.cut", tone, verdict);
    answer.title = Some(say!(words::TITLE_CUT));
    answer.cautions = vec![say!(words::CAUTION_CUT)];
    answer.lists = vec![Checklist { title: say!(words::LIST), path: harness::DONE.path(), items }];
    Some(answer)
}

/// What is done with one; nothing while it isn't measured.
fn words_of(planned: &PlannedHarness<'_>, it: &PlannedWire) -> Option<Message> {
    let (wire, label) = (&it.wire, it.wire.label.clone());
    let length = wire.length?;
    let Some(cut) = wire.cut(&planned.typed.lengths) else {
        let colour = planned.colour(wire)?.to_owned();
        let length = on_tape(planned.typed.lengths.kept(length));
        return Some(match wire.size {
            Some(size) => {
                say!(
                    words::ITEM_PIECE,
                    label = label,
                    length = length,
                    size = size,
                    colour = colour
                )
            }
            None => say!(words::ITEM_PIECE_OF, label = label, length = length, colour = colour),
        });
    };
    Some(match cut {
        WireCut::Off(off) if off.base() >= LEAST_CUT_M => {
            say!(words::ITEM_OFF, label = label, off = on_tape(off))
        }
        WireCut::Off(_) | WireCut::Tight(_) => say!(words::ITEM_AS_IS, label = label),
        WireCut::Short(short) => say!(words::ITEM_SHORT, label = label, short = on_tape(short)),
    })
}
