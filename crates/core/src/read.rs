//! From what was typed to typed values: the only way from a plan to the trade.

pub(crate) mod again;
mod entry;
pub(crate) mod problem;
pub(crate) mod row;

pub(crate) use crate::{
    car::{conditions::read as conditions, engine::read as engine, relays::read as relay_records},
    questions::{
        coils::read as coils,
        cranking::read::{self as cranking, relays},
        firing::read::{self as channels, strip},
        fuel::read as fuel,
        injectors::read as injectors,
        outputs::read as rest,
        trigger::read as trigger,
    },
};

use std::{collections::BTreeMap, rc::Rc};

use serde::Serialize;

pub use conditions::{Conditions, Corner};
pub use entry::Entry;

use crate::{
    channels::{Ignition, Injection},
    engine::EngineKind,
    fields,
    finding::{Finding, Findings},
    message::Message,
    plan::Plan,
    quantity::{Band, Dimension, Measure, Misread, Span, Value, read_span_within},
    schema::{Choice, Choosable, Field, Key, Kind, Place, Whole},
};

pub(crate) use channels::{Channels, Keys, SECOND, Seen};
pub(crate) use coils::{Coiled, coils};
pub(crate) use conditions::conditions;
pub(crate) use cranking::{Known, Wanted, cranking};
pub(crate) use engine::{engine, highest_speed, written};
pub(crate) use fuel::{Fuelled, fuel};
pub(crate) use injectors::{
    FeedParts, InjectorSurroundings, Injectors, WhichSet, feed_parts, injectors,
};
pub(crate) use relays::{KeyPump, Purpose, SpeedRelay, key_pumps, relays};
pub(crate) use rest::{
    LoadPlace, OutputLink, PlannedLoad, PlannedOutput, PlannedRest, PlannedThrottle, PowerCut,
    RestBefore, Suppressed, Unasked, rest,
};
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
    pub(crate) fields: FieldStates,
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

    /// The text at a place, trimmed.
    pub fn text(&self, place: impl Into<Place>) -> &'a str {
        self.plan.text(place).trim()
    }

    /// Whether something was typed at a place.
    pub fn is_typed(&self, place: impl Into<Place>) -> bool {
        !self.text(place).is_empty()
    }

    /// A quantity, with its tolerance where one was typed.
    pub fn band<Q: Measure>(&mut self, key: Key<Q>) -> Entry<Band<Q>> {
        self.span(key.place(), Q::DIMENSION).map(Span::band)
    }

    /// The same in base units: one piece of code for every dimension.
    fn span(&mut self, place: Place, dimension: Dimension) -> Entry<Span> {
        self.read(
            place,
            |field, text| span_of(field, dimension, text),
            |span| span_value(*span, dimension),
        )
    }

    /// A whole number.
    pub fn whole(&mut self, key: Key<Whole>) -> Entry<u32> {
        self.read(key.place(), problem::whole_of, |number| Value::from(*number))
    }

    /// One of several.
    pub fn choice<C: Choice>(&mut self, key: Key<C>) -> Entry<C> {
        let number = self.number_of_choice(key.place(), C::TABLE);
        number.filter_map(|number| C::ALL.get(number).copied())
    }

    /// Its number among them.
    fn number_of_choice(&mut self, place: Place, table: &'static [Choosable]) -> Entry<usize> {
        self.read(
            place,
            |_, text| problem::choice_of(table, text),
            |number| Value::text(table.get(*number).map_or("", |it| it.label)),
        )
    }

    /// A whole number that another question reads: what is wrong with it is said there.
    pub(crate) fn whole_elsewhere(&self, key: Key<Whole>) -> Option<u32> {
        problem::whole_of(key.field(), self.text(key)).ok()
    }

    /// A choice that another question reads: what is wrong with it is said there.
    pub(crate) fn choice_elsewhere<C: Choice>(&self, key: Key<C>) -> Option<C> {
        let number = problem::choice_of(C::TABLE, self.text(key)).ok()?;
        C::ALL.get(number).copied()
    }

    /// A quantity that another question reads, or what is taken for it: what is wrong with it is said there.
    pub(crate) fn band_elsewhere<Q: Measure>(&self, key: Key<Q>) -> Option<Band<Q>> {
        let span = span_of(key.field(), Q::DIMENSION, self.text(key)).ok();
        span.map(Span::band).or_else(|| usual_band(key).map(|(band, _)| band))
    }

    /// How the coils are fired, where that is known.
    pub(crate) fn ignition_mode(&self) -> Option<Ignition> {
        self.choice_elsewhere(fields::channels::IGNITION_MODE)
    }

    /// How the injectors are fired, where that is known, and the turns of the crank in a cycle.
    pub(crate) fn injection(&self) -> (Option<Injection>, u32) {
        let turns_of_cycle = match self.choice_elsewhere(fields::engine::KIND) {
            Some(EngineKind::TwoStroke | EngineKind::Rotary) => 1,
            Some(EngineKind::FourStroke) | None => 2,
        };
        (self.choice_elsewhere(fields::channels::INJECTION_MODE), turns_of_cycle)
    }

    /// Reads a field that no answer rests on: nothing is taken for it where it is blank.
    pub(crate) fn stand(&mut self, place: Place) {
        if self.fields.contains_key(&place.path()) {
            return;
        }
        if self.text(place).is_empty() {
            return self.missing(place);
        }
        match place.field().kind {
            Kind::Whole(..) => drop(self.read(place, problem::whole_of, |it| Value::from(*it))),
            Kind::Choice(table) => drop(self.number_of_choice(place, table)),
            Kind::Quantity { dimension, .. } => drop(self.span(place, dimension)),
            Kind::Text | Kind::Row | Kind::NameIn(_) => {
                self.given(place, problem::shortened(self.text(place)));
            }
        }
    }

    /// Takes `value` where an entry is missing, and says why.
    pub fn or_assume<T>(
        &mut self,
        place: impl Into<Place>,
        entry: Entry<T>,
        value: T,
        shown: impl Into<Value>,
        basis: &str,
    ) -> Entry<T> {
        if !matches!(entry, Entry::Missing) {
            return entry;
        }
        self.keep(place.into(), State::Assumed, Some(shown.into()), Some(basis), None);
        Entry::Assumed(value)
    }

    /// Keeps a value that a question read by itself (a row of cylinders).
    pub fn given(&mut self, place: impl Into<Place>, shown: impl Into<Value>) {
        self.keep(place.into(), State::Given, Some(shown.into()), None, None);
    }

    /// Keeps that a blank field goes without.
    pub fn missing(&mut self, place: impl Into<Place>) {
        self.keep(place.into(), State::Missing, None, None, None);
    }

    /// Marks a field as one that can't be used, with the finding that says why.
    pub fn unusable(&mut self, finding: Finding) {
        let (path, message) = (finding.subject.clone(), finding.message.clone());
        self.keep_at(path, State::Unreadable, None, None, Some(message));
        self.findings.push(finding);
    }

    /// The first of these where something was typed: what is wrong between fields is said at one that can be mended.
    pub fn typed_of<P: Copy + Into<Place>>(&self, [first, other]: [P; 2]) -> P {
        if self.is_typed(first) { first } else { other }
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

    /// How the fields stand, and what is wrong with them.
    pub fn into_parts(self) -> (FieldStates, Vec<Rc<Finding>>) {
        (self.fields, self.findings.into_all())
    }

    fn keep(
        &mut self,
        place: Place,
        state: State,
        value: Option<Value>,
        basis: Option<&str>,
        problem: Option<Message>,
    ) {
        self.keep_at(place.path(), state, value, basis, problem);
    }

    fn keep_at(
        &mut self,
        path: String,
        state: State,
        value: Option<Value>,
        basis: Option<&str>,
        problem: Option<Message>,
    ) {
        let basis = basis.map(str::to_owned);
        self.fields.insert(path, Rc::new(FieldState { state, value, basis, problem }));
    }

    /// Reads a field with `read_text`.
    fn read<T>(
        &mut self,
        place: Place,
        read_text: impl Fn(&Field, &str) -> Result<T, problem::Problem>,
        show: impl Fn(&T) -> Value,
    ) -> Entry<T> {
        let field = place.field();
        let typed = self.text(place);
        if typed.is_empty() {
            let assumed = field.assumed.and_then(|it| read_text(field, it).ok());
            return if let Some(value) = assumed {
                self.keep(place, State::Assumed, Some(show(&value)), Some(place.basis()), None);
                Entry::Assumed(value)
            } else {
                self.missing(place);
                Entry::Missing
            };
        }
        match read_text(field, typed) {
            Ok(value) => {
                self.given(place, show(&value));
                Entry::Given(value)
            }
            Err(problem) => {
                self.unusable(problem.finding(place, typed));
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
        Kind::Choice(table) => problem::choice_of(table, text).is_ok(),
        Kind::Quantity { dimension, .. } => span_of(field, dimension, text).is_ok(),
        Kind::Text | Kind::Row | Kind::NameIn(_) => false,
    }
}

/// What is assumed for a field when it is blank, as it is shown.
pub(crate) fn usual_shown(field: &Field) -> Option<Value> {
    let text = field.assumed?;
    Some(match field.kind {
        Kind::Quantity { dimension, .. } => {
            span_value(span_of(field, dimension, text).ok()?, dimension)
        }
        Kind::Choice(table) => Value::text(table.get(problem::choice_of(table, text).ok()?)?.label),
        Kind::Whole(..) | Kind::Text | Kind::Row | Kind::NameIn(_) => Value::text(text),
    })
}

/// What is assumed for a quantity when its field is blank, and how it is shown.
pub(crate) fn usual_band<Q: Measure>(key: Key<Q>) -> Option<(Band<Q>, Value)> {
    let field = key.field();
    let span = span_of(field, Q::DIMENSION, field.assumed?).ok()?;
    Some((span.band(), span_value(span, Q::DIMENSION)))
}

pub(crate) fn span_value(span: Span, dimension: Dimension) -> Value {
    let value = dimension.show(span.nominal);
    if span.low < span.high {
        let (low, high) = (dimension.show(span.low), dimension.show(span.high));
        return value.said(format!("{} to {}", low.shown, high.shown));
    }
    value
}

pub(crate) fn span_of(
    field: &Field,
    wanted: Dimension,
    text: &str,
) -> Result<Span, problem::Problem> {
    let Kind::Quantity { dimension, unit, low, high } = field.kind else {
        return Err(problem::Problem::Misread(Misread::NoNumber));
    };
    if dimension != wanted {
        return Err(problem::Problem::Misread(Misread::OtherDimension(wanted)));
    }
    let limit = |number: f64| dimension.in_base(number, unit).map_err(problem::Problem::Misread);
    let limits = (limit(low)?, limit(high)?);
    let span = read_span_within(text, dimension, unit, Some(limits));
    let span = span.map_err(problem::Problem::Misread)?;
    let (low, high) = limits;
    let beyond = |value: f64, meant: f64| {
        let is_possible = (low..=high).contains(&meant);
        let meant = is_possible.then(|| dimension.show(meant));
        let (value, low, high) = (dimension.show(value), dimension.show(low), dimension.show(high));
        Box::new(problem::Beyond { value, low, high, meant })
    };
    // a limit typed to the last digit must not fail by the last bit
    let slack = 1e-9 * (high - low).abs();
    if span.low < low - slack {
        return Err(problem::Problem::TooSmall(beyond(span.low, span.low * 1e3)));
    }
    if span.high > high + slack {
        return Err(problem::Problem::TooLarge(beyond(span.high, span.high * 1e-3)));
    }
    Ok(span)
}
