//! Question 3: outputs and the loads that hang on them.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{Current, Resistance, Voltage};

const STAGES: &[Choice] = &[
    choice("open-drain", "Open-drain (switches to ground)"),
    choice("high-side", "High-side (switches to battery)"),
    choice("half-bridge", "Half-bridge (drives to either)"),
];

const ON_LEVELS: &[Choice] = &[
    choice("ground", "Ground: on pulls the pin down"),
    choice("battery", "Battery: on pulls the pin up"),
];

const PULL_RAILS: &[Choice] = &[
    choice("battery", "Permanent battery (30)"),
    choice("controller", "The controller's own supply"),
    choice("5v", "The controller's 5 V"),
];

const LOAD_KINDS: &[Choice] = &[
    choice("relay-coil", "Relay coil"),
    choice("solenoid", "Solenoid valve"),
    choice("motor", "Motor"),
    choice("lamp", "Lamp"),
    choice("resistor", "Heater or other plain resistance"),
];

const FAR_ENDS: &[Choice] = &[
    choice("ground", "Ground (31)"),
    choice("battery", "Permanent battery (30)"),
    choice("ignition", "Ignition switch (15)"),
    choice("relay", "A relay's contact (87)"),
];

const UNASKED: &[Choice] = &[
    choice("harmless", "Nothing bad"),
    choice("costly", "A part may suffer"),
    choice("dangerous", "Someone may be hurt, or fuel may flow"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("loads.#.name", "What hangs on it", Kind::Text).hint("idle valve").first(),
    Field::new("loads.#.kind", "Kind of load", Kind::Choice(LOAD_KINDS)),
    Field::new("loads.#.far_end", "Its other end goes to", Kind::Choice(FAR_ENDS)).first(),
    Field::new("loads.#.output", "On output", Kind::OutputName).first(),
    Field::new(
        "loads.#.resistance",
        "Its resistance at 20 °C",
        quantity(Resistance, "ohm", 0.05, 1e6),
    )
    .measure("Meter across the unplugged load, less the reading with the probes together."),
    Field::new("loads.#.unasked", "If it acts unasked", Kind::Choice(UNASKED)),
    Field::new("loads.#.pull_in", "Voltage at which it acts", quantity(Voltage, "V", 0.1, 36.0))
        .rare(),
    Field::new(
        "loads.#.drop_out",
        "Voltage below which it lets go",
        quantity(Voltage, "V", 0.01, 36.0),
    )
    .rare(),
    Field::new("outputs.#.name", "Name of the output", Kind::Text)
        .hint("as on the pin table")
        .first(),
    Field::new("outputs.#.stage", "Its stage", Kind::Choice(STAGES)).first(),
    Field::new("outputs.#.on_level", "What counts as on", Kind::Choice(ON_LEVELS)),
    Field::new("outputs.#.current_limit", "Current limit", quantity(Current, "A", 0.01, 100.0)),
    Field::new("outputs.#.pull_up", "Pull-up resistor", quantity(Resistance, "ohm", 10.0, 1e7))
        .hint("blank: none")
        .rare(),
    Field::new("outputs.#.pull_up_rail", "The pull-up goes to", Kind::Choice(PULL_RAILS)).rare(),
    Field::new("outputs.#.pull_down", "Pull-down resistor", quantity(Resistance, "ohm", 10.0, 1e7))
        .hint("blank: none")
        .rare(),
    Field::new("outputs.#.on_resistance", "On-resistance", quantity(Resistance, "ohm", 0.0, 50.0))
        .assumed("0.1 ohm", "common practice, no source")
        .rare(),
];
