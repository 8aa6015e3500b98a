//! Every field of the plan: what it is called, what may be typed, what is assumed when it is left blank.

mod channels;
mod coils;
mod conditions;
mod cranking;
mod engine;
mod fuel;
mod injectors;
mod light;
mod relays;
mod rest;
mod strip;
mod trigger;

use crate::quantity::Dimension;

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// Any text.
    Text,
    /// Numbers of cylinders or angles in a row, or one of a list of cells: read by its own question.
    Row,
    /// A whole number between the two, both possible.
    Whole(u32, u32),
    /// A quantity; a number without unit is in `unit`, and it lies between `low` and `high` in `unit`.
    Quantity {
        /// What kind of quantity.
        dimension: Dimension,
        /// The unit that is usual for it.
        unit: &'static str,
        /// Lowest possible, in `unit`.
        low: f64,
        /// Highest possible, in `unit`.
        high: f64,
    },
    /// One of these.
    Choice(&'static [Choice]),
    /// The name of an output of the plan.
    OutputName,
}

/// One of the things that can be chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// As it stands in the plan.
    pub code: &'static str,
    /// As a person reads it.
    pub label: &'static str,
}

/// When a field is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tier {
    /// Among the first three things asked.
    First,
    /// In the order in which it becomes known.
    Usual,
    /// Under "more details".
    Rare,
}

/// A value taken when the field is blank, and why that one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Assumed {
    /// As it would be typed.
    pub text: &'static str,
    /// Where it comes from.
    pub basis: &'static str,
}

/// A field of the plan.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Its path in the plan; `#` stands for the number of an entry.
    pub path: &'static str,
    /// What it is called.
    pub label: &'static str,
    /// A short word of help, or nothing.
    pub hint: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// What is assumed when it is blank.
    pub assumed: Option<Assumed>,
    /// How to find the value at the car, with a multimeter where that is possible.
    pub measure: &'static str,
    /// When it is shown.
    pub tier: Tier,
    /// Shown only where the field at this path, in the same record, has one of these values; where none is named, any.
    pub only_if: Option<(&'static str, &'static [&'static str])>,
}

impl Field {
    const fn new(path: &'static str, label: &'static str, kind: Kind) -> Self {
        Self {
            path,
            label,
            hint: "",
            kind,
            assumed: None,
            measure: "",
            tier: Tier::Usual,
            only_if: None,
        }
    }
    const fn hint(mut self, hint: &'static str) -> Self {
        self.hint = hint;
        self
    }
    const fn assumed(mut self, text: &'static str, basis: &'static str) -> Self {
        self.assumed = Some(Assumed { text, basis });
        self
    }
    const fn measure(mut self, how: &'static str) -> Self {
        self.measure = how;
        self
    }
    const fn first(mut self) -> Self {
        self.tier = Tier::First;
        self
    }
    const fn rare(mut self) -> Self {
        self.tier = Tier::Rare;
        self
    }
    const fn only_if(mut self, path: &'static str, values: &'static [&'static str]) -> Self {
        self.only_if = Some((path, values));
        self
    }

    /// An example of what may be typed.
    pub fn example(&self) -> String {
        match (self.assumed, self.kind) {
            (Some(assumed), _) => assumed.text.to_owned(),
            (None, Kind::Quantity { unit, low, high, .. }) => {
                let middle = if low > 0.0 { (low * high).sqrt() } else { f64::midpoint(low, high) };
                format!("{} {unit}", crate::quantity::number(middle))
            }
            (None, Kind::Whole(low, _)) => low.to_string(),
            (None, Kind::Choice(choices)) => {
                choices.first().map_or("", |choice| choice.label).to_owned()
            }
            (None, Kind::Text | Kind::Row | Kind::OutputName) => self.hint.to_owned(),
        }
    }
}

const fn quantity(dimension: Dimension, unit: &'static str, low: f64, high: f64) -> Kind {
    Kind::Quantity { dimension, unit, low, high }
}

const fn choice(code: &'static str, label: &'static str) -> Choice {
    Choice { code, label }
}

const ALL: [&[Field]; 17] = [
    engine::FIELDS,
    channels::FIELDS,
    light::FIELDS,
    strip::FIELDS,
    injectors::FIELDS,
    injectors::SECOND,
    injectors::FEED,
    fuel::FIELDS,
    rest::FIELDS,
    cranking::FIELDS,
    relays::FIELDS,
    coils::FIELDS,
    trigger::FIELDS,
    trigger::CRANK,
    trigger::CAM,
    trigger::INPUT,
    conditions::FIELDS,
];

/// Every field, in the order in which a fitter can know the answers.
pub fn all() -> impl Iterator<Item = &'static Field> {
    ALL.into_iter().flatten()
}

/// The fields of one part of the plan (`engine`, `loads`).
pub fn of(section: &str) -> impl Iterator<Item = &'static Field> {
    all().filter(move |field| field.path.split('.').next() == Some(section))
}

/// The field at a path, where numbers stand for entries.
pub fn find(path: &str) -> Option<&'static Field> {
    all().find(|field| matches(field.path, path))
}

fn matches(pattern: &str, path: &str) -> bool {
    // a report asks thousands of times, and most patterns part from the path at either end
    let ends = |text: &str| (text.bytes().next(), text.bytes().next_back());
    let ((first, last), (path_first, path_last)) = (ends(pattern), ends(path));
    if first != path_first || (last != path_last && last != Some(b'#')) {
        return false;
    }
    match pattern.split_once('#') {
        None => pattern == path,
        Some((before, after)) => path
            .strip_prefix(before)
            .and_then(|rest| rest.strip_suffix(after))
            .is_some_and(|number| number.parse::<usize>().is_ok()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{Load, Output, Plan, SpeedRelay};

    #[test]
    fn every_field_has_a_place_in_the_plan() {
        let plan = Plan {
            outputs: vec![Output::default()],
            loads: vec![Load::default()],
            relays: vec![SpeedRelay::default()],
            ..Plan::default()
        };
        for field in all() {
            let path = field.path.replace('#', "0");
            assert!(plan.get(&path).is_some(), "{path} is no place in the plan");
            assert!(std::ptr::eq(find(&path).expect("found"), field), "{path} stands twice");
        }
    }

    #[test]
    fn every_text_in_the_plan_has_its_field() {
        let records = [
            ("conditions", crate::plan::Conditions::FIELDS),
            ("engine", crate::plan::Engine::FIELDS),
            ("channels", crate::plan::Channels::FIELDS),
            ("light", crate::plan::Light::FIELDS),
            ("strip", crate::plan::Strip::FIELDS),
            ("injectors", crate::plan::Injectors::FIELDS),
            ("second_injectors", crate::plan::Injectors::FIELDS),
            ("injector_feed", crate::plan::InjectorFeed::FIELDS),
            ("fuel", crate::plan::Fuel::FIELDS),
            ("outputs.0", Output::FIELDS),
            ("loads.0", Load::FIELDS),
            ("cranking", crate::plan::Cranking::FIELDS),
            ("relays.0", SpeedRelay::FIELDS),
            ("coils", crate::plan::Coils::FIELDS),
            ("trigger", crate::plan::Trigger::FIELDS),
            ("crank_sensor", crate::plan::TriggerSensor::FIELDS),
            ("cam_sensor", crate::plan::TriggerSensor::FIELDS),
            ("trigger_input", crate::plan::TriggerInput::FIELDS),
        ];
        for (record, names) in records {
            for name in names {
                let path = format!("{record}.{name}");
                assert!(
                    find(&path).or(find(&format!("{path}.0"))).is_some(),
                    "{path} has no field"
                );
            }
        }
    }

    #[test]
    fn what_is_assumed_can_be_read() {
        for field in all() {
            if let Some(assumed) = field.assumed {
                let is_readable = crate::read::assumed_is_readable(field, assumed.text);
                assert!(is_readable, "{}: its default can't be read", field.path);
            }
        }
    }
}
