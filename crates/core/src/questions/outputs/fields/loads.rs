//! The loads that are connected to outputs.

use crate::{
    output::FarEnd,
    output::LoadKind,
    quantity::{Area, Current, Frequency, Inductance, Length, Ratio, Resistance, Voltage},
    schema::{
        Draft, LoadName, OutputName, Part, RelayName, Text, choice, choices, fields, load_name,
        output_name, quantity, relay_name, text,
    },
};

/// What a load is that is no relay: those have records of their own.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlainKind {
    /// A solenoid valve.
    Solenoid,
    /// A motor.
    Motor,
    /// The motor of an electronic throttle's plate.
    Throttle,
    /// A lamp.
    Lamp,
    /// A plain resistance.
    Resistor,
    /// A light-emitting diode with its resistor.
    Led,
    /// The input of a solid-state relay.
    SolidState,
    /// A logic input.
    LogicInput,
    /// A gauge.
    Gauge,
    /// A valve that follows the duty of its pulses.
    Proportional,
    /// An input that counts pulses.
    PulseInput,
    /// A rev counter.
    RevCounter,
}

choices! {
    PlainKind {
        Solenoid = "solenoid", "Solenoid valve (on or off)";
        Proportional = "proportional-valve", "Proportional valve (idle, boost: pulsed)";
        Motor = "motor", "Motor";
        Throttle = "throttle", "Motor of an electronic throttle";
        Lamp = "lamp", "Lamp";
        Resistor = "resistor", "Heater or other plain resistance";
        Led = "led", "LED with its resistor";
        SolidState = "solid-state", "Input of a solid-state relay";
        LogicInput = "logic-input", "Logic input (smart igniter, other unit)";
        PulseInput = "pulse-input", "Pulse input of another unit (speed, duty)";
        RevCounter = "rev-counter", "Rev counter";
        Gauge = "gauge", "Gauge (steady voltage)";
    }
}

impl PlainKind {
    /// The load that it is.
    pub fn load(self) -> LoadKind {
        match self {
            Self::Solenoid => LoadKind::Solenoid,
            Self::Motor | Self::Throttle => LoadKind::Motor,
            Self::Lamp => LoadKind::Lamp,
            Self::Resistor => LoadKind::Resistor,
            Self::Led => LoadKind::Led,
            Self::SolidState => LoadKind::SolidState,
            Self::LogicInput => LoadKind::LogicInput,
            Self::Gauge => LoadKind::Gauge,
            Self::Proportional => LoadKind::ProportionalValve,
            Self::PulseInput => LoadKind::PulseInput,
            Self::RevCounter => LoadKind::RevCounter,
        }
    }
}

choices! {
    FarEnd {
        Ground = "ground", "Ground (31)";
        Battery = "battery", "Permanent battery (30)";
        Ignition = "ignition", "Ignition switch (15)";
        Relay = "relay", "A relay's contact (87)";
        FiveVolt = "5v", "The controller's 5 V";
        Output = "output", "Another output (a bridge pair)";
    }
}

/// What lies across a winding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// Nothing.
    Nothing,
    /// A diode.
    Diode,
    /// A resistor.
    Resistor,
}

choices! {
    Across {
        Nothing = "none", "Nothing";
        Diode = "diode", "A diode";
        Resistor = "resistor", "A resistor";
    }
}

/// What takes the supply of a throttle's motor away, whatever its outputs do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PowerCut {
    /// A relay that the controller drives.
    Relay,
    /// A switch within the controller, apart from the pair.
    Controller,
    /// Nothing.
    Nothing,
}

choices! {
    PowerCut {
        Relay = "relay", "Its own relay, driven by the controller";
        Controller = "controller", "The controller internally, apart from the pair";
        Nothing = "none", "Nothing";
    }
}

/// The end of a load at which its diode’s stripe (cathode) is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stripe {
    /// At the output.
    Pin,
    /// Its other end.
    FarEnd,
}

choices! {
    Stripe {
        Pin = "pin", "The end at the output";
        FarEnd = "far-end", "Its other end";
    }
}

/// What it means if a load acts unasked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unasked {
    /// Nothing bad.
    Harmless,
    /// A part may suffer.
    Costly,
    /// Someone may be hurt, or fuel may flow.
    Dangerous,
}

choices! {
    Unasked {
        Harmless = "harmless", "Nothing bad";
        Costly = "costly", "A part may suffer";
        Dangerous = "dangerous", "Someone may be hurt, or fuel may flow";
    }
}

/// Loads with a winding, whose current runs on.
const WOUND: &[&str] = &["", "solenoid", "motor", "throttle"];

// What the loads and the coils of relays are asked alike.

pub(crate) const fn its_far_relay() -> Draft<RelayName> {
    relay_name("far_relay", "Which relay").only_if("far_end", &["relay"])
}

pub(crate) const fn its_far_output() -> Draft<OutputName> {
    output_name("far_output", "Other output of the pair")
        .hint("off while the first is on")
        .only_if("far_end", &["output"])
        .first()
}

pub(crate) const fn its_unasked() -> Draft<Unasked> {
    choice("unasked", "If it comes on by itself")
        .assumed("costly", "until it is known to be harmless")
}

pub(crate) const fn its_frequency() -> Draft<Frequency> {
    quantity("frequency", "PWM frequency", "Hz", 0.5, 1e5)
        .hint("only if it is pulsed; blank: simply on or off")
        .rare()
}

pub(crate) const fn its_duty() -> Draft<Ratio> {
    quantity("duty", "PWM duty", "%", 0.5, 99.5)
        .assumed(
            "10 to 90%",
            "the range over which a valve is usually moved: common practice, no source",
        )
        .hint("the share of each period that is on")
        .only_if("frequency", &[])
        .rare()
}

pub(crate) const fn its_stripe() -> Draft<Stripe> {
    choice("stripe", "Banded end of the diode")
        .hint("the band is the cathode, and belongs at plus; blank: it is there")
        .measure("The same lamp test: the way round in which the lamp is dimmer, the wire on plus is the banded (cathode) end.")
        .only_if("suppression", &["diode"])
        .rare()
}

pub(crate) const fn its_suppression_resistance() -> Draft<Resistance> {
    quantity("suppression_resistance", "Resistor across its winding", "ohm", 1.0, 1e5)
        .assumed("680 ohm", "relays with a resistor built in: common practice, no source")
        .only_if("suppression", &["resistor"])
        .rare()
}

pub(crate) const fn its_length() -> Draft<Length> {
    quantity("length", "Way from its output or switch to it", "m", 0.01, 30.0).rare()
}

pub(crate) const fn its_wired() -> Draft<OutputName> {
    output_name("wired", "At the car it is on output").hint("where it differs").rare()
}

/// How the output of a load is chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeps {
    /// It may be another than the one that is named.
    Moves,
    /// Its wire is laid, or wanted there.
    Stays,
    /// It needs none.
    ByHand,
}

choices! {
    Keeps {
        Moves = "moves", "It may be moved to another";
        Stays = "stays", "It stays where it is";
        ByHand = "by-hand", "None: a switch works it";
    }
}

pub(crate) const fn its_keeps() -> Draft<Keeps> {
    choice("keeps", "Choice of its output").hint("blank: it may be moved").rare()
}

pub(crate) const fn its_other_length() -> Draft<Length> {
    quantity("other_length", "Way to its other end", "m", 0.01, 30.0).rare()
}

fields! {
    of Part::Loads;
    /// What the fitter calls it.
    NAME: Text = text("name", "Name of the load")
        .hint("idle valve")
        .first();
    /// Where its other end goes: `ground`, `battery`, `ignition`, `relay`, `5v` or `output`.
    FAR_END: FarEnd = choice("far_end", "Its other end goes to")
        .measure("Load unplugged, feed wire to ground: battery voltage with the key off is 30, only with the key on 15, only with a relay pulled in 87. To battery plus: battery voltage means ground.")
        .first();
    /// Name of the relay whose contact feeds it.
    FAR_RELAY: RelayName = its_far_relay();
    /// Name of the output at its other end, where that is one.
    FAR_OUTPUT: OutputName = its_far_output();
    /// Name of the output it hangs on.
    OUTPUT: OutputName = output_name("output", "On output")
        .hint("an output of this plan")
        .first();
    /// The name of a load that is of the same kind.
    LIKE: LoadName = load_name("like", "Same part as")
        .hint("what is blank here is copied from there: kind, resistance, voltages, what is across it")
        .rare();
    /// What kind of part it is.
    KIND: PlainKind = choice("kind", "Kind of load")
        .hint("a relay has its own card; blank: as a relay's coil, the worst case")
        .of_kind();
    /// What takes the supply of a throttle's motor away.
    POWER_CUT: PowerCut = choice("power_cut", "What cuts its motor's supply")
        .hint("apart from the two outputs that drive it")
        .only_if("kind", &["throttle"]);
    /// The relay that does.
    CUT_RELAY: RelayName = relay_name("cut_relay", "The relay that cuts it")
        .only_if("power_cut", &["relay"]);
    /// What happens if it acts unasked: `harmless`, `costly` or `dangerous`.
    UNASKED: Unasked = its_unasked()
        .of_kind();
    /// Resistance at 20 °C.
    RESISTANCE: Resistance = quantity("resistance", "Resistance at 20 °C", "ohm", 0.05, 1e6)
        .hint("a lamp or a motor: as the meter reads it, switched off")
        .measure("Meter across the unplugged load, less the reading with the probes together.")
        .of_kind();
    /// Voltage at which it is sure to act, cold coil.
    PULL_IN: Voltage = quantity("pull_in", "Pull-in voltage", "V", 0.1, 36.0)
        .hint("from the data sheet, cold")
        .measure("Raise the voltage slowly from 0 V, cold: the reading at the click.")
        .rare()
        .of_kind();
    /// Voltage below which it is sure to let go.
    DROP_OUT: Voltage = quantity("drop_out", "Drop-out voltage", "V", 0.01, 36.0)
        .hint("from the data sheet, cold")
        .measure("Lower the voltage slowly from 12 V, cold: the reading at which it drops out.")
        .rare()
        .of_kind();
    /// The highest voltage that an input bears.
    BEARS: Voltage = quantity("bears", "Highest input voltage", "V", 1.0, 100.0)
        .hint("from its data sheet: 5 V for many, 16 V for some")
        .only_if("kind", &["logic-input", "gauge"])
        .of_kind();
    /// Frequency at which it is pulsed; blank where it is not.
    FREQUENCY: Frequency = its_frequency()
        .of_kind();
    /// The part of each period that is on.
    DUTY: Ratio = its_duty()
        .of_kind();
    /// What lies across its winding: `none`, `diode` or `resistor`.
    SUPPRESSION: Across = choice("suppression", "Across its winding")
        .hint("catches the spike at switch-off; blank: not known")
        .measure("Look for a diode symbol on the relay. Or unplugged, 12 V through a lamp (5 W; 21 W for a coil under 20 Ω; under 5 Ω this tells nothing), both ways round, briefly. Alike: no diode. Much brighter one way: a diode, and that way is wrong. A coil that reads lower than its data sheet says has a resistor across it.")
        .only_if("kind", WOUND)
        .rare()
        .of_kind();
    /// Which end the stripe of that diode is at: `pin` or `far-end`.
    STRIPE: Stripe = its_stripe();
    /// That resistor.
    SUPPRESSION_RESISTANCE: Resistance = its_suppression_resistance()
        .of_kind();
    /// Inductance of its winding.
    INDUCTANCE: Inductance = quantity("inductance", "Inductance of its winding", "mH", 0.01, 1e5)
        .hint("from the data sheet; blank: what is usual for its kind")
        .only_if("kind", WOUND)
        .rare()
        .of_kind();
    /// The way of the wire from its output.
    LENGTH: Length = its_length();
    /// The way of the wire to its other end.
    OTHER_LENGTH: Length = its_other_length();
    /// The output that its wire was found on.
    WIRED: OutputName = its_wired();
    /// How its output is chosen: `moves`, `stays` or `by-hand`.
    KEEPS: Keeps = its_keeps();
    /// The wire that feeds it, where that is thinner than the rest of its feed.
    WIRE_SIZE: Area = quantity("wire_size", "Size of its wire", "mm2", 0.05, 120.0)
        .hint("blank: as its feed")
        .rare();
    /// The fuse in its feed alone, behind that of the feed.
    FUSE: Current = quantity("fuse", "Fuse in its own feed", "A", 0.5, 500.0)
        .hint("where its wire branches off")
        .rare();
}
