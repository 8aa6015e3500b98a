//! What hangs on an output: its resistance, and the voltages at which it acts and lets go.

use super::{End, Phase};
use crate::{
    quantity::{Band, Measure, Resistance, Temperature, Voltage, ohms, volts},
    tables::copper,
};

/// What kind of part a load is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The coil of a relay.
    RelayCoil,
    /// A solenoid valve.
    Solenoid,
    /// A motor with brushes.
    Motor,
    /// A lamp with a filament.
    Lamp,
    /// A heater, or any other plain resistance.
    Resistor,
}

/// Where the other end of a load goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FarEnd {
    /// Ground (31).
    Ground,
    /// Permanent battery (30).
    Battery,
    /// The ignition switch (15): dead with the key off.
    Ignition,
    /// The contact of a relay (87) that is fed from 30: open with the key off.
    Relay,
}

/// One load.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// What it is.
    pub kind: Kind,
    /// Where its other end goes.
    pub far_end: FarEnd,
    /// What a meter reads across it, cold and at rest, at 20 °C.
    pub resistance: Band<Resistance>,
    /// Voltage at which it acts with its winding at 20 °C: below `low` none does, from `high` on every one does.
    pub pull_in: Band<Voltage>,
    /// Voltage at which it lets go with its winding at 20 °C: below `low` every one has.
    pub drop_out: Band<Voltage>,
}

/// What a load does at a voltage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Effect {
    /// It lets go for certain.
    Released,
    /// Once in, it may stay in.
    MayHold,
    /// It acts, for all one can know.
    Energised,
}

/// A running filament against a cold one: common practice, no source.
const FILAMENT_RATIO: f64 = 10.0;
/// A running motor draws a fifth to an eighth of its stall current: common practice, no source.
const MOTOR_RATIO: f64 = 6.5;

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 5] =
        [Self::RelayCoil, Self::Solenoid, Self::Motor, Self::Lamp, Self::Resistor];

    /// Whether its resistance is that of a copper winding.
    pub fn is_copper(self) -> bool {
        matches!(self, Self::RelayCoil | Self::Solenoid | Self::Motor)
    }

    /// Resistance while it runs against the same as measured: the inrush is that much larger.
    pub fn running_ratio(self) -> f64 {
        match self {
            Self::Lamp => FILAMENT_RATIO,
            Self::Motor => MOTOR_RATIO,
            Self::RelayCoil | Self::Solenoid | Self::Resistor => 1.0,
        }
    }

    /// The resistance that is usual, measured at 20 °C.
    ///
    /// Relay coil: 75 to 90 ohm, data sheets of generic 12 V plug-in relays. The others: common practice, no source
    /// (a lamp of 5 to 21 W has a tenth of its running 29 to 7 ohm while cold).
    pub fn usual_resistance(self) -> Band<Resistance> {
        let (low, nominal, high) = match self {
            Self::RelayCoil => (75.0, 90.0, 90.0),
            Self::Solenoid => (10.0, 20.0, 40.0),
            Self::Motor => (0.5, 1.0, 2.0),
            Self::Lamp => (0.7, 1.2, 2.9),
            Self::Resistor => (3.0, 6.0, 12.0),
        };
        Band { low: ohms(low), nominal: ohms(nominal), high: ohms(high) }
    }

    /// Voltage at which a 12 V part acts, cold.
    ///
    /// Relay coil: 0.57 to 0.67 of nominal is what data sheets of generic 12 V relays promise at the latest. The
    /// others: common practice, no source (a valve moves, a motor turns, a filament is seen, a heater has a tenth to a
    /// half of its power).
    pub fn usual_pull_in(self) -> Band<Voltage> {
        let (low, high) = match self {
            Self::RelayCoil => (6.84, 8.04),
            Self::Solenoid => (5.0, 9.0),
            Self::Motor => (2.0, 5.0),
            Self::Lamp => (1.5, 8.0),
            Self::Resistor => (3.8, 8.5),
        };
        Band::between(volts(low), volts(high))
    }

    /// Voltage at which a 12 V part lets go, cold.
    ///
    /// Relay coil: 0.04 to 0.1 of nominal, as above: a relay of 90 ohm may stay in at 1.2 V. The others: common
    /// practice, no source.
    pub fn usual_drop_out(self) -> Band<Voltage> {
        let (low, high) = match self {
            Self::RelayCoil => (0.48, 1.2),
            Self::Solenoid => (0.6, 1.5),
            Self::Motor | Self::Lamp => (0.5, 1.0),
            Self::Resistor => (1.2, 2.0),
        };
        Band::between(volts(low), volts(high))
    }

    /// How far from 1 the winding's resistance is at a temperature: `1 + alpha (T - 20 °C)`.
    pub fn warmth(self, temperature: Temperature) -> f64 {
        if self.is_copper() { copper::factor(temperature) } else { 1.0 }
    }
}

impl Load {
    /// Its resistance at 20 °C at one end of its band.
    pub fn cold_resistance(&self, end: End) -> Resistance {
        end.of(&self.resistance)
    }

    /// Its resistance at a temperature, standing or running.
    pub fn resistance_at(&self, end: End, phase: Phase, temperature: Temperature) -> Resistance {
        let ratio = match phase {
            Phase::Standing => 1.0,
            Phase::Running => self.kind.running_ratio(),
        };
        self.cold_resistance(end) * (ratio * self.kind.warmth(temperature))
    }

    /// The voltage that would do the same to it with its winding at 20 °C.
    ///
    /// A winding acts by its current: a hot one needs more volts. Source: Ohm's law; so do data sheets of relays.
    pub fn cold_voltage(&self, voltage: Voltage, temperature: Temperature) -> Voltage {
        volts(voltage.base().abs() / self.kind.warmth(temperature))
    }

    /// What it does at a voltage, either way round.
    pub fn effect(&self, voltage: Voltage, temperature: Temperature) -> Effect {
        let cold = self.cold_voltage(voltage, temperature);
        if cold >= self.pull_in.low {
            Effect::Energised
        } else if cold >= self.drop_out.low {
            Effect::MayHold
        } else {
            Effect::Released
        }
    }

    /// Whether every part of its kind acts at a voltage.
    pub fn is_sure_to_act(&self, voltage: Voltage, temperature: Temperature) -> bool {
        self.cold_voltage(voltage, temperature) >= self.pull_in.high
    }

    /// The coil of a generic relay, for a relay put between.
    pub fn relay_coil(far_end: FarEnd) -> Self {
        let kind = Kind::RelayCoil;
        Self {
            kind,
            far_end,
            resistance: kind.usual_resistance(),
            pull_in: kind.usual_pull_in(),
            drop_out: kind.usual_drop_out(),
        }
    }
}

impl FarEnd {
    /// Every far end, in the order in which they are offered: switched feeds before permanent ones.
    pub const ALL: [Self; 4] = [Self::Ignition, Self::Relay, Self::Battery, Self::Ground];
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;

    #[track_caller]
    fn check(v: f64, t: f64, expected: Effect) {
        let relay = Load::relay_coil(FarEnd::Ground);
        assert_eq!(relay.effect(volts(v), celsius(t)), expected, "{v} V at {t} °C");
    }

    #[test]
    fn a_relay_acts_by_its_current_either_way_round() {
        check(7.0, 20.0, Effect::Energised);
        check(-7.0, 20.0, Effect::Energised);
        check(7.0, 100.0, Effect::MayHold);
        check(1.2, 20.0, Effect::MayHold);
        check(0.4, 20.0, Effect::Released);
        check(0.4, -20.0, Effect::Released);
        check(0.0, 20.0, Effect::Released);
    }
}
