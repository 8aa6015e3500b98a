//! A sensor of three wires that gives a share of its supply.

use crate::{
    quantity::{Band, Measure, Pressure, Voltage, volts},
    working::{Formula, Step, step},
};

const LINE: Formula = Formula {
    symbols: "U = U_supply / 5 V × (U_low + (p − p_low) / (p_high − p_low) × (U_high − U_low))",
    source: "a straight line between the ends of its data",
};

/// The supply that its data are for.
const DATA_V: f64 = 5.0;

/// A pressure sensor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ratiometric {
    /// The pressures at both ends of its range; apart.
    pub pressure: (Pressure, Pressure),
    /// What it gives there on 5 V; apart.
    pub voltage: (Voltage, Voltage),
    /// By what share of the span it may be off.
    pub tolerance: f64,
}

impl Ratiometric {
    fn at(&self, pressure: f64) -> f64 {
        let ((p0, p1), (v0, v1)) = (self.pressure, self.voltage);
        let share = (pressure - p0.base()) / (p1.base() - p0.base());
        v0.base() + share * (v1.base() - v0.base())
    }

    /// What it gives at a pressure on such a supply, over every tolerance.
    pub fn voltage(&self, pressure: &Band<Pressure>, supply: &Band<Voltage>) -> Band<Voltage> {
        let off = self.tolerance * (self.voltage.1 - self.voltage.0).base().abs();
        let one =
            |supply: Voltage, pressure: Pressure| supply.base() / DATA_V * self.at(pressure.base());
        let ends = [
            one(supply.low, pressure.low),
            one(supply.low, pressure.high),
            one(supply.high, pressure.low),
            one(supply.high, pressure.high),
        ];
        let low = ends.into_iter().fold(f64::INFINITY, f64::min);
        let high = ends.into_iter().fold(f64::NEG_INFINITY, f64::max);
        let nominal = volts(one(supply.nominal, pressure.nominal));
        Band { low: volts((low - off).max(0.0)), nominal, high: volts(high + off) }
    }

    /// The pressure at which it gives a voltage on 5 V.
    pub fn pressure(&self, at: Voltage) -> Pressure {
        let ((p0, p1), (v0, v1)) = (self.pressure, self.voltage);
        let share = (at - v0).base() / (v1 - v0).base();
        Pressure::from_base(p0.base() + share * (p1 - p0).base())
    }

    /// How the voltage as meant was found.
    pub fn working(&self, pressure: Pressure, supply: Voltage) -> Step {
        let values = [
            ("U_supply", supply.show()),
            ("U_low", self.voltage.0.show()),
            ("U_high", self.voltage.1.show()),
            ("p_low", self.pressure.0.show()),
            ("p_high", self.pressure.1.show()),
            ("p", pressure.show()),
        ];
        step(&LINE, &values, volts(supply.base() / DATA_V * self.at(pressure.base())).show())
    }
}
