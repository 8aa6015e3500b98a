//! From what was typed to typed values: the only way from a plan to the trade.

mod channels;
mod conditions;
mod cranking;
mod engine;
mod entry;
mod injectors;
mod problem;
mod row;

use std::collections::BTreeMap;

use serde::Serialize;

pub use conditions::{Conditions, Corner};
pub use entry::Entry;

use crate::{
    fields::{self, Field, Kind},
    finding::Finding,
    message::Message,
    plan::Plan,
    quantity::{Band, Measure, Misread, Value, read_band},
};

pub(crate) use channels::{Channels, Seen, ignition, injection};
pub(crate) use conditions::conditions;
pub(crate) use cranking::{Known, cranking};
pub(crate) use engine::{engine, written};
pub(crate) use injectors::{Injectors, injectors};
pub(crate) use row::row;

/// How a field stands: what the page shows beside it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct FieldState {
    /// Whether it was given, assumed, left out or can't be read.
    pub state: State,
    /// The value as it was read or assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Value>,
    /// Where an assumed value comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub basis: Option<String>,
    /// What is wrong with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub problem: Option<Message>,
}

/// How a field stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// Typed, and read.
    Given,
    /// Blank: a usual value is taken.
    Assumed,
    /// Blank, and nothing is taken in its place.
    Missing,
    /// Typed, but it can't be used.
    Unreadable,
}

/// Reads the fields of a plan, keeping for each how it stands.
#[derive(Debug)]
pub struct Reader<'a> {
    plan: &'a Plan,
    fields: BTreeMap<String, FieldState>,
    findings: Vec<Finding>,
}

impl<'a> Reader<'a> {
    /// A reader of this plan.
    pub fn new(plan: &'a Plan) -> Self {
        Self { plan, fields: BTreeMap::new(), findings: Vec::new() }
    }

    /// The plan itself.
    pub fn plan(&self) -> &'a Plan {
        self.plan
    }

    /// The text at a path, trimmed.
    pub fn text(&self, path: &str) -> &'a str {
        self.plan.get(path).unwrap_or_default().trim()
    }

    /// A quantity, with its tolerance where one was typed.
    pub fn band<Q: Measure>(&mut self, path: &str) -> Entry<Band<Q>> {
        self.read(path, band_of, band_value)
    }

    /// A whole number.
    pub fn whole(&mut self, path: &str) -> Entry<u32> {
        self.read(path, problem::whole_of, |number| Value::from(*number))
    }

    /// The code of a choice.
    pub fn choice(&mut self, path: &str) -> Entry<&'static str> {
        self.read(path, problem::choice_of, |code| Value::text(label(path, code)))
    }

    /// Takes `value` where an entry is missing, and says why.
    pub fn or_assume<T>(
        &mut self,
        path: &str,
        entry: Entry<T>,
        value: T,
        shown: impl Into<Value>,
        basis: &str,
    ) -> Entry<T> {
        if !matches!(entry, Entry::Missing) {
            return entry;
        }
        self.keep(path, State::Assumed, Some(shown.into()), Some(basis), None);
        Entry::Assumed(value)
    }

    /// Keeps a value that a question read by itself (a row of cylinders).
    pub fn given(&mut self, path: &str, shown: impl Into<Value>) {
        self.keep(path, State::Given, Some(shown.into()), None, None);
    }

    /// Keeps that a blank field goes without.
    pub fn missing(&mut self, path: &str) {
        self.keep(path, State::Missing, None, None, None);
    }

    /// Marks a field as one that can't be used, with the finding that says why.
    pub fn unusable(&mut self, finding: Finding) {
        let (path, message) = (finding.subject.clone(), finding.message.clone());
        self.keep(&path, State::Unreadable, None, None, Some(message));
        self.findings.push(finding);
    }

    /// Keeps a finding about a field that can be used.
    pub fn remark(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// How the fields stand, and what is wrong with them.
    pub fn into_parts(self) -> (BTreeMap<String, FieldState>, Vec<Finding>) {
        (self.fields, self.findings)
    }

    fn keep(
        &mut self,
        path: &str,
        state: State,
        value: Option<Value>,
        basis: Option<&str>,
        problem: Option<Message>,
    ) {
        let basis = basis.map(str::to_owned);
        self.fields.insert(path.to_owned(), FieldState { state, value, basis, problem });
    }

    /// Reads a field with `read_text`, by its entry in [`fields`].
    fn read<T>(
        &mut self,
        path: &str,
        read_text: impl Fn(&Field, &str) -> Result<T, problem::Problem>,
        show: impl Fn(&T) -> Value,
    ) -> Entry<T> {
        let Some(field) = fields::find(path) else { return Entry::Missing };
        let typed = self.text(path);
        if typed.is_empty() {
            let assumed =
                field.assumed.and_then(|it| Some((read_text(field, it.text).ok()?, it.basis)));
            return if let Some((value, basis)) = assumed {
                self.keep(path, State::Assumed, Some(show(&value)), Some(basis), None);
                Entry::Assumed(value)
            } else {
                self.missing(path);
                Entry::Missing
            };
        }
        match read_text(field, typed) {
            Ok(value) => {
                self.given(path, show(&value));
                Entry::Given(value)
            }
            Err(problem) => {
                self.unusable(problem.finding(path, field, typed));
                Entry::Unreadable
            }
        }
    }
}

/// Whether the default of a field can be read: asked by the test of the fields.
#[cfg(test)]
pub(crate) fn assumed_is_readable(path: &str) -> bool {
    use crate::quantity as q;
    let plan = Plan {
        outputs: vec![crate::plan::Output::default()],
        loads: vec![crate::plan::Load::default()],
        ..Plan::default()
    };
    let reader = &mut Reader::new(&plan);
    let Some(field) = fields::find(path) else { return false };
    match field.kind {
        Kind::Whole(..) => reader.whole(path).value().is_some(),
        Kind::Choice(_) => reader.choice(path).value().is_some(),
        Kind::Quantity { dimension, .. } => match dimension {
            q::Dimension::Voltage => reader.band::<q::Voltage>(path).value().is_some(),
            q::Dimension::Current => reader.band::<q::Current>(path).value().is_some(),
            q::Dimension::Resistance => reader.band::<q::Resistance>(path).value().is_some(),
            q::Dimension::Inductance => reader.band::<q::Inductance>(path).value().is_some(),
            q::Dimension::Time => reader.band::<q::Time>(path).value().is_some(),
            q::Dimension::Length => reader.band::<q::Length>(path).value().is_some(),
            q::Dimension::WireSize => reader.band::<q::Area>(path).value().is_some(),
            q::Dimension::Temperature => reader.band::<q::Temperature>(path).value().is_some(),
            q::Dimension::Speed => reader.band::<q::RotationalSpeed>(path).value().is_some(),
            q::Dimension::Share => reader.band::<q::Ratio>(path).value().is_some(),
            q::Dimension::Angle => reader.band::<q::CrankAngle>(path).value().is_some(),
            _ => false,
        },
        Kind::Text | Kind::Row | Kind::OutputName => false,
    }
}

fn label(path: &str, code: &str) -> &'static str {
    let choices = match fields::find(path).map(|field| field.kind) {
        Some(Kind::Choice(choices)) => choices,
        _ => &[],
    };
    choices.iter().find(|choice| choice.code == code).map_or("", |choice| choice.label)
}

fn band_value<Q: Measure>(band: &Band<Q>) -> Value {
    if band.is_spread() {
        let mut value = band.nominal.show();
        value.shown = format!("{} to {}", band.low.show().shown, band.high.show().shown);
        return value;
    }
    band.nominal.show()
}

fn band_of<Q: Measure>(field: &Field, text: &str) -> Result<Band<Q>, problem::Problem> {
    let Kind::Quantity { dimension, unit, low, high } = field.kind else {
        return Err(problem::Problem::Misread(Misread::NoNumber));
    };
    if dimension != Q::DIMENSION {
        return Err(problem::Problem::Misread(Misread::OtherDimension(Q::DIMENSION)));
    }
    let band = read_band::<Q>(text, unit).map_err(problem::Problem::Misread)?;
    let limit = |number: f64| crate::quantity::read::<Q>(&format!("{number}"), unit);
    let (Ok(low), Ok(high)) = (limit(low), limit(high)) else {
        return Err(problem::Problem::Misread(Misread::NotFinite));
    };
    let beyond = |value| Box::new(problem::Beyond { value, low: low.show(), high: high.show() });
    // a limit typed to the last digit must not fail by the last bit
    let slack = 1e-9 * (high.base() - low.base()).abs();
    if band.low.base() < low.base() - slack {
        return Err(problem::Problem::TooSmall(beyond(band.low.show())));
    }
    if band.high.base() > high.base() + slack {
        return Err(problem::Problem::TooLarge(beyond(band.high.show())));
    }
    Ok(band)
}
