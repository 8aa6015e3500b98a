//! How busy a bus is.

use super::frame::{IdentifierKind, bits_at_least, bits_at_most};
use crate::{
    quantity::{Band, BitRate, Measure, Ratio, Time, share},
    working::Formula,
};

/// Above this share the frames of low rank begin to wait long: common practice, no source; 50 to 70 % are planned for.
const BUSY: f64 = 0.7;

/// The formula of [`of_frames`].
pub const SHARE: Formula = Formula {
    symbols: "load = B / f",
    source: "B: the bits of each frame in the time after which it comes again, summed; f: those that the bus carries",
};

/// A frame that comes again and again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeriodicFrame {
    /// Its bits, with the three to the next.
    pub bits: Band<Ratio>,
    /// After which time it comes again.
    pub period: Band<Time>,
}

impl PeriodicFrame {
    /// One whose data are not known: its bytes at least and at most.
    pub fn of_bytes(kind: IdentifierKind, bytes: (u32, u32), period: Band<Time>) -> Self {
        let number = |bits: u32| share(f64::from(bits));
        let (low, high) =
            (number(bits_at_least(kind, bytes.0)), number(bits_at_most(kind, bytes.1)));
        Self { bits: Band { low, nominal: high, high }, period }
    }

    /// Bits each second: lowest, nominal, highest.
    fn rate(&self) -> [f64; 3] {
        let rate = |bits: Ratio, period: Time| bits.base() / period.base();
        [
            rate(self.bits.low, self.period.high),
            rate(self.bits.nominal, self.period.nominal),
            rate(self.bits.high, self.period.low),
        ]
    }
}

/// The part of the time for which the bus is busy. See [`SHARE`].
pub fn of_frames<'a>(
    frames: impl IntoIterator<Item = &'a PeriodicFrame>,
    rate: BitRate,
) -> Band<Ratio> {
    let sums = frames.into_iter().fold([0.0; 3], |sums, frame| {
        let [a, b, c] = sums;
        let [x, y, z] = frame.rate();
        [a + x, b + y, c + z]
    });
    let [low, nominal, high] = sums.map(|sum| share(sum / rate.base()));
    Band { low, nominal, high }
}

/// What a load means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Busyness {
    /// More than the bus carries, even without a bit of stuffing.
    Over,
    /// More than it carries in the worst case.
    PerhapsOver,
    /// So much that frames of low rank wait long.
    Busy,
    /// Room enough.
    Easy,
}

/// What this load means.
pub fn judged(load: &Band<Ratio>) -> Busyness {
    if load.low.base() > 1.0 {
        Busyness::Over
    } else if load.high.base() > 1.0 {
        Busyness::PerhapsOver
    } else if load.high.base() > BUSY {
        Busyness::Busy
    } else {
        Busyness::Easy
    }
}

/// The least bit rate at which the same frames are no burden.
pub fn least_rate(load: &Band<Ratio>, rate: BitRate) -> BitRate {
    rate * (load.high.base() / BUSY)
}
