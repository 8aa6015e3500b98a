//! What was found at the car, held against the plan.

use std::collections::BTreeMap;

use super::{Effect, Ignition, Layout, PlugPosition, Stroke, Target};
use crate::{
    engine::{Engine, EngineKind},
    quantity::{CrankAngle, Measure},
    working::{Formula, Step, step},
};

/// The channel that reaches each target, as far as it has been seen.
pub type Wired = BTreeMap<Target, u32>;

/// One action of a channel in the cylinder that it reaches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChannelAction {
    /// When, in the cycle.
    pub at: CrankAngle,
    /// After the cylinder's own firing top dead centre: above minus half a cycle, up to half.
    pub error: CrankAngle,
    /// The stroke into which it falls.
    pub stroke: Stroke,
}

/// What really happens in one cylinder.
#[derive(Clone, Debug, PartialEq)]
pub struct Reached {
    /// The plug or the injector.
    pub target: Target,
    /// The channel that reaches it.
    pub channel: u32,
    /// What the channel does there, the smallest error first.
    pub sparks: Vec<ChannelAction>,
    /// What comes of it: the worst of all sparks, or [`Effect::Right`] where one is in its place.
    pub effect: Effect,
}

impl Reached {
    /// The error of the spark that is nearest to its place; none where there is no spark.
    pub fn error(&self) -> Option<CrankAngle> {
        self.sparks.first().map(|spark| spark.error)
    }
}

/// What was found, target by target.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// The targets whose channel has been seen.
    pub reached: Vec<Reached>,
    /// The targets whose channel has not.
    pub unseen: Vec<Target>,
}

/// What comes of an action of a channel, by its error.
type EffectOf = fn(EngineKind, PlugPosition, CrankAngle) -> Effect;

/// `e`, the error of a spark.
const ERROR: Formula = Formula {
    symbols: "e = θ_spark − θ_own",
    source: "definition; counted within half a cycle either way",
};

impl Check {
    /// Sparks: holds what was found against the plan.
    pub fn ignition(engine: &Engine, layout: &Layout, wired: &Wired) -> Self {
        Self::new(engine, layout, wired, Effect::of_spark)
    }

    /// Injections: the moment matters little.
    pub fn injection(engine: &Engine, layout: &Layout, wired: &Wired) -> Self {
        Self::new(engine, layout, wired, |_, _, error| {
            if error.is_near(CrankAngle::default()) { Effect::Right } else { Effect::FuelElsewhere }
        })
    }

    fn new(engine: &Engine, layout: &Layout, wired: &Wired, effect: EffectOf) -> Self {
        let (mut reached, mut unseen) = (Vec::new(), Vec::new());
        for target in layout.targets() {
            match wired.get(&target) {
                Some(&channel) => reached.push(reach(engine, layout, target, channel, effect)),
                None => unseen.push(target),
            }
        }
        Self { reached, unseen }
    }

    /// Those that are not as they should be, the worst first.
    pub fn wrong(&self) -> Vec<&Reached> {
        let mut wrong: Vec<_> =
            self.reached.iter().filter(|it| it.effect != Effect::Right).collect();
        crate::sorted::by(&mut wrong, |one, other| one.effect.cmp(&other.effect));
        wrong
    }

    /// Whether everything has been seen, and is right.
    pub fn is_right(&self) -> bool {
        self.unseen.is_empty() && self.wrong().is_empty()
    }

    /// Those that are right only because each coil is fired every turn: on the day that the controller is set
    /// to sequential, their sparks fall 360 degrees out.
    pub fn hidden(&self, engine: &Engine, layout: &Layout, mode: Ignition) -> Vec<&Reached> {
        if mode != Ignition::EveryTurn {
            return Vec::new();
        }
        let planned = |it: &Reached| layout.slot(it.channel)?.targets.first().copied();
        let swapped = |it: &&Reached| {
            let (own, other) = (engine.angle_of(it.target.cylinder), planned(it));
            let other = other.and_then(|target| engine.angle_of(target.cylinder));
            it.effect == Effect::Right
                && own.zip(other).is_some_and(|(own, other)| !own.is_near(other))
        };
        self.reached.iter().filter(swapped).collect()
    }
}

fn reach(
    engine: &Engine,
    layout: &Layout,
    target: Target,
    channel: u32,
    effect: EffectOf,
) -> Reached {
    let own = engine.angle_of(target.cylinder).unwrap_or_default();
    let Some(slot) = layout.slot(channel) else {
        return Reached { target, channel, sparks: Vec::new(), effect: Effect::Never };
    };
    let spark = |&at: &CrankAngle| {
        let error = (at - own).as_error(layout.cycle());
        ChannelAction { at, error, stroke: Stroke::at(engine.kind(), target.position, error) }
    };
    let mut sparks: Vec<ChannelAction> = slot.times.iter().map(spark).collect();
    let size = |spark: &ChannelAction| spark.error.degrees().abs();
    crate::sorted::by(&mut sparks, |one, other| size(one).total_cmp(&size(other)));
    let in_place = sparks.iter().any(|spark| spark.stroke == Stroke::Firing);
    let same_position = slot.targets.iter().any(|it| it.position == target.position);
    let effect = match (slot.times.is_empty(), in_place) {
        (true, _) if slot.targets.contains(&target) => Effect::Right,
        (true, _) => Effect::OtherGroup,
        (false, true) if same_position => Effect::Right,
        (false, true) => Effect::OtherPosition,
        (false, false) => {
            let effects =
                sparks.iter().map(|spark| effect(engine.kind(), target.position, spark.error));
            effects.min().unwrap_or(Effect::Never)
        }
    };
    Reached { target, channel, sparks, effect }
}

/// How the errors of a cylinder were found, one step for each spark.
pub(crate) fn error_steps(engine: &Engine, reached: &Reached) -> Vec<Step> {
    let own = engine.angle_of(reached.target.cylinder).unwrap_or_default();
    let of = |spark: &ChannelAction| {
        step(&ERROR, &[("θ_spark", spark.at.show()), ("θ_own", own.show())], spark.error)
    };
    reached.sparks.iter().map(of).collect()
}
