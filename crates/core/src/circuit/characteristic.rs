//! The law of an element, with all that is the same at every voltage worked out beforehand.

use super::diode::Diode;
use super::network::Law;
use super::pair::Pair;
use crate::math;

/// A current that no diode carries, in amperes. Beyond, the search for an answer continues the law as a straight line:
/// the exponential of a whole supply voltage would drown all other currents. An answer that lies there is refused.
const MOST_A: f64 = 1e6;

/// Below this exponent the reverse current is within 1e-13 of saturation: more voltage changes nothing.
const SATURATED: f64 = -30.0;

/// A law, ready for one voltage after the other.
#[derive(Clone, Copy, Debug)]
pub(super) enum Characteristic {
    /// Of a resistor.
    Straight { ohm: f64, siemens: f64 },
    /// Of a current source; of an ideal voltage source, whose current the rest of the network decides, nought.
    Constant { a: f64 },
    /// Of [`Diode::Threshold`].
    Threshold { forward_v: Pair, ohm: f64, siemens: f64 },
    /// Of [`Diode::Exponential`], up to the exponent at which it reaches [`MOST_A`].
    Junction { saturation_a: f64, scale_v: f64, last_exponent: f64 },
}

/// What an element does at a voltage.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Tangent {
    pub(super) v: Pair,
    pub(super) current_a: f64,
    /// How much the current rises for each volt more; zero where a diode blocks.
    pub(super) siemens: f64,
    /// Of a junction: its forward and reverse currents without their difference, where it conducts at all.
    forward_a: f64,
}

impl From<Law> for Characteristic {
    fn from(law: Law) -> Self {
        match law {
            Law::Resistor { ohm } => Self::Straight { ohm, siemens: ohm.recip() },
            Law::Source { .. } => Self::Constant { a: 0.0 },
            Law::Current { a } => Self::Constant { a },
            Law::Diode(diode) => diode.into(),
        }
    }
}

impl From<Diode> for Characteristic {
    fn from(diode: Diode) -> Self {
        match diode {
            Diode::Exponential { saturation_current_a: saturation_a, .. } => Self::Junction {
                saturation_a,
                scale_v: diode.scale_v(),
                last_exponent: math::ln_1p(MOST_A / saturation_a),
            },
            Diode::Threshold { forward_voltage_v, on_resistance_ohm: ohm } => {
                Self::Threshold { forward_v: forward_voltage_v.into(), ohm, siemens: ohm.recip() }
            }
        }
    }
}

impl Characteristic {
    /// The current at a voltage in twice the digits: just above a threshold, one `f64` has few to spare.
    #[inline]
    pub(super) fn current_a(&self, v: Pair) -> f64 {
        match *self {
            Self::Straight { ohm, .. } => v.value() / ohm,
            Self::Constant { a } => a,
            Self::Threshold { forward_v, ohm, .. } if v.may_reach(forward_v) => {
                (v - forward_v).value().max(0.0) / ohm
            }
            Self::Threshold { .. } => 0.0,
            Self::Junction { saturation_a, scale_v, last_exponent } => {
                let exponent = v.value() / scale_v;
                if exponent <= last_exponent {
                    saturation_a * math::exp_m1(exponent)
                } else {
                    MOST_A * (1.0 + exponent - last_exponent)
                }
            }
        }
    }

    /// What it does there.
    #[inline]
    pub(super) fn tangent(&self, v: Pair) -> Tangent {
        let current_a = self.current_a(v);
        let (siemens, forward_a) = match *self {
            Self::Straight { siemens, .. } => (siemens, 0.0),
            Self::Constant { .. } => (0.0, 0.0),
            Self::Threshold { siemens, .. } => (if current_a > 0.0 { siemens } else { 0.0 }, 0.0),
            Self::Junction { saturation_a, scale_v, last_exponent } => {
                let exponent = v.value() / scale_v;
                if exponent < SATURATED {
                    (0.0, 0.0)
                } else {
                    let forward_a = saturation_a * math::exp(exponent.min(last_exponent));
                    (forward_a / scale_v, forward_a)
                }
            }
        };
        Tangent { v, current_a, siemens, forward_a }
    }

    /// By how much the current changes when the voltage goes `dv` further than `at`, right to the last digits even where the
    /// change is far smaller than the current.
    pub(super) fn change_a(&self, at: &Tangent, dv: f64) -> f64 {
        match *self {
            Self::Straight { ohm, .. } => dv / ohm,
            Self::Constant { .. } => 0.0,
            Self::Threshold { .. } => self.whole_change_a(at, dv).0,
            Self::Junction { saturation_a, scale_v, last_exponent } => {
                let (exponent, step) = (at.v.value() / scale_v, dv / scale_v);
                if exponent.min(exponent + step) > last_exponent {
                    MOST_A * step
                } else if step.abs() < 1.0 && exponent.max(exponent + step) <= last_exponent {
                    let forward_a = if exponent < SATURATED {
                        saturation_a * math::exp(exponent)
                    } else {
                        at.forward_a
                    };
                    forward_a * math::exp_m1(step)
                } else {
                    self.current_a(at.v + dv) - at.current_a
                }
            }
        }
    }

    /// The same, and whether it is in proportion to every smaller step.
    pub(super) fn whole_change_a(&self, at: &Tangent, dv: f64) -> (f64, bool) {
        match *self {
            Self::Straight { ohm, .. } => (dv / ohm, true),
            Self::Constant { .. } => (0.0, true),
            Self::Threshold { ohm, .. } => {
                let then = self.current_a(at.v + dv);
                match (at.current_a > 0.0, then > 0.0) {
                    (true, true) => (dv / ohm, true),
                    (false, false) => (0.0, true),
                    _ => (then - at.current_a, false),
                }
            }
            Self::Junction { .. } => (self.change_a(at, dv), false),
        }
    }

    /// Whether a voltage lies where the exponential law is no longer followed.
    pub(super) fn is_overdriven(&self, v: Pair) -> bool {
        matches!(*self, Self::Junction { scale_v, last_exponent, .. }
            if v.value() > last_exponent * scale_v)
    }
}
