//! The output itself: its switches, its resistors, and what it does in each key state.

use super::{End, FarEnd, Load, SupplyCorner, Wiring};
use crate::quantity::{
    Band, Current, Energy, Frequency, Measure, Resistance, Temperature, Voltage, ohms,
};

/// By how much the on-resistance rises with temperature, a kelvin: common practice, no source.
const ON_RESISTANCE_PER_K: f64 = 0.006;
/// The temperature at which it is taken as typed. Data sheets state it at 25 °C: the five kelvin are nothing against its
/// spread, and a fitter finds the number that was typed.
const ON_RESISTANCE_AT_C: f64 = 20.0;
/// Where the straight line would leave what it stands for.
const LEAST_FACTOR: f64 = 0.5;

/// Which switches an output has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// One switch, to ground.
    OpenDrain,
    /// One switch, to the controller's supply.
    HighSide,
    /// Both.
    HalfBridge,
    /// Both, the upper one to the controller's 5 V: a logic output.
    Logic,
}

/// Which way a half-bridge drives the pin when it is on; it drives the other way when it is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnLevel {
    /// It switches to ground when on, to battery when off.
    Ground,
    /// It switches to battery when on (a logic output to 5 V), to ground when off.
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
    /// The controller's 3.3 V, dead with the key off.
    ThreeVolt,
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
    /// The same while the starter turns.
    Cranking,
    /// The output commanded on, and the one at the load's other end set so that the load acts.
    On,
    /// The output switched on and off without end, at the load's frequency and duty.
    Pulsed,
    /// Another output on that hangs together with this one through a load, the load that is asked about not asked to act.
    OtherOn,
    /// The key turned off, the feeds that it switches dead, while the controller holds its own supply on and drives its
    /// outputs as before.
    Outlived,
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
    /// Which level counts as on; `None` where it is not known. Only what drives both ways has the choice.
    pub on_level: Option<OnLevel>,
    /// Resistance of a closed switch.
    pub on_resistance: Band<Resistance>,
    /// Continuous current it may carry, where known.
    pub current_limit: Option<Band<Current>>,
    /// Resistor to a rail, where there is one.
    pub pull_up: Option<(Band<Resistance>, PullRail)>,
    /// Resistor to ground, where there is one.
    pub pull_down: Option<Band<Resistance>>,
    /// What an open switch lets pass at [`LEAKAGE_AT_V`](super::LEAKAGE_AT_V), where it is more than nothing.
    pub leakage: Option<Band<Current>>,
    /// The voltage across an open switch at which its own clamp catches the kick of a coil, where it has one.
    pub clamp: Option<Band<Voltage>>,
    /// What that clamp may take at each turn-off, where known.
    pub clamp_energy: Option<Band<Energy>>,
    /// The highest frequency at which it may be pulsed, where known.
    pub pulse_limit: Option<Band<Frequency>>,
    /// Whether the controller that it belongs to holds its own supply on when the key is turned off, where known.
    pub outlives_key: Option<bool>,
}

impl Stage {
    /// Every stage.
    pub const ALL: [Self; 4] = [Self::OpenDrain, Self::HighSide, Self::HalfBridge, Self::Logic];

    /// Whether it can pull the pin to ground.
    pub fn has_lower(self) -> bool {
        self != Self::HighSide
    }

    /// Whether it can pull the pin to the supply, or to 5 V.
    pub fn has_upper(self) -> bool {
        self != Self::OpenDrain
    }

    /// Whether it drives the pin both ways, so that a setting says which of them is on.
    pub fn is_two_way(self) -> bool {
        matches!(self, Self::HalfBridge | Self::Logic)
    }

    /// Resistance of a closed switch where it is not known: common practice, no source.
    pub fn usual_on_resistance(self) -> Band<Resistance> {
        match self {
            Self::Logic => Band { low: ohms(20.0), nominal: ohms(50.0), high: ohms(200.0) },
            _ => Band::exact(ohms(0.1)),
        }
    }
}

impl KeyState {
    /// Every state, in order.
    pub const ALL: [Self; 11] = [
        Self::KeyOff,
        Self::Starting,
        Self::Off,
        Self::Cranking,
        Self::On,
        Self::Pulsed,
        Self::OtherOn,
        Self::Outlived,
        Self::FeedLost,
        Self::GroundLost,
        Self::SupplyLost,
    ];

    /// Whether something has to fail first.
    pub fn is_fault(self) -> bool {
        self >= Self::FeedLost
    }

    /// Whether the controller's supply is cut off from the battery.
    pub(super) fn is_unfed(self) -> bool {
        matches!(self, Self::KeyOff | Self::SupplyLost)
    }

    /// Whether the output is asked to act.
    pub fn is_asked(self) -> bool {
        matches!(self, Self::Cranking | Self::On | Self::Pulsed)
    }

    /// Whether it is met at a supply and a temperature.
    pub(super) fn meets(self, at: &SupplyCorner) -> bool {
        match self {
            Self::KeyOff | Self::Outlived => !at.is_cranking && !at.is_charging,
            Self::On => !at.is_cranking,
            Self::Cranking => at.is_cranking,
            Self::Starting
            | Self::Off
            | Self::Pulsed
            | Self::OtherOn
            | Self::FeedLost
            | Self::GroundLost
            | Self::SupplyLost => true,
        }
    }

    /// Whether the feeds that the ignition switch gives are dead.
    pub(super) fn is_unkeyed(self) -> bool {
        matches!(self, Self::KeyOff | Self::Outlived)
    }

    /// Whether a load can meet it: without a feed there is no fuse to pull, not every load is pulsed, and few outputs hang
    /// together.
    pub(super) fn concerns(self, wiring: &Wiring, load: &Load) -> bool {
        match self {
            Self::FeedLost => {
                !matches!(load.far_end, FarEnd::Ground | FarEnd::FiveVolt | FarEnd::Output)
            }
            Self::Pulsed => wiring.pulse().is_some(),
            Self::OtherOn => !wiring.beyond.is_empty(),
            // it differs from the running engine by the feeds that are dead
            Self::Outlived => {
                let is_switched = wiring.goes_to(FarEnd::Ignition) || wiring.goes_to(FarEnd::Relay);
                is_switched && wiring.output.outlives_key != Some(false)
            }
            _ => true,
        }
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
    /// An output of this stage without any resistor, its limit not known.
    pub fn plain(stage: Stage) -> Self {
        Self {
            stage,
            on_level: None,
            on_resistance: stage.usual_on_resistance(),
            current_limit: None,
            pull_up: None,
            pull_down: None,
            leakage: None,
            clamp: None,
            clamp_energy: None,
            pulse_limit: None,
            outlives_key: None,
        }
    }

    /// Puts what is meant in place of every band that a circuit is solved with.
    pub(super) fn settle(&mut self) {
        self.on_resistance = Band::exact(self.on_resistance.nominal);
        if let Some((band, _)) = &mut self.pull_up {
            *band = Band::exact(band.nominal);
        }
        self.pull_down = self.pull_down.map(|band| Band::exact(band.nominal));
        self.leakage = self.leakage.map(|band| Band::exact(band.nominal));
    }

    /// Resistance of a closed switch at a temperature, `1 + 0.006/K (T - 20 °C)` of what its data sheet states: the
    /// usual curve of a field-effect transistor, common practice, no source.
    pub fn on_resistance_at(&self, end: End, temperature: Temperature) -> Resistance {
        let factor = 1.0 + ON_RESISTANCE_PER_K * (temperature.base() - ON_RESISTANCE_AT_C);
        end.of(&self.on_resistance) * factor.max(LEAST_FACTOR)
    }

    /// What the stage does in a key state, with this level as on.
    pub fn drive(&self, level: OnLevel, state: KeyState) -> Drive {
        let toward = |level| match level {
            OnLevel::Ground => Drive::ToGround,
            OnLevel::Battery => Drive::ToSupply,
        };
        match (state, self.stage) {
            (
                KeyState::KeyOff | KeyState::Starting | KeyState::GroundLost | KeyState::SupplyLost,
                _,
            )
            | (
                KeyState::Off | KeyState::OtherOn | KeyState::Outlived | KeyState::FeedLost,
                Stage::OpenDrain | Stage::HighSide,
            ) => Drive::Open,
            (KeyState::Cranking | KeyState::On | KeyState::Pulsed, _) => toward(level),
            (
                KeyState::Off | KeyState::OtherOn | KeyState::Outlived | KeyState::FeedLost,
                Stage::HalfBridge | Stage::Logic,
            ) => toward(level.other()),
        }
    }

    /// The on-levels that are possible: two for what drives both ways and of which it is not known.
    pub fn levels(&self) -> &'static [OnLevel] {
        match (self.stage, self.on_level) {
            (Stage::OpenDrain, _) | (Stage::HalfBridge | Stage::Logic, Some(OnLevel::Ground)) => {
                &[OnLevel::Ground]
            }
            (Stage::HighSide, _) | (Stage::HalfBridge | Stage::Logic, Some(OnLevel::Battery)) => {
                &[OnLevel::Battery]
            }
            (Stage::HalfBridge | Stage::Logic, None) => &OnLevel::BOTH,
        }
    }
}
