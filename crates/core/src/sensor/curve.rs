//! A curve through points: of a sensor, or of a table that is entered.

use crate::math;

/// Between the points it is straight in these.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// The numbers themselves.
    Plain,
    /// The logarithm of the reading against one over the absolute temperature: as a thermistor behaves.
    Thermistor,
}

/// Kelvin at 0 °C.
pub const ZERO_K: f64 = 273.15;

/// What is measured against what is read, in base units: at least two points; each rises or falls throughout.
#[derive(Clone, Debug, PartialEq)]
pub struct PointCurve {
    points: Vec<(f64, f64)>,
    scale: Scale,
}

impl Scale {
    fn of_value(self, value: f64) -> f64 {
        match self {
            Self::Plain => value,
            Self::Thermistor => 1.0 / (value + ZERO_K),
        }
    }

    fn value_of(self, scaled: f64) -> f64 {
        match self {
            Self::Plain => scaled,
            Self::Thermistor => 1.0 / scaled - ZERO_K,
        }
    }

    fn of_reading(self, reading: f64) -> f64 {
        match self {
            Self::Plain => reading,
            Self::Thermistor => math::ln(reading),
        }
    }

    fn reading_of(self, scaled: f64) -> f64 {
        match self {
            Self::Plain => scaled,
            Self::Thermistor => math::exp(scaled),
        }
    }
}

impl PointCurve {
    /// The curve through points of what is measured and what is read there; nothing where there are fewer than two, where two
    /// stand at one place, or where the reading turns back.
    pub fn new(points: impl IntoIterator<Item = (f64, f64)>, scale: Scale) -> Option<Self> {
        let mut points: Vec<_> = points.into_iter().collect();
        crate::sorted::by(&mut points, |one: &(f64, f64), other| one.0.total_cmp(&other.0));
        let is_usable = |it: &(f64, f64)| match scale {
            Scale::Plain => it.0.is_finite() && it.1.is_finite(),
            Scale::Thermistor => it.0 > -ZERO_K && it.1 > 0.0 && it.1.is_finite(),
        };
        let steps: Vec<_> = points
            .iter()
            .zip(points.iter().skip(1))
            .map(|(one, other)| (other.0 - one.0, other.1 - one.1))
            .collect();
        let rises = steps.iter().all(|step| step.0 > 0.0 && step.1 > 0.0);
        let falls = steps.iter().all(|step| step.0 > 0.0 && step.1 < 0.0);
        let is_curve = !steps.is_empty() && (rises || falls) && points.iter().all(is_usable);
        is_curve.then_some(Self { points, scale })
    }

    /// The points, by what is measured.
    pub fn points(&self) -> &[(f64, f64)] {
        &self.points
    }

    /// Whether it is one straight line.
    pub fn is_line(&self) -> bool {
        self.scale == Scale::Plain && self.points.len() == 2
    }

    /// The least and the greatest of what is measured.
    pub fn ends(&self) -> (f64, f64) {
        let ends = self.points.first().zip(self.points.last());
        ends.map_or((0.0, 0.0), |(first, last)| (first.0, last.0))
    }

    /// What is read at a value; beyond the ends as it goes on.
    pub fn reading(&self, value: f64) -> f64 {
        let scaled = |it: &(f64, f64)| (self.scale.of_value(it.0), self.scale.of_reading(it.1));
        let found = self.between(|it| it.0 >= value, scaled, self.scale.of_value(value));
        self.scale.reading_of(found)
    }

    /// What is measured at a reading; beyond the ends as it goes on.
    pub fn value(&self, reading: f64) -> f64 {
        let scaled = |it: &(f64, f64)| (self.scale.of_reading(it.1), self.scale.of_value(it.0));
        let rises = self.points.first().zip(self.points.last()).is_some_and(|(a, b)| b.1 > a.1);
        let is_past = |it: &(f64, f64)| if rises { it.1 >= reading } else { it.1 <= reading };
        self.scale.value_of(self.between(is_past, scaled, self.scale.of_reading(reading)))
    }

    /// The same; nothing beyond its ends.
    pub fn value_within(&self, reading: f64) -> Option<f64> {
        let of = |it: &(f64, f64)| it.1;
        let (first, last) = (self.points.first().map(of)?, self.points.last().map(of)?);
        // what stands at an end is not beyond it
        let slack = 1e-9 * (last - first).abs();
        let is_within = first.min(last) - slack <= reading && reading <= first.max(last) + slack;
        is_within.then(|| self.value(reading))
    }

    /// Straight between the points on both sides of `at`; the last two where it lies beyond.
    fn between(
        &self,
        is_past: impl Fn(&(f64, f64)) -> bool,
        scaled: impl Fn(&(f64, f64)) -> (f64, f64),
        at: f64,
    ) -> f64 {
        let last = self.points.len().saturating_sub(1);
        let above = self.points.iter().position(is_past).unwrap_or(last).clamp(1, last.max(1));
        let of = |number: usize| self.points.get(number).map(&scaled);
        match of(above - 1).zip(of(above)) {
            Some((one, other)) => {
                let share = (at - one.0) / (other.0 - one.0);
                one.1 + share * (other.1 - one.1)
            }
            None => f64::NAN,
        }
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn what_turns_back_is_no_curve() {
        let curve = |points: &[(f64, f64)]| PointCurve::new(points.iter().copied(), Scale::Plain);
        assert!(curve(&[(0.0, 1.0), (1.0, 2.0), (2.0, 1.5)]).is_none());
        assert!(curve(&[(0.0, 1.0), (0.0, 2.0)]).is_none(), "two at one place");
        assert!(curve(&[(0.0, 1.0)]).is_none());
        assert!(curve(&[]).is_none());
        assert!(curve(&[(0.0, 1.0), (1.0, f64::NAN)]).is_none());
        assert!(curve(&[(2.0, 1.0), (1.0, 2.0)]).is_some(), "in any order");
    }

    #[test]
    fn beyond_its_ends_it_is_told() {
        let curve = PointCurve::new([(0.0, 0.5), (100.0, 4.5)], Scale::Plain).expect("a line");
        assert_eq!(curve.value_within(2.5), Some(50.0));
        assert_eq!(curve.value_within(0.4), None);
        assert!((curve.value(0.1) + 10.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn a_reading_leads_back_to_its_value(
            steps in prop::collection::vec((1.0..50.0_f64, 0.1..0.9_f64), 1..9),
            at in 0.0..1.0_f64,
        ) {
            let (mut value, mut reading) = (-40.0, 1e5);
            let mut points = vec![(value, reading)];
            for (more, share) in steps {
                value += more;
                reading *= share;
                points.push((value, reading));
            }
            for scale in [Scale::Plain, Scale::Thermistor] {
                let curve = PointCurve::new(points.iter().copied(), scale).expect("it falls");
                let at = -40.0 + at * (value + 40.0);
                prop_assert!((curve.value(curve.reading(at)) - at).abs() < 1e-6);
            }
        }
    }
}
