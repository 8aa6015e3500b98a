//! What a field is called, what it takes, what is assumed when it is left blank.

use std::marker::PhantomData;

use super::{Choice, Choosable, Part};
use crate::quantity::{Dimension, Measure, number};

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
    Choice(&'static [Choosable]),
    /// The name of a record of this part.
    NameIn(Part),
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

/// When a field is asked at all: where another of its record has one of these values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Condition {
    /// The other field's name.
    pub name: &'static str,
    /// The codes; where none is named, anything that was typed.
    pub codes: &'static [&'static str],
}

/// A field of a record.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Its name in the record.
    pub name: &'static str,
    /// Whether it is a list of texts: a cell for each channel, or cylinder.
    pub is_list: bool,
    /// What it is called.
    pub label: &'static str,
    /// A short word of help, or nothing.
    pub hint: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// What is assumed when it is blank, as it would be typed; where that comes from: [`Place::basis`](super::Place::basis).
    pub assumed: Option<&'static str>,
    /// Whether it is known how to find the value at the car: [`Place::measure`](super::Place::measure).
    pub is_measured: bool,
    /// When it is shown.
    pub tier: Tier,
    /// Where it is shown only beside another.
    pub only_if: Option<Condition>,
    /// Whether it is the same on every part of one kind: blank, it is as on the record that this one is like.
    pub is_of_kind: bool,
}

impl Field {
    /// An example of what may be typed.
    pub fn example(&self) -> String {
        match (self.assumed, self.kind) {
            (Some(assumed), _) => assumed.to_owned(),
            (None, Kind::Quantity { unit, low, high, .. }) => {
                let middle = if low > 0.0 { (low * high).sqrt() } else { f64::midpoint(low, high) };
                format!("{} {unit}", number(middle))
            }
            (None, Kind::Whole(low, _)) => low.to_string(),
            (None, Kind::Choice(choices)) => {
                choices.first().map_or("", |choice| choice.label).to_owned()
            }
            (None, Kind::Text | Kind::Row | Kind::NameIn(_)) => self.hint.to_owned(),
        }
    }
}

/// Any text.
#[derive(Clone, Copy, Debug)]
pub enum Text {}

/// Numbers in a row.
#[derive(Clone, Copy, Debug)]
pub enum NumberRow {}

/// A whole number.
#[derive(Clone, Copy, Debug)]
pub enum Whole {}

/// The name of an output of the plan.
#[derive(Clone, Copy, Debug)]
pub enum OutputName {}

/// The name of a relay of the plan.
#[derive(Clone, Copy, Debug)]
pub enum RelayName {}

/// The name of a load of the plan.
#[derive(Clone, Copy, Debug)]
pub enum LoadName {}

/// The name of an input of the plan.
#[derive(Clone, Copy, Debug)]
pub enum InputName {}

/// The name of a sensor supply of the plan.
#[derive(Clone, Copy, Debug)]
pub enum SupplyName {}

/// A field while it is declared: what it takes is known to the compiler.
#[derive(Debug)]
pub struct Draft<T> {
    field: Field,
    basis: &'static str,
    measure: &'static str,
    takes: PhantomData<T>,
}

/// A quantity; a number without unit is in `unit`, and it lies between `low` and `high` in `unit`.
pub(crate) const fn quantity<Q: Measure>(
    name: &'static str,
    label: &'static str,
    unit: &'static str,
    low: f64,
    high: f64,
) -> Draft<Q> {
    Draft::new(name, label, Kind::Quantity { dimension: Q::DIMENSION, unit, low, high })
}

/// One of several.
pub(crate) const fn choice<C: Choice>(name: &'static str, label: &'static str) -> Draft<C> {
    Draft::new(name, label, Kind::Choice(C::TABLE))
}

/// A whole number between the two, both possible.
pub(crate) const fn whole(
    name: &'static str,
    label: &'static str,
    low: u32,
    high: u32,
) -> Draft<Whole> {
    Draft::new(name, label, Kind::Whole(low, high))
}

/// Numbers in a row.
pub(crate) const fn row(name: &'static str, label: &'static str) -> Draft<NumberRow> {
    Draft::new(name, label, Kind::Row)
}

/// Any text.
pub(crate) const fn text(name: &'static str, label: &'static str) -> Draft<Text> {
    Draft::new(name, label, Kind::Text)
}

/// The name of an output of the plan.
pub(crate) const fn output_name(name: &'static str, label: &'static str) -> Draft<OutputName> {
    Draft::new(name, label, Kind::NameIn(Part::Outputs))
}

/// The name of a relay of the plan.
pub(crate) const fn relay_name(name: &'static str, label: &'static str) -> Draft<RelayName> {
    Draft::new(name, label, Kind::NameIn(Part::Relays))
}

/// The name of a load of the plan.
pub(crate) const fn load_name(name: &'static str, label: &'static str) -> Draft<LoadName> {
    Draft::new(name, label, Kind::NameIn(Part::Loads))
}

/// The name of an input of the plan.
pub(crate) const fn input_name(name: &'static str, label: &'static str) -> Draft<InputName> {
    Draft::new(name, label, Kind::NameIn(Part::Inputs))
}

/// The name of a sensor supply of the plan.
pub(crate) const fn supply_name(name: &'static str, label: &'static str) -> Draft<SupplyName> {
    Draft::new(name, label, Kind::NameIn(Part::SensorSupplies))
}

impl<T> Draft<T> {
    const fn new(name: &'static str, label: &'static str, kind: Kind) -> Self {
        let field = Field {
            name,
            is_list: false,
            label,
            hint: "",
            kind,
            assumed: None,
            is_measured: false,
            tier: Tier::Usual,
            only_if: None,
            is_of_kind: false,
        };
        Self { field, basis: "", measure: "", takes: PhantomData }
    }

    const fn with(&self, field: Field) -> Self {
        Self { field, basis: self.basis, measure: self.measure, takes: PhantomData }
    }

    /// The field as it was declared.
    pub(crate) const fn field(&self) -> Field {
        self.field
    }

    /// A list of texts, each of which takes the same.
    pub(crate) const fn each(self) -> Self {
        self.with(Field { is_list: true, ..self.field })
    }

    pub(crate) const fn hint(self, hint: &'static str) -> Self {
        self.with(Field { hint, ..self.field })
    }

    pub(crate) const fn assumed(self, text: &'static str, basis: &'static str) -> Self {
        let field = Field { assumed: Some(text), ..self.field };
        Self { field, basis, measure: self.measure, takes: PhantomData }
    }

    pub(crate) const fn measure(self, measure: &'static str) -> Self {
        let field = Field { is_measured: true, ..self.field };
        Self { field, basis: self.basis, measure, takes: PhantomData }
    }

    /// Where the value that is assumed comes from.
    pub(crate) const fn basis(&self) -> &'static str {
        self.basis
    }

    /// How to find the value at the car.
    pub(crate) const fn how(&self) -> &'static str {
        self.measure
    }

    pub(crate) const fn first(self) -> Self {
        self.with(Field { tier: Tier::First, ..self.field })
    }

    pub(crate) const fn rare(self) -> Self {
        self.with(Field { tier: Tier::Rare, ..self.field })
    }

    /// The same on every part of one kind.
    pub(crate) const fn of_kind(self) -> Self {
        self.with(Field { is_of_kind: true, ..self.field })
    }

    /// Asked only where the field of this name has one of these values; where none is named, any.
    pub(crate) const fn only_if(self, name: &'static str, codes: &'static [&'static str]) -> Self {
        self.with(Field { only_if: Some(Condition { name, codes }), ..self.field })
    }
}
