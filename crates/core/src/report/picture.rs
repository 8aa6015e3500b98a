//! What the pictures are drawn from: numbers, no geometry.

use serde::Serialize;

use crate::{message::Message, quantity::Value};

/// A picture.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Picture {
    /// The engine's cycle with what each channel does in it.
    Cycle(Cycle),
    /// The engine's cycle with how long each channel acts in it.
    Strip(CycleStrip),
    /// An output and its load in every key state.
    Circuit(Circuit),
    /// Speed against time, with the relay.
    Timeline(Timeline),
    /// Currents and voltages against time.
    Traces(Traces),
}

/// The engine's cycle.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Cycle {
    /// What the picture shows, for those who can't see it.
    pub caption: Message,
    /// Length of the cycle in degrees.
    pub cycle_deg: f64,
    /// The firing top dead centres, in order.
    pub cylinders: Vec<CycleCylinder>,
    /// The events.
    pub events: Vec<CycleEvent>,
}

/// A cylinder in the cycle.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct CycleCylinder {
    /// Its number.
    pub cylinder: u32,
    /// Its firing top dead centre in degrees, from the first to fire.
    pub angle_deg: f64,
}

/// A spark, or the start of an injection.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct CycleEvent {
    /// When, in degrees.
    pub angle_deg: f64,
    /// The channel that acts.
    pub channel: u32,
    /// The cylinder it reaches.
    pub cylinder: u32,
    /// What comes of it.
    pub outcome: Outcome,
}

/// The engine's cycle at a speed.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct CycleStrip {
    /// What the picture shows, for those who can't see it.
    pub caption: Message,
    /// Length of the cycle in degrees.
    pub cycle_deg: f64,
    /// The firing top dead centres, in order.
    pub cylinders: Vec<CycleCylinder>,
    /// What the channels do.
    pub windows: Vec<StripWindow>,
}

/// How long a channel acts on a cylinder.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct StripWindow {
    /// `dwell` of a coil, `injection`, or `second` for that of a second set.
    pub kind: &'static str,
    /// The channel that acts.
    pub channel: u32,
    /// The cylinder that it reaches.
    pub cylinder: u32,
    /// Where it begins, in degrees: below nought where that is in the cycle before.
    pub from_deg: f64,
    /// Where it ends, in degrees of the cycle.
    pub to_deg: f64,
    /// What comes of the spark at its end.
    pub outcome: Outcome,
}

/// What comes of a spark in a cylinder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Outcome {
    /// At its own top dead centre: it fires.
    Fires,
    /// In the overlap, 360 degrees away: no effect.
    Wasted,
    /// Anywhere else.
    Misplaced,
}

/// An output, its load and the key states.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Circuit {
    /// What the picture shows, for those who can't see it.
    pub caption: Message,
    /// The stage of the output: `open-drain`, `high-side`, `half-bridge` or `logic`.
    pub stage: &'static str,
    /// Where the load's other end goes: `ground`, `battery`, `ignition`, `relay`, `5v` or `output`.
    pub far_end: &'static str,
    /// The kind of the load.
    pub load: &'static str,
    /// Whether the plus is at the pin while the load acts, which is drawn below its other end.
    pub is_driven_up: bool,
    /// Whether there is a pull-up, and the rail it goes to.
    pub pull_up: Option<&'static str>,
    /// Whether there is a pull-down.
    pub pull_down: bool,
    /// What lies across the load's winding: `diode-up` and `diode-down` (the way it conducts as drawn), or `resistor`.
    pub suppressor: Option<&'static str>,
    /// One for each key state, in the order in which the car meets them.
    pub states: Vec<CircuitState>,
}

/// The circuit in one key state.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct CircuitState {
    /// `key-off`, `starting`, `off`, `cranking`, `on`, `pulsed` (everything a mean), `other-on`, `outlived`; then the faults
    /// `feed-lost`, `ground-lost` and `supply-lost`.
    pub state: &'static str,
    /// The switch that is closed: `upper`, `lower`, or `open` where none is.
    pub drive: &'static str,
    /// The state in words.
    pub name: Message,
    /// What the load does, in words.
    pub summary: Message,
    /// Whether that is what the fitter wants there.
    pub tone: super::Tone,
    /// The pin against ground; nothing where it floats.
    pub pin: Option<Value>,
    /// The load's far end against ground.
    pub far: Option<Value>,
    /// The controller's supply rail against ground.
    pub rail: Option<Value>,
    /// The branches that carry current, by the name of the part: `load`, `upper-switch`, `lower-switch`,
    /// `upper-diode`, `lower-diode`, `pull-up`, `pull-down`, `suppressor`, `feed` (from the battery to the load's far end), and
    /// `rail-consumers` and `feed-consumers` (through whatever else hangs on a dead supply or feed, to ground);
    /// positive from top to bottom of the drawing, for the load from the pin to its far end. In amperes.
    pub currents: Vec<BranchCurrent>,
}

/// The current in a branch.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(rename = "Branch"))]
pub struct BranchCurrent {
    /// The part.
    pub part: &'static str,
    /// The current, signed.
    pub current: Value,
}

/// Speed against time.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Timeline {
    /// What the picture shows, for those who can't see it.
    pub caption: Message,
    /// True speed: seconds and rpm.
    pub speed: Vec<(f64, f64)>,
    /// Speed as the controller measures it: seconds and rpm.
    pub measured: Vec<(f64, f64)>,
    /// Pull-in threshold in rpm.
    pub threshold_rpm: f64,
    /// Release threshold in rpm.
    pub release_rpm: f64,
    /// When the relay's contact is closed: from and to, in seconds.
    pub closed: Vec<(f64, f64)>,
    /// Moments with a name, in seconds.
    pub marks: Vec<(f64, Message)>,
}

/// Currents and voltages against time, in panels below each other over one axis of time.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Traces {
    /// What the picture shows, for those who can't see it.
    pub caption: Message,
    /// From and to, in seconds.
    pub span: (f64, f64),
    /// The panels.
    pub panels: Vec<Panel>,
}

/// One panel of traces.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Panel {
    /// The unit of its axis: `A` or `V`.
    pub unit: &'static str,
    /// The curves, at most three: each looks different without colour.
    pub curves: Vec<Curve>,
    /// Levels with a name.
    pub levels: Vec<Level>,
}

/// A curve.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Curve {
    /// What it is.
    pub name: Message,
    /// Seconds, and what is measured in the unit of the panel.
    pub points: Vec<(f64, f64)>,
}

/// A level.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Level {
    /// What it is.
    pub name: Message,
    /// Where it lies, in the unit of the panel.
    pub at: f64,
}
