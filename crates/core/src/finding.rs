//! Things the fitter should know, and what to do about each.

mod moment;
mod scale;

use std::rc::Rc;

use serde::Serialize;

pub use moment::Moment;
pub use scale::{COMMON, Rung, SCALE};

use crate::{message::Message, quantity::Holds, sorted, working::Step};

/// How much a finding matters, worst first: by the rule of [`SCALE`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Can hurt someone, or destroys a part in use as planned.
    Danger,
    /// Won't work, or destroys a part in a foreseeable state.
    Fault,
    /// Works with too little margin, or depends on something not known.
    Doubt,
    /// Worth knowing.
    Note,
}

/// What a finding was made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Basis {
    /// The plan as it is meant.
    AsPlanned,
    /// What was found at the car.
    AsWired,
}

/// One thing the fitter should know.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// The path of the field or part it is about, as in [`crate::fields`]: the page leads there.
    pub subject: String,
    /// Whether the plan or the car shows it.
    pub basis: Basis,
    /// When it strikes.
    pub strikes: Moment,
    /// Where it holds.
    pub holds: Holds,
    /// What is wrong; its code names the finding.
    pub message: Message,
    /// What would cure it, each solved before it is offered.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub remedies: Vec<Message>,
    /// How the numbers in it were found.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub working: Vec<Step>,
    /// Whether it is a slip of the field it is about, and is said there too.
    #[serde(skip)]
    pub(crate) is_slip: bool,
}

impl Finding {
    /// A finding that holds always, as planned, with no remedy yet.
    pub fn new(severity: Severity, subject: impl Into<String>, message: Message) -> Self {
        Self {
            severity,
            subject: subject.into(),
            basis: Basis::AsPlanned,
            strikes: Moment::of(message.code),
            holds: Holds::Always,
            message,
            remedies: Vec::new(),
            working: Vec::new(),
            is_slip: false,
        }
    }

    /// The same, found at the car.
    #[must_use]
    pub fn as_wired(mut self) -> Self {
        self.basis = Basis::AsWired;
        self
    }

    /// The same, striking then.
    #[must_use]
    pub fn striking(mut self, strikes: Moment) -> Self {
        self.strikes = strikes;
        self
    }

    /// The same, holding at these corners: what holds at some corners of the supply strikes with the first of those.
    /// Corners of another kind (a cold engine's cranking) say nothing of when.
    #[must_use]
    pub fn holding(mut self, holds: Holds) -> Self {
        if let Holds::AtSome(corners) = &holds
            && matches!(self.strikes, Moment::Cranking | Moment::Running)
        {
            let is_of = |beginning: &str| corners.iter().any(|name| name.starts_with(beginning));
            let is_only_of = |beginnings: [&str; 2]| {
                corners.iter().all(|name| beginnings.iter().any(|it| name.starts_with(it)))
            };
            if is_of("cranking") {
                self.strikes = Moment::Cranking;
            } else if is_only_of(["charging", "at rest"]) {
                self.strikes = Moment::Running;
            }
        }
        self.holds = holds;
        self
    }

    /// The same, with remedies, best first.
    #[must_use]
    pub fn cured_by(mut self, remedies: impl IntoIterator<Item = Message>) -> Self {
        self.remedies.extend(remedies);
        self
    }

    /// The same, said at its field as well.
    #[must_use]
    pub(crate) fn at_its_field(mut self) -> Self {
        self.is_slip = true;
        self
    }

    /// The same, with the working of its numbers.
    #[must_use]
    pub fn shown_by(mut self, working: impl IntoIterator<Item = Step>) -> Self {
        self.working.extend(working);
        self
    }
}

/// Puts findings in the order in which they are told: Dangers and Faults first, by when they strike, the gravest of a moment
/// first; then Doubts and then Notes likewise. What is alike keeps its order, which is that of the questions.
pub(crate) fn in_order(findings: &mut Vec<Rc<Finding>>) {
    let place = |it: &Finding| (it.severity.max(Severity::Fault), it.strikes, it.severity);
    sorted::by(findings, |one: &Rc<Finding>, other| place(one).cmp(&place(other)));
}

/// The findings of a report as they are gathered; what is known from the report before is shared with it.
#[derive(Clone, Debug, Default)]
pub struct Findings {
    gathered: Vec<Rc<Finding>>,
}

impl Findings {
    /// Adds one.
    pub fn push(&mut self, finding: Finding) {
        self.gathered.push(Rc::new(finding));
    }

    /// Adds what was found before.
    pub(crate) fn share(&mut self, known: &[Rc<Finding>]) {
        self.gathered.extend_from_slice(known);
    }

    /// Takes those behind the first `count` away.
    pub(crate) fn split_off(&mut self, count: usize) -> Vec<Rc<Finding>> {
        self.gathered.split_off(count.min(self.gathered.len()))
    }

    /// How many there are.
    pub(crate) fn count(&self) -> usize {
        self.gathered.len()
    }

    /// Those behind the first `count`.
    pub(crate) fn since(&self, count: usize) -> &[Rc<Finding>] {
        self.gathered.get(count..).unwrap_or_default()
    }

    /// All of them, in the order in which they were gathered.
    pub(crate) fn into_all(self) -> Vec<Rc<Finding>> {
        self.gathered
    }
}

impl Extend<Finding> for Findings {
    fn extend<T: IntoIterator<Item = Finding>>(&mut self, findings: T) {
        self.gathered.extend(findings.into_iter().map(Rc::new));
    }
}

#[cfg(test)]
mod tests {
    use super::{Finding, Moment, Severity};
    use crate::{quantity::Holds, questions::feeds::words, say};

    fn strikes(first: Moment, corners: &[&str]) -> Moment {
        let message = say!(words::DO_RELAY);
        let holds = Holds::AtSome(corners.iter().map(|it| (*it).to_owned()).collect());
        Finding::new(Severity::Fault, "", message).striking(first).holding(holds).strikes
    }

    #[test]
    fn what_holds_at_some_corners_of_the_supply_strikes_with_the_first_of_them() {
        assert_eq!(strikes(Moment::Running, &["charging, hot", "cranking, hot"]), Moment::Cranking);
        assert_eq!(
            strikes(Moment::Cranking, &["at rest, 20 °C", "charging, hot"]),
            Moment::Running
        );
        assert_eq!(strikes(Moment::KeyOn, &["charging, hot"]), Moment::KeyOn);
    }

    #[test]
    fn corners_of_another_kind_say_nothing_of_when() {
        assert_eq!(strikes(Moment::Cranking, &["cold, thick oil, shallow dips"]), Moment::Cranking);
        assert_eq!(strikes(Moment::Running, &["coil hot"]), Moment::Running);
    }
}
