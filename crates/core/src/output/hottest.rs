//! Where between the ends of its bands a pulsed load heats what catches it most.
//!
//! At a low frequency little is caught a second; at a higher one the current no longer falls to nothing, and what is
//! caught levels off: a hill, and beyond it a slope. The most may lie between the ends. The same holds of the duty:
//! never on, or never off, nothing is caught.

/// Steps along a band that are looked at first, so that the right hill is climbed.
const COARSE: u32 = 12;
/// How often the golden section narrows four such steps: to less than a thousandth.
const NARROWED: u32 = 17;
/// The golden section of one.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// The place in the unit square where `heat` is greatest; a direction that is not free stays at its middle.
///
/// To one percent of the heat; what heat a switch bears is known far less well. A grid finds the highest place about,
/// and a golden section along one direction inside one along the other finds the top there ("Sequential minimax search
/// for a maximum", Proceedings of the American Mathematical Society 4, 1953, from memory).
pub(super) fn hottest(is_free: [bool; 2], heat: &dyn Fn([f64; 2]) -> f64) -> [f64; 2] {
    let [firsts, seconds] = is_free.map(places);
    let mut best = ([0.5, 0.5], f64::NEG_INFINITY);
    for first in firsts {
        for second in seconds.clone() {
            let at = [first, second];
            best = higher(best, (at, heat(at)));
        }
    }
    let ([first, second], [first_is_free, second_is_free]) = (best.0, is_free);
    let firsts = about(first_is_free, first);
    let along = |second: f64| top(firsts, &|first| heat([first, second]));
    let (second, _) = top(about(second_is_free, second), &|second| along(second).1);
    let (first, most) = along(second);
    higher(best, ([first, second], most)).0
}

/// How many places are looked at at most.
pub(super) fn tried(is_free: [bool; 2]) -> u32 {
    let [first, second] = is_free.map(|it| if it { (COARSE + 1, NARROWED + 4) } else { (1, 1) });
    first.0 * second.0 + first.1 * (second.1 + 1)
}

fn share(steps: u32) -> f64 {
    f64::from(steps) / f64::from(COARSE)
}

fn places(is_free: bool) -> impl Iterator<Item = f64> + Clone {
    let steps = if is_free { 0..=COARSE } else { 0..=0 };
    steps.map(move |step| if is_free { share(step) } else { 0.5 })
}

fn about(is_free: bool, at: f64) -> (f64, f64) {
    let around = if is_free { share(2) } else { 0.0 };
    ((at - around).max(0.0), (at + around).min(1.0))
}

fn higher<P>(one: (P, f64), other: (P, f64)) -> (P, f64) {
    if other.1 > one.1 { other } else { one }
}

/// Where between two places the height is greatest, and how great.
fn top((mut low, mut high): (f64, f64), height: &dyn Fn(f64) -> f64) -> (f64, f64) {
    let at = |place: f64| (place, height(place));
    if low >= high {
        return at(low);
    }
    let ends = higher(at(low), at(high));
    let between = |from: f64, to: f64| at(to + GOLDEN * (from - to));
    let (mut one, mut other) = (between(low, high), between(high, low));
    for _ in 0..NARROWED {
        if one.1 > other.1 {
            (high, other) = (other.0, one);
            one = between(low, high);
        } else {
            (low, one) = (one.0, other);
            other = between(high, low);
        }
    }
    higher(higher(one, other), ends)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::{math, transient::Pulsed};

    #[test]
    fn a_hill_is_climbed_to_its_top() {
        let hill = |[x, y]: [f64; 2]| -(x - 0.3) * (x - 0.3) - 2.0 * (y - 0.83) * (y - 0.83);
        let [x, y] = hottest([true, true], &hill);
        assert!((x - 0.3).abs() < 1e-3 && (y - 0.83).abs() < 1e-3, "{x}, {y}");
    }

    #[test]
    fn an_end_is_found_and_what_is_not_free_stays() {
        let [x, y] = hottest([true, false], &|[x, y]| x + y);
        assert!((x - 1.0).abs() < f64::EPSILON && (y - 0.5).abs() < f64::EPSILON, "{x}, {y}");
        let [x, y] = hottest([false, true], &|[x, y]| x - y);
        assert!((x - 0.5).abs() < f64::EPSILON && y.abs() < f64::EPSILON, "{x}, {y}");
    }

    #[test]
    fn no_more_places_are_looked_at_than_are_counted() {
        for is_free in [[false, false], [true, false], [false, true], [true, true]] {
            let looked = std::cell::Cell::new(0);
            hottest(is_free, &|[x, y]| {
                looked.set(looked.get() + 1);
                x * y
            });
            assert!(
                looked.get() <= tried(is_free),
                "{is_free:?}: {looked:?} of {}",
                tried(is_free)
            );
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// No place of a fine grid is hotter: the right hill is climbed, to one percent of its top.
        #[test]
        fn no_pulsed_coil_is_hotter_anywhere_else(
            last in 0.01..20.0, ohm in 0.3..300.0, more_ohm in 0.0..1.0, net in 0.0..60.0, floor in 0.0..0.5,
            slow in -2.0..3.0, wide in 0.0..3.0, least in 0.02..0.98, share in 0.0..1.0,
        ) {
            let duty = |y: f64| least + y * share * (0.99 - least);
            // frequency is one: frequency times inductance over the resistance, over up to a thousandfold
            let heat = |[x, y]: [f64; 2]| {
                let (low, high) = (math::pow(10.0, slow - wide), math::pow(10.0, slow));
                let coil = Pulsed {
                    on_final_a: last,
                    on_resistance_ohm: ohm * (1.0 + more_ohm),
                    off_net_v: net,
                    off_resistance_ohm: ohm,
                    inductance_h: ohm * low * math::pow(high / low, x),
                    floor_a: floor * last,
                    period_s: 1.0,
                    duty: duty(y),
                };
                coil.rhythm().expect("a coil").off_charge_c
            };
            let most = heat(hottest([true, true], &heat));
            for (i, j) in (0..=40).flat_map(|i| (0..=40).map(move |j| (i, j))) {
                let at = [f64::from(i) / 40.0, f64::from(j) / 40.0];
                let there = heat(at);
                prop_assert!(there <= most * (1.0 + 1e-2), "{there} at {at:?}, not {most}");
            }
        }
    }
}
