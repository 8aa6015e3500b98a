//! Further relays that are switched at a speed.

use crate::{
    quantity::{RotationalSpeed, Time, Voltage},
    schema::{Part, Text, choices, fields, quantity, choice, text},
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
    /// Further coils.
    Coils,
}

choices! {
    Purpose {
        Pump = "pump", "The fuel pump";
        AlternatorField = "alternator-field", "The alternator’s field";
        Fan = "fan", "A fan or the like";
        Coils = "coils", "Further coils";
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

fields! {
    of Part::Relays;
    /// What the fitter calls it.
    NAME: Text = text("name", "Its name")
        .hint("pump relay")
        .first();
    /// What it feeds: `pump`, `alternator-field`, `fan` or `coils`.
    PURPOSE: Purpose = choice("purpose", "It feeds")
        .first();
    /// Speed at which the controller switches it on.
    RELAY_ON_AT: RotationalSpeed = quantity("relay_on_at", "It is switched on at", "rpm", 0.0, 10000.0)
        .hint("100 rpm for a pump")
        .first();
    /// Speed at which the controller switches it off.
    RELAY_OFF_BELOW: RotationalSpeed = quantity("relay_off_below", "It is switched off below", "rpm", 0.0, 10000.0)
        .hint("blank: a share of the above");
    /// How long the pump runs at key-on.
    PRIME: Time = quantity("prime", "It runs at key-on for", "ms", 0.0, 60000.0)
        .assumed("2 s", "common practice, no source")
        .only_if("purpose", &["pump"]);
    /// What else cuts the pump: `none`, `inertia` or `oil-pressure`.
    CUT: Cut = choice("cut", "What else stops the pump")
        .only_if("purpose", &["pump"]);
    /// Voltage at which it is sure to pull in, its coil at 20 °C.
    PULL_IN_VOLTAGE: Voltage = quantity("pull_in_voltage", "Voltage at which it pulls in, cold coil", "V", 1.0, 30.0)
        .assumed("7.2 V", "60 % of 12 V: five relay data sheets give 57 to 67 %")
        .measure("Raise the voltage on the coil slowly from nought until the contact clicks; the data sheet's figure is the one that is sure.")
        .rare();
    /// Pull-in time of the relay.
    PULL_IN_TIME: Time = quantity("pull_in_time", "Its pull-in time", "ms", 0.0, 1000.0)
        .assumed("5 to 10 ms", "5 ms is typical of relay data sheets; twice that for a weak battery, common practice, no source")
        .rare();
    /// Drop-out time of the relay.
    DROP_OUT_TIME: Time = quantity("drop_out_time", "Its drop-out time", "ms", 0.0, 1000.0)
        .assumed("3 to 15 ms", "3 ms is typical of relay data sheets; a diode across the coil makes it several times longer, common practice, no source")
        .rare();
}
