//! How far a bus reaches at a bit rate, and how long its branches may be.
//!
//! A device that sends must hear within the same bit whether another sends too, or has heard: the signal goes there and back before
//! the bit is sampled. So the faster the bits, the shorter the bus.

use crate::{
    quantity::{BitRate, Length, Measure, Ratio, Time, bits_per_second, metres, seconds, share},
    working::{Formula, Step, step},
};

/// Seconds for a metre of cable. Source: data sheets of bus cables, manuals of field buses.
const DELAY_S_PER_M: f64 = 5e-9;
/// What the transceivers of both ends take, there and back: with it and [`SAMPLED_AT`] ISO 11898-2's 40 m at 1 Mbit/s come out.
const DEVICES_S: f64 = 400e-9;
/// The part of a bit after which it is sampled: 75 to 87.5 %; common practice, no source.
const SAMPLED_AT: f64 = 0.8;

/// Bit rates, and the length at which the manuals of two kinds of field bus let a bus be: kbit/s and metres.
const HANDBOOK: [(f64, f64); 7] = [
    (1000.0, 25.0),
    (500.0, 100.0),
    (250.0, 250.0),
    (125.0, 500.0),
    (50.0, 1000.0),
    (20.0, 2500.0),
    (10.0, 5000.0),
];

/// A branch that short at 1 Mbit/s does no harm, in metres: ISO 11898-2, from memory.
const BRANCH_M: f64 = 0.3;
/// The longest branch that a field bus allows at 500, 250 and 125 kbit/s, in metres: its manual.
const LONGEST_BRANCH_M: f64 = 6.0;
/// The part of a bit that the echo of such a branch takes at 500 kbit/s.
const ECHO: f64 = 0.03;

/// The formula of [`turnaround`].
pub const TURNAROUND: Formula = Formula {
    symbols: "k = (2 × l × 5 ns/m + 400 ns) × f",
    source: "the signal goes there and back within the bit, through the transceivers of both ends: ISO 11898, 40 m at 1 Mbit/s; \
             sampled at 80% of it: common practice, no source",
};

/// Bit rates that are usual, highest first, in kbit/s: common practice, no source.
const USUAL: [f64; 9] = [1000.0, 800.0, 500.0, 250.0, 125.0, 100.0, 50.0, 20.0, 10.0];

/// Whether a length suits a bit rate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reaching {
    /// Too long.
    No,
    /// It depends on the devices and on where they sample.
    Perhaps,
    /// As manuals let it be.
    Surely,
}

/// The lengths up to which it surely suits, and up to which it may.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BusReach {
    /// Surely.
    pub sure: Length,
    /// Perhaps.
    pub perhaps: Length,
}

impl BusReach {
    /// Whether this length suits.
    pub fn suits(&self, length: Length) -> Reaching {
        // a length typed to the last digit must not fail by the last bit
        let is_within = |most: Length| length.base() <= most.base() * (1.0 + 1e-9);
        if is_within(self.sure) {
            Reaching::Surely
        } else if is_within(self.perhaps) {
            Reaching::Perhaps
        } else {
            Reaching::No
        }
    }
}

/// How long the bus may be from end to end: by the row of the manuals for this bit rate or the next higher, and by the time that the
/// signal takes.
pub fn of_bus(rate: BitRate) -> BusReach {
    let kilobits = rate.base() / 1e3;
    let rows = HANDBOOK.iter().rev();
    let row = rows.clone().find(|(fast, _)| *fast >= kilobits * (1.0 - 1e-9));
    let sure = row.map_or(0.0, |(_, long)| *long);
    let perhaps = (SAMPLED_AT / rate.base() - DEVICES_S) / 2.0 / DELAY_S_PER_M;
    BusReach { sure: metres(sure), perhaps: metres(perhaps.max(sure)) }
}

/// How long a branch may be.
pub fn of_branch(rate: BitRate) -> BusReach {
    let sure = BRANCH_M * 1e6 / rate.base();
    let echo = ECHO / rate.base() / 2.0 / DELAY_S_PER_M;
    let most = LONGEST_BRANCH_M * (125e3 / rate.base()).max(1.0);
    BusReach { sure: metres(sure), perhaps: metres(echo.min(most).max(sure)) }
}

/// The part of a bit that the signal takes there and back. See [`TURNAROUND`].
pub fn turnaround(rate: BitRate, length: Length) -> Ratio {
    let time: Time = seconds(2.0 * length.base() * DELAY_S_PER_M + DEVICES_S);
    share(time.base() * rate.base())
}

/// The same, as it is worked out.
pub fn turned(rate: BitRate, length: Length) -> Step {
    let values = [("l", length.show()), ("f", rate.show())];
    step(&TURNAROUND, &values, turnaround(rate, length))
}

/// The highest usual bit rate, no higher than this one, at which both lengths surely suit.
pub fn highest_rate(below: BitRate, length: Length, branch: Length) -> Option<BitRate> {
    let rates = USUAL.iter().map(|kilobits| bits_per_second(kilobits * 1e3));
    let suits = |rate: &BitRate| {
        *rate <= below
            && of_bus(*rate).suits(length) == Reaching::Surely
            && of_branch(*rate).suits(branch) == Reaching::Surely
    };
    rates.into_iter().find(suits)
}

/// The lowest usual bit rate that is at least this one.
pub fn usual_above(least: BitRate) -> Option<BitRate> {
    let rates = USUAL.iter().rev().map(|kilobits| bits_per_second(kilobits * 1e3));
    rates.into_iter().find(|rate| *rate >= least)
}
