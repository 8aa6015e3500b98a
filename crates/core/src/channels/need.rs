//! How many channels each way takes, and what could be given up.

use super::{Habit, Ignition, Injection, Layout, UnfitLayout};
use crate::{
    engine::{Engine, EngineKind},
    quantity::Value,
    working::{Formula, Step, step},
};

/// What a way of firing takes.
#[derive(Clone, Debug, PartialEq)]
pub struct Need {
    /// Channels of the controller.
    pub channels: u32,
    /// Coils; of injection: injectors.
    pub parts: u32,
    /// Whether the controller must know which of two turns it is in: needs a cam sensor, or the like.
    pub needs_cam: bool,
    /// How the channels were counted.
    pub working: Vec<Step>,
}

const SINGLE: Formula = Formula { symbols: "N = n", source: "one channel for each" };
const PAIRED: Formula = Formula { symbols: "N = n / 2", source: "two companions to a channel" };
const ROTARY: Formula =
    Formula { symbols: "N = 2 × n", source: "a leading and a trailing plug for each rotor" };
const ONE: Formula = Formula { symbols: "N = 1", source: "one channel for all" };
const ONE_EACH: Formula =
    Formula { symbols: "N = 2", source: "one for the leading plugs, one for the trailing" };
const BANKS: Formula = Formula { symbols: "N = b", source: "one channel for each bank" };

impl Need {
    /// What a way of firing the coils takes.
    ///
    /// # Errors
    /// Where this engine can't be fired that way.
    pub fn ignition(engine: &Engine, mode: Ignition) -> Result<Self, UnfitLayout> {
        let layout = Layout::ignition(engine, mode, Habit::ByOrder)?;
        let rotary = engine.kind() == EngineKind::Rotary;
        let formula = match mode {
            Ignition::Distributor if rotary => &ONE_EACH,
            Ignition::Distributor => &ONE,
            _ if mode.is_paired() => &PAIRED,
            _ if rotary => &ROTARY,
            _ => &SINGLE,
        };
        let channels = layout.channels();
        let parts = match mode {
            Ignition::PairedSingle => engine.cylinders(),
            _ => channels,
        };
        let needs_cam = mode == Ignition::Sequential && engine.kind() == EngineKind::FourStroke;
        Ok(Self { channels, parts, needs_cam, working: counted(formula, engine, channels) })
    }

    /// What a way of firing the injectors takes.
    ///
    /// # Errors
    /// Where this engine can't be fired that way, or its banks are not known.
    pub fn injection(engine: &Engine, mode: Injection) -> Result<Self, UnfitLayout> {
        let layout = Layout::injection(engine, mode, Habit::ByOrder)?;
        let formula = match mode {
            Injection::EachOnce => &SINGLE,
            Injection::Companions => &PAIRED,
            Injection::ByBank => &BANKS,
            Injection::Together => &ONE,
        };
        let channels = layout.channels();
        let needs_cam = mode == Injection::EachOnce && engine.kind() == EngineKind::FourStroke;
        let working = counted(formula, engine, channels);
        Ok(Self { channels, parts: engine.cylinders(), needs_cam, working })
    }
}

fn counted(formula: &Formula, engine: &Engine, channels: u32) -> Vec<Step> {
    let values = [("n", Value::from(engine.cylinders())), ("b", Value::from(engine.banks().len()))];
    vec![step(formula, &values, channels)]
}

/// The ways of firing the coils for which this many channels are enough, the one that can do most first.
pub fn within(engine: &Engine, channels: u32) -> Vec<(Ignition, Need)> {
    let need = |mode| Some((mode, Need::ignition(engine, mode).ok()?));
    Ignition::ALL
        .into_iter()
        .filter_map(need)
        .filter(|(_, need)| need.channels <= channels)
        .collect()
}
