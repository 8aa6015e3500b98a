//! Lowest, nominal and highest value of a quantity, and what holds between them.

use serde::Serialize;

use super::Measure;

/// A quantity that is only known to lie between two ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band<Q> {
    /// The lowest value.
    pub low: Q,
    /// The value that is meant.
    pub nominal: Q,
    /// The highest value.
    pub high: Q,
}

/// A band as bare numbers of base units, for code that serves every dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// The lowest.
    pub low: f64,
    /// What is meant.
    pub nominal: f64,
    /// The highest.
    pub high: f64,
}

impl Span {
    /// A number without spread.
    pub fn exact(number: f64) -> Self {
        Self { low: number, nominal: number, high: number }
    }

    /// `off` both ways from `nominal`.
    pub fn around(nominal: f64, off: f64) -> Self {
        Self { low: nominal - off.abs(), nominal, high: nominal + off.abs() }
    }

    /// The same as quantities.
    pub fn band<Q: Measure>(self) -> Band<Q> {
        let Self { low, nominal, high } = self;
        Band { low: Q::from_base(low), nominal: Q::from_base(nominal), high: Q::from_base(high) }
    }
}

impl<Q: Measure> Band<Q> {
    /// A value without spread.
    pub fn exact(value: Q) -> Self {
        Self { low: value, nominal: value, high: value }
    }

    /// From the lowest to the highest, put in order; the nominal value in the middle.
    pub fn between(one: Q, other: Q) -> Self {
        let (low, high) = if one.base() <= other.base() { (one, other) } else { (other, one) };
        Self { low, nominal: Q::from_base(f64::midpoint(low.base(), high.base())), high }
    }

    /// A value and the share of it by which it may be off, both ways.
    pub fn with_tolerance(nominal: Q, share: f64) -> Self {
        let off = (nominal.base() * share).abs();
        Self {
            low: Q::from_base(nominal.base() - off),
            nominal,
            high: Q::from_base(nominal.base() + off),
        }
    }

    /// Whether the ends differ.
    pub fn is_spread(&self) -> bool {
        self.low.base() < self.high.base()
    }

    /// The band of a function that rises or falls throughout.
    pub fn map<R: Measure>(&self, f: impl Fn(Q) -> R) -> Band<R> {
        let (a, b) = (f(self.low), f(self.high));
        let (low, high) = if a.base() <= b.base() { (a, b) } else { (b, a) };
        Band { low, nominal: f(self.nominal), high }
    }

    /// The smallest band that holds this one and `value`.
    #[must_use]
    pub fn widened_to(&self, value: Q) -> Self {
        let mut wider = *self;
        if value.base() < wider.low.base() {
            wider.low = value;
        }
        if value.base() > wider.high.base() {
            wider.high = value;
        }
        wider
    }
}

/// At how many of the corners something is so.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case", tag = "how", content = "corners")]
pub enum Holds {
    /// At no corner.
    Never,
    /// At the corners named.
    AtSome(Vec<String>),
    /// At every corner.
    Always,
}

impl Holds {
    /// From the corners that were tried, each with whether it was so there.
    pub fn from_corners<N: Into<String>>(corners: impl IntoIterator<Item = (N, bool)>) -> Self {
        let (mut hit, mut missed) = (Vec::new(), false);
        for (name, so) in corners {
            if so { hit.push(name.into()) } else { missed = true }
        }
        match (hit.is_empty(), missed) {
            (true, _) => Self::Never,
            (false, true) => Self::AtSome(hit),
            (false, false) => Self::Always,
        }
    }
}
