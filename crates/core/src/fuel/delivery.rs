//! What the injectors feed at one end of all tolerances.

use super::{DeliveryEnd, FuelInputs, InjectionPace, flow};
use crate::{
    quantity::{
        MassFlow, Measure, Power, Pressure, Ratio, RotationalSpeed, SpecificConsumption, Time,
        share,
    },
    working::{Formula, Step, Working},
};

const CONSUMPTION: &str = "definition of specific fuel consumption";
const PULSES: &str =
    "definition of specific fuel consumption; fuel flows once the dead time of a pulse is over";

const ALL_OPEN: Formula = Formula { symbols: "M = k × m", source: "conservation of mass" };
const WITH_SET: Formula =
    Formula { symbols: "M = M_before + k × m", source: "conservation of mass" };
const WINDOW: Formula =
    Formula { symbols: "T = z × 60 / N", source: "z turns from pulse to pulse, N turns a minute" };
const FEEDS: Formula = Formula { symbols: "P = M × (D − t_d / T) / b", source: PULSES };
const FEEDS_STEADY: Formula = Formula { symbols: "P = M × D / b", source: CONSUMPTION };
const DUTY: Formula = Formula { symbols: "D = P × b / M + t_d / T", source: PULSES };
const DUTY_STEADY: Formula = Formula { symbols: "D = P × b / M", source: CONSUMPTION };
const DEAD_SHARE: Formula = Formula { symbols: "d = t_d / T", source: "definition of a share" };
const REACHED: Formula =
    Formula { symbols: "N = z × 60 × (D − P × b / M) / t_d", source: PULSES };

/// What the injectors feed at one end of all tolerances.
#[derive(Clone, Debug, PartialEq)]
pub struct Delivery {
    /// Pressure across an injector at full load.
    pub drop: Pressure,
    /// Flow of one injector of each set, held open.
    pub each: Vec<MassFlow>,
    /// Flow of all, held open.
    pub all: MassFlow,
    /// How [`Self::all`] was found.
    pub flow_working: Vec<Step>,
    /// The highest speed.
    pub speed: Option<RotationalSpeed>,
    /// Time from pulse to pulse at it.
    pub window: Option<Time>,
    /// Part of it that the dead time takes.
    pub dead_share: Option<Ratio>,
    /// How both were found.
    pub window_working: Vec<Step>,
    /// The most of the time that they may be open.
    pub duty_limit: Ratio,
    /// Power that they feed within that limit.
    pub feeds: Power,
    /// How it was found.
    pub feeds_working: Vec<Step>,
    /// Part of the time that they must be open for the power wanted, at the highest speed where that is known.
    pub duty: Option<Ratio>,
    /// How it was found.
    pub duty_working: Vec<Step>,
    /// The speed up to which they feed the power wanted, where the dead time is what ends it.
    pub reaches: Option<RotationalSpeed>,
    /// How it was found.
    pub reaches_working: Vec<Step>,
}

/// Whether a share of the time is above a limit, by more than rounding.
fn is_above(duty: Ratio, limit: Ratio) -> bool {
    duty.base() > limit.base() + 1e-9
}

impl Delivery {
    /// What is fed at this end.
    pub fn at(inputs: &FuelInputs, end: DeliveryEnd) -> Self {
        let mut flow_working = Working::new();
        let drop = flow::drop(inputs, end, &mut flow_working);
        let (each, all) = flows(inputs, drop, end, &mut flow_working);
        let dead_time = end.of_hindrance(inputs.dead_time);
        let mut window_working = Working::new();
        let window = inputs.pace.map(|pace| time_between(pace, end, &mut window_working));
        let dead_share = window.map(|window| {
            let shown = [("t_d", dead_time.show()), ("T", window.show())];
            window_working.step(&DEAD_SHARE, &shown, dead_time / window)
        });
        let at = DeliveryParts { all, window, dead_share, end };
        let (feeds, feeds_working) = at.feeds(inputs);
        let (steady_duty, duty, duty_working) = at.duties(inputs);
        let (reaches, reaches_working) = at.reaches(inputs, steady_duty);
        Self {
            drop,
            each,
            all,
            flow_working: flow_working.into_steps(),
            speed: inputs.pace.map(|pace| end.of_hindrance(pace.speed)),
            window,
            dead_share,
            window_working: window_working.into_steps(),
            duty_limit: end.of_help(inputs.duty_limit),
            feeds,
            feeds_working,
            duty,
            duty_working,
            reaches,
            reaches_working,
        }
    }

    /// Whether the power wanted asks for more of the time than the limit.
    pub fn runs_out(&self) -> bool {
        self.duty.is_some_and(|duty| is_above(duty, self.duty_limit))
    }
}

/// The flow of one of each set, and of all.
fn flows(
    inputs: &FuelInputs,
    drop: Pressure,
    end: DeliveryEnd,
    working: &mut Working,
) -> (Vec<MassFlow>, MassFlow) {
    let mut each = Vec::new();
    let mut all = MassFlow::from_base(0.0);
    for set in &inputs.sets {
        let one = flow::of_one(set, inputs, drop, end, working);
        let formula = if each.is_empty() { &ALL_OPEN } else { &WITH_SET };
        let shown = [("M_before", all.show()), ("k", set.count.into()), ("m", one.show())];
        all = working.step(formula, &shown, all + f64::from(set.count) * one);
        each.push(one);
    }
    (each, all)
}

fn time_between(pace: InjectionPace, end: DeliveryEnd, working: &mut Working) -> Time {
    let speed = end.of_hindrance(pace.speed);
    let shown = [("z", pace.turns.into()), ("N", speed.show())];
    let time = Time::from_base(f64::from(pace.turns) * 60.0 / speed.base());
    working.step(&WINDOW, &shown, time)
}

/// What power and duty are worked out from.
struct DeliveryParts {
    all: MassFlow,
    window: Option<Time>,
    dead_share: Option<Ratio>,
    end: DeliveryEnd,
}

impl DeliveryParts {
    fn feeds(&self, inputs: &FuelInputs) -> (Power, Vec<Step>) {
        let (limit, consumption) = (self.end.of_help(inputs.duty_limit), self.consumption(inputs));
        let dead = self.dead_share.map_or(0.0, Measure::base);
        let open = share((limit.base() - dead).max(0.0));
        let mut shown =
            vec![("M", self.all.show()), ("D", limit.show()), ("b", consumption.show())];
        let formula = if let Some(window) = self.window {
            let dead_time = self.end.of_hindrance(inputs.dead_time);
            shown.extend([("t_d", dead_time.show()), ("T", window.show())]);
            &FEEDS
        } else {
            &FEEDS_STEADY
        };
        let mut working = Working::new();
        let power = working.step(formula, &shown, self.all * open / consumption);
        (power, working.into_steps())
    }

    /// The part of the time that they must be open, without and with the dead time.
    ///
    /// Nothing where no power is wanted or nothing flows.
    fn duties(&self, inputs: &FuelInputs) -> (Option<Ratio>, Option<Ratio>, Vec<Step>) {
        let Some(power) = inputs.power.filter(|_| self.all.base() > 0.0) else {
            return (None, None, Vec::new());
        };
        let (power, consumption) = (self.end.of_hindrance(power), self.consumption(inputs));
        let steady = power * consumption / self.all;
        let mut shown =
            vec![("P", power.show()), ("b", consumption.show()), ("M", self.all.show())];
        let mut working = Working::new();
        let duty = match (self.window, self.dead_share) {
            (Some(window), Some(dead)) => {
                let dead_time = self.end.of_hindrance(inputs.dead_time);
                shown.extend([("t_d", dead_time.show()), ("T", window.show())]);
                working.step(&DUTY, &shown, steady + dead)
            }
            _ => working.step(&DUTY_STEADY, &shown, steady),
        };
        (Some(steady), Some(duty), working.into_steps())
    }

    /// The speed at which the dead time has taken all that the limit leaves.
    fn reaches(
        &self,
        inputs: &FuelInputs,
        steady: Option<Ratio>,
    ) -> (Option<RotationalSpeed>, Vec<Step>) {
        let limit = self.end.of_help(inputs.duty_limit);
        let dead_time = self.end.of_hindrance(inputs.dead_time);
        let (Some(pace), Some(steady), Some(power)) = (inputs.pace, steady, inputs.power) else {
            return (None, Vec::new());
        };
        let left = limit.base() - steady.base();
        if left <= 0.0 || dead_time.base() <= 0.0 {
            return (None, Vec::new());
        }
        let speed = f64::from(pace.turns) * 60.0 * left / dead_time.base();
        let power = self.end.of_hindrance(power);
        let shown = [
            ("z", pace.turns.into()),
            ("D", limit.show()),
            ("P", power.show()),
            ("b", self.consumption(inputs).show()),
            ("M", self.all.show()),
            ("t_d", dead_time.show()),
        ];
        let mut working = Working::new();
        let speed = working.step(&REACHED, &shown, RotationalSpeed::from_base(speed));
        (Some(speed), working.into_steps())
    }

    fn consumption(&self, inputs: &FuelInputs) -> SpecificConsumption {
        self.end.of_hindrance(inputs.consumption)
    }
}
