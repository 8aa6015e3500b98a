//! The two tracks of a pedal or a throttle, held against each other over the stroke.

use crate::quantity::{Measure, Voltage, volts};

/// How the second track runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrackRun {
    /// Against the first: their sum stays the same.
    Mirrored,
    /// With the first at half its voltage, or twice.
    Half,
    /// With the first, alike.
    Alike,
}

/// What two tracks may be apart, of 5 V: common practice, no source.
const APART_V: f64 = 0.2;
/// A stroke of less is none.
const STROKE_V: f64 = 0.5;

/// Two tracks over the stroke, held against how they should run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared {
    /// The most by which they depart from it.
    pub apart: Voltage,
    /// The least and the greatest of the sum.
    pub sum: (Voltage, Voltage),
    /// The way of running that fits the readings best, where one does.
    pub found: Option<TrackRun>,
}

impl TrackRun {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Mirrored, Self::Half, Self::Alike];

    /// By how much readings of both at the same places of the stroke depart from it.
    fn apart(self, pairs: &[(f64, f64)]) -> f64 {
        let most = |of: &dyn Fn(f64, f64) -> f64| {
            pairs.iter().map(|(one, other)| of(*one, *other)).fold(0.0, f64::max)
        };
        match self {
            Self::Mirrored => {
                let (low, high) = sums(pairs);
                high - low
            }
            Self::Alike => most(&|one, other| (one - other).abs()),
            Self::Half => {
                let second = most(&|one, other| (other - one / 2.0).abs());
                second.min(most(&|one, other| (one - other / 2.0).abs()))
            }
        }
    }
}

fn sums(pairs: &[(f64, f64)]) -> (f64, f64) {
    let sums = || pairs.iter().map(|(one, other)| one + other);
    (sums().fold(f64::INFINITY, f64::min), sums().fold(f64::NEG_INFINITY, f64::max))
}

/// Readings of both tracks at the same places of the stroke against how the second should run; nothing of fewer than two
/// places, or where the first hardly moves.
pub fn compare(run: TrackRun, pairs: &[(Voltage, Voltage)]) -> Option<Compared> {
    let pairs: Vec<_> = pairs.iter().map(|(one, other)| (one.base(), other.base())).collect();
    let firsts = || pairs.iter().map(|it| it.0);
    let stroke =
        firsts().fold(f64::NEG_INFINITY, f64::max) - firsts().fold(f64::INFINITY, f64::min);
    if pairs.len() < 2 || stroke < STROKE_V {
        return None;
    }
    let nearest = TrackRun::ALL
        .into_iter()
        .fold(run, |best, it| if it.apart(&pairs) < best.apart(&pairs) { it } else { best });
    let (low, high) = sums(&pairs);
    Some(Compared {
        apart: volts(run.apart(&pairs)),
        sum: (volts(low), volts(high)),
        found: (nearest.apart(&pairs) <= APART_V).then_some(nearest),
    })
}

impl Compared {
    /// Whether they run as they should.
    pub fn suits(&self) -> bool {
        self.apart.base() <= APART_V
    }
}
