//! Which thresholds of a [`Switch`](super::Switch) serve a series of readings: exactly, in one pass.
//!
//! With `c` readings that must agree, a switch goes on at the first reading `i` for which
//! `g_i = min(r_(i-c+1) … r_i)` is at or above the threshold. As the threshold rises, `i` moves along the records
//! of `g` only. What comes then lets the switch go again or doesn't: it does where `min over j > i of max(r_j … r_(j+c-1))`,
//! or a silence, lies below the release. That hangs on `i` alone, and so on the threshold; the release comes in last.

/// Thresholds above `low`, up to and with `high`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// Just too low.
    pub low: f64,
    /// The highest.
    pub high: f64,
}

impl Interval {
    /// Whether a threshold lies in it.
    pub fn holds(&self, threshold: f64) -> bool {
        threshold > self.low && threshold <= self.high
    }

    /// Whether no threshold lies in it.
    pub fn is_empty(&self) -> bool {
        !matches!(self.low.partial_cmp(&self.high), Some(std::cmp::Ordering::Less))
    }

    /// How many times its low end its high end is.
    pub fn ratio(&self) -> f64 {
        if self.low > 0.0 { self.high / self.low } else { f64::INFINITY }
    }
}

/// Where a switch lets go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LetGo {
    /// Below this share of its threshold.
    Share(f64),
    /// Below this reading.
    Below(f64),
}

impl LetGo {
    /// The reading below which a switch with this threshold lets go.
    pub fn reading(self, threshold: f64) -> f64 {
        match self {
            Self::Share(share) => share * threshold,
            Self::Below(reading) => reading,
        }
    }

    /// The lowest threshold above which a reading lets go.
    fn threshold(self, reading: f64) -> f64 {
        match self {
            Self::Share(share) if share > 0.0 => reading / share,
            Self::Below(level) if reading < level => f64::NEG_INFINITY,
            Self::Share(_) | Self::Below(_) => f64::INFINITY,
        }
    }
}

/// For every threshold of a switch, how low the readings come once it is on: the lowest that as many in a row as must agree
/// stay at or below.
///
/// It is kept only where it lies below the threshold, and as unlimited elsewhere: a switch never lets go at more than its
/// threshold, so that nothing else decides. The level rises with the threshold within a series (a switch that goes on later
/// misses some of the readings, and meets no others), in few steps: one for each time that the readings fall, however many
/// they are. The lower of two series is that of both: a threshold is steady in both where the lower level does not let go.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LowestOnceOn {
    steps: Vec<LowestStep>,
}

/// A level, from above the threshold of the one before.
#[derive(Clone, Copy, Debug, PartialEq)]
struct LowestStep {
    /// The highest threshold that it holds for.
    threshold: f64,
    /// The reading; less than any where silence follows.
    lowest: f64,
}

/// What a series of readings does to a switch, for every threshold.
#[derive(Clone, Debug, PartialEq)]
pub struct ThresholdReach {
    /// The highest threshold at which it goes on at all; less than any where it never does.
    pub highest: f64,
    /// How low the readings come then.
    pub levels: LowestOnceOn,
}

impl ThresholdReach {
    /// Of a series, silence being less than any reading, for a switch that wants `agree` readings in a row.
    pub fn new(readings: &[f64], agree: u32) -> Self {
        let agree = usize::try_from(agree.max(1)).unwrap_or(usize::MAX);
        let mut reach = Self { highest: f64::NEG_INFINITY, levels: LowestOnceOn::default() };
        let lowest = lowest_after(readings, agree);
        let on_at = extremes(readings, agree, f64::min);
        // the switch has gone on at the last of the window that begins here
        let after = lowest.iter().copied().skip(agree).chain([f64::INFINITY]);
        for (threshold, lowest) in on_at.zip(after) {
            if threshold > reach.highest {
                reach.highest = threshold;
                let lowest = if lowest < threshold { lowest } else { f64::INFINITY };
                reach.levels.push(LowestStep { threshold, lowest });
            }
        }
        reach
    }
}

impl ThresholdReach {
    /// That of both series: the highest threshold that both reach, and the lower level.
    #[must_use]
    pub fn with(&self, other: &Self) -> Self {
        Self { highest: self.highest.min(other.highest), levels: self.levels.with(&other.levels) }
    }
}

impl LowestOnceOn {
    /// The lower of both, for every threshold.
    #[must_use]
    pub fn with(&self, other: &Self) -> Self {
        let mut lower = Self::default();
        let (mut one, mut two) = (self.steps.iter().peekable(), other.steps.iter().peekable());
        loop {
            let level = match (one.peek(), two.peek()) {
                (None, None) => return lower,
                (Some(level), None) | (None, Some(level)) => **level,
                (Some(one), Some(two)) => LowestStep {
                    threshold: one.threshold.min(two.threshold),
                    lowest: one.lowest.min(two.lowest),
                },
            };
            lower.push(level);
            one.next_if(|it| it.threshold <= level.threshold);
            two.next_if(|it| it.threshold <= level.threshold);
        }
    }

    /// That of a threshold; unlimited where it does not lie below it, or where the switch never goes on.
    pub fn at(&self, threshold: f64) -> f64 {
        let at = self.steps.partition_point(|it| it.threshold < threshold);
        self.steps.get(at).map_or(f64::INFINITY, |it| it.lowest)
    }

    /// The thresholds at which a switch goes on and off again, of those at which it does not let go above its threshold.
    pub fn unsteady(&self, let_go: LetGo) -> Vec<Interval> {
        let mut below = f64::NEG_INFINITY;
        let mut all = Vec::new();
        for LowestStep { threshold, lowest } in self.steps.iter().copied() {
            let lets_go =
                if lowest == f64::NEG_INFINITY { lowest } else { let_go.threshold(lowest) };
            let one = Interval { low: below.max(lets_go), high: threshold };
            if !one.is_empty() {
                all.push(one);
            }
            below = threshold;
        }
        all
    }

    /// Steps that are kept.
    pub fn count(&self) -> usize {
        self.steps.len()
    }

    fn push(&mut self, level: LowestStep) {
        match self.steps.last_mut().filter(|last| last.lowest.total_cmp(&level.lowest).is_eq()) {
            Some(last) => last.threshold = level.threshold,
            None => self.steps.push(level),
        }
    }
}

/// The highest threshold at which a switch that wants `agree` readings in a row goes on; less than any where it never does.
pub fn highest(readings: &[f64], agree: u32) -> f64 {
    let agree = usize::try_from(agree.max(1)).unwrap_or(usize::MAX);
    extremes(readings, agree, f64::min).fold(f64::NEG_INFINITY, f64::max)
}

/// The least or the most of as many readings in a row as must agree, from each on that has so many.
///
/// In stretches of that length, each place has the extreme of what stands before it in its own and that of what stands behind
/// it; any window is an end of one and a beginning of the next: the work does not grow with the window. Source: van Herk, Pattern
/// Recognition Letters 13 (1992), from memory.
fn extremes(
    readings: &[f64],
    agree: usize,
    f: fn(f64, f64) -> f64,
) -> impl DoubleEndedIterator<Item = f64> + ExactSizeIterator {
    let mut before = readings.to_vec();
    let mut behind = readings.to_vec();
    if agree > 1 {
        for stretch in before.chunks_mut(agree) {
            let mut so_far: Option<f64> = None;
            for place in stretch {
                *place = so_far.map_or(*place, |it| f(it, *place));
                so_far = Some(*place);
            }
        }
        for stretch in behind.chunks_mut(agree) {
            let mut so_far: Option<f64> = None;
            for place in stretch.iter_mut().rev() {
                *place = so_far.map_or(*place, |it| f(it, *place));
                so_far = Some(*place);
            }
        }
    }
    let windows = (readings.len() + 1).saturating_sub(agree);
    behind.truncate(windows);
    before.drain(..before.len().min(agree - 1));
    before.truncate(windows);
    behind.into_iter().zip(before).map(move |(one, other)| f(one, other))
}

/// For each place in the series, the lowest reading that `agree` in a row from there on stay at or below; less than any where
/// silence follows.
fn lowest_after(readings: &[f64], agree: usize) -> Vec<f64> {
    let mut lowest = f64::INFINITY;
    let mut all = vec![lowest; readings.len()];
    let windows = extremes(readings, agree, f64::max);
    let short = readings.len() - windows.len();
    let windows = windows.rev();
    let of_each = std::iter::repeat_n(f64::INFINITY, short).chain(windows);
    for ((place, reading), window) in all.iter_mut().zip(readings).rev().zip(of_each) {
        lowest = lowest.min(window);
        if *reading == f64::NEG_INFINITY {
            lowest = f64::NEG_INFINITY;
        }
        *place = lowest;
    }
    all
}

/// What is left of an interval without the others, lowest first.
pub fn without(whole: Interval, mut others: Vec<Interval>) -> Vec<Interval> {
    crate::sorted::by(&mut others, |one, other| one.low.total_cmp(&other.low));
    let mut left = Vec::new();
    let mut low = whole.low;
    for other in others {
        left.push(Interval { low, high: other.low.min(whole.high) });
        low = low.max(other.high);
    }
    left.push(Interval { low, high: whole.high });
    left.retain(|part| !part.is_empty());
    left
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::timeline::Switch;

    #[test]
    fn a_level_is_kept_where_the_readings_fall_below_the_threshold() {
        let level = |threshold, lowest| LowestStep { threshold, lowest };
        let reach = ThresholdReach::new(&[10.0, 30.0, 20.0, 50.0, 40.0, 60.0, 15.0, 12.0], 2);
        assert!((reach.highest - 40.0).abs() < 1e-12, "the better of each two: {reach:?}");
        // up to 10 nothing falls below it; on at the second, third or fifth reading, the last two are no more than 15
        let expected = [level(10.0, f64::INFINITY), level(40.0, 15.0)];
        assert_eq!(reach.levels.steps, expected, "one fall, one step");
    }

    #[test]
    fn what_is_left_leaves_the_holes_out() {
        let part = |low, high| Interval { low, high };
        let left =
            without(part(0.0, 100.0), vec![part(50.0, 60.0), part(-5.0, 10.0), part(55.0, 58.0)]);
        assert_eq!(left, [part(10.0, 50.0), part(60.0, 100.0)], "two parts");
        assert_eq!(without(part(5.0, 5.0), vec![]), [], "nothing in, nothing out");
    }

    fn series() -> impl Strategy<Value = Vec<Option<f64>>> {
        let reading = prop_oneof![
            12 => (0_u32..40).prop_map(|n| Some(f64::from(n))),
            1 => Just(None),
        ];
        prop::collection::vec(reading, 0..30)
    }

    /// The levels are unlimited where they don't lie below the threshold.
    fn ends(levels: &LowestOnceOn) -> impl Iterator<Item = f64> {
        levels.steps.iter().map(|it| it.threshold)
    }

    fn heard(readings: &[Option<f64>]) -> Vec<f64> {
        readings.iter().map(|it| it.unwrap_or(f64::NEG_INFINITY)).collect()
    }

    proptest! {
        /// The levels against the switch itself, reading by reading.
        #[test]
        fn unsteady_thresholds_are_those_at_which_the_switch_lets_go(
            readings in series(),
            agree in 1_u32..5,
            half in 0_u32..90,
            let_go in prop_oneof![
                (0.0..=1.0_f64).prop_map(LetGo::Share),
                (0.0..40.0_f64).prop_map(LetGo::Below),
            ],
        ) {
            let threshold = f64::from(half) / 2.0;
            prop_assume!(let_go.reading(threshold) <= threshold);
            let reach = ThresholdReach::new(&heard(&readings), agree);
            let timed = readings.iter().map(|reading| (0.0, *reading));
            let changes = Switch::new(threshold, let_go.reading(threshold), agree).changes(timed);
            let unsteady = reach.levels.unsteady(let_go).iter().any(|it| it.holds(threshold));
            prop_assert_eq!(unsteady, changes.len() > 1, "{:?}", changes);
            prop_assert_eq!(reach.levels.at(threshold) < let_go.reading(threshold), unsteady);
            prop_assert_eq!(reach.highest >= threshold, !changes.is_empty());
        }

        /// Each window by itself against what is worked out of all together.
        #[test]
        fn an_extreme_is_that_of_its_window(
            readings in prop::collection::vec(0.0..40.0_f64, 0..60),
            agree in 1_usize..25,
        ) {
            let each = |f: fn(f64, f64) -> f64| -> Vec<f64> {
                let windows = readings.windows(agree);
                windows.filter_map(|it| it.iter().copied().reduce(f)).collect()
            };
            for f in [f64::min, f64::max] {
                prop_assert_eq!(extremes(&readings, agree, f).collect::<Vec<_>>(), each(f));
            }
        }

        #[test]
        fn of_two_series_the_lower_level_holds(
            one in series(),
            other in series(),
            agree in 1_u32..4,
        ) {
            let [one, other] = [one, other].map(|it| ThresholdReach::new(&heard(&it), agree).levels);
            let both = one.with(&other);
            prop_assert!(both.count() <= one.count() + other.count());
            for threshold in ends(&one).chain(ends(&other)).flat_map(|it| [it - 0.25, it, it + 0.25]) {
                let lower = one.at(threshold).min(other.at(threshold));
                prop_assert_eq!(both.at(threshold).to_bits(), lower.to_bits(), "{}", threshold);
            }
        }
    }
}
