//! What gives coils the time that they need, each worked out before it is offered.

use super::{
    CoilInputs, at_speed,
    charging::{Charged, CoilCorner},
    pattern::Pattern,
};
use crate::quantity::{Current, Energy, Measure, RotationalSpeed, amperes, celsius};

/// A lower current is offered in steps of a tenth of an ampere.
const STEP_A: f64 = 0.1;
/// Below this share of the current wanted the spark is another one.
const LEAST_SHARE: f64 = 0.6;

/// What can be done about coils that have too little time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CoilCures {
    /// Each coil fired once a cycle: the speed at which its dwell runs out then.
    pub once_a_cycle: Option<RotationalSpeed>,
    /// The current that they reach in the time there is, and the energy of it.
    pub less: Option<(Current, Energy)>,
}

impl CoilCures {
    /// The cures that are enough at the highest speed. `once_a_cycle` is how the coils would be charged if each were fired
    /// once a cycle, where they are not.
    pub fn of(inputs: &CoilInputs, once_a_cycle: Option<&Pattern>) -> Self {
        let seldom = once_a_cycle.and_then(|pattern| {
            let changed = CoilInputs { pattern: Some(pattern.clone()), ..inputs.clone() };
            let at = at_speed(&changed).filter(|at| at.is_enough(&changed))?;
            Some(at.runs_out)
        });
        Self { once_a_cycle: seldom, less: less(inputs) }
    }
}

/// The highest current that every coil reaches in the time there is.
fn less(inputs: &CoilInputs) -> Option<(Current, Energy)> {
    let (pattern, speed) = (inputs.pattern.as_ref()?, inputs.speed?);
    let conditions = &inputs.conditions;
    let period = pattern.least_degrees() / (6.0 * speed.base());
    let of_duty = inputs.duty_limit.map_or(f64::INFINITY, |limit| limit.base() * period);
    let time = (period - inputs.spark.high.base()).min(of_duty);
    let slowest = CoilCorner::slowest(inputs, conditions.supply.high, conditions.temperature.high);
    let reached = slowest.charging()?.current_at(time)?;
    let current = (reached / STEP_A).floor() * STEP_A;
    if current < LEAST_SHARE * inputs.wanted.base() || current >= inputs.wanted.base() {
        return None;
    }
    let nominal = CoilCorner::nominal(inputs, conditions.supply.high, celsius(20.0));
    let dwell = nominal.time_to(amperes(current)).0?;
    Some((amperes(current), Charged::new(&nominal, dwell.base())?.energy))
}
