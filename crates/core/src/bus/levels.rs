//! What a voltmeter shows of the two lines of a running bus, each against ground.
//!
//! Both stand at 2.5 V while nobody drives them. A dominant bit takes CAN-H up and CAN-L down; a meter shows the mean, so that the
//! two part, the more the busier the bus is.

use crate::quantity::{Measure, Ratio, Voltage, share, volts};

/// Where both lines stand while nobody drives them. Source: ISO 11898-2; 2 to 3 V each, data sheets of three transceivers.
const RECESSIVE_V: (f64, f64) = (2.0, 3.0);
/// How far they are apart in a dominant bit, in the mean of the transceivers: 1.5 to 3 V by the same.
const APART_V: f64 = 2.0;
/// Further apart than in the least dominant bit on the average: somebody drives them always.
const ALWAYS_V: f64 = 1.5;
/// Less than this no hand meter tells from nothing: common practice, no source.
const SEEN_V: f64 = 0.02;
/// A level typed to the last digit must not fail by the last bit.
const SLACK_V: f64 = 1e-9;
/// A line that lies at ground, or so near that nothing else does it: common practice, no source.
const GROUND_V: f64 = 0.3;
/// What no transceiver gives: its supply is 5 V, and CAN-H reaches 4.5 V at the most.
const BEYOND_V: f64 = 4.6;

/// What the readings tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LineState {
    /// They part as they should: dominant about this part of the time.
    Running(Ratio),
    /// They stand together: nobody sends, or they touch.
    Silent,
    /// CAN-L is the higher one.
    Swapped,
    /// Dominant all the time.
    Stuck,
    /// Both at ground: nothing supplies the bus, or a line is shorted to ground.
    Dead,
    /// CAN-L is held at ground, CAN-H is not.
    LowGrounded,
    /// This line is the nearest to the battery; whether it is CAN-H.
    ToBattery(bool),
    /// They part, but not around 2.5 V.
    Uneven(Voltage),
}

/// What the means of both lines tell.
pub fn told(high: Voltage, low: Voltage) -> LineState {
    let (h, l) = (high.base(), low.base());
    let (apart, middle) = (h - l, f64::midpoint(h, l));
    if h.max(l) > BEYOND_V {
        return LineState::ToBattery(h >= l);
    }
    if h.max(l) < GROUND_V {
        return LineState::Dead;
    }
    if l < GROUND_V && h < RECESSIVE_V.1 {
        return LineState::LowGrounded;
    }
    if apart <= SLACK_V - SEEN_V {
        return LineState::Swapped;
    }
    if apart >= ALWAYS_V - SLACK_V {
        return LineState::Stuck;
    }
    if !(RECESSIVE_V.0..=RECESSIVE_V.1).contains(&middle) {
        return LineState::Uneven(volts(middle));
    }
    if apart < SEEN_V - SLACK_V {
        LineState::Silent
    } else {
        LineState::Running(share(apart / APART_V))
    }
}
