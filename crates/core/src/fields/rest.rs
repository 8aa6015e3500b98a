//! Question 3: outputs and the loads that hang on them.

use super::{Choice, Field, Kind, choice, quantity};
use crate::quantity::Dimension::{
    Current, Energy, Frequency, Inductance, Resistance, Share, Voltage,
};

const STAGES: &[Choice] = &[
    choice("open-drain", "Open-drain (switches to ground)"),
    choice("high-side", "High-side (switches to battery)"),
    choice("half-bridge", "Half-bridge (drives to either)"),
    choice("logic", "Logic (drives to 5 V or ground)"),
];

const ON_LEVELS: &[Choice] = &[
    choice("ground", "Ground: on pulls the pin down"),
    choice("battery", "Battery, or 5 V: on pulls the pin up"),
];

const PULL_RAILS: &[Choice] = &[
    choice("battery", "Permanent battery (30)"),
    choice("controller", "The controller's own supply"),
    choice("5v", "The controller's 5 V"),
    choice("3v3", "The controller's 3.3 V"),
];

const LOAD_KINDS: &[Choice] = &[
    choice("relay-coil", "Relay coil"),
    choice("solenoid", "Solenoid valve"),
    choice("motor", "Motor"),
    choice("lamp", "Lamp"),
    choice("resistor", "Heater or other plain resistance"),
    choice("led", "LED with its resistor"),
    choice("solid-state", "Input of a solid-state relay"),
    choice("logic-input", "Logic input (smart igniter, other box)"),
    choice("gauge", "Gauge or rev counter"),
];

const FAR_ENDS: &[Choice] = &[
    choice("ground", "Ground (31)"),
    choice("battery", "Permanent battery (30)"),
    choice("ignition", "Ignition switch (15)"),
    choice("relay", "A relay's contact (87)"),
    choice("5v", "The controller's 5 V"),
    choice("output", "Another output (a bridge pair)"),
];

const SUPPRESSIONS: &[Choice] =
    &[choice("none", "Nothing"), choice("diode", "A diode"), choice("resistor", "A resistor")];

const STRIPES: &[Choice] =
    &[choice("pin", "The end at the output"), choice("far-end", "Its other end")];

/// Loads with a winding, whose current runs on.
const WOUND: &[&str] = &["", "relay-coil", "solenoid", "motor"];

const UNASKED: &[Choice] = &[
    choice("harmless", "Nothing bad"),
    choice("costly", "A part may suffer"),
    choice("dangerous", "Someone may be hurt, or fuel may flow"),
];

pub(super) const FIELDS: &[Field] = &[
    Field::new("outputs.#.name", "Name of the output", Kind::Text).hint("as on the pin table").first(),
    Field::new("outputs.#.stage", "Its stage", Kind::Choice(STAGES))
        .measure("Pin table. At the car: bare pin, key on, 1 kilohm from the pin to battery, command it on: a fall to 0 V shows a switch to ground. The same to ground, a rise to battery: a switch to battery. Both: a half-bridge.")
        .first(),
    Field::new("outputs.#.on_level", "What counts as on", Kind::Choice(ON_LEVELS))
        .hint("not known: both are answered")
        .measure("Bare pin, key on, output commanded off, 1 kilohm from the pin to ground: a meter that reads battery shows that on is ground.")
        .only_if("outputs.#.stage", &["half-bridge", "logic"]),
    Field::new("outputs.#.current_limit", "Current limit", quantity(Current, "A", 0.01, 100.0))
        .hint("continuous, from the pin table"),
    Field::new("outputs.#.pull_up", "Pull-up resistor", quantity(Resistance, "ohm", 10.0, 1e7))
        .hint("blank: none")
        .measure("Key on, output off, bare pin: the meter's volts, then again with 1 kilohm from the pin to ground. Pull-up in kilohm = first reading / second reading - 1.")
        .rare(),
    Field::new("outputs.#.pull_up_rail", "The pull-up goes to", Kind::Choice(PULL_RAILS))
        .hint("asked only where there is one")
        .measure("Bare pin: volts with the key off show permanent battery; 5 V with the key on, the controller's 5 V.")
        .rare(),
    Field::new("outputs.#.pull_down", "Pull-down resistor", quantity(Resistance, "ohm", 10.0, 1e7))
        .hint("blank: none")
        .measure("Key off, connector unplugged at the load: ohms from the bare pin to ground, both ways round; take the higher.")
        .rare(),
    Field::new("outputs.#.on_resistance", "On-resistance", quantity(Resistance, "ohm", 0.0, 500.0))
        .hint("blank: what is usual for its stage")
        .measure("Output on with its load: volts from pin to ground (or to the supply) divided by the load's current.")
        .rare(),
    Field::new("outputs.#.leakage", "Leakage when open", quantity(Current, "mA", 0.0, 100.0))
        .hint("from the pin table, at 12 V; blank: none")
        .measure("Open-drain and high-side only: a half-bridge or logic output holds its pin. Key on, output off, load unplugged: 1 kilohm from the pin to ground, then from battery to the pin. Volts across it are milliamperes; take the higher.")
        .rare(),
    Field::new("outputs.#.clamp", "Its clamp against a coil's kick", quantity(Voltage, "V", 15.0, 1000.0))
        .hint("volts across the open switch, from the pin table; blank: none known")
        .rare(),
    Field::new("outputs.#.clamp_energy", "What the clamp may take", quantity(Energy, "mJ", 0.01, 1e5))
        .hint("at each turn-off, repeated, hot: from the data sheet")
        .only_if("outputs.#.clamp", &[])
        .rare(),
    Field::new("outputs.#.pulse_limit", "Highest PWM frequency", quantity(Frequency, "Hz", 0.5, 1e6))
        .hint("from the pin table")
        .rare(),
    Field::new("loads.#.name", "What hangs on it", Kind::Text).hint("idle valve").first(),
    Field::new("loads.#.far_end", "Its other end goes to", Kind::Choice(FAR_ENDS))
        .measure("Load's plug pulled, feed wire against ground: battery with the key off is 30, with the key on only 15, with a relay clicked in 87. Against battery plus: battery means ground.")
        .first(),
    Field::new("loads.#.far_output", "The other output of the pair", Kind::OutputName)
        .hint("off while the first is on")
        .only_if("loads.#.far_end", &["output"])
        .first(),
    Field::new("loads.#.output", "On output", Kind::OutputName).hint("one of the outputs below").first(),
    Field::new("loads.#.kind", "Kind of load", Kind::Choice(LOAD_KINDS))
        .assumed("relay-coil", "the usual load of an output, and one that little holds in"),
    Field::new("loads.#.unasked", "If it acts unasked", Kind::Choice(UNASKED))
        .assumed("costly", "until it is known to be harmless"),
    Field::new("loads.#.resistance", "Its resistance at 20 °C", quantity(Resistance, "ohm", 0.05, 1e6))
        .hint("a lamp or a motor: as the meter reads it, at rest")
        .measure("Meter across the unplugged load, less the reading with the probes together."),
    Field::new("loads.#.pull_in", "Voltage at which it acts", quantity(Voltage, "V", 0.1, 36.0))
        .hint("from the data sheet, cold")
        .measure("Raise the voltage slowly from nothing, cold: the reading at the click.")
        .rare(),
    Field::new("loads.#.drop_out", "Voltage below which it lets go", quantity(Voltage, "V", 0.01, 36.0))
        .hint("from the data sheet, cold")
        .measure("Lower the voltage slowly from 12 V, cold: the reading at which it lets go.")
        .rare(),
    Field::new("loads.#.frequency", "PWM frequency", quantity(Frequency, "Hz", 0.5, 1e5))
        .hint("only where it is pulsed; blank: on or off for good")
        .rare(),
    Field::new("loads.#.duty", "Duty of the pulses", quantity(Share, "%", 0.5, 99.5))
        .assumed("10 to 90 %", "the range over which a valve is usually moved: common practice, no source")
        .hint("the part of each period that is on")
        .only_if("loads.#.frequency", &[])
        .rare(),
    Field::new("loads.#.suppression", "Across its winding", Kind::Choice(SUPPRESSIONS))
        .hint("against the kick when it is switched off; blank: not known")
        .measure("Look for a diode symbol on the relay. Or unplugged, 12 V through a lamp (5 W; 21 W for a coil under 20 ohm; under 5 ohm this tells nothing), both ways round, briefly. Alike: no diode. Much brighter one way: a diode, and that way is wrong. A coil that reads lower than its data sheet says has a resistor across it.")
        .only_if("loads.#.kind", WOUND)
        .rare(),
    Field::new("loads.#.stripe", "The diode's stripe is at", Kind::Choice(STRIPES))
        .hint("the stripe is the cathode, and belongs where the plus is; blank: there")
        .measure("The same lamp test: the way round in which the lamp is dimmer, the wire on plus is the striped (cathode) end.")
        .only_if("loads.#.suppression", &["diode"])
        .rare(),
    Field::new("loads.#.suppression_resistance", "That resistor", quantity(Resistance, "ohm", 1.0, 1e5))
        .assumed("680 ohm", "relays with a resistor built in: common practice, no source")
        .only_if("loads.#.suppression", &["resistor"])
        .rare(),
    Field::new("loads.#.inductance", "Inductance of its winding", quantity(Inductance, "mH", 0.01, 1e5))
        .hint("from the data sheet; blank: what is usual for its kind")
        .only_if("loads.#.kind", WOUND)
        .rare(),
];
