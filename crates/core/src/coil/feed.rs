//! What the coils take from the supply at a speed, and whether relay, fuse and wire bear it.

use super::{
    CoilInputs,
    charging::{Charged, CoilCorner},
    course::ChargingSequence,
    pattern::Pattern,
};
use crate::{
    quantity::{
        Area, Current, Length, Measure, Power, Resistance, RotationalSpeed, Temperature, Voltage,
        amperes, rpm, watts,
    },
    tables::{copper, fuses},
    working::{Formula, Step, step},
};

const MEAN: Formula = Formula {
    symbols: "I_mean = N Q 6 n / a",
    source: "the charge of one dwell, so often for each coil",
};
const SHARE: Formula = Formula {
    symbols: "I_relay = I_mean N_relay / N",
    source: "the coils spread over the relays, the most on one",
};
const EFFECTIVE: Formula = Formula {
    symbols: "I_eff = root of the mean of i²",
    source: "resistive heating: a fuse or a contact is heated by the square; the current of the coils that overlap most",
};
const LASTING: Formula = Formula { symbols: "I_rated = I_eff / 75%", source: fuses::SOURCE };
const DROP: Formula = Formula { symbols: "V_drop = I_peak R_w", source: "Ohm's law" };

/// What all coils take at most up to a speed, charged as meant at the charging supply.
///
/// Charged in full they take more the faster the engine turns; once the time for it runs out, less. So the most is taken at the
/// speed at which it just suffices, or at the highest where that is lower.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// The speed at which they take most.
    pub at: RotationalSpeed,
    /// How many coils.
    pub coils: u32,
    /// The most coils that are charged at once.
    pub at_once: u32,
    /// The mean of the current.
    pub mean: Current,
    /// Its highest instant.
    pub peak: Current,
    /// Heat in one coil's primary.
    pub in_coil: Power,
    /// Heat in one coil's igniter.
    pub in_igniter: Power,
    /// What each coil that is charged carries, at the instant at which most flows, largest first.
    carried: Vec<f64>,
    course: ChargingSequence,
    /// How the mean was found.
    pub working: Vec<Step>,
}

impl Taken {
    pub(super) fn new(
        inputs: &CoilInputs,
        pattern: &Pattern,
        speed: RotationalSpeed,
    ) -> Option<Self> {
        let hot = inputs.conditions.temperature.high;
        let corner = CoilCorner::nominal(inputs, inputs.conditions.supply.high, hot);
        let coil = corner.charging()?;
        let wanted = coil.time_to(inputs.wanted.base())?;
        let suffices =
            rpm(pattern.least_degrees() / (6.0 * (wanted + inputs.spark.nominal.base())));
        let speed = if speed < suffices { speed } else { suffices };
        let per_degree = 1.0 / (6.0 * speed.base());
        let dwell = wanted;
        let charged = Charged::new(&corner, dwell)?;
        let mean_s = pattern.mean_degrees() * per_degree;
        let coils = pattern.coils();
        let mean = amperes(f64::from(coils) * charged.charge_c / mean_s);
        let dwell_degrees = dwell / per_degree;
        let carried_with = |left: Vec<f64>| {
            let current = |left: f64| coil.current_at(dwell - left * per_degree);
            let mut each: Vec<f64> = left.into_iter().filter_map(current).collect();
            crate::sorted::by(&mut each, |one, other| other.total_cmp(one));
            each
        };
        let instants = pattern.charging_at_ends(dwell_degrees).map(carried_with);
        let sum = |each: &Vec<f64>| each.iter().sum::<f64>();
        let carried =
            instants.max_by(|one, other| sum(one).total_cmp(&sum(other))).unwrap_or_default();
        let shown = [
            ("N", coils.into()),
            ("Q", Measure::show(amperes(charged.charge_c)).said(coulombs(charged.charge_c))),
            ("n", speed.show()),
            ("a", crate::quantity::CrankAngle::new(pattern.mean_degrees()).show()),
        ];
        Some(Self {
            at: speed,
            coils,
            at_once: u32::try_from(carried.len()).unwrap_or(u32::MAX),
            mean,
            peak: amperes(sum(&carried)),
            in_coil: watts(charged.in_coil.base() / mean_s),
            in_igniter: watts(f64::from(inputs.per_igniter) * charged.in_igniter.base() / mean_s),
            carried,
            course: ChargingSequence {
                coil,
                dwell_s: dwell,
                s_per_degree: per_degree,
                pattern: pattern.clone(),
            },
            working: vec![step(&MEAN, &shown, mean)],
        })
    }
}

fn coulombs(charge_c: f64) -> String {
    format!("{} mC", crate::quantity::number(charge_c * 1e3))
}

/// How the coils are fed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilFeedParts {
    /// How many relays share them; at least one.
    pub relays: u32,
    /// Rating of a relay's contact, where known.
    pub relay: Option<Current>,
    /// Rating of a fuse, where known.
    pub fuse: Option<Current>,
    /// The lead from the battery to the coils, one way, where known.
    pub lead: Option<(Length, Area)>,
    /// The hottest that it gets.
    pub hot: Temperature,
    /// What other loads behind the same contact take, RMS.
    pub others: Current,
}

/// The feed of the coils on one relay.
#[derive(Clone, Debug, PartialEq)]
pub struct CoilFeed {
    /// How many coils hang on it.
    pub coils: u32,
    /// What it carries on average.
    pub mean: Current,
    /// The effective value of it, which heats relay and fuse.
    pub effective: Current,
    /// The highest instant.
    pub peak: Current,
    /// The least rating that its contact and its fuse must have.
    pub least: Current,
    /// The smallest fuse that carries it for long.
    pub fuse: Option<Current>,
    /// The drop in the lead at the highest instant, where the lead is known.
    pub drop: Option<Voltage>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl CoilFeed {
    /// The feed of the relay that has the most coils, those of them that carry most at once.
    pub fn new(taken: &Taken, parts: &CoilFeedParts) -> Self {
        let coils = taken.coils.div_ceil(parts.relays.max(1));
        let mean = taken.mean * (f64::from(coils) / f64::from(taken.coils.max(1)));
        let most = taken.carried.iter().take(usize::try_from(coils).unwrap_or(usize::MAX));
        let peak = amperes(most.sum()) + parts.others;
        let shown =
            [("I_mean", taken.mean.show()), ("N_relay", coils.into()), ("N", taken.coils.into())];
        let mut working = taken.working.clone();
        working.push(step(&SHARE, &shown, mean));
        let effective = amperes(taken.course.effective_a(coils));
        working.push(step(&EFFECTIVE, &[], effective));
        // the RMS of a sum is at most the sum of the RMS
        let effective = effective + parts.others;
        let least = effective / fuses::LASTING;
        working.push(step(&LASTING, &[("I_eff", effective.show())], least));
        let drop = parts.lead.map(|(length, area)| {
            let wire: Resistance = copper::wire_at_most(length, area, parts.hot);
            let drop = Measure::from_base(peak.base() * wire.base());
            let shown = [("l", length.show()), ("A", area.show()), ("T", parts.hot.show())];
            working.push(step(&copper::WIRE_AT_MOST, &shown, wire));
            working.push(step(&DROP, &[("I_peak", peak.show()), ("R_w", wire.show())], drop));
            drop
        });
        Self {
            coils,
            mean,
            effective,
            peak,
            least,
            fuse: fuses::for_long(effective),
            drop,
            working,
        }
    }

    /// Whether a fuse of this rating carries it for long.
    pub fn is_fused_by(&self, rating: Current) -> bool {
        rating.base() >= self.least.base() * (1.0 - 1e-9)
    }

    /// Whether a contact of this rating carries it for long and makes the highest instant.
    pub fn is_switched_by(&self, rating: Current) -> bool {
        self.is_fused_by(rating) && rating.base() >= self.peak.base() * (1.0 - 1e-9)
    }
}
