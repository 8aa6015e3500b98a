//! Ignition coils: how long they must be charged, for how long they can be, what that takes from the supply, and what a
//! coil does that is held on.
//!
//! **Model.** A coil is its primary's inductance and resistance, copper that warms; its igniter drops a voltage while it
//! conducts, and may hold the current at a limit. The supply is what the coil's terminal has: a drop in its feed counts as
//! that much less. Between two charges a coil needs the time of its spark, in which it gives its energy away.

pub mod charging;
mod course;
pub mod cures;
pub mod entered;
pub mod feed;
pub mod held;
pub mod pattern;

use charging::{Charged, CoilCorner};
use entered::EnteredDwell;
use feed::Taken;
use pattern::Pattern;

use crate::{
    conditions::Conditions,
    quantity::{
        Band, Current, Holds, Inductance, Measure, Ratio, Resistance, RotationalSpeed, Temperature,
        Time, Voltage, celsius, rpm, seconds, volts,
    },
    working::{Formula, Step, step},
};

/// A supply is tried at each whole volt.
const STEP_V: f64 = 1.0;

const AVAILABLE: Formula = Formula {
    symbols: "t_available = a / (6 n) − t_spark",
    source: "the time of the least crank angle from one charge of a coil to its next, less its spark",
};
const RUNS_OUT: Formula = Formula {
    symbols: "n_out = a / (6 (t_dwell + t_spark))",
    source: "the speed at which the time that is available is the time that is needed",
};
const DUTY: Formula = Formula {
    symbols: "D = t_dwell 6 n / a",
    source: "the share of the time in which it is charged",
};

/// What is known of the coils.
#[derive(Clone, Debug, PartialEq)]
pub struct CoilInputs {
    /// Resistance of a primary at 20 °C; above zero.
    pub resistance: Band<Resistance>,
    /// Inductance of a primary; above zero.
    pub inductance: Band<Inductance>,
    /// The current to which it is to be charged; above zero.
    pub wanted: Current,
    /// What the igniter drops while it conducts.
    pub drop: Band<Voltage>,
    /// The current that the igniter holds for each coil on it, where it holds one.
    pub limit: Option<Band<Current>>,
    /// Coils on one igniter; at least one.
    pub per_igniter: u32,
    /// How long a spark burns.
    pub spark: Band<Time>,
    /// The most of the time that the coil may be charged, where its data say.
    pub duty_limit: Option<Ratio>,
    /// How the coils are charged in the cycle, where that is known.
    pub pattern: Option<Pattern>,
    /// The same of each bank's own coils, with its cylinders, where the banks are known.
    pub banks: Vec<(Vec<u32>, Pattern)>,
    /// The highest speed of the engine, where that is known; above zero.
    pub speed: Option<RotationalSpeed>,
    /// The dwell that stands in the controller, where that is known.
    pub entered: Option<Band<Time>>,
    /// The same while the starter turns, where it is another.
    pub entered_cranking: Option<Band<Time>>,
    /// Supply and temperatures.
    pub conditions: Conditions,
}

/// The dwell at one supply.
#[derive(Clone, Debug, PartialEq)]
pub struct Dwell {
    /// The supply.
    pub supply: Voltage,
    /// As meant, at 20 °C; nothing where the current is never reached.
    pub nominal: Option<Time>,
    /// The shortest and the longest, over copper and tolerances; nothing where it may never be reached.
    pub least: Option<Time>,
    /// The longest.
    pub most: Option<Time>,
    /// The current that the dwell as meant gives, lowest to highest.
    pub current: Option<(Current, Current)>,
    /// How the dwell as meant was found.
    pub working: Vec<Step>,
}

/// The coils at the highest speed.
#[derive(Clone, Debug, PartialEq)]
pub struct AtSpeed {
    /// The time in which a coil can be charged; below zero where its spark takes it all.
    pub available: Time,
    /// The time in which it must be: the longest at the charging supply.
    pub needed: Time,
    /// The speed at which the one is the other.
    pub runs_out: RotationalSpeed,
    /// The same with the supply of a battery at rest, its alternator out, and how it was found.
    pub runs_out_at_rest: Option<(RotationalSpeed, Vec<Step>)>,
    /// The part of the time in which it is charged.
    pub duty: Ratio,
    /// What the coils take from the supply.
    pub taken: Taken,
    /// What those of each bank take, with its cylinders, where the banks are known.
    pub banks: Vec<(Vec<u32>, Taken)>,
    /// How they were found.
    pub working: Vec<Step>,
}

impl AtSpeed {
    /// Whether the highest speed leaves the time that is needed.
    pub fn is_in_time(&self) -> bool {
        self.needed <= self.available
    }

    /// Whether a coil is charged for longer than its data allow.
    pub fn is_over_duty(&self, inputs: &CoilInputs) -> bool {
        inputs.duty_limit.is_some_and(|limit| self.duty > limit)
    }

    /// Whether it can be done.
    pub fn is_enough(&self, inputs: &CoilInputs) -> bool {
        self.is_in_time() && !self.is_over_duty(inputs)
    }
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CoilAnswer {
    /// The dwell to enter, at each supply.
    pub dwells: Vec<Dwell>,
    /// Where the current wanted may not be reached.
    pub falls_short: Holds,
    /// One charge as meant, at the charging supply.
    pub charge: Charged,
    /// At the highest speed, where that and the firing are known and the current is reached.
    pub at_speed: Option<AtSpeed>,
    /// A coil that is held on.
    pub held: held::Held,
    /// One that is charged while the controller starts.
    pub at_key_on: Charged,
    /// What the dwell that is entered gives, at the charging supply.
    pub entered: Option<EnteredDwell>,
    /// What that of cranking gives, at the lowest supply.
    pub entered_cranking: Option<EnteredDwell>,
}

/// Works out the dwell, what is left of the time for it, and what it takes.
///
/// Nothing where a value is none that a coil can have.
pub fn answer(inputs: &CoilInputs) -> Option<CoilAnswer> {
    let dwells: Vec<_> = supplies(&inputs.conditions).map(|supply| dwell(inputs, supply)).collect();
    let corners = inputs.conditions.corners();
    let falls_short = Holds::from_corners(
        corners.map(|at| (at.name, longest(inputs, at.supply, at.temperature).is_none())),
    );
    let nominal = CoilCorner::nominal(inputs, inputs.conditions.supply.high, celsius(20.0));
    let dwell = nominal.charging()?.time_to(inputs.wanted.base());
    let entered = |time: Option<Band<Time>>, supply| EnteredDwell::of(inputs, time?, supply);
    let charge = Charged::new(&nominal, dwell.unwrap_or(0.0))?;
    Some(CoilAnswer {
        at_speed: at_speed(inputs),
        held: held::Held::new(inputs)?,
        at_key_on: held::while_starting(inputs)?,
        entered: entered(inputs.entered, inputs.conditions.supply.high),
        entered_cranking: entered(inputs.entered_cranking, inputs.conditions.supply.low),
        dwells,
        falls_short,
        charge,
    })
}

/// Each whole volt from the lowest supply to the highest, and both of them.
fn supplies(conditions: &Conditions) -> impl Iterator<Item = Voltage> + use<> {
    let (low, high) = (conditions.supply.low.base(), conditions.supply.high.base());
    let first = (low / STEP_V).floor() + 1.0;
    let whole =
        (0..64_u32).map(move |k| first + f64::from(k)).take_while(move |it| *it < high - 1e-9);
    std::iter::once(low).chain(whole).chain((high > low).then_some(high)).map(volts)
}

fn dwell(inputs: &CoilInputs, supply: Voltage) -> Dwell {
    let temperature = inputs.conditions.temperature;
    let nominal = CoilCorner::nominal(inputs, supply, celsius(20.0));
    let (time, working) = nominal.time_to(inputs.wanted);
    let ends = |given: f64| {
        let at = |corner: CoilCorner| corner.charging()?.current_at(given);
        let low = at(CoilCorner::slowest(inputs, supply, temperature.high))?;
        let high = at(CoilCorner::fastest(inputs, supply, temperature.low))?;
        Some((Measure::from_base(low), Measure::from_base(high)))
    };
    Dwell {
        supply,
        nominal: time,
        least: CoilCorner::fastest(inputs, supply, temperature.low).time_to(inputs.wanted).0,
        most: longest(inputs, supply, temperature.high),
        current: time.and_then(|time| ends(time.base())),
        working,
    }
}

/// The longest that it may take to reach the current wanted; nothing where it may never be reached.
fn longest(inputs: &CoilInputs, supply: Voltage, temperature: Temperature) -> Option<Time> {
    CoilCorner::slowest(inputs, supply, temperature).time_to(inputs.wanted).0
}

fn at_speed(inputs: &CoilInputs) -> Option<AtSpeed> {
    let (pattern, speed) = (inputs.pattern.as_ref()?, inputs.speed?);
    let conditions = &inputs.conditions;
    let hot = conditions.temperature.high;
    let slowest = CoilCorner::slowest(inputs, conditions.supply.high, hot);
    // a dwell that is entered is what each charge takes; whether it is enough is another matter
    let (needed, mut working) = match inputs.entered {
        Some(entered) => (Some(entered.high), Vec::new()),
        None => slowest.time_to(inputs.wanted),
    };
    let needed = needed?;
    let least = pattern.least_degrees();
    let period = |speed: RotationalSpeed| least / (6.0 * speed.base());
    let spark = inputs.spark.high;
    let available = seconds(period(speed)) - spark;
    let shown = [("a", pattern.least().show()), ("n", speed.show()), ("t_spark", spark.show())];
    working.push(step(&AVAILABLE, &shown, available));
    let out_at = |dwell: Time, working: &mut Vec<Step>| {
        let runs_out = rpm(least / (6.0 * (dwell + spark).base()));
        let shown =
            [("a", pattern.least().show()), ("t_dwell", dwell.show()), ("t_spark", spark.show())];
        working.push(step(&RUNS_OUT, &shown, runs_out));
        runs_out
    };
    let runs_out = out_at(needed, &mut working);
    let (at_rest, mut steps) =
        CoilCorner::slowest(inputs, conditions.supply.nominal, hot).time_to(inputs.wanted);
    let duty: Ratio = Measure::from_base(needed.base() / period(speed));
    let shown = [("t_dwell", needed.show()), ("n", speed.show()), ("a", pattern.least().show())];
    working.push(step(&DUTY, &shown, duty));
    Some(AtSpeed {
        available,
        needed,
        runs_out,
        runs_out_at_rest: at_rest.map(|dwell| (out_at(dwell, &mut steps), steps)),
        duty,
        taken: Taken::new(inputs, pattern, speed)?,
        banks: inputs
            .banks
            .iter()
            .filter_map(|(bank, it)| Some((bank.clone(), Taken::new(inputs, it, speed)?)))
            .collect(),
        working,
    })
}
