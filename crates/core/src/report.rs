//! The whole answer to a plan.

mod alike;
pub(crate) mod bench;
#[cfg(test)]
mod bounded;
pub mod lists;
mod pending;
pub(crate) mod picture;
pub(crate) mod recall;
mod section;
mod tried;
mod unread;
pub mod usual;

use std::rc::Rc;

use serde::Serialize;

pub use crate::questions::Memory;
pub use bench::{Bench, BenchChannel, Checklist, Item};
pub use picture::{
    BranchCurrent, Circuit, CircuitState, Curve, Cycle, CycleCylinder, CycleEvent, CycleStrip,
    Level, Outcome, Panel, Picture, StripWindow, Timeline, Traces,
};
pub(crate) use section::Detail;
pub use section::{Answer, AnswerRole, Figure, Row, Section, Table, Tone, Verdict};
pub use tried::{Made, tried, tried_further};

use crate::{
    car::Car,
    finding::{Finding, Findings, Severity, in_order},
    plan::Plan,
    questions,
    read::{FieldStates, Reader, problem::shortened},
    say,
};

/// Everything that follows from a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Report {
    /// The plan's name.
    pub name: String,
    /// What the fitter should know: Dangers and Faults first, by when they strike, then Doubts and Notes likewise.
    pub findings: Vec<Rc<Finding>>,
    /// The answers, question by question.
    pub sections: Vec<Section>,
    /// How each field stands, by its path.
    pub fields: FieldStates,
}

impl Report {
    /// The report as JSON.
    pub fn to_json(&self) -> String {
        // every map has texts for keys, and every number is finite or null: it can't fail
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Whether something can hurt someone, destroy a part or will not work.
    pub fn has_danger_or_fault(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity <= Severity::Fault)
    }
}

/// The report of a plan: the same plan gives the same report, bit for bit.
pub fn report(plan: &Plan) -> Report {
    report_after(&mut Memory::detailed(), plan)
}

/// The same report, sooner: what an edit leaves as it was is taken from the report before.
pub fn report_after(memory: &mut Memory, plan: &Plan) -> Report {
    let report = untried(memory, plan);
    tried(&report, plan, memory)
}

/// The report with all remedies that were found, as yet untried: sooner, where [`tried`] comes after it.
pub fn untried(memory: &mut Memory, plan: &Plan) -> Report {
    crate::counted::count(|done| done.reports += 1);
    let filled = plan.filled();
    let mut reader = Reader::new(filled.as_ref().map_or(plan, |filled| &filled.plan));
    let mut findings = Findings::default();
    let car = Car::read(&mut reader, memory);
    let mut sections = questions::answered(&car, memory, &mut findings);
    let (mut fields, mut all) = reader.into_parts();
    all.extend(left_over(plan).map(Rc::new));
    all.append(&mut findings.into_all());
    if let Some(filled) = &filled {
        alike::tell(filled, &mut fields, &mut all);
    }
    for finding in all.iter().filter(|it| it.is_slip) {
        if let Some(field) = fields.get_mut(&finding.subject) {
            Rc::make_mut(field).problem = Some(finding.message.clone());
        }
    }
    unread::tell(&fields, &mut sections);
    in_order(&mut all);
    Report { name: plan.name.clone(), findings: all, sections, fields }
}

/// How much of what has no place is shown; of a text, and of how many.
const MOST_SHOWN: usize = 6;

/// What the plan's file held that has no place in it.
fn left_over(plan: &Plan) -> Option<Finding> {
    let left = plan.left_over();
    let shown = left
        .iter()
        .take(MOST_SHOWN)
        .map(|(path, text)| format!("{} “{}”", shortened(path), shortened(text)));
    let mut list: Vec<_> = shown.collect();
    if let Some(more) = left.len().checked_sub(MOST_SHOWN).filter(|more| *more > 0) {
        list.push(format!("and {more} more"));
    }
    let list = list.join("; ");
    let message = say!(crate::words::field::NO_PLACE, n = left.len(), list = list);
    (!left.is_empty()).then(|| Finding::new(Severity::Doubt, "left_over", message))
}
