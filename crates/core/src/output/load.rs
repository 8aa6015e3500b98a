//! What hangs on an output: its resistance, and the voltages at which it acts and lets go.

use super::{DIODE_FORWARD_V, End, LoadFlow, OnLevel, Phase};
use crate::{
    quantity::{
        Band, Frequency, Inductance, Measure, Ratio, Resistance, Temperature, Voltage, henries,
        ohms, volts,
    },
    tables::copper,
};

/// Less than this nobody takes for a lit lamp, in amperes: common practice, no source.
const GLOW_A: f64 = 5e-4;

/// What kind of part a load is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadKind {
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
    /// A light-emitting diode with its series resistor.
    Led,
    /// The input of a solid-state relay: such a diode, and it switches at milliamperes.
    SolidState,
    /// The logic input of a smart igniter or of another box.
    LogicInput,
    /// The input of a gauge, which shows a steady voltage.
    Gauge,
    /// A valve that opens as far as the mean of its pulses: idle, boost.
    ProportionalValve,
    /// The input of another box that counts pulses or measures their duty.
    PulseInput,
    /// The input of a rev counter.
    RevCounter,
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
    /// The controller's 5 V: dead with the key off.
    FiveVolt,
    /// Another output of the controller: a bridge pair.
    Output,
}

/// One load.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// What it is.
    pub kind: LoadKind,
    /// Where its other end goes.
    pub far_end: FarEnd,
    /// What a meter reads across it, cold and at rest, at 20 °C; of a part with a diode, its series resistor.
    pub resistance: Band<Resistance>,
    /// Voltage at which it acts with its winding at 20 °C: below `low` none does, from `high` on every one does.
    pub pull_in: Band<Voltage>,
    /// Voltage at which it lets go with its winding at 20 °C: below `low` every one has.
    pub drop_out: Band<Voltage>,
    /// Inductance of its winding; nought for what has none.
    pub inductance: Band<Inductance>,
    /// What lies across its winding to catch the kick when it is switched off.
    pub suppression: Suppression,
    /// How it is pulsed, where it is.
    pub pulse: Option<Pulse>,
    /// The output at its other end, where that is one.
    pub partner: Option<Partner>,
    /// Whether a diode lies in its feed, so that no current runs through it backwards.
    pub has_feed_diode: bool,
    /// The highest voltage that it bears, of an input whose data are known.
    pub bears: Option<Voltage>,
}

/// The output at the other end of a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Partner {
    /// Its number among the pins of the wiring ([`Wiring::pin`](super::Wiring::pin)).
    pub pin: usize,
    /// What counts as on at the load's own output: the load is meant to be driven from there where that is battery.
    pub level: OnLevel,
}

/// What lies across a winding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Suppression {
    /// It is not known.
    Unknown,
    /// Nothing.
    None,
    /// A diode; the right way round, its stripe (cathode) is where the plus is when the load is on.
    Diode {
        /// Whether it is so.
        is_right_way: bool,
    },
    /// A resistor.
    Resistor(Band<Resistance>),
}

/// How a load is pulsed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pulse {
    /// Pulses a second.
    pub frequency: Band<Frequency>,
    /// The part of each period that is on, above nought and below one.
    pub duty: Band<Ratio>,
}

/// What a load does at a voltage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LoadState {
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

impl LoadKind {
    /// Every kind.
    pub const ALL: [Self; 12] = [
        Self::RelayCoil,
        Self::Solenoid,
        Self::Motor,
        Self::Lamp,
        Self::Resistor,
        Self::Led,
        Self::SolidState,
        Self::LogicInput,
        Self::Gauge,
        Self::ProportionalValve,
        Self::PulseInput,
        Self::RevCounter,
    ];

    /// Whether its resistance is that of a copper winding.
    pub fn is_copper(self) -> bool {
        matches!(self, Self::RelayCoil | Self::Solenoid | Self::ProportionalValve | Self::Motor)
    }

    /// Resistance while it runs against the same as measured: the inrush is that much larger.
    pub fn running_ratio(self) -> f64 {
        match self {
            Self::Lamp => FILAMENT_RATIO,
            Self::Motor => MOTOR_RATIO,
            _ => 1.0,
        }
    }

    /// What a part that conducts one way only drops before it does: common practice, no source (1.6 V for red light,
    /// 3.3 V for white; 1.0 to 1.5 V for the infrared diode of a solid-state relay). Nought for all others.
    pub fn forward(self) -> Band<Voltage> {
        let (low, nominal, high) = match self {
            Self::Led => (1.6, 2.0, 3.3),
            Self::SolidState => (1.0, 1.2, 1.5),
            _ => (0.0, 0.0, 0.0),
        };
        Band { low: volts(low), nominal: volts(nominal), high: volts(high) }
    }

    /// Whether it lets go at less than it needs to act: a filament, a heater, a gauge or a proportional valve only follows.
    pub fn has_hysteresis(self) -> bool {
        match self {
            Self::RelayCoil
            | Self::Solenoid
            | Self::Motor
            | Self::SolidState
            | Self::LogicInput
            | Self::PulseInput
            | Self::RevCounter => true,
            Self::Lamp | Self::Resistor | Self::Led | Self::Gauge | Self::ProportionalValve => {
                false
            }
        }
    }

    /// Whether it is an input that takes a signal, and no current worth the name.
    pub fn is_signal(self) -> bool {
        matches!(self, Self::LogicInput | Self::Gauge) || self.counts_pulses()
    }

    /// Whether only a change of its voltage does anything: a steady one, high or low, it passes over.
    pub fn counts_pulses(self) -> bool {
        matches!(self, Self::PulseInput | Self::RevCounter)
    }

    /// Whether it conducts, or listens, one way only.
    pub fn is_one_way(self) -> bool {
        matches!(self, Self::Led | Self::SolidState | Self::LogicInput | Self::PulseInput)
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
            Self::Led => (470.0, 680.0, 1500.0),
            Self::SolidState => (500.0, 1000.0, 2000.0),
            Self::LogicInput | Self::PulseInput => (1_000.0, 10_000.0, 47_000.0),
            Self::Gauge => (1_000.0, 5_000.0, 20_000.0),
            Self::ProportionalValve => (5.0, 12.0, 30.0),
            Self::RevCounter => (1_000.0, 10_000.0, 50_000.0),
        };
        Band { low: ohms(low), nominal: ohms(nominal), high: ohms(high) }
    }

    /// Voltage at which a 12 V part acts, cold.
    ///
    /// Relay coil: 0.57 to 0.67 of nominal is what data sheets of generic 12 V relays promise at the latest. The
    /// others: common practice, no source (a valve moves, a motor turns, a filament is seen, a heater has a tenth to a
    /// half of its power, a proportional valve begins to move).
    pub fn usual_pull_in(self) -> Band<Voltage> {
        let (low, high) = match self {
            Self::RelayCoil => (6.84, 8.04),
            Self::Solenoid => (5.0, 9.0),
            Self::Motor => (2.0, 5.0),
            Self::Lamp => (1.5, 8.0),
            Self::Resistor => (3.8, 8.5),
            // seen in the dark from a tenth of a milliampere on; bright from some milliamperes
            Self::Led => (1.7, 6.0),
            Self::SolidState => (1.5, 4.0),
            Self::LogicInput | Self::PulseInput => (1.5, 3.5),
            Self::Gauge => (1.0, 8.0),
            Self::ProportionalValve => (1.0, 5.0),
            Self::RevCounter => (3.0, 8.0),
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
            Self::Motor | Self::Lamp | Self::ProportionalValve => (0.5, 1.0),
            Self::Resistor => (1.2, 2.0),
            Self::Led => (1.5, 1.6),
            Self::SolidState => (1.0, 1.2),
            Self::LogicInput | Self::PulseInput => (0.8, 1.2),
            Self::Gauge => (0.5, 0.8),
            Self::RevCounter => (0.8, 2.0),
        };
        Band::between(volts(low), volts(high))
    }

    /// Inductance of the winding: common practice, no source (a relay's coil takes 3 to 8 ms to charge, a valve's 1 to
    /// 5 ms). Nought for what has no winding.
    pub fn usual_inductance(self) -> Band<Inductance> {
        let (low, nominal, high) = match self {
            Self::RelayCoil => (0.1, 0.3, 0.7),
            Self::Solenoid => (0.01, 0.03, 0.1),
            Self::ProportionalValve => (0.005, 0.015, 0.05),
            Self::Motor => (0.0001, 0.0005, 0.002),
            _ => (0.0, 0.0, 0.0),
        };
        Band { low: henries(low), nominal: henries(nominal), high: henries(high) }
    }

    /// How far from 1 the winding's resistance is at a temperature: `1 + alpha (T - 20 °C)`.
    pub fn warmth(self, temperature: Temperature) -> f64 {
        if self.is_copper() { copper::factor(temperature) } else { 1.0 }
    }
}

impl Load {
    /// Puts what is meant in place of every band that a circuit is solved with.
    pub(super) fn settle(&mut self) {
        self.resistance = Band::exact(self.resistance.nominal);
        self.inductance = Band::exact(self.inductance.nominal);
        if let Suppression::Resistor(band) = &mut self.suppression {
            *band = Band::exact(band.nominal);
        }
        if let Some(pulse) = &mut self.pulse {
            pulse.frequency = Band::exact(pulse.frequency.nominal);
            pulse.duty = Band::exact(pulse.duty.nominal);
        }
    }

    /// A load of that kind as it is usual.
    pub fn usual(kind: LoadKind, far_end: FarEnd) -> Self {
        Self {
            kind,
            far_end,
            resistance: kind.usual_resistance(),
            pull_in: kind.usual_pull_in(),
            drop_out: kind.usual_drop_out(),
            inductance: kind.usual_inductance(),
            suppression: Suppression::Unknown,
            pulse: None,
            partner: None,
            has_feed_diode: false,
            bears: None,
        }
    }

    /// What it drops before it conducts, a diode in its feed counted in.
    pub fn forward(&self) -> Band<Voltage> {
        let diode = volts(self.feed_diode_v());
        self.kind.forward().map(|voltage| voltage + diode)
    }

    /// Whether it conducts, or listens, one way only.
    pub fn is_one_way(&self) -> bool {
        self.kind.is_one_way() || self.has_feed_diode
    }

    fn feed_diode_v(&self) -> f64 {
        if self.has_feed_diode { DIODE_FORWARD_V } else { 0.0 }
    }

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

    /// The voltage that would do the same to it with its winding at 20 °C; `voltage` counts from the pin to its far end.
    ///
    /// A winding acts by its current: a hot one needs more volts. Source: Ohm's law; so do data sheets of relays.
    pub fn cold_voltage(&self, voltage: Voltage, temperature: Temperature) -> Voltage {
        let forward = if self.is_from_pin() { voltage.base() } else { -voltage.base() };
        let driving = if self.is_one_way() { forward.max(0.0) } else { forward.abs() };
        let left = (driving - self.feed_diode_v()).max(0.0);
        volts(left / self.kind.warmth(temperature))
    }

    /// Whether it is meant to be driven from the pin to its far end.
    pub fn is_from_pin(&self) -> bool {
        match (self.far_end, self.partner) {
            (FarEnd::Output, Some(partner)) => partner.level == OnLevel::Battery,
            (far_end, _) => far_end == FarEnd::Ground,
        }
    }

    /// What it does at what flows through it, either way round.
    pub fn effect(&self, flow: &LoadFlow, temperature: Temperature) -> LoadState {
        // a leak of microamperes brings a diode to its voltage, and not to light
        if self.kind == LoadKind::Led && flow.current.base().abs() < GLOW_A {
            return LoadState::Released;
        }
        self.effect_at(flow.voltage, temperature)
    }

    /// What it does at a voltage, where enough flows.
    pub fn effect_at(&self, voltage: Voltage, temperature: Temperature) -> LoadState {
        let cold = self.cold_voltage(voltage, temperature);
        if cold >= self.pull_in.low {
            LoadState::Energised
        } else if self.kind.has_hysteresis() && cold >= self.drop_out.low {
            LoadState::MayHold
        } else {
            LoadState::Released
        }
    }

    /// Whether every part of its kind acts at a voltage.
    pub fn is_sure_to_act(&self, voltage: Voltage, temperature: Temperature) -> bool {
        self.cold_voltage(voltage, temperature) >= self.pull_in.high
    }

    /// The coil of a generic relay, for a relay put between.
    pub fn relay_coil(far_end: FarEnd) -> Self {
        Self::usual(LoadKind::RelayCoil, far_end)
    }
}

impl Suppression {
    /// What lies across a winding stays on its wires while plus and minus change: a diode is then the other way round.
    pub(super) fn turn(&mut self) {
        if let Self::Diode { is_right_way } = self {
            *is_right_way = !*is_right_way;
        }
    }
}

impl FarEnd {
    /// The far ends that a load of 12 V may be moved to, in the order in which they are offered: switched feeds before
    /// permanent ones.
    pub const OFFERED: [Self; 4] = [Self::Ignition, Self::Relay, Self::Battery, Self::Ground];

    /// Every far end that is no other output.
    pub const ALL: [Self; 5] =
        [Self::Ignition, Self::Relay, Self::Battery, Self::Ground, Self::FiveVolt];
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::celsius;

    #[track_caller]
    fn check(v: f64, t: f64, expected: LoadState) {
        let relay = Load::relay_coil(FarEnd::Ground);
        assert_eq!(relay.effect_at(volts(v), celsius(t)), expected, "{v} V at {t} °C");
    }

    #[test]
    fn a_relay_acts_by_its_current_either_way_round() {
        check(7.0, 20.0, LoadState::Energised);
        check(-7.0, 20.0, LoadState::Energised);
        check(7.0, 100.0, LoadState::MayHold);
        check(1.2, 20.0, LoadState::MayHold);
        check(0.4, 20.0, LoadState::Released);
        check(0.4, -20.0, LoadState::Released);
        check(0.0, 20.0, LoadState::Released);
    }
}
