//! One key state at one corner, solved.

use super::{
    KeyState, Point, Pulsing, Surroundings, Wiring,
    build::{Build, Room},
    pulse,
};
use crate::quantity::{Current, Measure, Resistance, Voltage, amperes, volts};

/// A part that hangs on the pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PinPart {
    /// The load with this number.
    Load(usize),
    /// The switch to the supply.
    UpperSwitch,
    /// The switch to ground.
    LowerSwitch,
    /// The body diode to the supply.
    UpperDiode,
    /// The body diode from ground.
    LowerDiode,
    /// The pull-up.
    PullUp,
    /// The pull-down.
    PullDown,
    /// What the open upper switch lets pass.
    UpperLeak,
    /// What the open lower switch lets pass.
    LowerLeak,
    /// What lies across the winding of the load with this number.
    Suppressor(usize),
    /// A load that hangs on another output with its own end, or what lies across that.
    Beyond,
    /// The meter.
    Meter,
}

/// A part that carries current, as seen from the pin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PinBranch {
    /// The part.
    pub part: PinPart,
    /// The voltage behind its resistance: of the node there, a conducting diode's own drop counted in.
    pub behind: Voltage,
    /// Its resistance.
    pub resistance: Resistance,
    /// The current from the pin into it.
    pub current: Current,
}

/// A load in a solved network.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadFlow {
    /// Pin less far end.
    pub voltage: Voltage,
    /// From the pin to the far end.
    pub current: Current,
    /// Its far end against ground; nothing where that floats.
    pub far: Option<Voltage>,
    /// Its resistance there.
    pub resistance: Resistance,
    /// What it drops before it conducts, with the sign of its current; nought for most.
    pub forward: Voltage,
}

/// A solved key state.
#[derive(Clone, Debug, PartialEq)]
pub struct Operating {
    /// The pin against ground; nothing where it floats.
    pub pin: Option<Voltage>,
    /// The controller's supply against ground; nothing where it floats.
    pub rail: Option<Voltage>,
    /// Every load, as numbered in the wiring.
    pub loads: Vec<LoadFlow>,
    /// What hangs on the pin.
    pub branches: Vec<PinBranch>,
    /// Current out of the battery.
    pub from_battery: Current,
    /// What is cut off from the battery.
    pub dead: Vec<DeadFlow>,
    /// Current pushed from outside into the controller's live 5 V or 3.3 V, which no regulator takes back.
    pub into_logic_rail: Current,
    /// How the load that is asked about is pulsed; then everything above is a mean.
    pub pulsing: Option<Pulsing>,
}

/// What is cut off from the battery.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dead {
    /// The controller's supply.
    Supply,
    /// The controller's 5 V or 3.3 V.
    FiveVolt,
    /// The ignition feed (15).
    Ignition,
    /// The contact of the relay (87).
    Relay,
    /// The load's own feed, its fuse pulled.
    Feed,
    /// The controller's ground, cut off from the car's: what hangs on it hangs, through the controller's own
    /// consumption, on its supply.
    Ground,
}

/// A part of the car that is cut off from the battery, and what flows into it all the same.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeadFlow {
    /// Which.
    pub dead: Dead,
    /// Its voltage against ground.
    pub voltage: Voltage,
    /// The resistance of everything else that hangs on it, to ground.
    pub resistance: Resistance,
    /// The current through that.
    pub current: Current,
}

impl Operating {
    /// The larger of the currents in the two switches.
    pub fn switch_current(&self) -> Current {
        let switches = self
            .branches
            .iter()
            .filter(|branch| matches!(branch.part, PinPart::UpperSwitch | PinPart::LowerSwitch));
        amperes(switches.map(|branch| branch.current.base().abs()).fold(0.0, f64::max))
    }

    /// Current into the controller while that is cut off.
    pub fn into_rail(&self) -> Current {
        self.into(|dead| matches!(dead, Dead::Supply | Dead::FiveVolt))
    }

    /// The highest voltage to which the controller is lifted while it is cut off.
    pub fn lifted(&self) -> Voltage {
        let of_controller =
            self.dead.iter().filter(|it| matches!(it.dead, Dead::Supply | Dead::FiveVolt));
        volts(of_controller.map(|it| it.voltage.base()).fold(0.0, f64::max))
    }

    /// Current into the feed of a load while that is cut off.
    pub fn into_feed(&self) -> Current {
        self.into(|dead| matches!(dead, Dead::Ignition | Dead::Relay | Dead::Feed))
    }

    /// Whether the feed of a load is cut off from the battery.
    pub(super) fn has_dead_feed(&self) -> bool {
        self.dead.iter().any(|it| matches!(it.dead, Dead::Ignition | Dead::Relay | Dead::Feed))
    }

    /// The highest voltage to which the feed of a load is lifted while that is cut off.
    pub fn feed_lifted(&self) -> Voltage {
        let feeds = self
            .dead
            .iter()
            .filter(|it| matches!(it.dead, Dead::Ignition | Dead::Relay | Dead::Feed));
        volts(feeds.map(|it| it.voltage.base()).fold(0.0, f64::max))
    }

    fn into(&self, counts: impl Fn(Dead) -> bool) -> Current {
        amperes(self.dead.iter().filter(|it| counts(it.dead)).map(|it| it.current.base()).sum())
    }
}

/// Solves a key state at a corner; nothing where a value is outside what a circuit can have.
pub fn operate(
    wiring: &Wiring,
    state: KeyState,
    point: &Point,
    around: &Surroundings,
) -> Option<Operating> {
    Solver::new(wiring, around).operate(state, point)
}

/// Solves an output at one corner after the other.
#[derive(Debug)]
pub struct Solver<'a> {
    pub(super) wiring: &'a Wiring,
    pub(super) around: &'a Surroundings,
    room: Room,
}

impl<'a> Solver<'a> {
    /// An output with everything that hangs on it, and what it stands in.
    pub fn new(wiring: &'a Wiring, around: &'a Surroundings) -> Self {
        Self { wiring, around, room: Room::default() }
    }

    /// Solves a key state at a corner; nothing where a value is outside what a circuit can have.
    pub fn operate(&mut self, state: KeyState, point: &Point) -> Option<Operating> {
        if state == KeyState::Pulsed {
            return pulse::operate(self, point);
        }
        Build::new(&mut self.room, self.wiring, state, point, self.around).with_loads().solve()
    }

    /// The pin by itself, all loads unplugged, with a meter from it to ground.
    pub(super) fn operate_bare(&mut self, state: KeyState, point: &Point) -> Option<Operating> {
        Build::new(&mut self.room, self.wiring, state, point, self.around).with_meter().solve()
    }
}
