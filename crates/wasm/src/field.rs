//! The fields of a plan, in the shape in which JavaScript gets them.

use quietpin_core::schema::{self, Choosable, Kind, Place, Tier};
use serde::Serialize;

/// A field of the plan.
#[derive(Debug, Serialize)]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS), ts(optional_fields))]
pub(crate) struct Field {
    /// Its path in the plan; `#` stands for the number of an entry.
    path: String,
    /// What it is called.
    label: &'static str,
    /// A short word of help, or nothing.
    hint: &'static str,
    /// How to find the value at the car, or nothing.
    measure: &'static str,
    /// An example of what may be typed, or nothing.
    example: String,
    /// When it is asked.
    asked: Asked,
    /// What it takes.
    takes: Takes,
    /// What is assumed when it is blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    assumed: Option<Assumed>,
    /// Asked only where another field has one of these values.
    #[serde(skip_serializing_if = "Option::is_none")]
    only_if: Option<OnlyIf>,
}

/// When a field is asked.
#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS))]
enum Asked {
    /// Among the first three things.
    First,
    /// In the order in which it becomes known.
    Usual,
    /// Under more details.
    Rare,
}

/// What a field takes.
#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS))]
enum Takes {
    /// Any text.
    Text,
    /// Numbers in a row.
    Row,
    /// The name of a record of this part of the plan.
    NameIn {
        /// The part.
        part: &'static str,
    },
    /// A whole number.
    Whole {
        /// The lowest possible.
        low: u32,
        /// The highest possible.
        high: u32,
    },
    /// A number with its unit.
    Quantity {
        /// What it measures, in words.
        what: &'static str,
        /// The unit of a number without one, and of the limits.
        unit: &'static str,
        /// The lowest possible.
        low: f64,
        /// The highest possible.
        high: f64,
    },
    /// One of several.
    Choice {
        /// These.
        choices: Vec<Choice>,
    },
}

/// One of the things that can be chosen.
#[derive(Debug, Serialize)]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS))]
struct Choice {
    /// As it stands in the plan.
    code: &'static str,
    /// As a person reads it.
    label: &'static str,
}

/// A value taken when a field is blank.
#[derive(Debug, Serialize)]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS))]
struct Assumed {
    /// As it would be typed.
    text: &'static str,
    /// Where it comes from.
    basis: &'static str,
}

/// What another field must be.
#[derive(Debug, Serialize)]
#[cfg_attr(all(test, not(target_arch = "wasm32")), derive(ts_rs::TS))]
struct OnlyIf {
    /// The path of the other field, in the same record.
    path: String,
    /// One of these values.
    values: &'static [&'static str],
}

/// Every field of a plan.
pub(crate) fn all() -> Vec<Field> {
    schema::places().map(Field::from).collect()
}

impl From<Place> for Field {
    fn from(place: Place) -> Self {
        let field = place.field();
        let only_if = field.only_if.and_then(|only| {
            Some(OnlyIf { path: place.beside(only.name)?.pattern(), values: only.codes })
        });
        Self {
            path: place.pattern(),
            label: field.label,
            hint: field.hint,
            measure: place.measure(),
            example: field.example(),
            asked: match field.tier {
                Tier::First => Asked::First,
                Tier::Usual => Asked::Usual,
                Tier::Rare => Asked::Rare,
            },
            takes: field.kind.into(),
            assumed: field.assumed.map(|text| Assumed { text, basis: place.basis() }),
            only_if,
        }
    }
}

impl From<Kind> for Takes {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Text => Self::Text,
            Kind::Row => Self::Row,
            Kind::NameIn(part) => Self::NameIn { part: part.name() },
            Kind::Whole(low, high) => Self::Whole { low, high },
            Kind::Quantity { dimension, unit, low, high } => {
                Self::Quantity { what: dimension.name(), unit, low, high }
            }
            Kind::Choice(choices) => {
                let choice = |it: &Choosable| Choice { code: it.code, label: it.label };
                Self::Choice { choices: choices.iter().map(choice).collect() }
            }
        }
    }
}
