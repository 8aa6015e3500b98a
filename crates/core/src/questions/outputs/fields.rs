//! The outputs of the controller.

pub mod loads;

use crate::{
    output::OnLevel,
    output::PullRail,
    output::Stage,
    quantity::{Current, Energy, Frequency, Resistance, Voltage},
    schema::{Part, Text, choice, choices, fields, quantity, text},
};

choices! {
    Stage {
        OpenDrain = "open-drain", "Low-side, open-drain (switches to ground)";
        HighSide = "high-side", "High-side (switches to battery)";
        HalfBridge = "half-bridge", "Half-bridge (drives to either)";
        Logic = "logic", "Logic (drives to 5 V or ground)";
    }
}

choices! {
    OnLevel {
        Ground = "ground", "Ground: on pulls the pin down";
        Battery = "battery", "Battery, or 5 V: on pulls the pin up";
    }
}

choices! {
    PullRail {
        Battery = "battery", "Permanent battery (30)";
        Controller = "controller", "The controller's own supply";
        FiveVolt = "5v", "The controller's 5 V";
        ThreeVolt = "3v3", "The controller's 3.3 V";
    }
}

/// How the outputs of a group are pulsed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GroupPulse {
    /// All at one frequency.
    One,
    /// Each at its own.
    Each,
}

choices! {
    GroupPulse {
        One = "one", "One for all";
        Each = "each", "Each has its own";
    }
}

fields! {
    of Part::Outputs;
    /// Its name on the pin table.
    NAME: Text = text("name", "Name of the output")
        .hint("as on the pin table; “D1 to D8” describes eight that are alike")
        .first();
    /// `open-drain`, `high-side`, `half-bridge` or `logic`.
    STAGE: Stage = choice("stage", "Output type")
        .measure("Pin table. At the car: bare pin, key on, 1 kΩ from the pin to battery, command it on: if it falls to 0 V, it switches to ground. The same to ground: if it rises to battery voltage, it switches to battery. Both: a half-bridge.")
        .first();
    /// Which level counts as on: `ground` or `battery`.
    ON_LEVEL: OnLevel = choice("on_level", "What counts as on")
        .hint("not known: both are answered")
        .measure("Bare pin, key on, output commanded off, 1 kΩ from the pin to ground: if the meter reads battery voltage, on is ground.")
        .only_if("stage", &["half-bridge", "logic"]);
    /// Continuous current limit.
    CURRENT_LIMIT: Current = quantity("current_limit", "Current limit", "A", 0.01, 100.0)
        .hint("continuous, from the pin table");
    /// Pull-up resistor, where there is one.
    PULL_UP: Resistance = quantity("pull_up", "Pull-up resistor", "ohm", 10.0, 1e7)
        .hint("blank: none")
        .measure("Key on, output off, bare pin: the meter's volts, then again with 1 kΩ from the pin to ground. Pull-up in kΩ = first reading / second reading - 1.")
        .rare();
    /// Rail of the pull-up: `battery`, `controller`, `5v` or `3v3`.
    PULL_UP_RAIL: PullRail = choice("pull_up_rail", "The pull-up goes to")
        .hint("only if there is one")
        .measure("Bare pin: volts with the key off mean permanent battery; 5 V with the key on, the controller's 5 V.")
        .rare();
    /// Pull-down resistor, where there is one.
    PULL_DOWN: Resistance = quantity("pull_down", "Pull-down resistor", "ohm", 10.0, 1e7)
        .hint("blank: none")
        .measure("Key off, connector unplugged at the load: ohms from the bare pin to ground, both ways round; use the higher.")
        .rare();
    /// On-resistance.
    ON_RESISTANCE: Resistance = quantity("on_resistance", "On-resistance", "ohm", 0.0, 500.0)
        .hint("blank: usual for its type")
        .measure("Output on with its load: volts from pin to ground (or to the supply) divided by the load's current.")
        .rare();
    /// Current that an open switch lets pass at 12 V.
    LEAKAGE: Current = quantity("leakage", "Leakage when open", "mA", 0.0, 100.0)
        .hint("from the pin table, at 12 V; blank: none")
        .measure("Low-side and high-side only: a half-bridge or logic output holds its pin. Key on, output off, load unplugged: 1 kΩ from the pin to ground, then from battery to the pin. Volts across it are milliamperes; use the higher.")
        .rare();
    /// Voltage across an open switch at which its own clamp catches a coil's kick.
    CLAMP: Voltage = quantity("clamp", "Clamp voltage (flyback)", "V", 15.0, 1000.0)
        .hint("volts across the open switch, from the pin table; blank: none known")
        .rare();
    /// Energy that the clamp may take at each turn-off.
    CLAMP_ENERGY: Energy = quantity("clamp_energy", "Clamp energy limit", "mJ", 0.01, 1e5)
        .hint("at each turn-off, repeated, hot: from the data sheet")
        .only_if("clamp", &[])
        .rare();
    /// Highest frequency at which it may be pulsed.
    PULSE_LIMIT: Frequency = quantity("pulse_limit", "Highest PWM frequency", "Hz", 0.5, 1e6)
        .hint("from the pin table")
        .rare();
    /// The name that outputs have in common which share a limit.
    GROUP: Text = text("group", "Shares a limit with others, as group")
        .hint("a letter for all outputs of one driver chip, from the pin table")
        .rare();
    /// The most that all outputs of the group carry together.
    GROUP_LIMIT: Current = quantity("group_limit", "All of that group together", "A", 0.1, 500.0)
        .only_if("group", &[])
        .rare();
    /// Whether all outputs of the group are pulsed alike: `one` or `each`.
    GROUP_PULSE: GroupPulse = choice("group_pulse", "PWM frequency in that group")
        .only_if("group", &[])
        .rare();
}
