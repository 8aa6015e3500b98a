//! From what was typed to typed values: the only way from a plan to the trade.

mod again;
mod channels;
mod coils;
mod conditions;
mod cranking;
mod engine;
mod entry;
mod fuel;
mod injectors;
mod light;
mod problem;
mod relays;
mod rest;
mod row;
mod strip;
mod trigger;

use std::{collections::BTreeMap, rc::Rc};

use serde::Serialize;

pub use conditions::{Conditions, Corner};
pub use entry::Entry;

use crate::{
    channels::Ignition,
    fields::{self, Field, Kind},
    finding::{Finding, Findings},
    message::Message,
    plan::Plan,
    quantity::{Band, Dimension, Measure, Misread, Span, Value, read_span},
};

pub(crate) use channels::{Channels, INJECTION, Paths, SECOND, Seen, ignition, injection};
pub(crate) use coils::{Coiled, coils};
pub(crate) use conditions::conditions;
pub(crate) use cranking::{Known, cranking};
pub(crate) use engine::{engine, highest_speed, written};
pub(crate) use fuel::{Fuelled, fuel};
pub(crate) use injectors::{Car, FeedParts, Injectors, Set, feed_parts, injectors};
pub(crate) use light::{Lit, light};
pub(crate) use relays::{Purpose, SpeedRelay, relays};
pub(crate) use rest::{
    Link, PlannedLoad, PlannedOutput, PlannedRest, RestBefore, Suppressed, Unasked, rest,
};
pub(crate) use row::row;
pub(crate) use strip::{Stripped, strip};
pub(crate) use trigger::{Sensed, Triggered, trigger};

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

/// How every field stands, by its path; shared with the report before where an edit left it alone.
pub type FieldStates = BTreeMap<String, Rc<FieldState>>;

/// Reads the fields of a plan, keeping for each how it stands.
#[derive(Debug)]
pub struct Reader<'a> {
    plan: &'a Plan,
    fields: FieldStates,
    findings: Findings,
}

impl<'a> Reader<'a> {
    /// A reader of this plan.
    pub fn new(plan: &'a Plan) -> Self {
        Self { plan, fields: BTreeMap::new(), findings: Findings::default() }
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
        self.span(path, Q::DIMENSION).map(Span::band)
    }

    /// The same in base units: one piece of code for every dimension.
    fn span(&mut self, path: &str, dimension: Dimension) -> Entry<Span> {
        self.read(
            path,
            |field, text| span_of(field, dimension, text),
            |span| span_value(*span, dimension),
        )
    }

    /// A whole number.
    pub fn whole(&mut self, path: &str) -> Entry<u32> {
        self.read(path, problem::whole_of, |number| Value::from(*number))
    }

    /// The code of a choice.
    pub fn choice(&mut self, path: &str) -> Entry<&'static str> {
        self.read(path, problem::choice_of, |code| Value::text(label(path, code)))
    }

    /// A whole number that another question reads: what is wrong with it is said there.
    fn whole_elsewhere(&self, path: &str) -> Option<u32> {
        problem::whole_of(fields::find(path)?, self.text(path)).ok()
    }

    /// A choice that another question reads: what is wrong with it is said there.
    fn choice_elsewhere(&self, path: &str) -> Option<&'static str> {
        problem::choice_of(fields::find(path)?, self.text(path)).ok()
    }

    /// A quantity that another question reads, or what is taken for it: what is wrong with it is said there.
    fn band_elsewhere<Q: Measure>(&self, path: &str) -> Option<Band<Q>> {
        let span = span_of(fields::find(path)?, Q::DIMENSION, self.text(path)).ok();
        span.map(Span::band).or_else(|| usual_band(path).map(|(band, _)| band))
    }

    /// How the coils are fired, where that is known.
    fn ignition_mode(&self) -> Option<Ignition> {
        self.choice_elsewhere("channels.ignition_mode").map(channels::ignition_of)
    }

    /// How the injectors are fired, where that is known, and the turns of the crank in a cycle.
    fn injection(&self) -> (Option<&'static str>, u32) {
        let turns_of_cycle = match self.choice_elsewhere("engine.kind") {
            Some("two-stroke" | "rotary") => 1,
            _ => 2,
        };
        (self.choice_elsewhere("channels.injection_mode"), turns_of_cycle)
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

    /// The first of `paths` where something was typed: what is wrong between fields is said at one that can be mended.
    pub fn typed_of<'p>(&self, paths: [&'p str; 2]) -> &'p str {
        let [first, other] = paths;
        if self.text(first).is_empty() { other } else { first }
    }

    /// Whether a field whose path begins so can't be used.
    pub fn has_unusable(&self, start: &str) -> bool {
        let mut fields = self.fields.iter();
        fields.any(|(path, field)| path.starts_with(start) && field.state == State::Unreadable)
    }

    /// Keeps a finding about a field that can be used.
    pub fn remark(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// Says at a field that was read what is wrong with it beside the others.
    pub fn object(&mut self, path: &str, problem: &Message) {
        if let Some(field) = self.fields.get_mut(path) {
            Rc::make_mut(field).problem = Some(problem.clone());
        }
    }

    /// How the fields stand, and what is wrong with them.
    pub fn into_parts(self) -> (FieldStates, Vec<Rc<Finding>>) {
        (self.fields, self.findings.into_all())
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
        self.fields.insert(path.to_owned(), Rc::new(FieldState { state, value, basis, problem }));
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
pub(crate) fn assumed_is_readable(field: &Field, text: &str) -> bool {
    match field.kind {
        Kind::Whole(..) => problem::whole_of(field, text).is_ok(),
        Kind::Choice(_) => problem::choice_of(field, text).is_ok(),
        Kind::Quantity { dimension, .. } => span_of(field, dimension, text).is_ok(),
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

/// What is assumed for a quantity when its field is blank, and how it is shown.
pub(crate) fn usual_band<Q: Measure>(path: &str) -> Option<(Band<Q>, Value)> {
    let field = fields::find(path)?;
    let span = span_of(field, Q::DIMENSION, field.assumed?.text).ok()?;
    Some((span.band(), span_value(span, Q::DIMENSION)))
}

fn span_value(span: Span, dimension: Dimension) -> Value {
    let value = dimension.show(span.nominal);
    if span.low < span.high {
        let (low, high) = (dimension.show(span.low), dimension.show(span.high));
        return value.said(format!("{} to {}", low.shown, high.shown));
    }
    value
}

fn span_of(field: &Field, wanted: Dimension, text: &str) -> Result<Span, problem::Problem> {
    let Kind::Quantity { dimension, unit, low, high } = field.kind else {
        return Err(problem::Problem::Misread(Misread::NoNumber));
    };
    if dimension != wanted {
        return Err(problem::Problem::Misread(Misread::OtherDimension(wanted)));
    }
    let span = read_span(text, dimension, unit).map_err(problem::Problem::Misread)?;
    let limit = |number: f64| dimension.in_base(number, unit).map_err(problem::Problem::Misread);
    let (low, high) = (limit(low)?, limit(high)?);
    let beyond = |value| {
        let (value, low, high) = (dimension.show(value), dimension.show(low), dimension.show(high));
        Box::new(problem::Beyond { value, low, high })
    };
    // a limit typed to the last digit must not fail by the last bit
    let slack = 1e-9 * (high - low).abs();
    if span.low < low - slack {
        return Err(problem::Problem::TooSmall(beyond(span.low)));
    }
    if span.high > high + slack {
        return Err(problem::Problem::TooLarge(beyond(span.high)));
    }
    Ok(span)
}
