//! The whole answer to a plan.

mod bench;
mod channels;
mod coils;
mod cranking;
mod fuel;
mod injectors;
mod pending;
mod picture;
mod recall;
mod rest;
mod section;
mod trigger;

use std::rc::Rc;

use serde::Serialize;

pub use bench::{Bench, BenchChannel, Checklist, Item};
pub use picture::{
    Branch, Circuit, CircuitState, Curve, Cycle, CycleCylinder, CycleEvent, CycleStrip, Level,
    Outcome, Panel, Picture, StripWindow, Timeline, Traces,
};
pub use section::{Answer, Figure, Row, Section, Table, Tone, Verdict};

use crate::{
    finding::{Finding, Findings, Severity},
    plan::Plan,
    read::{self, FieldStates, Reader},
    sorted,
};

/// Everything that follows from a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Report {
    /// The plan's name.
    pub name: String,
    /// What the fitter should know, worst first.
    pub findings: Vec<Rc<Finding>>,
    /// The answers, question by question.
    pub sections: Vec<Section>,
    /// How each field stands, by its path.
    pub fields: FieldStates,
}

impl Report {
    /// Whether something can hurt someone, destroy a part or will not work.
    pub fn has_danger_or_fault(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity <= Severity::Fault)
    }
}

/// What was read and answered for the report before: an edit of one question leaves the others as they are.
#[derive(Clone, Debug, Default)]
pub struct Memory {
    rest: rest::Memory,
    cranking: cranking::Memory,
}

/// The report of a plan: the same plan gives the same report, bit for bit.
pub fn report(plan: &Plan) -> Report {
    report_after(&mut Memory::default(), plan)
}

/// The same report, sooner: what an edit leaves as it was is taken from the report before.
pub fn report_after(memory: &mut Memory, plan: &Plan) -> Report {
    let mut reader = Reader::new(plan);
    let mut findings = Findings::default();
    let conditions = read::conditions(&mut reader);
    let engine = read::engine(&mut reader);
    let highest_speed = read::highest_speed(&mut reader);
    let (mut of_channels, mapped) = channels::section(&mut reader, engine.as_ref(), &mut findings);
    let others = [
        injectors::section(
            &mut reader,
            &read::Car { conditions: &conditions, engine: engine.as_ref(), highest_speed },
            &mut findings,
        ),
        rest::section(&mut reader, &conditions, &mut memory.rest, &mut findings),
        trigger::section(&mut reader, &conditions, engine.as_ref(), highest_speed, &mut findings),
        cranking::section(
            &mut reader,
            &conditions,
            engine.as_ref(),
            &mut memory.cranking,
            &mut findings,
        ),
    ];
    let (of_coils, dwell) =
        coils::section(&mut reader, &conditions, engine.as_ref(), highest_speed, &mut findings);
    let strip = channels::strip(&mut reader, highest_speed, dwell, engine.as_ref(), &mapped);
    of_channels.answers.extend(strip.map(Rc::new));
    let sections = [of_channels].into_iter().chain(others).chain([of_coils]).collect();
    let (fields, mut all) = reader.into_parts();
    all.append(&mut findings.into_all());
    // a stable sort keeps the order of the questions within a severity
    sorted::by(&mut all, |one: &Rc<Finding>, other| one.severity.cmp(&other.severity));
    Report { name: plan.name.clone(), findings: all, sections, fields }
}
