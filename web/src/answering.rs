//! What answers: the greater part of the program, which comes after the form is on the screen; and what shows the details
//! of an answer, which comes after that.
//!
//! The build cuts the program at [`answering`], [`detailing`] and [`writing`]: whatever only one of them leads to is put in
//! a file of its own. Nothing but these leads there, so nothing else of the page may call such functions by name.

#![expect(
    clippy::unnecessary_wraps,
    reason = "what fetches the function is put around it, and can fail"
)]

use std::rc::Rc;

use js_sys::Function;
use quietpin_core::{
    finding::Finding,
    plan::{Clash, Merged, Plan, parse},
    report::{Answer, Checklist, Made, Memory, Report, tried_further, untried},
    schema::Place,
    whole_car,
};
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};
use wasm_split_helpers::{SplitLoaderError, wasm_split};

use yew::platform::spawn_local;

use crate::{
    cards::Card,
    components::{
        Dispatch, Page, bench_view, checklist_view, found, found_here, harness_lists, labels_view,
        more, numbers, pin_table, share, sheet, take_links,
    },
    element::View,
    keeping::aside,
    state::{clash, copies::Copies, told},
};

/// The functions of the second part.
#[derive(Clone, Copy, Debug)]
pub struct Answering {
    /// The report of a plan, after the one before.
    pub(crate) report: fn(&mut Memory, &Plan) -> Report,
    /// What stands out in a report.
    pub(crate) found: fn(&Page, bool) -> View,
    /// What was found on a card.
    pub(crate) found_here: fn(&Page, &[Rc<Finding>], &Card) -> View,
    /// Whether two answers say the same.
    pub(crate) is_alike: fn(&Answer, &Answer) -> bool,
    /// What has to do with what is kept and taken back.
    pub(crate) aside: fn(&Page) -> View,
    /// The plan with what another page made of it.
    pub(crate) met: fn(&mut Copies, &str, &Plan) -> Option<Merged>,
    /// A plan with what was changed in either of two that come from it.
    pub(crate) merged: fn(&Plan, &Plan, &Plan) -> Merged,
}

/// The functions of the third part.
#[derive(Clone, Copy, Debug)]
pub struct Details {
    /// What remembers answers with their details: whatever makes these is led to from here alone.
    pub(crate) memory: fn() -> Memory,
    /// The pictures, the numbers and the working of an answer.
    pub(crate) numbers: fn(&Rc<Answer>) -> View,
    /// The report with those remedies that hold when they are tried; nothing as long as trials are left.
    pub(crate) tried_further: fn(&Report, &Plan, &Memory, &mut Made) -> Option<Report>,
    /// What unfolds below a finding.
    pub(crate) more: fn(&Page, &Finding) -> View,
    /// What two pages could not have both ways, in words.
    pub(crate) clash: fn(&Plan, &Clash) -> String,
    /// What was changed between two plans, in words.
    pub(crate) told: fn(&Plan, &Plan) -> String,
    /// How the value of a field is found at the car.
    pub(crate) measure: fn(Place) -> &'static str,
    /// The test at the car of an answer, worked with a thumb.
    pub(crate) bench: fn(&Page, &Rc<Answer>) -> View,
    /// What is to be done one by one, to be ticked off.
    pub(crate) checklist: fn(&Page, &Checklist) -> View,
    /// The sheet to take to the car.
    pub(crate) sheet: fn(&Page) -> View,
    /// The harness's lists as files.
    pub(crate) harness: fn(&Page) -> View,
    /// The labels of its wires.
    pub(crate) labels: fn(&Page) -> View,
    /// Where a pin table is pasted.
    pub(crate) pin_table: fn(&Page) -> View,
    /// The ways to another phone and from it.
    pub(crate) share: fn(&Page) -> View,
    /// Takes what a link brings from another phone, now and later.
    pub(crate) take_links: fn(&Dispatch),
    /// The invented car that is described to its end.
    pub(crate) whole_car: fn() -> Plan,
}

/// Fetches the second part, unless it is there.
///
/// # Errors
/// It can't be had; the next call asks for it again.
#[wasm_split(answers, fallible)]
pub(crate) fn answering() -> Result<&'static Answering, SplitLoaderError> {
    Ok(&ALL)
}

/// Fetches the third part, unless it is there.
///
/// # Errors
/// It can't be had; the next call asks for it again.
#[wasm_split(details, fallible)]
pub(crate) fn detailing() -> Result<&'static Details, SplitLoaderError> {
    Ok(&DETAILS)
}

/// Writes a report down: the fourth part, which no page fetches. It shows what the program as it is shipped computes.
pub(crate) type Writing = fn(&Report) -> String;

/// Fetches the fourth part.
///
/// # Errors
/// It can't be had.
#[wasm_split(reports, fallible)]
pub(crate) fn writing() -> Result<Writing, SplitLoaderError> {
    Ok(Report::to_json)
}

/// Tells the report of a plan's text, as JSON, or nothing: for a test, which holds the very files of the page against the
/// native program.
#[wasm_bindgen]
pub fn report_of(plan: String, tell: Function) {
    let report = async move || {
        let plan = parse(&plan).ok()?;
        let (answering, details) = (answering().await.ok()?, detailing().await.ok()?);
        let mut memory = (details.memory)();
        let report = (answering.report)(&mut memory, &plan);
        let (mut made, mut tried) = (Made::default(), None);
        while tried.is_none() {
            tried = (details.tried_further)(&report, &plan, &memory, &mut made);
        }
        Some(writing().await.ok()?(&tried?))
    };
    spawn_local(async move {
        // what a test's own function throws is its own affair
        let _ = tell.call1(&JsValue::NULL, &JsValue::from(report().await));
    });
}

/// Named by [`answering`] alone, and by tests.
pub(crate) const ALL: Answering = Answering {
    report: untried,
    found,
    found_here,
    is_alike: Answer::eq,
    aside,
    met: Copies::met,
    merged: Plan::merged,
};

/// Named by [`detailing`] alone, and by tests.
pub(crate) const DETAILS: Details = Details {
    memory: Memory::detailed,
    numbers,
    tried_further,
    more,
    clash,
    told,
    measure: Place::measure,
    bench: bench_view,
    checklist: checklist_view,
    sheet,
    harness: harness_lists,
    labels: labels_view,
    pin_table,
    share,
    take_links,
    whole_car,
};
