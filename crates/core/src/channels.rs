//! Which channel acts on which cylinder, as planned and as wired, and what cures the difference.

mod cure;
mod effect;
mod layout;
pub mod light;
mod need;
mod probing;
mod slips;
pub mod strip;
mod tapped;
mod wired;

pub use cure::{Cure, Move, cures};
pub use effect::{Effect, Stroke};
pub use layout::{Layout, Slot, UnfitLayout};
pub use need::{Need, within};
pub use probing::{Fired, Standing, Taps, completed, standing};
pub use slips::{Likely, Slip, usual};
pub use tapped::{NOTHING, tapped, words_of};
pub(crate) use wired::error_steps;
pub use wired::{ChannelAction, Check, Reached, Wired};

/// How the coils are fired.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ignition {
    /// A coil for each cylinder, each fired once a cycle.
    Sequential,
    /// A coil for each cylinder, each fired every turn: the second spark falls into its own overlap.
    EveryTurn,
    /// A coil for each cylinder, companions on one channel.
    PairedSingle,
    /// A double-ended coil for each companion pair.
    PairedDouble,
    /// One coil, and a distributor that hands its sparks round.
    Distributor,
}

impl Ignition {
    /// All of them, the one that can do most first.
    pub const ALL: [Self; 5] = [
        Self::Sequential,
        Self::EveryTurn,
        Self::PairedSingle,
        Self::PairedDouble,
        Self::Distributor,
    ];

    /// Whether two companions share a channel.
    pub const fn is_paired(self) -> bool {
        matches!(self, Self::PairedSingle | Self::PairedDouble)
    }
}

/// How the injectors are fired.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Injection {
    /// Each once a cycle, in sequence.
    EachOnce,
    /// Companion pairs, each pair every turn.
    Companions,
    /// Bank by bank.
    ByBank,
    /// All at once.
    Together,
}

impl Injection {
    /// All of them, the one that can do most first.
    pub const ALL: [Self; 4] = [Self::EachOnce, Self::Companions, Self::ByBank, Self::Together];
}

/// How channels are numbered. Both habits are in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Habit {
    /// Channel k goes to cylinder k.
    ByCylinder,
    /// Channel k goes to the k-th cylinder of the firing order.
    ByOrder,
}

/// Which of the plugs of a chamber.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlugPosition {
    /// The only one.
    Only,
    /// The leading plug of a rotor.
    Leading,
    /// The trailing plug of a rotor.
    Trailing,
}

/// What a channel acts on: the plug or the injector of a cylinder (or rotor).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Target {
    /// Which plug.
    pub position: PlugPosition,
    /// The cylinder, or the rotor, from 1.
    pub cylinder: u32,
}

impl Target {
    /// The only plug, or the injector, of a cylinder.
    pub const fn only(cylinder: u32) -> Self {
        Self { position: PlugPosition::Only, cylinder }
    }
}

impl std::fmt::Display for Target {
    /// As the fitter writes it: `3`, or `2T` for the trailing plug of rotor 2.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let letter = match self.position {
            PlugPosition::Only => "",
            PlugPosition::Leading => "L",
            PlugPosition::Trailing => "T",
        };
        write!(f, "{}{letter}", self.cylinder)
    }
}

#[cfg(test)]
mod tests;
