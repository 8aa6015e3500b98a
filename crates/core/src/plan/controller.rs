//! A controller, described once: its outputs, apart from what hangs on them.
//!
//! A description is a plan with nothing but outputs, so that its file is a plan's file. The generic ones are invented:
//! they say what such boxes often have, and none is a product.

use super::{Output, Plan};

/// A generic description to start from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Generic {
    /// What it is.
    pub name: &'static str,
    groups: &'static [Group],
}

/// Outputs of one kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Group {
    letter: &'static str,
    count: usize,
    stage: &'static str,
    on_level: &'static str,
    current_limit: &'static str,
    clamp: &'static str,
    pulse_limit: &'static str,
}

const DRAIN: Group = Group {
    letter: "D",
    count: 8,
    stage: "open-drain",
    on_level: "",
    current_limit: "2 A",
    clamp: "40 V",
    pulse_limit: "1 kHz",
};
const BRIDGE: Group = Group {
    letter: "H",
    count: 4,
    stage: "half-bridge",
    on_level: "ground",
    current_limit: "5 A",
    clamp: "",
    pulse_limit: "2 kHz",
};
const HIGH: Group = Group {
    letter: "S",
    count: 2,
    stage: "high-side",
    on_level: "",
    current_limit: "3 A",
    clamp: "",
    pulse_limit: "200 Hz",
};
const LOGIC: Group = Group {
    letter: "L",
    count: 4,
    stage: "logic",
    on_level: "battery",
    current_limit: "20 mA",
    clamp: "",
    pulse_limit: "5 kHz",
};

/// The generic descriptions, invented.
pub const GENERICS: [Generic; 3] = [
    Generic { name: "eight switches to ground", groups: &[DRAIN] },
    Generic {
        name: "eight switches to ground, two to battery, four logic outputs",
        groups: &[DRAIN, HIGH, LOGIC],
    },
    Generic {
        name: "eight half-bridges, four logic outputs",
        groups: &[Group { count: 8, ..BRIDGE }, LOGIC],
    },
];

impl Generic {
    /// As a plan with nothing but its outputs.
    pub fn describe(&self) -> Plan {
        let outputs =
            self.groups.iter().flat_map(|group| (1..=group.count).map(|at| group.output(at)));
        Plan { name: self.name.into(), outputs: outputs.collect(), ..Plan::default() }
    }
}

impl Group {
    fn output(&self, number: usize) -> Output {
        Output {
            name: format!("{}{number}", self.letter),
            stage: self.stage.into(),
            on_level: self.on_level.into(),
            current_limit: self.current_limit.into(),
            clamp: self.clamp.into(),
            pulse_limit: self.pulse_limit.into(),
            ..Output::default()
        }
    }
}

impl Plan {
    /// The description of its controller: a plan with nothing but the outputs, and a name that says so.
    #[must_use]
    pub fn controller(&self) -> Self {
        let name = match self.name.trim() {
            "" => "controller".to_owned(),
            name => format!("controller of {name}"),
        };
        Self { name, outputs: self.outputs.clone(), ..Self::default() }
    }

    /// Takes the outputs of a description in place of its own. Loads stay, and hang on the output that they name.
    pub fn take_controller(&mut self, description: &Self) {
        self.outputs.clone_from(&description.outputs);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        finding::Severity,
        plan::{Load, parse, write},
        report::report,
    };

    #[test]
    fn every_generic_description_can_be_read() {
        for generic in GENERICS {
            let plan = generic.describe();
            let report = report(&plan);
            let wrong = report.findings.iter().find(|it| it.severity <= Severity::Doubt);
            assert_eq!(wrong, None, "{}", generic.name);
            assert!(!plan.outputs.is_empty(), "{}", generic.name);
        }
    }

    #[test]
    fn a_description_goes_through_a_file_into_another_plan() {
        let mut one = GENERICS[1].describe();
        one.name = "special".into();
        one.engine.cylinders = "6".into();
        let file = write(&one.controller());
        let read = parse(&file).expect("it was written so");
        assert_eq!(read.engine.cylinders, "", "nothing but the outputs");
        let load = Load { output: "D3".into(), ..Load::default() };
        let mut other = Plan { name: "other".into(), loads: vec![load], ..Plan::default() };
        other.take_controller(&read);
        assert_eq!(other.outputs, one.outputs);
        assert_eq!((other.name.as_str(), other.loads.len()), ("other", 1), "what is its own stays");
    }
}
