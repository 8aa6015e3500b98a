//! Laws of cutting and buying.

use proptest::prelude::*;

use super::{
    Duty, LEAST_CUT_M, Lengths, LoomWire, Stock, WireCut, bought::reels, in_cutting_order,
};
use crate::quantity::{Area, Measure, metres};

fn lengths() -> impl Strategy<Value = Lengths> {
    (0.2_f64..10.0, 0.0_f64..0.5)
        .prop_map(|(bought, spare)| Lengths { bought: Some(metres(bought)), spare: metres(spare) })
}

fn wire() -> impl Strategy<Value = LoomWire> {
    let length = prop::option::of(0.05_f64..10.0);
    (any::<bool>(), 0.3_f64..20.0, length, 0_usize..Duty::ALL.len()).prop_map(
        |(is_reel, size, length, duty)| LoomWire {
            id: String::new(),
            label: String::new(),
            from: String::new(),
            to: String::new(),
            duty: Duty::ALL[duty],
            stock: if is_reel { Stock::Reel } else { Stock::Harness },
            size: Some(Area::from_base(size * 1e-6)),
            length: length.map(metres),
            together: None,
            fuse: None,
            works: Vec::new(),
        },
    )
}

proptest! {
    #[test]
    fn what_is_kept_and_what_comes_off_is_what_was_bought(lengths in lengths(), length in 0.01_f64..12.0) {
        let bought = lengths.bought.map_or(0.0, Measure::base);
        match lengths.cut(metres(length)) {
            Some(WireCut::Off(off)) => {
                let kept = lengths.kept(metres(length)).base();
                prop_assert!((kept + off.base() - bought).abs() < 1e-6);
            }
            Some(WireCut::Tight(left)) => {
                prop_assert!((length + left.base() - bought).abs() < 1e-6);
                prop_assert!(left.base() <= lengths.spare.base());
            }
            Some(WireCut::Short(short)) => prop_assert!((length - short.base() - bought).abs() < 1e-6),
            None => prop_assert!(false, "the harness was measured"),
        }
    }

    #[test]
    fn every_wire_is_cut_once_and_the_longest_come_off_first(
        lengths in lengths(),
        wires in prop::collection::vec(wire(), 0..20),
    ) {
        let order = in_cutting_order(&wires, &lengths);
        let mut each = order.clone();
        each.sort_unstable();
        prop_assert_eq!(each, (0..wires.len()).collect::<Vec<_>>());
        let off = |at: &usize| match wires[*at].cut(&lengths) {
            Some(WireCut::Off(off)) => Some(off.base()),
            _ => None,
        };
        let offs: Vec<f64> = order.iter().filter_map(off).collect();
        prop_assert!(offs.windows(2).all(|pair| pair[0] + LEAST_CUT_M >= pair[1]), "{:?}", offs);
    }

    /// All that is cut from reels is bought, and each piece of a size that does.
    #[test]
    fn what_is_bought_is_what_the_pieces_need(
        lengths in lengths(),
        wires in prop::collection::vec(wire(), 0..20),
    ) {
        let is_cut = |wire: &&LoomWire| wire.stock == Stock::Reel && wire.length.is_some();
        let needed: f64 = wires
            .iter()
            .filter(is_cut)
            .filter_map(|it| Some(lengths.kept(it.length?).base()))
            .sum();
        let found = reels(&wires, &lengths);
        let bought: f64 = found.iter().map(|it| it.length.base()).sum();
        prop_assert!((bought - needed).abs() < 1e-6 * (1.0 + needed));
        for wire in wires.iter().filter(is_cut) {
            let size = wire.size.map_or(0.0, Measure::base);
            let does = |size_bought: f64| size_bought >= size * (1.0 - 1e-9);
            prop_assert!(found.iter().any(|it| it.duty == wire.duty && does(it.size.base())));
        }
    }
}
