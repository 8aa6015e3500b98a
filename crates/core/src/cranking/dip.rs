//! How deep the cranking speed dips, from the engine's own compressions.
//!
//! Each cylinder is a gas spring: from bottom dead centre up to the top one and down again the starter and the flywheel
//! lend it the work of an adiabatic compression, less what the air under the piston does of it, and get it back. The works
//! of all cylinders are summed over the crank angle; what they hold is taken from the flywheel, and so shows as the dip (the
//! work-energy theorem). How heavy the flywheel is is not known: that is taken by which an even four-stroke four has the
//! dip that is common for it.

use crate::{
    math,
    quantity::{Band, CrankAngle, Ratio, share},
    timeline::Valley,
};

/// Volume with the piston at the bottom over that at the top. From memory: 9 to 11 is usual for petrol.
const COMPRESSION: f64 = 9.5;

/// Exponent of the compression. From memory: 1.3 to 1.4 for air that loses a little heat.
const EXPONENT: f64 = 1.35;

/// Crank radius over length of the rod. From memory: 0.25 to 0.33 is usual.
const ROD: f64 = 0.3;

/// The dip that is common for an even four-stroke four, in shares of the mean: common practice, no source.
const COMMON: (f64, f64) = (0.3, 0.4);

/// The most that is taken: an engine that dips further stops at its compression.
const MOST: f64 = 0.9;

/// Most that is looked at of what the square of the speed gains for a work of 1; an even four gains about 2 d.
const MOST_GAIN: f64 = 4.0;

/// Steps of a degree in a cycle that are looked at.
const TURN: usize = 360;

/// Volume above the piston as a share of the largest, at a crank angle from top dead centre: slider and crank.
///
/// `V = 1 / r + (1 - 1 / r) x`, `x = (1 - cos a + (1 - sqrt(1 - l² sin² a)) / l) / 2`.
pub fn volume(off_top_deg: f64) -> f64 {
    let angle = off_top_deg.to_radians();
    let (sine, cosine) = (math::sin(angle), math::cos(angle));
    let rod = (1.0 - (1.0 - ROD * ROD * sine * sine).sqrt()) / ROD;
    1.0 / COMPRESSION + (1.0 - 1.0 / COMPRESSION) * (1.0 - cosine + rod) / 2.0
}

/// Work held by one cylinder's gas, in units of its pressure times its volume at bottom dead centre; none further than a
/// stroke from top dead centre.
///
/// `W = (V^(1 - k) - 1) / (k - 1) - (1 - V)`: adiabatic compression of air at the pressure of the air around, which does the
/// second part; any textbook of thermodynamics. The strokes without compression take none.
pub fn work(off_top_deg: f64) -> f64 {
    if off_top_deg.abs() >= 180.0 {
        return 0.0;
    }
    let volume = volume(off_top_deg);
    (math::pow(volume, 1.0 - EXPONENT) - 1.0) / (EXPONENT - 1.0) - (1.0 - volume)
}

/// The work of all cylinders at each degree of a cycle, in the unit of [`work`].
fn sums(firings: &[CrankAngle], cycle: CrankAngle) -> Vec<f64> {
    let period = if cycle.degrees() > 540.0 { 2 * TURN } else { TURN };
    #[expect(clippy::cast_precision_loss, reason = "degrees of a cycle")]
    let one: Vec<f64> = (0..period).map(|at| work(at.min(period - at) as f64)).collect();
    let mut sums = vec![0.0; period];
    for firing in firings {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "within the cycle"
        )]
        let top = firing.within(cycle).degrees().round() as usize;
        for (at, sum) in sums.iter_mut().enumerate() {
            *sum += one.get((at + period - top % period) % period).copied().unwrap_or(0.0);
        }
    }
    sums
}

/// The engine whose dip is known: an even four-stroke four.
fn even_four() -> Vec<f64> {
    let even = [0.0, 180.0, 360.0, 540.0].map(CrankAngle::new);
    sums(&even, CrankAngle::new(720.0))
}

/// Places between two firings at which the least work is looked for, both ends left out. Odd, as it is halfway between
/// two compressions alike.
const BETWEEN: u32 = 15;

/// Firings closer than this are one.
const TOGETHER_DEG: f64 = 0.01;

/// The valleys of the speed in a cycle of `period_deg`, one for each firing, and what work the compressions hold in each
/// and at the crest after it: nought where it is least, one where it is most. `firings_deg` rise from 0.
pub(crate) fn valleys(firings_deg: &[f64], period_deg: f64) -> Vec<Valley> {
    let held = |at_deg: f64| -> f64 {
        let off = |firing: &f64| {
            let after = (at_deg - firing).rem_euclid(period_deg);
            after.min(period_deg - after)
        };
        firings_deg.iter().map(|firing| work(off(firing))).sum()
    };
    let mut tops = firings_deg.to_vec();
    tops.dedup_by(|one, other| (*one - *other).abs() < TOGETHER_DEG);
    let next = tops.iter().skip(1).copied().chain([period_deg]);
    let spans: Vec<_> = tops.iter().copied().zip(next).collect();
    let crest = |(from, to): (f64, f64)| {
        let at = |n: u32| from + (to - from) * f64::from(n) / f64::from(BETWEEN + 1);
        (1..=BETWEEN).map(|n| held(at(n))).fold(f64::INFINITY, f64::min)
    };
    let mut valleys: Vec<_> = spans
        .into_iter()
        .map(|span| Valley { at_deg: span.0, held: held(span.0), held_after: crest(span) })
        .collect();
    let most = valleys.iter().map(|it| it.held).fold(0.0, f64::max);
    let least = valleys.iter().map(|it| it.held_after).fold(f64::INFINITY, f64::min);
    for valley in &mut valleys {
        for held in [&mut valley.held, &mut valley.held_after] {
            *held = ((*held - least) / (most - least)).clamp(0.0, 1.0);
        }
    }
    valleys
}

/// Time of a cycle over that at the speed 1, where the square of the speed is `bottom²` with the most work held, and more by
/// `gain` times the work that is given back.
fn time(sums: &[f64], bottom: f64, gain: f64) -> f64 {
    let most = sums.iter().copied().fold(0.0, f64::max);
    let each = |sum: &f64| 1.0 / (bottom * bottom + gain * (most - sum)).sqrt();
    #[expect(clippy::cast_precision_loss, reason = "degrees of a cycle")]
    let count = sums.len() as f64;
    sums.iter().map(each).sum::<f64>() / count
}

/// What the square of the speed, its mean being 1, gains for the work that is given back, with a flywheel by which an even
/// four has the dip `of_four`.
fn gain(of_four: f64) -> f64 {
    let four = even_four();
    math::least(0.0, MOST_GAIN, |gain| time(&four, 1.0 - of_four, gain) <= 1.0)
}

/// The dip to take where none was measured: that of an engine with the flywheel of an even four that dips as is common. By the
/// work-energy theorem `w² = b² + g (S_max - S)`, the mean of `w` over time is 1, and `d = 1 - b`.
pub fn usual_dip(firings: &[CrankAngle], cycle: CrankAngle) -> Band<Ratio> {
    let sums = sums(firings, cycle);
    let of = |common: f64| {
        let gain = gain(common);
        share((1.0 - math::least(0.0, 1.0, |bottom| time(&sums, bottom, gain) <= 1.0)).min(MOST))
    };
    Band::between(of(COMMON.0), of(COMMON.1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Measure;

    fn even(count: u32, cycle: f64) -> (Vec<CrankAngle>, CrankAngle) {
        let at = |n| CrankAngle::new(cycle * f64::from(n) / f64::from(count));
        ((0..count).map(at).collect(), CrankAngle::new(cycle))
    }

    fn of(count: u32) -> f64 {
        let (firings, cycle) = even(count, 720.0);
        usual_dip(&firings, cycle).high.base()
    }

    #[track_caller]
    fn check(got: f64, expected: f64, tolerance: f64) {
        assert!((got - expected).abs() <= tolerance, "{got}, not {expected}");
    }

    /// By hand, with a calculator: at the top the volume is 1 / 9.5 of the largest, and the work (9.5^0.35 - 1) / 0.35 less
    /// 8.5 / 9.5; at 90 degrees x = (1 + (1 - sqrt(0.91)) / 0.3) / 2.
    #[test]
    fn a_compression_holds_the_work_of_the_textbook() {
        check(volume(0.0), 1.0 / 9.5, 1e-12);
        check(volume(180.0), 1.0, 1e-12);
        check(volume(90.0), 0.621318735, 1e-8);
        check(work(0.0), 2.530659652, 1e-8);
        check(work(90.0), 0.139161278, 1e-8);
        check(work(-90.0), work(90.0), 1e-12);
        // volume 0.995 of the largest, a stroke's end short by ten degrees; beyond it another stroke begins
        assert!(work(170.0) > 1e-6, "{}", work(170.0));
        check(work(190.0), 0.0, 0.0);
    }

    /// By hand: of an even four only one cylinder is near its top at a time, and half a stroke later two hold the work
    /// of 90 degrees each.
    #[test]
    fn an_even_four_swings_between_one_top_and_two_halves() {
        let four = even_four();
        let [most, least] = [0, 90].map(|at: usize| four.get(at).copied().unwrap_or_default());
        check(most - least, work(0.0) - 2.0 * work(90.0), 1e-9);
        assert!(four.iter().all(|it| (least..=most).contains(it)), "{least} to {most}");
        check(of(4), 0.4, 1e-6);
    }

    #[test]
    fn more_cylinders_overlap_and_dip_less() {
        let dips: Vec<_> = [1, 2, 3, 4, 5, 6, 8, 10, 12].map(of).to_vec();
        assert!(dips.is_sorted_by(|one, next| one >= next), "{dips:?}");
        assert!((0.2..0.35).contains(&of(6)), "a six: {}", of(6));
        assert!(of(12) < 0.12, "a twelve: {}", of(12));
    }

    /// Source: the same by numpy and bisection on the energy, 0.05 degrees a step; the single stops at the most that is taken.
    #[test]
    fn the_same_flywheel_dips_as_the_energy_says() {
        let expected = [
            (1, 0.8635),
            (2, 0.643),
            (3, 0.503),
            (5, 0.3143),
            (6, 0.2434),
            (8, 0.1451),
            (12, 0.051),
        ];
        for (count, dip) in expected {
            check(of(count), dip, 0.002);
        }
        let twin = |angle: f64| {
            let firings = [0.0, angle].map(CrankAngle::new);
            usual_dip(&firings, CrankAngle::new(720.0)).high.base()
        };
        check(twin(410.0), 0.643, 0.002);
        check(twin(70.0), 0.6899, 0.002);
        // two that fire together would stop at their compression
        check(twin(0.0), 0.9, 1e-12);
        let odd = [0.0, 90.0, 240.0, 330.0, 480.0, 570.0].map(CrankAngle::new);
        let odd = usual_dip(&odd, CrankAngle::new(720.0));
        check(odd.high.base(), 0.2547, 0.002);
        check(odd.low.base(), 0.193, 0.002);
    }

    #[track_caller]
    fn check_valleys(firings_deg: &[f64], expected: &[(f64, f64, f64)], tolerance: f64) {
        let valleys = valleys(firings_deg, 720.0);
        assert_eq!(valleys.len(), expected.len(), "{valleys:?}");
        for (valley, (at_deg, held, held_after)) in valleys.iter().zip(expected) {
            check(valley.at_deg, *at_deg, 1e-12);
            check(valley.held, *held, tolerance);
            check(valley.held_after, *held_after, tolerance);
        }
    }

    #[test]
    fn of_an_even_engine_all_valleys_are_alike() {
        for count in 1..=16 {
            let every = 720.0 / f64::from(count);
            let at: Vec<_> = (0..count).map(|n| every * f64::from(n)).collect();
            let alike: Vec<_> = at.iter().map(|at| (*at, 1.0, 0.0)).collect();
            check_valleys(&at, &alike, 1e-9);
        }
    }

    /// By hand: halfway between two compressions 90 degrees apart both hold the work of 45 degrees, and between those 150
    /// apart that of 75; at a top the own work, and that of 90 degrees on one side, of 150 on the other.
    #[test]
    fn between_two_compressions_that_follow_closely_more_is_held() {
        let top = work(0.0) + work(90.0) + work(150.0);
        let (near, far) = (2.0 * work(45.0), 2.0 * work(75.0));
        let crest = (near - far) / (top - far);
        assert!((0.5..0.7).contains(&crest), "{crest}");
        let expected = [(0.0, 1.0, crest), (90.0, 1.0, 0.0)];
        let expected: Vec<_> = [0.0, 240.0, 480.0]
            .into_iter()
            .flat_map(|turn| expected.map(|(at, held, after)| (at + turn, held, after)))
            .collect();
        check_valleys(&[0.0, 90.0, 240.0, 330.0, 480.0, 570.0], &expected, 0.02);
    }

    #[test]
    fn two_that_fire_together_are_one_valley_that_holds_twice_the_work() {
        check_valleys(&[0.0, 0.0, 360.0], &[(0.0, 1.0, 0.0), (360.0, 0.5, 0.0)], 1e-9);
    }
}
