//! What is bought for the wires.

use super::{Duty, Lengths, LoomWire, Stock};
use crate::{
    loom::few::{MOST_SIZES, Needed, few, serving},
    quantity::{Area, Current, Length, Measure, metres},
};

/// A reel, or a cut of one: wire of one size for one duty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reel {
    /// What its colour tells.
    pub duty: Duty,
    /// Its conductor.
    pub size: Area,
    /// All pieces together, what is to spare at their ends counted.
    pub length: Length,
}

/// The wire to buy, thinnest first; of as few sizes as serve all pieces. A piece whose size or length isn't known is left out.
pub fn reels(wires: &[LoomWire], lengths: &Lengths) -> Vec<Reel> {
    let known = |wire: &LoomWire| {
        let piece = Needed { size: wire.size?, length: lengths.kept(wire.length?) };
        (wire.stock == Stock::Reel).then_some((wire.duty, piece))
    };
    let pieces: Vec<_> = wires.iter().filter_map(known).collect();
    let needed: Vec<_> = pieces.iter().map(|(_, piece)| *piece).collect();
    let sizes = few(&needed, MOST_SIZES).unwrap_or_default();
    let mut reels: Vec<Reel> = Vec::new();
    for (duty, piece) in pieces {
        let size = serving(&sizes, piece.size).unwrap_or(piece.size);
        let is_it = |reel: &&mut Reel| reel.duty == duty && reel.size == size;
        match reels.iter_mut().find(is_it) {
            Some(reel) => reel.length = metres(reel.length.base() + piece.length.base()),
            None => reels.push(Reel { duty, size, length: piece.length }),
        }
    }
    crate::sorted::by(&mut reels, |one, other| {
        one.size.base().total_cmp(&other.size.base()).then(one.duty.cmp(&other.duty))
    });
    reels
}

/// How many of each rating, smallest first.
pub fn counted(ratings: &[Current]) -> Vec<(Current, u32)> {
    let mut counted: Vec<(Current, u32)> = Vec::new();
    for rating in ratings {
        match counted.iter_mut().find(|(known, _)| known == rating) {
            Some((_, count)) => *count = count.saturating_add(1),
            None => counted.push((*rating, 1)),
        }
    }
    crate::sorted::by(&mut counted, |(one, _), (other, _)| one.base().total_cmp(&other.base()));
    counted
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::amperes;

    fn piece(duty: Duty, size: f64, length: f64) -> LoomWire {
        LoomWire {
            id: String::new(),
            label: String::new(),
            from: String::new(),
            to: String::new(),
            duty,
            stock: Stock::Reel,
            size: Some(Area::from_base(size * 1e-6)),
            length: Some(metres(length)),
            fuse: None,
            works: Vec::new(),
        }
    }

    #[test]
    fn pieces_of_one_size_and_colour_come_from_one_reel() {
        let lengths = Lengths { bought: None, spare: metres(0.1) };
        let wires = [
            piece(Duty::Switched, 2.5, 1.9),
            piece(Duty::Switched, 2.5, 0.9),
            piece(Duty::Ground, 2.5, 0.4),
            LoomWire { length: None, ..piece(Duty::Ground, 1.0, 1.0) },
            LoomWire { stock: Stock::Harness, ..piece(Duty::Output, 0.5, 1.0) },
        ];
        let found: Vec<_> = reels(&wires, &lengths)
            .into_iter()
            .map(|it| (it.duty, (it.length.base() * 1e3).round() / 1e3))
            .collect();
        assert_eq!(found, [(Duty::Switched, 3.0), (Duty::Ground, 0.5)]);
    }

    #[test]
    fn fuses_are_counted_by_rating() {
        let found = counted(&[20.0, 7.5, 20.0].map(amperes));
        assert_eq!(found, [(amperes(7.5), 1), (amperes(20.0), 2)]);
    }
}
