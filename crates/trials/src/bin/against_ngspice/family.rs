//! What kinds of circuits there are, and how many of each.

use std::fmt;

use quietpin_core::circuit::Diode;

use crate::circuit::Circuit;
use crate::{degenerate, stage, web};
use quietpin_trials::random::Random;

/// A kind of circuit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Family {
    Resistors,
    StageExponential,
    StageThreshold,
    DiodesExponential,
    DiodesThreshold,
    Needless,
    Idle,
    Floating,
    Impossible,
}

/// Of every twenty-two circuits.
const SHARES: [(Family, usize); 9] = [
    (Family::Resistors, 5),
    (Family::StageExponential, 4),
    (Family::StageThreshold, 4),
    (Family::DiodesExponential, 2),
    (Family::DiodesThreshold, 2),
    (Family::Needless, 1),
    (Family::Idle, 1),
    (Family::Floating, 2),
    (Family::Impossible, 1),
];

impl Family {
    /// The family of the circuit with this number.
    fn of(index: usize) -> Self {
        let each = SHARES.iter().flat_map(|&(family, share)| std::iter::repeat_n(family, share));
        each.clone().nth(index % each.count()).unwrap_or(Self::Resistors)
    }
}

impl fmt::Display for Family {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Resistors => "resistors",
            Self::StageExponential => "output stages, exponential diodes",
            Self::StageThreshold => "output stages, threshold diodes",
            Self::DiodesExponential => "exponential diodes",
            Self::DiodesThreshold => "threshold diodes",
            Self::Needless => "dead ends and short-circuited parts",
            Self::Idle => "islands on an exponential diode",
            Self::Floating => "floating islands",
            Self::Impossible => "contradictions",
        })
    }
}

/// The circuit with this number, and its family. `thermal_v` is what the exponential diodes take for `k T / q`.
pub(crate) fn circuit(seed: u64, index: usize, thermal_v: f64) -> (Family, Circuit) {
    let mut random = Random::of(seed, index);
    let family = Family::of(index);
    let exponential = Diodes::Exponential { thermal_v };
    let circuit = match family {
        Family::Resistors => web::web(&mut random, None, 12),
        Family::StageExponential => stage::stage(&mut random, exponential),
        Family::StageThreshold => stage::stage(&mut random, Diodes::Threshold),
        Family::DiodesExponential => web::web(&mut random, Some(exponential), 12),
        Family::DiodesThreshold => web::web(&mut random, Some(Diodes::Threshold), 12),
        Family::Needless => degenerate::needless(&mut random, thermal_v),
        Family::Idle => degenerate::idle(&mut random, thermal_v),
        Family::Floating => degenerate::floating(&mut random, thermal_v),
        Family::Impossible => degenerate::impossible(&mut random, thermal_v),
    };
    (family, circuit)
}

/// Which law the diodes of a circuit follow.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Diodes {
    Exponential { thermal_v: f64 },
    Threshold,
}

impl Diodes {
    /// Any diode, from a Schottky to a light-emitting one.
    pub(crate) fn any(self, random: &mut Random) -> Diode {
        match self {
            Self::Exponential { thermal_v } => Diode::Exponential {
                saturation_current_a: random.log_even(1e-18, 1e-6),
                emission_coefficient: random.even(1.0, 2.0),
                thermal_voltage_v: thermal_v,
            },
            Self::Threshold => Diode::Threshold {
                forward_voltage_v: random.even(0.0, 2.2),
                on_resistance_ohm: random.log_even(1e-3, 10.0),
            },
        }
    }

    /// The diode in the body of a power switch, and those beside it.
    pub(crate) fn body(self, random: &mut Random) -> Diode {
        match self {
            Self::Exponential { thermal_v } => Diode::Exponential {
                saturation_current_a: random.log_even(1e-13, 1e-9),
                emission_coefficient: random.even(1.0, 1.8),
                thermal_voltage_v: thermal_v,
            },
            Self::Threshold => Diode::Threshold {
                forward_voltage_v: random.even(0.5, 0.8),
                on_resistance_ohm: random.log_even(1e-3, 0.5),
            },
        }
    }

    /// A light-emitting diode.
    pub(crate) fn light(self, random: &mut Random) -> Diode {
        match self {
            Self::Exponential { thermal_v } => Diode::Exponential {
                saturation_current_a: random.log_even(1e-20, 1e-15),
                emission_coefficient: random.even(1.6, 2.0),
                thermal_voltage_v: thermal_v,
            },
            Self::Threshold => Diode::Threshold {
                forward_voltage_v: random.even(1.6, 3.0),
                on_resistance_ohm: random.even(5.0, 50.0),
            },
        }
    }
}
