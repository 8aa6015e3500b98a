//! Few sizes of wire instead of many.

use crate::{
    quantity::{Area, Length, Measure},
    supply::circuit::BOUGHT_MM2,
};

/// More sizes than this nobody buys for one car: common practice, no source.
pub const MOST_SIZES: usize = 4;

/// A wire that has to be of this size at least, and so long.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Needed {
    /// The thinnest that does.
    pub size: Area,
    /// Its length; of one that isn't measured, a metre.
    pub length: Length,
}

/// The sizes to buy: `most` at most, so that each wire gets one that does, with the least copper in all of them together.
/// Exact: in the order of the sizes, each that is bought serves a run of those that are needed.
///
/// Nothing where a wire needs more than the largest that is bought.
pub fn few(needed: &[Needed], most: usize) -> Option<Vec<Area>> {
    // metres that need each size
    let mut metres = [0.0; BOUGHT_MM2.len()];
    for wire in needed {
        let does = |size: &f64| *size >= wire.size.base() * 1e6 * (1.0 - 1e-9);
        let at = BOUGHT_MM2.iter().position(does)?;
        *metres.get_mut(at)? += wire.length.base().max(f64::MIN_POSITIVE);
    }
    let Some(last) = metres.iter().rposition(|it| *it > 0.0) else { return Some(Vec::new()) };
    let mut ways: Vec<_> = (0..=last).filter_map(|to| way(None, to, &metres)).collect();
    let mut best = ways.last().cloned()?;
    for _ in 1..most {
        // nothing can end at the first size with one more before it
        let further = (0..=last).map(|to| {
            let before = ways.iter().filter(|way| way.last < to);
            let each = before.filter_map(|before| way(Some(before), to, &metres));
            each.min_by(|one, other| one.copper.total_cmp(&other.copper))
        });
        ways = further.flatten().collect();
        match ways.last() {
            Some(found) if found.last == last && found.copper < best.copper * (1.0 - 1e-12) => {
                best = found.clone();
            }
            _ => {}
        }
    }
    Some(best.bought.into_iter().map(|size| Area::from_base(size * 1e-6)).collect())
}

/// The cheapest way to serve all that is needed up to a size, which is bought.
#[derive(Clone, Debug)]
struct CopperWay {
    last: usize,
    copper: f64,
    bought: Vec<f64>,
}

/// That size for all that is needed behind what was served before.
fn way(before: Option<&CopperWay>, to: usize, metres: &[f64]) -> Option<CopperWay> {
    let size = *BOUGHT_MM2.get(to)?;
    let from = before.map_or(0, |it| it.last + 1);
    let length: f64 = metres.iter().take(to + 1).skip(from).sum();
    let mut bought = before.map_or_else(Vec::new, |it| it.bought.clone());
    bought.push(size);
    Some(CopperWay { last: to, copper: before.map_or(0.0, |it| it.copper) + length * size, bought })
}

/// The least of the sizes bought that does.
pub fn serving(bought: &[Area], size: Area) -> Option<Area> {
    let does = |it: &&Area| it.base() >= size.base() * (1.0 - 1e-9);
    bought.iter().filter(does).min_by(|one, other| one.base().total_cmp(&other.base())).copied()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::metres;

    fn needed(size: f64, length: f64) -> Needed {
        Needed { size: Area::from_base(size * 1e-6), length: metres(length) }
    }

    fn sizes(found: &[Area]) -> Vec<f64> {
        found.iter().map(|it| (it.base() * 1e8).round() / 100.0).collect()
    }

    #[test]
    fn of_five_sizes_the_one_that_costs_least_goes() {
        // Source: by hand. Of 0.5, 0.75, 1, 2.5 and 6 mm², 10 m each: 0.75 instead of 0.5 and 1 instead of 0.75 cost
        // 2.5 mm²m each, 2.5 instead of 1 costs 15, 6 instead of 2.5 costs 35
        let wires: Vec<_> = [0.5, 0.75, 1.0, 2.5, 6.0].map(|it| needed(it, 10.0)).to_vec();
        let found = few(&wires, 4).expect("all of them are made");
        assert_eq!(found.len(), 4, "{found:?}");
        assert!(sizes(&found).ends_with(&[2.5, 6.0]), "{found:?}");
        assert_eq!(few(&wires, 1).map(|it| sizes(&it)), Some(vec![6.0]));
        assert_eq!(few(&[], 4), Some(Vec::new()));
        assert_eq!(few(&[needed(1000.0, 1.0)], 4), None);
    }

    proptest! {
        /// Each gets one that does; one more size never costs more copper; and no choice of two is cheaper than that of two.
        #[test]
        fn all_are_served_with_the_least_copper(
            wires in prop::collection::vec((0.35_f64..30.0, 0.1_f64..9.0), 1..12),
        ) {
            let wires: Vec<_> = wires.into_iter().map(|(size, length)| needed(size, length)).collect();
            let copper = |bought: &[Area]| -> Option<f64> {
                wires.iter().map(|it| Some(serving(bought, it.size)?.base() * it.length.base())).sum()
            };
            let mut before = f64::INFINITY;
            for most in 1..=MOST_SIZES {
                let found = few(&wires, most).expect("all of them are made");
                prop_assert!(found.len() <= most);
                let found = copper(&found).expect("each is served");
                prop_assert!(found <= before * (1.0 + 1e-9));
                before = found;
            }
            let two = copper(&few(&wires, 2).expect("made")).expect("served");
            for one in BOUGHT_MM2 {
                for other in BOUGHT_MM2 {
                    let pair = [one, other].map(|it| Area::from_base(it * 1e-6));
                    if let Some(copper) = copper(&pair) {
                        prop_assert!(two <= copper * (1.0 + 1e-9), "{one} and {other}");
                    }
                }
            }
        }
    }
}
