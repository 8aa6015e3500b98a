//! Which thresholds of a [`Switch`](super::Switch) serve a series of readings: exactly, in one pass.
//!
//! With `c` readings that must agree, a switch goes on at the first reading `i` for which
//! `g_i = min(r_(i-c+1) … r_i)` is at or above the threshold. As the threshold rises, `i` moves along the records
//! of `g` only; so the thresholds fall into few intervals, and in each the rest of the readings either lets the
//! switch go again or doesn't.

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

/// A threshold up to which a switch goes on at a reading, and not before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThresholdReach {
    /// The place of the reading in the series.
    pub at: usize,
    /// The highest threshold that it reaches.
    pub threshold: f64,
}

/// The records of a series: the reading at which a switch goes on, for every threshold.
#[derive(Clone, Debug, PartialEq)]
pub struct Steps {
    /// The records, both rising.
    pub reaches: Vec<ThresholdReach>,
    /// For each place in the series, the lowest reading that `agree` in a row from there on stay at or below;
    /// less than any where silence follows.
    lowest_after: Vec<f64>,
}

impl Steps {
    /// The records of a series, `None` being silence, for a switch that wants `agree` readings in a row.
    pub fn new(readings: &[Option<f64>], agree: u32) -> Self {
        let agree = usize::try_from(agree.max(1)).unwrap_or(usize::MAX);
        let mut reaches: Vec<ThresholdReach> = Vec::new();
        for (at, window) in readings.windows(agree).enumerate() {
            let threshold = extreme(window, f64::INFINITY, f64::min);
            if threshold > reaches.last().map_or(f64::NEG_INFINITY, |last| last.threshold) {
                reaches.push(ThresholdReach { at: at + agree - 1, threshold });
            }
        }
        Self { reaches, lowest_after: lowest_after(readings, agree) }
    }

    /// The highest threshold at which the switch is on by a reading; nothing where none is.
    pub fn highest_by(&self, at: usize) -> Option<f64> {
        let count = self.reaches.partition_point(|reach| reach.at <= at);
        self.reaches.get(count.checked_sub(1)?).map(|reach| reach.threshold)
    }

    /// The lowest reading that as many in a row as must agree stay at or below once a switch with this threshold is on;
    /// less than any where silence follows, nothing where it never goes on.
    pub fn lowest_once_on(&self, threshold: f64) -> Option<f64> {
        let reach = self.reaches.iter().find(|reach| reach.threshold >= threshold)?;
        Some(self.lowest_after.get(reach.at + 1).copied().unwrap_or(f64::INFINITY))
    }

    /// The thresholds at which the switch goes on and off again.
    pub fn unsteady(&self, let_go: LetGo) -> Vec<Interval> {
        let mut below = f64::NEG_INFINITY;
        let mut all = Vec::new();
        for reach in &self.reaches {
            let lowest = self.lowest_after.get(reach.at + 1).copied().unwrap_or(f64::INFINITY);
            let lets_go =
                if lowest == f64::NEG_INFINITY { lowest } else { let_go.threshold(lowest) };
            let one = Interval { low: below.max(lets_go), high: reach.threshold };
            if !one.is_empty() {
                all.push(one);
            }
            below = reach.threshold;
        }
        all
    }
}

fn extreme(window: &[Option<f64>], start: f64, f: impl Fn(f64, f64) -> f64) -> f64 {
    window.iter().fold(start, |so_far, reading| f(so_far, reading.unwrap_or(f64::NEG_INFINITY)))
}

fn lowest_after(readings: &[Option<f64>], agree: usize) -> Vec<f64> {
    let mut lowest = f64::INFINITY;
    let mut all = vec![lowest; readings.len()];
    for (at, place) in all.iter_mut().enumerate().rev() {
        if let Some(window) = readings.get(at..at.saturating_add(agree)) {
            lowest = lowest.min(extreme(window, f64::NEG_INFINITY, f64::max));
        }
        if readings.get(at) == Some(&None) {
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
    fn records_say_when_a_switch_goes_on() {
        let readings = [10.0, 30.0, 20.0, 50.0, 40.0].map(Some);
        let steps = Steps::new(&readings, 2);
        let got: Vec<_> = steps.reaches.iter().map(|it| (it.at, it.threshold)).collect();
        assert_eq!(got, [(1, 10.0), (2, 20.0), (4, 40.0)], "minimum of each two in a row");
        assert_eq!(steps.highest_by(3), Some(20.0), "30 would wait for the fifth");
        assert_eq!(steps.highest_by(0), None, "one reading is not two");
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

    proptest! {
        /// The intervals against the switch itself, reading by reading.
        #[test]
        fn unsteady_thresholds_are_those_at_which_the_switch_lets_go(
            readings in series(),
            agree in 1_u32..4,
            half in 0_u32..90,
            let_go in prop_oneof![
                (0.0..0.95_f64).prop_map(LetGo::Share),
                (0.0..40.0_f64).prop_map(LetGo::Below),
            ],
        ) {
            let threshold = f64::from(half) / 2.0;
            let steps = Steps::new(&readings, agree);
            let timed = readings.iter().map(|reading| (0.0, *reading));
            let changes = Switch::new(threshold, let_go.reading(threshold), agree).changes(timed);
            let unsteady = steps.unsteady(let_go).iter().any(|it| it.holds(threshold));
            prop_assert_eq!(unsteady, changes.len() > 1, "{:?}", changes);
            let reached = steps.reaches.last().is_some_and(|it| it.threshold >= threshold);
            prop_assert_eq!(reached, !changes.is_empty());
        }
    }
}
