//! What an ohmmeter reads between the two lines with the power off, and what a reading tells.
//!
//! Each terminator closes the pair with 120 Ω; two of them are side by side for the meter. The wires, a bad contact and a short
//! are resistors among them, and the pair is a ladder: from each end it is folded up towards the meter.

use crate::{
    quantity::{Band, Measure, Resistance, ohms},
    working::Formula,
};

/// What each end is closed with. Source: ISO 11898-2, the cable's characteristic impedance.
pub const TERMINATOR_OHM: f64 = 120.0;
/// Its tolerance: 108 to 132 Ω, as manuals of field buses that follow ISO 11898 have it.
const TERMINATOR_TOLERANCE: f64 = 0.1;
/// The inputs of all devices that are connected, side by side, at the least: some 20 kΩ each, ten of them; common practice, no source.
const INPUTS_OHM: f64 = 2000.0;
/// What test leads and their tips add or take at the most: common practice, no source.
const LEADS_OHM: f64 = 1.0;
/// From here on none is connected: what is read are the inputs of the devices.
const NONE_FROM_OHM: f64 = 1000.0;
/// More of them than this nobody fits.
const MOST: u32 = 4;
/// What a transceiver drives with full levels, two terminators and their tolerance included; and what it drives with less to spare.
/// Source: data sheets of three transceivers, which state their levels for 50 to 65 Ω and for 45 to 70 Ω.
const DRIVES_OHM: (f64, f64) = (45.0, 70.0);

/// The formula of two terminators.
pub const SIDE_BY_SIDE: Formula = Formula {
    symbols: "R = 1 / (n / R_T)",
    source: "resistors side by side; 120 Ω each: ISO 11898-2",
};

/// The formula of a resistance in one of the branches.
pub const CONTACT: Formula = Formula {
    symbols: "R_x = 1 / (1 / R - n / R_T) - R_T",
    source: "resistors side by side: what one branch has more than its terminator, the others being right",
};

/// A resistor across the pair.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bridge {
    /// Where: 0 at one end of the pair, 1 at the other.
    pub at: f64,
    /// Its resistance; with that of a bad contact before it, where there is one; nought for a short.
    pub resistance: Resistance,
}

/// What a meter reads across the pair at `meter`, from 0 to 1; `wires` is the resistance of both lines from end to end, there and
/// back. Without limit where nothing is across.
pub fn reading(bridges: &[Bridge], wires: Resistance, meter: f64) -> Resistance {
    let mut sorted = bridges.to_vec();
    crate::sorted::by(&mut sorted, |one: &Bridge, other| one.at.total_cmp(&other.at));
    let (left, right): (Vec<_>, Vec<_>) = sorted.into_iter().partition(|it| it.at <= meter);
    let wire = wires.base();
    let left = folded(left.iter(), meter, wire);
    let right = folded(right.iter().rev(), meter, wire);
    ohms(beside(left, right))
}

/// What is beyond the meter on one side: from the outermost bridge inwards.
fn folded<'a>(bridges: impl Iterator<Item = &'a Bridge>, meter: f64, wire: f64) -> f64 {
    let (mut so_far, mut at) = (f64::INFINITY, meter);
    for it in bridges {
        so_far = beside(so_far + wire * (it.at - at).abs(), it.resistance.base());
        at = it.at;
    }
    so_far + wire * (meter - at).abs()
}

fn beside(one: f64, other: f64) -> f64 {
    if one <= 0.0 || other <= 0.0 { 0.0 } else { 1.0 / (1.0 / one + 1.0 / other) }
}

/// What is read with so many terminators, wherever they are and wherever the meter is; `wires` as in [`reading`], at the most.
pub fn expected(terminators: u32, wires: Resistance) -> Band<Resistance> {
    let each = |share: f64| ohms(TERMINATOR_OHM * share);
    let read = |places: &[f64], resistance: Resistance, meter: f64| {
        let bridges: Vec<_> = places.iter().map(|at| Bridge { at: *at, resistance }).collect();
        reading(&bridges, wires, meter).base()
    };
    // at the ends, at one of them, and those that are too many among them
    let spread = [0.0, 1.0, 0.5, 0.25];
    let spread = spread.get(..terminators.min(MOST) as usize).unwrap_or_default();
    let together = vec![0.0; spread.len()];
    let places = [spread, together.as_slice()];
    let all = places.iter().flat_map(|places| [0.0, 0.5, 1.0].map(|meter| (*places, meter)));
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for (places, meter) in all {
        low = low.min(read(places, each(1.0 - TERMINATOR_TOLERANCE), meter));
        high = high.max(read(places, each(1.0 + TERMINATOR_TOLERANCE), meter));
    }
    let nominal = TERMINATOR_OHM / f64::from(terminators.max(1));
    let low = (beside(low, INPUTS_OHM) - LEADS_OHM).min(nominal);
    Band { low: ohms(low), nominal: ohms(nominal), high: ohms((high + LEADS_OHM).max(nominal)) }
}

/// What a reading tells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PairState {
    /// So many terminators, one at least.
    Fitted(u32),
    /// None: only the inputs of devices are read, or nothing at all.
    Unterminated,
    /// Between two numbers of terminators: as with so many that are right, and one that has this much in series.
    Between {
        /// Those that are right.
        right: u32,
        /// What is in series with the other, or what that has too much.
        contact: Resistance,
    },
    /// The two lines touch; no further from the meter than this share of the pair, where it has wires to tell by.
    Shorted(Option<f64>),
    /// Less than four of them read, and no short: more of them, or a wrong one.
    TooLow,
}

/// What a reading tells; `None` for a meter that shows no end. `wires` as in [`reading`], at the most.
pub fn told(read: Option<Resistance>, wires: Resistance) -> PairState {
    let Some(read) = read.filter(|it| it.base() < NONE_FROM_OHM) else {
        return PairState::Unterminated;
    };
    let is_within = |count: &u32| {
        let band = expected(*count, wires);
        (band.low..=band.high).contains(&read)
    };
    let distance = |count: &u32| (read - expected(*count, wires).nominal).abs();
    let nearest = |one: &u32, other: &u32| distance(one).base().total_cmp(&distance(other).base());
    if let Some(count) = (1..=MOST).filter(is_within).min_by(nearest) {
        return PairState::Fitted(count);
    }
    let all = expected(MOST, wires);
    if read < all.low {
        let most = wires.base();
        return if read.base() <= most + 2.0 * LEADS_OHM {
            let is_long = most > 2.0 * LEADS_OHM;
            PairState::Shorted(is_long.then(|| (read.base() / most).min(1.0)))
        } else {
            PairState::TooLow
        };
    }
    // the most that read no less all the same
    let right = (0..MOST).rev().find(|count| *count == 0 || expected(*count, wires).low >= read);
    let right = right.unwrap_or(0);
    PairState::Between { right, contact: contact(read, right) }
}

/// What one branch has more than its terminator, where so many others are right. See [`CONTACT`].
pub fn contact(read: Resistance, right: u32) -> Resistance {
    let left = 1.0 / read.base() - f64::from(right) / TERMINATOR_OHM;
    ohms((1.0 / left - TERMINATOR_OHM).max(0.0))
}

/// Whether a transceiver is sure to drive the pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PairDrive {
    /// Too little or too much to drive.
    No,
    /// With little to spare.
    Barely,
    /// As two terminators are.
    Well,
}

/// Whether it is, by what a meter reads; `None` for a meter that shows no end.
pub fn driven(read: Option<Resistance>, wires: Resistance) -> PairDrive {
    let Some(read) = read else { return PairDrive::No };
    let (least, most) = DRIVES_OHM;
    let right = expected(2, wires);
    if (right.low..=right.high).contains(&read) {
        PairDrive::Well
    } else if (least..=most).contains(&read.base()) {
        PairDrive::Barely
    } else {
        PairDrive::No
    }
}
