//! What is cut, in the order in which it is cut, to be ticked off.

use super::{
    planned::{PlannedHarness, PlannedWire},
    words,
};
use crate::{
    fields::harness,
    loom::{LEAST_CUT_M, Stock, WireCut, in_cutting_order, on_tape},
    message::Message,
    quantity::{Measure, metres},
    report::{
        Answer, AnswerRole, Tone,
        bench::{Checklist, Item},
    },
    say,
};

/// The list; nothing while no wire is measured.
pub(super) fn answer(planned: &PlannedHarness<'_>) -> Option<Answer> {
    let order = in_cutting_order(&planned.bare(), &planned.typed.lengths);
    let wires: Vec<_> = order.into_iter().filter_map(|at| planned.wires.get(at)).collect();
    let list = |stock, title| {
        let wires = wires.iter().filter(|it| it.wire.stock == stock);
        let items: Vec<Item> = wires.filter_map(|it| item(planned, it)).collect();
        let path = harness::DONE.path();
        (!items.is_empty()).then_some(Checklist { title, path, items, is_main: true })
    };
    let lists: Vec<_> = [
        list(Stock::Harness, say!(words::LIST_HARNESS)),
        list(Stock::Reel, say!(words::LIST_REELS)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let items = || lists.iter().flat_map(|it| &it.items);
    let (n, done) = (items().count(), items().filter(|it| it.is_done).count());
    if n == 0 {
        return None;
    }
    let (tone, verdict) = if done == n {
        (Tone::Good, say!(words::CUT_DONE, n = n))
    } else {
        (Tone::Open, say!(words::CUT_OPEN, done = done, n = n))
    };
    let mut answer = Answer::new("wires.cut", tone, verdict);
    answer.role = AnswerRole::Part;
    answer.title = Some(say!(words::TITLE_CUT));
    answer.cautions = vec![say!(words::CAUTION_CUT)];
    answer.lists = lists;
    Some(answer)
}

fn item(planned: &PlannedHarness<'_>, it: &PlannedWire) -> Option<Item> {
    let name = it.wire.id.clone();
    let is_done = planned.typed.done.contains(&name);
    Some(Item { name, words: words_of(planned, it)?, is_done })
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
        WireCut::Short(short) => {
            let more = metres(short.base() + planned.typed.lengths.spare.base());
            say!(words::ITEM_SHORT, label = label, short = on_tape(more))
        }
    })
}
