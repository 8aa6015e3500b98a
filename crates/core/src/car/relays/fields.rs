//! The relays.

use crate::{
    output::FarEnd,
    quantity::{
        Area, Current, Frequency, Inductance, Length, Ratio, Resistance, RotationalSpeed, Time,
        Voltage,
    },
    questions::outputs::fields::loads::{
        Across, Keeps, Stripe, Unasked, its_duty, its_far_output, its_far_relay, its_frequency,
        its_keeps, its_length, its_other_length, its_stripe, its_suppression_resistance,
        its_unasked, its_wired,
    },
    schema::{
        OutputName, Part, RelayName, Text, Whole, choice, choices, fields, output_name, quantity,
        relay_name, text, whole,
    },
};

/// What a relay feeds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// The fuel pump.
    Pump,
    /// The field of the alternator.
    AlternatorField,
    /// A fan or the like.
    Fan,
    /// The ignition coils.
    Coils,
    /// The injectors.
    Injectors,
    /// Coils and injectors together: a main relay.
    Engine,
    /// Headlamps or other lamps.
    Lamps,
    /// A heater: glow plugs, a heated screen, a heated seat.
    Heater,
    /// The starter's solenoid.
    Starter,
    /// Something else, or several.
    Other,
}

choices! {
    Purpose {
        Pump = "pump", "Fuel pump";
        AlternatorField = "alternator-field", "Alternator field";
        Fan = "fan", "Fan or similar";
        Coils = "coils", "Ignition coils";
        Injectors = "injectors", "Injectors";
        Engine = "engine", "Coils and injectors";
        Lamps = "lamps", "Lamps";
        Heater = "heater", "Heater";
        Starter = "starter", "Starter (terminal 50)";
        Other = "other", "Something else, or several";
    }
}

impl Purpose {
    /// Whether what it feeds includes this.
    pub fn feeds(self, what: Self) -> bool {
        self == what || self == Self::Engine && matches!(what, Self::Coils | Self::Injectors)
    }
}

/// What else cuts the pump.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// Nothing.
    Nothing,
    /// An inertia switch.
    Inertia,
    /// An oil-pressure switch.
    OilPressure,
}

choices! {
    Cut {
        Nothing = "none", "Nothing";
        Inertia = "inertia", "An inertia switch in its feed";
        OilPressure = "oil-pressure", "An oil-pressure switch in its feed";
    }
}

/// By what a relay is switched.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SwitchedBy {
    /// The controller, at an engine speed.
    Speed,
    /// The ignition switch, or another by hand: no output of the controller.
    Key,
    /// Anything else.
    Otherwise,
}

choices! {
    SwitchedBy {
        Speed = "speed", "The controller, at an engine speed";
        Key = "key", "The key or a switch, no output";
        Otherwise = "otherwise", "Anything else: a temperature, a command";
    }
}

/// Where what a relay feeds is grounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GroundedAt {
    /// Apart from the sensors.
    Own,
    /// At the bolt that the sensors share.
    Sensors,
}

choices! {
    GroundedAt {
        Own = "own", "A point of its own";
        Sensors = "sensors", "The sensors' bolt";
    }
}

/// What keeps a starter from turning the engine at the wrong moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Interlock {
    /// A switch at gearbox or clutch, in series.
    Switch,
    /// The controller.
    Controller,
    /// Nothing.
    Nothing,
}

choices! {
    Interlock {
        Switch = "switch", "A neutral or clutch switch in series";
        Controller = "controller", "The controller, in gear or above a speed";
        Nothing = "none", "Nothing";
    }
}

const PUMP: &[&str] = &["pump"];

fields! {
    of Part::Relays;
    /// What the fitter calls it.
    NAME: Text = text("name", "Name of the relay")
        .hint("pump relay")
        .first();
    /// The name of a relay that is of the same kind.
    LIKE: RelayName = relay_name("like", "Same relay as")
        .hint("what is blank here is copied from there: coil, contact, times")
        .rare();
    /// What it feeds: `pump`, `alternator-field`, `fan`, `coils`, `injectors`, `engine` (both of them), `lamps`, `heater`, `starter` or `other`.
    PURPOSE: Purpose = choice("purpose", "It feeds")
        .first();
    /// By what it is switched: `speed`, `key` or `otherwise`.
    SWITCHED_BY: SwitchedBy = choice("switched_by", "It is switched by")
        .hint("blank: by engine speed, where one is typed");
    /// Speed at which the controller switches it on.
    RELAY_ON_AT: RotationalSpeed = quantity("relay_on_at", "Threshold: relay on at", "rpm", 0.0, 10000.0)
        .hint("100 rpm for coils or a pump")
        .first();
    /// Speed at which the controller switches it off.
    RELAY_OFF_BELOW: RotationalSpeed = quantity("relay_off_below", "Release: relay off below", "rpm", 0.0, 10000.0)
        .hint("blank: 60% of the threshold");
    /// How long the pump runs at key-on.
    PRIME: Time = quantity("prime", "Pump runs at key-on for", "ms", 0.0, 60000.0)
        .assumed("2 s", "common practice, no source")
        .only_if("purpose", PUMP);
    /// What else cuts the pump: `none`, `inertia` or `oil-pressure`.
    CUT: Cut = choice("cut", "What else stops the pump")
        .only_if("purpose", PUMP);
    /// What keeps the starter from turning: `switch`, `controller` or `none`.
    INTERLOCK: Interlock = choice("interlock", "What blocks the starter")
        .only_if("purpose", &["starter"]);
    /// How many there are alike, each with its share of what they feed.
    ALIKE: Whole = whole("alike", "Relays sharing this load", 1, 16)
        .assumed("1", "all of it on one relay");
    /// Rating of its contact.
    RATING: Current = quantity("rating", "Contact rating", "A", 0.5, 500.0)
        .hint("30 to 87, DC, resistive")
        .of_kind();
    /// The fuse before its contact.
    FUSE: Current = quantity("fuse", "Fuse rating", "A", 0.5, 500.0)
        .hint("before its contact");
    /// Length of the lead from the battery through the contact to what it feeds, one way.
    LEAD_LENGTH: Length = quantity("lead_length", "Cable from battery to what it feeds, one way", "m", 0.0, 50.0)
        .hint("the longest");
    /// How much of that lead is before the contact.
    TO_CONTACT: Length = quantity("to_contact", "Of that cable, battery to contact 30", "m", 0.0, 50.0)
        .rare();
    /// Size of that lead.
    LEAD_SIZE: Area = quantity("lead_size", "Size of that cable", "mm2", 0.05, 120.0)
        .hint("copper, the thinnest piece; 4 mm² or 12 AWG");
    /// What draws behind its contact and stands nowhere else in the plan, together, running.
    DRAWS: Current = quantity("draws", "Current of what it feeds", "A", 0.01, 500.0)
        .hint("running, together; beside the injectors, coils and loads of this plan")
        .measure("Clamp meter around its cable while all of it runs. Or from the labels: watts divided by 13.");
    /// The same in the first moment.
    INRUSH: Current = quantity("inrush", "Inrush of what it feeds", "A", 0.01, 2000.0)
        .hint("at switch-on; blank: usual for its kind")
        .measure("Clamp meter with a peak hold, at switch-on, cold.")
        .rare();
    /// The relay through whose contact its own contact is fed.
    BEHIND: RelayName = relay_name("behind", "Its contact (30) is fed through relay")
        .hint("blank: straight from the battery")
        .rare();
    /// Where what it feeds is grounded: `own` or `sensors`.
    GROUND: GroundedAt = choice("ground", "What it feeds is grounded at")
        .rare();
    /// Name of the output that its coil hangs on.
    OUTPUT: OutputName = output_name("output", "Its coil is on output")
        .hint("an output of this plan")
        .first();
    /// Where the coil's other end goes.
    FAR_END: FarEnd = choice("far_end", "The coil's other end goes to")
        .measure("Relay out, the coil's socket to ground: battery voltage with the key off is 30, only with the key on 15, only with another relay pulled in 87. To battery plus: battery voltage means ground.")
        .first();
    /// Name of the relay whose contact feeds the coil.
    FAR_RELAY: RelayName = its_far_relay();
    /// Name of the output at the coil's other end, where that is one.
    FAR_OUTPUT: OutputName = its_far_output();
    /// What happens if it acts unasked: `harmless`, `costly` or `dangerous`.
    UNASKED: Unasked = its_unasked();
    /// Resistance of its coil at 20 °C.
    RESISTANCE: Resistance = quantity("resistance", "Resistance of its coil at 20 °C", "ohm", 0.05, 1e6)
        .measure("Meter across the unplugged coil, less the reading with the probes together.")
        .of_kind();
    /// Voltage at which it is sure to pull in, its coil at 20 °C.
    PULL_IN: Voltage = quantity("pull_in", "Pull-in voltage, cold coil", "V", 0.1, 36.0)
        .assumed("6.84 to 8.04 V", "data sheets of five generic 12 V relays: pull in at 0.57 to 0.67 of nominal, drop out at 0.04 to 0.1")
        .measure("Raise the voltage on the coil slowly from 0 V, cold: the reading at the click; only the data sheet's figure is sure.")
        .rare()
        .of_kind();
    /// Voltage below which it is sure to drop out.
    DROP_OUT: Voltage = quantity("drop_out", "Drop-out voltage", "V", 0.01, 36.0)
        .hint("from the data sheet, cold")
        .measure("Lower the voltage slowly from 12 V, cold: the reading at which it drops out.")
        .rare()
        .of_kind();
    /// From command to contact.
    PULL_IN_TIME: Time = quantity("pull_in_time", "Pull-in time", "ms", 0.0, 1000.0)
        .assumed("5 to 10 ms", "5 ms is typical of relay data sheets; twice that for a weak battery, common practice, no source")
        .rare()
        .of_kind();
    /// From the end of the command to the opening of the contact.
    DROP_OUT_TIME: Time = quantity("drop_out_time", "Drop-out time", "ms", 0.0, 1000.0)
        .assumed("3 to 15 ms", "3 ms is typical of relay data sheets; a diode across the coil makes it several times longer, common practice, no source")
        .rare()
        .of_kind();
    /// Frequency at which it is pulsed; blank where it is not.
    FREQUENCY: Frequency = its_frequency();
    /// The part of each period that is on.
    DUTY: Ratio = its_duty();
    /// What lies across its coil: `none`, `diode` or `resistor`.
    SUPPRESSION: Across = choice("suppression", "Across its coil")
        .hint("catches the spike at switch-off; blank: not known")
        .measure("Look for a diode symbol on the relay. Or unplugged, 12 V through a lamp (5 W; 21 W for a coil under 20 Ω; under 5 Ω this tells nothing), both ways round, briefly. Alike: no diode. Much brighter one way: a diode, and that way is wrong. A coil that reads lower than its data sheet says has a resistor across it.")
        .rare()
        .of_kind();
    /// Which end the stripe of that diode is at: `pin` or `far-end`.
    STRIPE: Stripe = its_stripe();
    /// That resistor.
    SUPPRESSION_RESISTANCE: Resistance = its_suppression_resistance()
        .of_kind();
    /// Inductance of its coil.
    INDUCTANCE: Inductance = quantity("inductance", "Inductance of its coil", "mH", 0.01, 1e5)
        .hint("from the data sheet; blank: what is usual for a relay")
        .rare()
        .of_kind();
    /// The way of the wire from the output to its coil.
    LENGTH: Length = its_length();
    /// The way of the wire to the coil's other end.
    OTHER_LENGTH: Length = its_other_length();
    /// The ground wire of what it feeds.
    GROUND_LENGTH: Length = quantity("ground_length", "Ground wire of what it feeds", "m", 0.0, 50.0)
        .rare();
    /// The output that its coil's wire was found on.
    WIRED: OutputName = its_wired();
    /// How the output of its coil is chosen: `moves`, `stays` or `by-hand`.
    KEEPS: Keeps = its_keeps();
}
