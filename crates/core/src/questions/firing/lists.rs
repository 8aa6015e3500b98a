//! The cures as lists to tick off.

use super::wired::CheckedConnection;
use crate::{
    channels::Cure,
    message::Message,
    questions::firing::words,
    report::bench::{Checklist, Item},
    say,
};

/// A list for each cure, cheapest first.
pub(super) fn lists(
    wiring: &CheckedConnection<'_>,
    cures: &[Cure],
    words: &[Message],
) -> Vec<Checklist> {
    let one = |(cure, words): (&Cure, &Message)| Checklist {
        title: title(cure),
        path: wiring.done_key.path(),
        items: items(wiring, cure, words),
        is_main: false,
    };
    cures.iter().zip(words).map(one).collect()
}

fn title(cure: &Cure) -> Message {
    match cure {
        Cure::Setting(_) => say!(words::taps::LIST_SETTING),
        Cure::Order(_) => say!(words::taps::LIST_ORDER),
        Cure::Exchange { .. } | Cure::Rewire(_) => say!(words::taps::LIST_MOVES),
    }
}

fn items(wiring: &CheckedConnection<'_>, cure: &Cure, words: &Message) -> Vec<Item> {
    let item = |name: String, words: Message| {
        let is_done = wiring.done.contains(&name);
        Item { name, words, is_done }
    };
    let mut items: Vec<Item> = match cure {
        Cure::Setting(angle) => {
            let side = if angle.degrees() < 0.0 { "later" } else { "earlier" };
            let name = format!("{side}{}", crate::math::fixed(angle.degrees().abs(), 1));
            vec![item(name, words.clone())]
        }
        Cure::Order(channels) => {
            let place = |(place, &channel): (usize, &u32)| {
                let words = say!(words::taps::ITEM_PLACE, place = place, channel = channel);
                item(format!("place{place}={channel}"), words)
            };
            (1..).zip(channels).map(place).collect()
        }
        Cure::Exchange { exchanges, .. } => {
            let exchange = |(one, other): &(crate::channels::Target, crate::channels::Target)| {
                let (one, other) = (one.to_string(), other.to_string());
                let name = format!("swap{one}_{other}");
                item(name, say!(words::taps::ITEM_EXCHANGE, one = one, other = other))
            };
            exchanges.iter().map(exchange).collect()
        }
        Cure::Rewire(moves) => {
            let lead = |it: &crate::channels::Move| {
                let target = it.target.to_string();
                let name = format!("move{target}={}", it.to);
                item(
                    name,
                    say!(words::taps::ITEM_MOVE, target = target, from = it.from, to = it.to),
                )
            };
            moves.iter().map(lead).collect()
        }
    };
    // what was done is proved only by firing them again
    let again = items.iter().map(|it| it.name.as_str()).collect::<Vec<_>>().concat();
    items.push(item(format!("again:{again}"), say!(words::taps::ITEM_AGAIN)));
    items
}
