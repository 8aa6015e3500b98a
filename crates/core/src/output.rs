//! How an output rests with what hangs on it: every key state solved as a circuit, at every corner.
//!
//! # Model
//!
//! - A *stage* has one switch to ground (open-drain), one to the controller's supply (high-side), or both
//!   (half-bridge; logic, where the upper one goes to 5 V). A closed switch is its on-resistance; an open one that leaks
//!   is the resistance that would let as much pass at [`LEAKAGE_AT_V`].
//! - A part that *conducts one way* (a light-emitting diode with its resistor) passes nothing up to its forward voltage
//!   and rises by its resistance beyond.
//! - Each switch is a field-effect transistor and brings its body diode along: the lower one from ground to the pin,
//!   the upper one from the pin to the controller's supply. A diode passes nothing up to [`DIODE_FORWARD_V`] and rises
//!   by [`DIODE_ON_OHM`] beyond: common practice, no source. The exponential law, which [`crate::circuit`] knows too,
//!   differs by some tenths of a volt at most, far less than what the other assumptions leave open.
//! - *Key off*: the controller's supply, the ignition feed (15) and the contact of a relay (87) are cut off from the
//!   battery, and hang on ground through whatever else they feed ([`Surroundings`]). *Key on*: the supply and 15 are
//!   the battery; the contact may be open or closed until the output is on, and both are solved.
//! - Three *faults*, one at a time, key on: the fuse of the load's feed pulled, the output off; the controller's ground
//!   lost, so that its own consumption lifts what was its ground; its supply lost, the feed of the load staying. In the
//!   last two every stage is open.
//! - *Starting* (0.1 to 1 s after key-on, common practice, no source): every stage is open.
//! - The battery is an ideal source; the wires have no resistance. Each output is solved with all its loads, and with
//!   every output that hangs together with it through a load between them (a bridge pair, and what hangs on that).
//! - *On*, for a load between two outputs, is what makes it act: the other one at rest where that is the opposite rail
//!   (two half-bridges), on as well where it is not (a high-side output and an open-drain one). *Another output on*
//!   is what else can be: each other one alone, all that go up, all that go down, the load's own without the other.
//!
//! # Why the corners suffice
//!
//! Seen from one load the rest of the circuit is a pair of terminals whose current never rises with its voltage, so
//! the load's current falls and its voltage rises with its resistance. Supply, the resistors at the pin and those of
//! the dead rails each push that current one way throughout. So the extremes lie at the ends, and every combination of
//! ends is solved; a test throws random points inside. The heat of a pulsed load's clamp is not so: where between the
//! ends it is greatest is sought.

mod alternative;
mod build;
mod clean;
mod corner;
pub mod cost;
mod drain;
mod hottest;
mod judge;
mod kick;
mod load;
mod meter;
mod operate;
mod probe;
mod pulse;
mod rest;
mod sequence;
mod stage;
mod starting;
mod trouble;
mod wiring;

pub use alternative::{Alternative, Change, Prefer, Spare, alternatives};
pub use clean::{may_connect, suits};
pub use corner::{Contact, End, Phase, Point, SupplyCorner, Surroundings};
pub use drain::{Drain, drain, is_told_of_its_load};
pub use judge::{Found, Judgement, judge};
pub use kick::{Catcher, Kick, Path, kick};
pub use load::{FarEnd, Load, LoadKind, LoadState, Partner, Pulse, Suppression};
pub use meter::{METER_OHM, MeterReading, reading};
pub use operate::{Dead, DeadFlow, LoadFlow, Operating, PinBranch, PinPart, Solver, operate};
pub use probe::{Probe, probe};
pub use pulse::{Following, Pulsing};
pub use rest::{Rest, SolvedCorner, StateRest, rest};
pub use sequence::{DayStep, Position, day};
pub use stage::{Drive, KeyState, OnLevel, Output, PullRail, Stage};
pub use starting::{Resting, while_unasked};
pub use trouble::{Harm, Stance, Trouble};
pub use wiring::{Commanded, Pin, Wiring};

/// What a body diode drops before it conducts, in volts: common practice, no source.
pub const DIODE_FORWARD_V: f64 = 0.7;

/// The voltage at which data sheets state the leakage of an open switch, in volts: common practice, no source.
pub const LEAKAGE_AT_V: f64 = 12.0;

/// By how much a body diode's drop rises with its current, in ohms: common practice, no source.
pub const DIODE_ON_OHM: f64 = 0.05;
