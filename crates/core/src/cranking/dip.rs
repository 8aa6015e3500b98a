//! How deep the cranking speed dips, from the engine's own compressions.
//!
//! Each cylinder is a gas spring: from bottom dead centre up to the top one and down again the starter and the flywheel
//! lend it the work of an adiabatic compression and get it back. The works of all cylinders are summed over the crank
//! angle; what the sum swings is taken from the flywheel, and so shows as the dip. How heavy the flywheel is is not
//! known: the swing of an even four-stroke four is taken to be the dip that is common for it.

use crate::{
    math,
    quantity::{Band, CrankAngle, Ratio, share},
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
/// `W = (V^(1 - k) - 1) / (k - 1)`: adiabatic compression, any textbook of thermodynamics.
pub fn work(off_top_deg: f64) -> f64 {
    if off_top_deg.abs() >= 180.0 {
        return 0.0;
    }
    (math::pow(volume(off_top_deg), 1.0 - EXPONENT) - 1.0) / (EXPONENT - 1.0)
}

/// How far the work of all cylinders swings in a cycle, in the unit of [`work`]; nought without cylinders.
pub fn swing(firings: &[CrankAngle], cycle: CrankAngle) -> f64 {
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
    let highest = sums.iter().copied().fold(0.0, f64::max);
    let lowest = sums.iter().copied().fold(f64::INFINITY, f64::min);
    (highest - lowest).max(0.0)
}

/// The swing of the engine whose dip is known: an even four-stroke four.
pub fn swing_of_even_four() -> f64 {
    let even = [0.0, 180.0, 360.0, 540.0].map(CrankAngle::new);
    swing(&even, CrankAngle::new(720.0))
}

/// The dip to take where none was measured: `d = d_4 S / S_4`.
pub fn usual_dip(firings: &[CrankAngle], cycle: CrankAngle) -> Band<Ratio> {
    let times = swing(firings, cycle) / swing_of_even_four();
    let of = |common: f64| share((common * times).min(MOST));
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

    /// By hand, with a calculator: at the top the volume is 1 / 9.5 of the largest, and the work (9.5^0.35 - 1) / 0.35;
    /// at 90 degrees x = (1 + (1 - sqrt(0.91)) / 0.3) / 2.
    #[test]
    fn a_compression_holds_the_work_of_the_textbook() {
        check(volume(0.0), 1.0 / 9.5, 1e-12);
        check(volume(180.0), 1.0, 1e-12);
        check(volume(90.0), 0.621318735, 1e-8);
        check(work(0.0), 3.425396494, 1e-8);
        check(work(90.0), 0.517842543, 1e-8);
        check(work(-90.0), work(90.0), 1e-12);
    }

    /// By hand: of an even four only one cylinder is near its top at a time, and half a stroke later two hold the work
    /// of 90 degrees each.
    #[test]
    fn an_even_four_swings_between_one_top_and_two_halves() {
        check(swing_of_even_four(), work(0.0) - 2.0 * work(90.0), 1e-9);
        check(of(4), 0.4, 1e-12);
    }

    #[test]
    fn more_cylinders_overlap_and_dip_less() {
        let dips: Vec<_> = [1, 2, 3, 4, 5, 6, 8, 10, 12].map(of).to_vec();
        assert!(dips.is_sorted_by(|one, next| one >= next), "{dips:?}");
        assert!((0.2..0.35).contains(&of(6)), "a six: {}", of(6));
        assert!(of(12) < 0.12, "a twelve: {}", of(12));
        assert!((0.5..0.9).contains(&of(1)), "a single: {}", of(1));
    }

    /// A common-pin V6 has two compressions 90 degrees apart and then 150 without one: it dips deeper than an even six, about like an even four.
    #[test]
    fn an_odd_fire_engine_dips_deeper_than_an_even_one() {
        let odd = [0.0, 90.0, 240.0, 330.0, 480.0, 570.0].map(CrankAngle::new);
        let dip = usual_dip(&odd, CrankAngle::new(720.0)).high.base();
        assert!(dip > 1.5 * of(6) && dip < 1.1 * of(4), "{dip}");
    }
}
