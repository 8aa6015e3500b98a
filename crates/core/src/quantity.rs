//! Quantities that carry their dimension in the type, and the texts people type for them.
//!
//! A resistance can't be passed for an inductance:
//!
//! ```compile_fail
//! use quietpin_core::quantity::{Inductance, Resistance};
//! fn needs_inductance(_: Inductance) {}
//! needs_inductance(Resistance::new::<uom::si::electrical_resistance::ohm>(2.4));
//! ```

mod angle;
mod band;
mod dimension;
mod measure;
mod read;
mod show;

pub use angle::CrankAngle;
pub use band::{Band, Holds, Span};
pub use dimension::{Dimension, Unit};
pub use measure::Measure;
pub(crate) use read::read_span_within;
pub use read::{Misread, read, read_band, read_span};
pub use show::{Value, number};

pub use uom::si::f64::{
    AngularVelocity as RotationalSpeed, Area, Capacitance, ElectricCharge as Charge,
    ElectricCurrent as Current, ElectricPotential as Voltage, ElectricalResistance as Resistance,
    Energy, Frequency, Inductance, InformationRate as BitRate, Length, MassDensity as Density,
    MassRate as MassFlow, Power, Pressure, Ratio, TemperatureInterval,
    ThermodynamicTemperature as Temperature, Time, VolumeRate,
};
use uom::typenum::{N2, P2, Z0};

/// Mass of fuel burnt for the work done.
pub type SpecificConsumption =
    uom::si::Quantity<uom::si::ISQ<N2, Z0, P2, Z0, Z0, Z0, Z0>, uom::si::SI<f64>, f64>;

/// Volts.
pub fn volts(v: f64) -> Voltage {
    Measure::from_base(v)
}

/// Amperes.
pub fn amperes(v: f64) -> Current {
    Measure::from_base(v)
}

/// Ohms.
pub fn ohms(v: f64) -> Resistance {
    Measure::from_base(v)
}

/// Henries.
pub fn henries(v: f64) -> Inductance {
    Measure::from_base(v)
}

/// Seconds.
pub fn seconds(v: f64) -> Time {
    Measure::from_base(v)
}

/// Metres.
pub fn metres(v: f64) -> Length {
    Measure::from_base(v)
}

/// Hertz.
pub fn hertz(v: f64) -> Frequency {
    Measure::from_base(v)
}

/// Bits per second.
pub fn bits_per_second(v: f64) -> BitRate {
    Measure::from_base(v)
}

/// Ampere-hours.
pub fn ampere_hours(v: f64) -> Charge {
    Measure::from_base(v)
}

/// Joules.
pub fn joules(v: f64) -> Energy {
    Measure::from_base(v)
}

/// Watts.
pub fn watts(v: f64) -> Power {
    Measure::from_base(v)
}

/// Degrees Celsius.
pub fn celsius(v: f64) -> Temperature {
    Measure::from_base(v)
}

/// Revolutions per minute.
pub fn rpm(v: f64) -> RotationalSpeed {
    Measure::from_base(v)
}

/// A share of one (0.05 is five percent).
pub fn share(v: f64) -> Ratio {
    Measure::from_base(v)
}
