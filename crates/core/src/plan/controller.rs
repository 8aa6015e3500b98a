//! A controller, described once: its outputs, apart from what hangs on them.
//!
//! A description is a plan with nothing but outputs, so that its file is a plan's file. The generic ones are invented:
//! they say what such boxes often have, and none is a product.

use super::Plan;
use crate::{fields::outputs, schema::Part};

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
        let mut plan = Plan { name: self.name.into(), ..Plan::default() };
        for group in self.groups {
            group.add_to(&mut plan);
        }
        plan
    }
}

impl Group {
    fn add_to(&self, plan: &mut Plan) {
        let at = plan.add(Part::Outputs);
        let name = format!("{letter}1 to {letter}{}", self.count, letter = self.letter);
        plan.put(outputs::NAME.at(at), &name);
        plan.put(outputs::STAGE.at(at), self.stage);
        plan.put(outputs::ON_LEVEL.at(at), self.on_level);
        plan.put(outputs::CURRENT_LIMIT.at(at), self.current_limit);
        plan.put(outputs::CLAMP.at(at), self.clamp);
        plan.put(outputs::PULSE_LIMIT.at(at), self.pulse_limit);
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
        let mut description = Self { name, ..Self::default() };
        description.take(Part::Outputs, self);
        description
    }

    /// Takes the outputs of a description in place of its own. Loads stay, and hang on the output that they name.
    pub fn take_controller(&mut self, description: &Self) {
        self.take(Part::Outputs, description);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        fields::{engine, loads},
        finding::Severity,
        plan::{parse, write},
        report::report,
    };

    #[test]
    fn every_generic_description_can_be_read() {
        for generic in GENERICS {
            let plan = generic.describe();
            let report = report(&plan);
            let wrong = report.findings.iter().find(|it| it.severity <= Severity::Doubt);
            assert_eq!(wrong, None, "{}", generic.name);
            assert!(plan.count(Part::Outputs) > 0, "{}", generic.name);
        }
    }

    #[test]
    fn a_description_goes_through_a_file_into_another_plan() {
        let mut one = GENERICS[1].describe();
        one.name = "special".into();
        one.put(engine::CYLINDERS, "6");
        let file = write(&one.controller());
        let read = parse(&file).expect("it was written so");
        assert_eq!(read.text(engine::CYLINDERS), "", "nothing but the outputs");
        let mut other = Plan::named("other");
        let load = other.add(Part::Loads);
        other.put(loads::OUTPUT.at(load), "D3");
        other.take_controller(&read);
        assert!(other.is_same_in(&one, Part::Outputs));
        assert_eq!(
            (other.name.as_str(), other.count(Part::Loads)),
            ("other", 1),
            "what is its own stays"
        );
    }
}
