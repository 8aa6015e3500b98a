//! Fuel: what the injectors pass, what power that feeds, and for how much of the time they must be open.
//!
//! **Where the line is drawn.** Injectors are enough where the power wanted asks at every end of every tolerance for no
//! more of the time than the duty limit. Above it an injector no longer closes surely between two pulses, and its flow
//! can't be steered any more; 80 to 85 percent is common practice, no source.
//!
//! **Dead time.** An injector that is switched on opens late by its dead time; fuel flows only in what is left of the
//! pulse. An injector that is pulsed every turn loses it twice a cycle.

pub mod cures;
pub mod delivery;
pub mod flow;

use cures::FuelCures;
use delivery::Delivery;
use flow::InjectorSet;

use crate::quantity::{
    Band, Density, Holds, Measure, Power, Pressure, Ratio, RotationalSpeed, SpecificConsumption,
    Time,
};

/// Share of the time between two pulses above which the dead time weighs heavily: common practice, no source.
pub const HEAVY_DEAD_TIME: f64 = 0.15;

/// Times the pressure at which a flow is stated beyond which that flow can't be scaled: common practice, no source.
pub const MOST_PRESSURE: f64 = 1.5;

/// What is known of the fuel, its injectors and what is wanted of them.
#[derive(Clone, Debug, PartialEq)]
pub struct FuelInputs {
    /// The injectors, in sets that are alike.
    pub sets: Vec<InjectorSet>,
    /// Pressure at which their flow is stated; above zero.
    pub stated_at: Band<Pressure>,
    /// Density of the fluid with which it was measured; above zero.
    pub test_density: Band<Density>,
    /// Density of the fuel; above zero.
    pub density: Band<Density>,
    /// Pressure in the rail, above that of the open air, engine stopped.
    pub rail: Band<Pressure>,
    /// Highest pressure in the manifold, above that of the open air.
    pub boost: Band<Pressure>,
    /// What holds the pressure.
    pub regulator: Regulator,
    /// Fuel that the engine burns for its work; above zero.
    pub consumption: Band<SpecificConsumption>,
    /// The most of the time that an injector may be open.
    pub duty_limit: Band<Ratio>,
    /// How late an injector opens.
    pub dead_time: Band<Time>,
    /// Whether that was given, rather than taken as usual.
    pub is_dead_time_given: bool,
    /// The highest speed, and how often an injector is pulsed.
    pub pace: Option<InjectionPace>,
    /// The power wanted, at the crank.
    pub power: Option<Band<Power>>,
}

/// How often an injector is pulsed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InjectionPace {
    /// Highest speed of the engine; above zero.
    pub speed: Band<RotationalSpeed>,
    /// Turns of the crank from one pulse of an injector to its next: 2, or 1.
    pub turns: u32,
    /// Turns of a cycle: what is possible where each injector has a channel of its own.
    pub turns_of_cycle: u32,
}

/// What holds the pressure in the rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Regulator {
    /// A regulator with a hose to the manifold: so much above the manifold, whatever that has.
    Referenced,
    /// One without: so much above the open air; boost takes its part away.
    Fixed,
}

/// Which end of every tolerance is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DeliveryEnd {
    /// The ends that leave the engine leanest.
    Least,
    /// What is meant.
    Nominal,
    /// The ends that give most.
    Most,
}

impl DeliveryEnd {
    /// All, the leanest first.
    pub const ALL: [Self; 3] = [Self::Least, Self::Nominal, Self::Most];

    /// As a fitter calls it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Least => "all at its leanest",
            Self::Nominal => "nominal",
            Self::Most => "all at its best",
        }
    }

    /// Of something that helps the flow along.
    pub fn of_help<Q: Measure>(self, band: Band<Q>) -> Q {
        match self {
            Self::Least => band.low,
            Self::Nominal => band.nominal,
            Self::Most => band.high,
        }
    }

    /// Of something that takes from it.
    pub fn of_hindrance<Q: Measure>(self, band: Band<Q>) -> Q {
        match self {
            Self::Least => band.high,
            Self::Nominal => band.nominal,
            Self::Most => band.low,
        }
    }
}

/// What comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct FuelAnswer {
    /// With everything at its leanest.
    pub least: Delivery,
    /// As meant.
    pub nominal: Delivery,
    /// With everything at its best.
    pub most: Delivery,
    /// Where the power wanted asks for more of the time than the limit; never where no power is wanted.
    pub runs_out: Holds,
    /// What would cure that; each was solved.
    pub cures: FuelCures,
}

/// What is reached first on the way to the power wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Limit {
    /// Nothing.
    None,
    /// The flow: at any speed that counts they would have to be open for longer than the limit.
    Flow,
    /// The time: the flow would do, but near the highest speed the dead time takes too much of it.
    DeadTime,
}

impl FuelAnswer {
    /// Whether the manifold may push as hard as the fuel, so that nothing flows.
    pub fn is_stopped(&self) -> bool {
        self.least.drop.base() <= 0.0
    }

    /// What is reached first at an end.
    pub fn limit_at(&self, end: DeliveryEnd) -> Limit {
        let at = self.at(end);
        if !at.runs_out() {
            return Limit::None;
        }
        match (at.reaches, at.speed) {
            // an engine makes little of its power below half its highest speed
            (Some(reaches), Some(speed)) if reaches.base() >= speed.base() / 2.0 => Limit::DeadTime,
            _ => Limit::Flow,
        }
    }

    /// What is delivered at an end.
    pub fn at(&self, end: DeliveryEnd) -> &Delivery {
        match end {
            DeliveryEnd::Least => &self.least,
            DeliveryEnd::Nominal => &self.nominal,
            DeliveryEnd::Most => &self.most,
        }
    }
}

/// Works out what the injectors feed, and what to do where that is not enough.
pub fn answer(inputs: &FuelInputs) -> FuelAnswer {
    let [least, nominal, most] = DeliveryEnd::ALL.map(|end| Delivery::at(inputs, end));
    let ends = [
        (DeliveryEnd::Least, &least),
        (DeliveryEnd::Nominal, &nominal),
        (DeliveryEnd::Most, &most),
    ];
    let runs_out = Holds::from_corners(ends.map(|(end, at)| (end.name(), at.runs_out())));
    let cures = if least.runs_out() { FuelCures::of(inputs, &least) } else { FuelCures::default() };
    FuelAnswer { least, nominal, most, runs_out, cures }
}
