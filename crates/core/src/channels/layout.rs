//! What each channel is to reach, and when it acts.

use super::{Habit, Ignition, Injection, PlugPosition, Target};
use crate::{
    engine::{Engine, EngineKind, TURN},
    quantity::CrankAngle,
};

/// A channel (of a distributor: a tower of its cap) as it is planned.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// Its number, from 1.
    pub channel: u32,
    /// What it is to reach.
    pub targets: Vec<Target>,
    /// When it acts, from 0 up to but without the cycle. None where the moment doesn't matter (injection by
    /// bank or all together).
    pub times: Vec<CrankAngle>,
}

/// Why an engine can't be fired in a way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UnfitLayout {
    /// This cylinder has no companion to share a channel with.
    NoCompanion {
        /// The cylinder.
        cylinder: u32,
        /// What comes nearest, and by how much it misses: [`Engine::nearest_companion`].
        nearest: Option<(u32, CrankAngle)>,
    },
    /// Which cylinder is on which bank is not known.
    NoBanks,
}

/// Every channel of one kind, in the order in which they act.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    slots: Vec<Slot>,
    channels: u32,
    cycle: CrankAngle,
}

impl Layout {
    /// The ignition channels of an engine.
    ///
    /// A rotary has two plugs to a rotor: its leading plugs come first, then its trailing plugs in the same
    /// order (common practice, no source).
    ///
    /// # Errors
    /// Paired firing needs a companion for every cylinder.
    pub fn ignition(engine: &Engine, mode: Ignition, habit: Habit) -> Result<Self, UnfitLayout> {
        let positions = Self::positions(engine.kind());
        let groups = if mode.is_paired() { pairs(engine)? } else { singles(engine) };
        let every_turn = mode.is_paired() || mode == Ignition::EveryTurn;
        // a distributor has one order: that of its rotor
        let habit = if mode == Ignition::Distributor { Habit::ByOrder } else { habit };
        let mut layout = Self::new(engine, &groups, positions, every_turn, habit);
        if mode == Ignition::Distributor {
            layout.channels = count(positions.len());
        }
        Ok(layout)
    }

    /// The plugs that each cylinder, or rotor, has here.
    pub fn positions(kind: EngineKind) -> &'static [PlugPosition] {
        match kind {
            EngineKind::Rotary => &[PlugPosition::Leading, PlugPosition::Trailing],
            EngineKind::FourStroke | EngineKind::TwoStroke => &[PlugPosition::Only],
        }
    }

    /// The injection channels of an engine.
    ///
    /// # Errors
    /// Pairs need companions; banks must be known.
    pub fn injection(engine: &Engine, mode: Injection, habit: Habit) -> Result<Self, UnfitLayout> {
        let only = &[PlugPosition::Only];
        match mode {
            Injection::EachOnce => Ok(Self::new(engine, &singles(engine), only, false, habit)),
            Injection::Companions => Ok(Self::new(engine, &pairs(engine)?, only, true, habit)),
            Injection::ByBank if engine.banks().is_empty() => Err(UnfitLayout::NoBanks),
            Injection::ByBank => Ok(Self::untimed(engine, engine.banks())),
            Injection::Together => Ok(Self::untimed(engine, &[engine.order()])),
        }
    }

    fn new(
        engine: &Engine,
        groups: &[Vec<u32>],
        positions: &[PlugPosition],
        every_turn: bool,
        habit: Habit,
    ) -> Self {
        let numbers = numbers(groups, habit);
        let slot = |position, at: usize, (group, number): (&Vec<u32>, &u32)| Slot {
            channel: number + count(at * groups.len()),
            targets: group.iter().map(|&cylinder| Target { position, cylinder }).collect(),
            times: times(engine, group, every_turn),
        };
        let slots: Vec<Slot> = positions
            .iter()
            .enumerate()
            .flat_map(|(at, &position)| {
                groups.iter().zip(&numbers).map(move |pair| slot(position, at, pair))
            })
            .collect();
        Self { channels: count(slots.len()), slots, cycle: engine.cycle() }
    }

    fn untimed(engine: &Engine, groups: &[Vec<u32>]) -> Self {
        let slot = |(channel, group): (u32, &Vec<u32>)| Slot {
            channel,
            targets: group.iter().copied().map(Target::only).collect(),
            times: Vec::new(),
        };
        let slots: Vec<Slot> = (1..).zip(groups).map(slot).collect();
        Self { channels: count(slots.len()), slots, cycle: engine.cycle() }
    }

    /// The channels in the order in which they act; of a rotary first the leading ones.
    pub fn slots(&self) -> &[Slot] {
        &self.slots
    }

    /// How many channels of the controller it takes. A distributor's towers are no channels.
    pub fn channels(&self) -> u32 {
        self.channels
    }

    /// The engine's cycle.
    pub fn cycle(&self) -> CrankAngle {
        self.cycle
    }

    /// Everything that is to be reached, in order.
    pub fn targets(&self) -> Vec<Target> {
        let mut targets: Vec<_> =
            self.slots.iter().flat_map(|slot| slot.targets.iter().copied()).collect();
        crate::sorted::by(&mut targets, Ord::cmp);
        targets
    }

    /// What a channel is to do; nothing where it has no part in the plan.
    pub fn slot(&self, channel: u32) -> Option<&Slot> {
        self.slots.iter().find(|slot| slot.channel == channel)
    }

    /// The channel that is to reach a target.
    pub fn channel_of(&self, target: Target) -> Option<u32> {
        let slot = self.slots.iter().find(|slot| slot.targets.contains(&target))?;
        Some(slot.channel)
    }

    /// The order of the channels, as it is entered in the controller: for one position of plug.
    pub fn order(&self, position: PlugPosition) -> Vec<u32> {
        let of_position =
            |slot: &&Slot| slot.targets.iter().any(|target| target.position == position);
        self.slots.iter().filter(of_position).map(|slot| slot.channel).collect()
    }

    /// The same with every moment earlier by an angle.
    #[must_use]
    pub fn earlier_by(&self, angle: CrankAngle) -> Self {
        let mut layout = self.clone();
        for slot in &mut layout.slots {
            for time in &mut slot.times {
                *time = (*time - angle).within(self.cycle);
            }
        }
        layout
    }

    /// The same with each channel acting once a cycle only.
    #[must_use]
    pub fn once_a_cycle(&self) -> Self {
        let mut layout = self.clone();
        for slot in &mut layout.slots {
            slot.times.truncate(1);
        }
        layout
    }

    /// The same as it stands in a controller: with these channels in the places of the order, and each first moment there.
    #[must_use]
    pub fn as_entered(&self, order: Option<&[u32]>, firsts: Option<&[CrankAngle]>) -> Self {
        let mut layout = order.map_or_else(|| self.clone(), |order| self.with_channels(order));
        for (slot, &first) in layout.slots.iter_mut().zip(firsts.unwrap_or_default()) {
            for (turns, time) in (0_u32..).zip(&mut slot.times) {
                *time =
                    (first + CrankAngle::new(TURN.degrees() * f64::from(turns))).within(self.cycle);
            }
        }
        layout
    }

    /// The same with other channels in the places of the order.
    #[must_use]
    pub fn with_channels(&self, channels: &[u32]) -> Self {
        let mut layout = self.clone();
        for (slot, &channel) in layout.slots.iter_mut().zip(channels) {
            slot.channel = channel;
        }
        layout
    }
}

fn singles(engine: &Engine) -> Vec<Vec<u32>> {
    engine.order().into_iter().map(|cylinder| vec![cylinder]).collect()
}

/// The companion pairs in the order in which they first fire.
fn pairs(engine: &Engine) -> Result<Vec<Vec<u32>>, UnfitLayout> {
    let mut pairs: Vec<Vec<u32>> = Vec::new();
    for cylinder in engine.order() {
        let Some(companion) = engine.companion(cylinder) else {
            let nearest = engine.nearest_companion(cylinder);
            return Err(UnfitLayout::NoCompanion { cylinder, nearest });
        };
        if !pairs.iter().flatten().any(|&it| it == cylinder) {
            pairs.push(vec![cylinder, companion]);
        }
    }
    Ok(pairs)
}

/// The number of each group's channel: its place in the order, or its place by lowest cylinder.
fn numbers(groups: &[Vec<u32>], habit: Habit) -> Vec<u32> {
    let lowest = |group: &Vec<u32>| group.iter().min().copied();
    let rank = |group: &Vec<u32>| groups.iter().filter(|it| lowest(it) <= lowest(group)).count();
    match habit {
        Habit::ByOrder => (1..).take(groups.len()).collect(),
        Habit::ByCylinder => groups.iter().map(|group| count(rank(group))).collect(),
    }
}

fn times(engine: &Engine, group: &[u32], every_turn: bool) -> Vec<CrankAngle> {
    let first = group.first().and_then(|&cylinder| engine.angle_of(cylinder)).unwrap_or_default();
    if every_turn && engine.kind() == EngineKind::FourStroke {
        return vec![first, (first + TURN).within(engine.cycle())];
    }
    vec![first]
}

/// Counts here are of at most 32 plugs.
fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
