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
    /// Whether it is for both pieces of leads of which only the whole length is known: before a contact and behind it.
    pub is_unsplit: bool,
    /// Its conductor.
    pub size: Area,
    /// The thinnest that one of its pieces asked for.
    pub least: Area,
    /// All pieces together, what is to spare at their ends counted.
    pub length: Length,
}

/// The wire to buy, thinnest first; of as few sizes as serve all pieces. A piece whose size or length isn't known is left out.
pub fn reels(wires: &[LoomWire], lengths: &Lengths) -> Vec<Reel> {
    let known = |wire: &LoomWire| {
        let length = match (wire.length, wire.together) {
            (Some(length), _) => lengths.kept(length),
            // two pieces, each with its end to spare
            (None, Some(both)) => lengths.kept(lengths.kept(both)),
            (None, None) => return None,
        };
        let piece = Needed { size: wire.size?, length };
        let is_unsplit = wire.length.is_none();
        (wire.stock == Stock::Reel).then_some(((wire.duty, is_unsplit), piece))
    };
    let pieces: Vec<_> = wires.iter().filter_map(known).collect();
    let needed: Vec<_> = pieces.iter().map(|(_, piece)| *piece).collect();
    let sizes = few(&needed, MOST_SIZES).unwrap_or_default();
    let mut reels: Vec<Reel> = Vec::new();
    for ((duty, is_unsplit), piece) in pieces {
        let size = serving(&sizes, piece.size).unwrap_or(piece.size);
        let is_it =
            |reel: &&mut Reel| (reel.duty, reel.is_unsplit, reel.size) == (duty, is_unsplit, size);
        if let Some(reel) = reels.iter_mut().find(is_it) {
            reel.length = metres(reel.length.base() + piece.length.base());
            reel.least = if piece.size < reel.least { piece.size } else { reel.least };
        } else {
            let (least, length) = (piece.size, piece.length);
            reels.push(Reel { duty, is_unsplit, size, least, length });
        }
    }
    crate::sorted::by(&mut reels, |one, other| {
        one.size.base().total_cmp(&other.size.base()).then(one.duty.cmp(&other.duty))
    });
    reels
}

/// Of each rating what it is for, smallest first.
pub fn counted(ratings: &[(Current, String)]) -> Vec<(Current, Vec<String>)> {
    let mut counted: Vec<(Current, Vec<String>)> = Vec::new();
    for (rating, of) in ratings {
        match counted.iter_mut().find(|(known, _)| known == rating) {
            Some((_, all)) => all.push(of.clone()),
            None => counted.push((*rating, vec![of.clone()])),
        }
    }
    crate::sorted::by(&mut counted, |(one, _), (other, _)| one.base().total_cmp(&other.base()));
    counted
}

/// The rings at the bolts, thinnest first: the size of each wire, and at which bolts wires of that size end.
pub fn rings(wires: &[LoomWire], is_bolt: impl Fn(&String) -> bool) -> Vec<(Area, Vec<String>)> {
    let mut counted: Vec<(Area, Vec<String>)> = Vec::new();
    for wire in wires.iter().filter(|it| it.stock != Stock::Piece) {
        let ends = [&wire.from, &wire.to].into_iter().filter(|it| is_bolt(it)).cloned();
        let Some(size) = wire.size else { continue };
        for end in ends {
            match counted.iter_mut().find(|(known, _)| *known == size) {
                Some((_, all)) => all.push(end),
                None => counted.push((size, vec![end])),
            }
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
            together: None,
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
            LoomWire {
                length: None,
                together: Some(metres(1.3)),
                ..piece(Duty::Permanent, 2.5, 1.0)
            },
            LoomWire { stock: Stock::Piece, ..piece(Duty::Permanent, 2.5, 3.0) },
            LoomWire { stock: Stock::Harness, ..piece(Duty::Output, 0.5, 1.0) },
        ];
        let found: Vec<_> = reels(&wires, &lengths)
            .into_iter()
            .map(|it| (it.duty, (it.length.base() * 1e3).round() / 1e3))
            .collect();
        // 1.9 + 0.1 + 0.9 + 0.1 m; 1.3 m in two pieces, 0.1 m at the end of each; 0.4 + 0.1 m
        assert_eq!(found, [(Duty::Permanent, 1.5), (Duty::Switched, 3.0), (Duty::Ground, 0.5)]);
    }

    #[test]
    fn each_end_at_a_bolt_has_a_ring_of_its_size() {
        let to = |size, from: &str, to: &str| LoomWire {
            from: from.to_owned(),
            to: to.to_owned(),
            ..piece(Duty::Ground, size, 1.0)
        };
        let wires =
            [to(4.0, "plus", "relay"), to(1.0, "lamp", "ground"), to(1.0, "plus", "ground")];
        let found = rings(&wires, |end| ["plus", "ground"].contains(&end.as_str()));
        let found: Vec<_> =
            found.iter().map(|(size, ends)| ((size.base() * 1e6).round(), ends.len())).collect();
        assert_eq!(found, [(1.0, 3), (4.0, 1)]);
    }

    #[test]
    fn fuses_are_counted_by_rating() {
        let of = |rating, name: &str| (amperes(rating), name.to_owned());
        let found = counted(&[of(20.0, "fan"), of(7.5, "lamp"), of(20.0, "pump")]);
        let named = |rating, names: &[&str]| {
            (amperes(rating), names.iter().map(|it| (*it).to_owned()).collect())
        };
        assert_eq!(found, [named(7.5, &["lamp"]), named(20.0, &["fan", "pump"])]);
    }
}
