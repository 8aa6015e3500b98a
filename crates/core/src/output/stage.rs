//! The output itself: its switches, its resistors, and what it does in each key state.

use super::{FarEnd, Load};
use crate::quantity::{Band, Current, Resistance, ohms};

/// Which switches an output has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// One switch, to ground.
    OpenDrain,
    /// One switch, to the controller's supply.
    HighSide,
    /// Both.
    HalfBridge,
}

/// Which way a half-bridge drives the pin when it is on; it drives the other way when it is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnLevel {
    /// A ground trigger: on is ground, off is battery.
    Ground,
    /// A power trigger: on is battery, off is ground.
    Battery,
}

/// Where a pull-up goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PullRail {
    /// Permanent battery (30).
    Battery,
    /// The controller's own supply, dead with the key off.
    Controller,
    /// The controller's 5 V, dead with the key off.
    FiveVolt,
}

/// The states of the car that a load lives through, in the order in which it meets them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum KeyState {
    /// Battery connected, key off.
    KeyOff,
    /// Key on, the controller still starting: its stages are open.
    Starting,
    /// Controller up, the output commanded off: the rest state.
    Off,
    /// The output commanded on.
    On,
    /// A fault: key on, output off, and the fuse of the load's feed pulled.
    FeedLost,
    /// A fault: key on, and the controller's ground lost; its own consumption lifts what was its ground.
    GroundLost,
    /// A fault: key on, and the controller's supply lost, while the feed of the load stays.
    SupplyLost,
}

/// What a stage does with its pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drive {
    /// Both switches open.
    Open,
    /// The lower switch closed.
    ToGround,
    /// The upper switch closed.
    ToSupply,
}

/// One output of the controller.
#[derive(Clone, Debug, PartialEq)]
pub struct Output {
    /// Its switches.
    pub stage: Stage,
    /// Which level counts as on; `None` where it is not known. Only a half-bridge has the choice.
    pub on_level: Option<OnLevel>,
    /// Resistance of a closed switch.
    pub on_resistance: Band<Resistance>,
    /// Continuous current it may carry, where known.
    pub current_limit: Option<Band<Current>>,
    /// Resistor to a rail, where there is one.
    pub pull_up: Option<(Band<Resistance>, PullRail)>,
    /// Resistor to ground, where there is one.
    pub pull_down: Option<Band<Resistance>>,
}

/// An output whose on-level is settled, and everything that hangs on it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// The output.
    pub output: Output,
    /// The level that counts as on.
    pub level: OnLevel,
    /// The loads, solved together.
    pub loads: Vec<Load>,
}

impl Stage {
    /// Every stage.
    pub const ALL: [Self; 3] = [Self::OpenDrain, Self::HighSide, Self::HalfBridge];

    /// Whether it can pull the pin to ground.
    pub fn has_lower(self) -> bool {
        self != Self::HighSide
    }

    /// Whether it can pull the pin to the supply.
    pub fn has_upper(self) -> bool {
        self != Self::OpenDrain
    }
}

impl KeyState {
    /// Every state, in order.
    pub const ALL: [Self; 7] = [
        Self::KeyOff,
        Self::Starting,
        Self::Off,
        Self::On,
        Self::FeedLost,
        Self::GroundLost,
        Self::SupplyLost,
    ];

    /// Whether something has to fail first.
    pub fn is_fault(self) -> bool {
        self > Self::On
    }

    /// Whether the controller's supply is cut off from the battery.
    pub(super) fn is_unfed(self) -> bool {
        matches!(self, Self::KeyOff | Self::SupplyLost)
    }

    /// Whether a load can meet it: without a feed there is no fuse to pull.
    pub(super) fn concerns(self, load: &Load) -> bool {
        self != Self::FeedLost || load.far_end != FarEnd::Ground
    }
}

impl OnLevel {
    /// Both.
    pub const BOTH: [Self; 2] = [Self::Ground, Self::Battery];

    /// The other one.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Ground => Self::Battery,
            Self::Battery => Self::Ground,
        }
    }
}

impl Output {
    /// An output of this stage without any resistor, its limit not known: 0.1 ohm, common practice, no source.
    pub fn plain(stage: Stage) -> Self {
        Self {
            stage,
            on_level: None,
            on_resistance: Band::exact(ohms(0.1)),
            current_limit: None,
            pull_up: None,
            pull_down: None,
        }
    }

    /// The on-levels that are possible: two for a half-bridge of which it is not known.
    pub fn levels(&self) -> &'static [OnLevel] {
        match (self.stage, self.on_level) {
            (Stage::OpenDrain, _) | (Stage::HalfBridge, Some(OnLevel::Ground)) => {
                &[OnLevel::Ground]
            }
            (Stage::HighSide, _) | (Stage::HalfBridge, Some(OnLevel::Battery)) => {
                &[OnLevel::Battery]
            }
            (Stage::HalfBridge, None) => &OnLevel::BOTH,
        }
    }
}

impl Wiring {
    /// Whether two states are the same circuit: an output that is off is as open as one that starts.
    pub(super) fn is_the_same(&self, one: KeyState, other: KeyState) -> bool {
        let is_up = |state| matches!(state, KeyState::Starting | KeyState::Off);
        is_up(one) && is_up(other) && self.drive(one) == self.drive(other)
    }

    /// What the stage does in a key state.
    pub fn drive(&self, state: KeyState) -> Drive {
        let toward = |level| match level {
            OnLevel::Ground => Drive::ToGround,
            OnLevel::Battery => Drive::ToSupply,
        };
        match (state, self.output.stage) {
            (
                KeyState::KeyOff | KeyState::Starting | KeyState::GroundLost | KeyState::SupplyLost,
                _,
            )
            | (KeyState::Off | KeyState::FeedLost, Stage::OpenDrain | Stage::HighSide) => {
                Drive::Open
            }
            (KeyState::On, _) => toward(self.level),
            (KeyState::Off | KeyState::FeedLost, Stage::HalfBridge) => toward(self.level.other()),
        }
    }
}
