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
#[cfg(test)]
const COMMON: (f64, f64) = (0.3, 0.4);

/// The most that is taken: an engine that dips further stops at its compression.
const MOST: f64 = 0.9;

/// What the square of the speed, its mean being 1, gains for the work that is given back, with a flywheel by which an even
/// four has the dips that are [`COMMON`]. Solved once: a test does it again.
const GAINS: (f64, f64) = (0.44279246168909525, 0.6017970570603439);

/// Steps of a degree in a cycle that are looked at, and in a stroke.
const TURN: usize = 360;
const STROKE: u32 = 180;

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
    // up to the top and down from it alike, and none further off
    let stroke: Vec<f64> = (0..STROKE).map(|at| work(f64::from(at))).collect();
    let one: Vec<f64> =
        (0..period).map(|at| stroke.get(at.min(period - at)).copied().unwrap_or(0.0)).collect();
    let mut sums = vec![0.0; period];
    for firing in firings {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "within the cycle"
        )]
        let top = firing.within(cycle).degrees().round() as usize;
        let (from_top, to_top) = one.split_at_checked(period - top % period).unwrap_or_default();
        for (sum, held) in sums.iter_mut().zip(to_top.iter().chain(from_top)) {
            *sum += held;
        }
    }
    sums
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

/// What the square of the speed has more than at its lowest, at each degree of a cycle: `gain` times the work that is given
/// back.
fn lifts(sums: &[f64], gain: f64) -> Vec<f64> {
    let most = sums.iter().copied().fold(0.0, f64::max);
    sums.iter().map(|sum| gain * (most - sum)).collect()
}

/// Time of a cycle over that at the speed 1, where the speed is `bottom` at its lowest.
fn time(lifts: &[f64], bottom: f64) -> f64 {
    let each = |lift: &f64| 1.0 / (bottom * bottom + lift).sqrt();
    #[expect(clippy::cast_precision_loss, reason = "degrees of a cycle")]
    let count = lifts.len() as f64;
    lifts.iter().map(each).sum::<f64>() / count
}

/// What rounding leaves of [`time`] at the most, as a share: of 720 numbers that are added one after the other each sum is
/// rounded, by 2^-53, and each number four times before. It is less than half of this.
const ROUNDING: f64 = 2e-13;

/// More than it takes until a step changes nothing, but for one that begins far off.
const MOST_STEPS: usize = 12;

/// Speeds at the bottom at which a cycle surely takes longer than at the speed 1, and surely not as long: close to each other,
/// or further apart where it comes to that.
///
/// The square `m` of the mean speed is a mean of powers of the squares of the speeds, with an exponent below one, and so rises ever
/// less steeply with the square `u` at the bottom (any textbook on inequalities). A tangent step thus ends below where `m` is 1,
/// and each step from there comes closer.
fn close_bottoms(lifts: &[f64]) -> (f64, f64) {
    #[expect(clippy::cast_precision_loss, reason = "degrees of a cycle")]
    let count = lifts.len() as f64;
    // `dm / du`, over `m`
    let (mut square, mut steepness) = (0.5, 0.0);
    for _ in 0..MOST_STEPS {
        let (mut first, mut third) = (0.0, 0.0);
        for lift in lifts {
            let slowness = 1.0 / (square + lift).sqrt();
            first += slowness;
            third += slowness * slowness * slowness;
        }
        steepness = third / first;
        let mean = first / count;
        let step = (mean * mean - 1.0) / steepness;
        square = if square + step > 0.0 { square + step } else { square / 8.0 };
        if step.abs() < f64::EPSILON * square {
            break;
        }
    }
    let bottom = square.sqrt();
    let off = ROUNDING / (square * steepness);
    let [slow, fast] = [bottom * (1.0 - 2.0 * off), bottom * (1.0 + 2.0 * off)];
    (
        if time(lifts, slow) > 1.0 + ROUNDING { slow } else { 0.0 },
        if time(lifts, fast) < 1.0 - ROUNDING { fast } else { 1.0 },
    )
}

/// The least speed at the bottom with which a cycle takes no longer than at the speed 1.
///
/// The time falls as the bottom rises, so that beside two that are sure the rest is; only between them it is looked at.
fn bottom(lifts: &[f64]) -> f64 {
    let (slow, fast) = close_bottoms(lifts);
    math::least(0.0, 1.0, |at| at >= fast || at > slow && time(lifts, at) <= 1.0)
}

/// The dip to take where none was measured: that of an engine with the flywheel of an even four that dips as is common. By the
/// work-energy theorem `w² = b² + g (S_max - S)`, the mean of `w` over time is 1, and `d = 1 - b`.
pub fn usual_dip(firings: &[CrankAngle], cycle: CrankAngle) -> Band<Ratio> {
    let sums = sums(firings, cycle);
    let of = |gain: f64| share((1.0 - bottom(&lifts(&sums, gain))).min(MOST));
    Band::between(of(GAINS.0), of(GAINS.1))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::quantity::Measure;

    /// Most that is looked at of what the square of the speed gains for a work of 1; an even four gains about 2 d.
    const MOST_GAIN: f64 = 4.0;

    /// The engine whose dip is known: an even four-stroke four.
    fn even_four() -> Vec<f64> {
        let even = [0.0, 180.0, 360.0, 540.0].map(CrankAngle::new);
        sums(&even, CrankAngle::new(720.0))
    }

    #[test]
    fn the_gains_are_those_of_an_even_four_that_dips_as_is_common() {
        let four = even_four();
        let gain = |dip: f64| {
            math::least(0.0, MOST_GAIN, |gain| time(&lifts(&four, gain), 1.0 - dip) <= 1.0)
        };
        let solved = [gain(COMMON.0), gain(COMMON.1)].map(f64::to_bits);
        assert_eq!(
            solved,
            [GAINS.0, GAINS.1].map(f64::to_bits),
            "{:?}",
            solved.map(f64::from_bits)
        );
    }

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

    proptest! {
        /// The search that looks at every speed on its way, to the last bit.
        #[test]
        fn what_is_sure_need_not_be_looked_at(
            firings in prop::collection::vec(0.0_f64..720.0, 1..17),
            turns in 1_u8..3,
            of_four in 0..2,
        ) {
            let firings: Vec<_> = firings.into_iter().map(CrankAngle::new).collect();
            let sums = sums(&firings, CrankAngle::new(360.0 * f64::from(turns)));
            let lifts = lifts(&sums, if of_four == 0 { GAINS.0 } else { GAINS.1 });
            let looked_at = math::least(0.0, 1.0, |bottom| time(&lifts, bottom) <= 1.0);
            prop_assert_eq!(bottom(&lifts).to_bits(), looked_at.to_bits());
        }
    }

    /// Every even engine, and what is sure lies close enough that few speeds are looked at.
    #[test]
    fn of_an_even_engine_few_speeds_are_looked_at() {
        for (cycle, count) in
            [360.0, 720.0].into_iter().flat_map(|it| (1..=16).map(move |n| (it, n)))
        {
            let (firings, cycle) = even(count, cycle);
            let sums = sums(&firings, cycle);
            for gain in [GAINS.0, GAINS.1] {
                let lifts = lifts(&sums, gain);
                let looked_at = math::least(0.0, 1.0, |bottom| time(&lifts, bottom) <= 1.0);
                assert_eq!(bottom(&lifts).to_bits(), looked_at.to_bits(), "{count} in {cycle:?}");
                let (slow, fast) = close_bottoms(&lifts);
                assert!(fast - slow < 2e-12, "{count} in {cycle:?}: {slow} to {fast}");
            }
        }
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
