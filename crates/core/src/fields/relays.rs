//! Question 4: further relays that are switched at a speed.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Speed, Time, Voltage};

const PURPOSES: &[Choice] = &[
    choice("pump", "The fuel pump"),
    choice("alternator-field", "The alternator’s field"),
    choice("fan", "A fan or the like"),
    choice("coils", "Further coils"),
];

const CUTS: &[Choice] = &[
    choice("none", "Nothing"),
    choice("inertia", "An inertia switch in its feed"),
    choice("oil-pressure", "An oil-pressure switch in its feed"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("relays.#.name", "Its name", Kind::Text).hint("pump relay").first(),
    Field::new("relays.#.purpose", "It feeds", Kind::Choice(PURPOSES)).first(),
    Field::new("relays.#.relay_on_at", "It is switched on at", quantity(Speed, "rpm", 0.0, 10000.0))
        .hint("100 rpm for a pump")
        .first(),
    Field::new("relays.#.relay_off_below", "It is switched off below", quantity(Speed, "rpm", 0.0, 10000.0))
        .hint("blank: a share of the above"),
    Field::new("relays.#.prime", "It runs at key-on for", quantity(Time, "ms", 0.0, 60000.0))
        .assumed("2 s", "common practice, no source")
        .only_if("relays.#.purpose", &["pump"]),
    Field::new("relays.#.cut", "What else stops the pump", Kind::Choice(CUTS))
        .only_if("relays.#.purpose", &["pump"]),
    Field::new("relays.#.pull_in_voltage", "Voltage at which it pulls in, cold coil", quantity(Voltage, "V", 1.0, 30.0))
        .assumed("7.2 V", "60 % of 12 V: five relay data sheets give 57 to 67 %")
        .measure("Raise the voltage on the coil slowly from nought until the contact clicks; the data sheet's figure is the one that is sure.")
        .rare(),
    Field::new("relays.#.pull_in_time", "Its pull-in time", quantity(Time, "ms", 0.0, 1000.0))
        .assumed("5 to 10 ms", "5 ms is typical of relay data sheets; twice that for a weak battery, common practice, no source")
        .rare(),
    Field::new("relays.#.drop_out_time", "Its drop-out time", quantity(Time, "ms", 0.0, 1000.0))
        .assumed("3 to 15 ms", "3 ms is typical of relay data sheets; a diode across the coil makes it several times longer, common practice, no source")
        .rare(),
];
