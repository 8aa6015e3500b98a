//! How fast the readings can be at most and at least, of many teeth together.
//!
//! **The bound.** A reading is the angle over the time between two teeth. At full speed that is `R = Δa / Δp`, with `p` the
//! time at full speed from angle 0; it hangs on where in the cycle the teeth stand alone, so that a table of one cycle has
//! all of them. While the speed rises the motion comes as far in the time `Δt` as in `Δp` at full speed, and its rate
//! `dp/dt` never falls. So, by the mean value theorem, `rate(first) ≤ Δp / Δt ≤ rate(last)`, and
//! `R rate(first) ≤ Δa / Δt ≤ R rate(last)`. Over a group of teeth the least and the greatest `R` of the group bound all
//! its readings, and over a whole run those of the cycle. Likewise a time between two teeth is at most the longest at full
//! speed over the rate at the first.

use super::course::Course;

/// Teeth of a group.
pub(super) const GROUP: usize = 32;

/// What is allowed for rounding, as a share: times of some tens of seconds are summed to 1e-14 s, and a tooth takes 10 µs or
/// more, so that a reading is off by less than 1e-8 of itself.
const ROUNDING: f64 = 1e-6;

/// The readings that begin at some teeth of a cycle: at full speed, or bounds on them at another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ReadingPace {
    /// The slowest, in rpm.
    pub(super) slowest: f64,
    /// The fastest, in rpm.
    pub(super) fastest: f64,
    /// Slowest where a gap counts as one tooth; the fastest is no faster than that above.
    pub(super) slowest_with_gap: f64,
    /// Longest time from tooth to tooth in any of them, in seconds.
    pub(super) longest_s: f64,
}

impl ReadingPace {
    /// That of no readings.
    pub(super) const NONE: Self = Self {
        slowest: f64::INFINITY,
        fastest: 0.0,
        slowest_with_gap: f64::INFINITY,
        longest_s: 0.0,
    };

    fn with(self, other: Self) -> Self {
        Self {
            slowest: self.slowest.min(other.slowest),
            fastest: self.fastest.max(other.fastest),
            slowest_with_gap: self.slowest_with_gap.min(other.slowest_with_gap),
            longest_s: self.longest_s.max(other.longest_s),
        }
    }

    /// Bounds while the rate is from `first` to `last`.
    pub(super) fn at(&self, first: f64, last: f64) -> Self {
        let (first, last) = (first * (1.0 - ROUNDING), last * (1.0 + ROUNDING));
        Self {
            slowest: self.slowest * first,
            fastest: self.fastest * last,
            slowest_with_gap: self.slowest_with_gap * first,
            longest_s: self.longest_s / first,
        }
    }
}

/// The paces of all groups of a cycle, and that of the whole cycle.
pub(super) fn paces(
    course: &Course,
    pitch_deg: f64,
    averaging: usize,
) -> (Vec<ReadingPace>, ReadingPace) {
    let teeth = course.teeth.len();
    let pace = |at: usize| {
        let tooth = |count| course.later(&course.teeth, at, count);
        let (from, next, to) = (tooth(0)?, tooth(1)?, tooth(averaging)?);
        let took_s = to.progress_s - from.progress_s;
        let slowest = (to.angle_deg - from.angle_deg) / took_s / 6.0;
        #[expect(clippy::cast_precision_loss, reason = "at most 360 teeth")]
        let slowest_with_gap = pitch_deg * averaging as f64 / 6.0 / took_s;
        Some(ReadingPace {
            slowest,
            fastest: slowest,
            slowest_with_gap,
            longest_s: next.progress_s - from.progress_s,
        })
    };
    let group = |from: usize| {
        (from..teeth.min(from + GROUP)).filter_map(pace).fold(ReadingPace::NONE, ReadingPace::with)
    };
    let mut groups: Vec<_> = (0..teeth).step_by(GROUP).map(group).collect();
    let all = groups.iter().copied().fold(ReadingPace::NONE, ReadingPace::with);
    // a reading that begins in a group may end in a later one; the last of a cycle may be short
    let further = (averaging / GROUP + 3).min(groups.len());
    let longest: Vec<f64> = groups.iter().map(|it| it.longest_s).collect();
    for (at, group) in groups.iter_mut().enumerate() {
        let others = longest.iter().cycle().skip(at).take(further);
        group.longest_s = others.copied().fold(0.0, f64::max);
    }
    (groups, all)
}
