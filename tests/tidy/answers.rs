//! What every answer to every example plan has.

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::OnceLock,
};

use quietpin_core::{
    plan,
    report::{Answer, Report, report},
    working::Step,
};
use quietpin_tests::{plans, texts::Texts};

use super::check_none;

/// What there is to say of the reports of all example plans.
#[derive(Debug, Default)]
pub(crate) struct Found {
    /// The codes of each plan's findings, each once.
    pub(crate) codes: BTreeMap<&'static str, BTreeSet<&'static str>>,
    gaps: Vec<String>,
    unworked: Vec<String>,
    uneven: Vec<String>,
    /// Verdicts of too many words, each with a plan that shows it.
    wordy: BTreeMap<String, &'static str>,
}

/// The same for all tests: the reports are worked out once.
pub(crate) fn found() -> &'static Found {
    static FOUND: OnceLock<Found> = OnceLock::new();
    FOUND.get_or_init(|| {
        let mut found = Found::default();
        for example in plans::ALL {
            found.look(example.name, &report(&plan::parse(example.text).expect("a plan")));
        }
        found
    })
}

fn answers(report: &Report) -> impl Iterator<Item = &Answer> {
    report.sections.iter().flat_map(|section| &section.answers).map(AsRef::as_ref)
}

impl Found {
    fn look(&mut self, name: &'static str, report: &Report) {
        let codes = report.findings.iter().map(|finding| finding.message.code).collect();
        self.codes.insert(name, codes);
        self.gaps.extend(gaps(name, report));
        self.unworked.extend(unworked(name, report));
        self.uneven.extend(uneven(name, report));
        for answer in answers(report) {
            let verdict = &answer.verdict.message.text;
            if verdict.split_whitespace().count() > MOST_WORDS {
                self.wordy.insert(verdict.clone(), name);
            }
        }
    }
}

fn gaps(name: &str, report: &Report) -> Vec<String> {
    let texts = Texts::of(report);
    let open = texts.all().filter(|(_, text)| text.contains(['{', '}']) || text.contains("NaN"));
    let open = open.map(|(place, text)| format!("{name}: {place}: {text:?}"));
    let lacking = texts.without_number().iter().map(|it| format!("{name}: {it}: no number"));
    open.chain(lacking).collect()
}

fn unworked(name: &str, report: &Report) -> Vec<String> {
    let mut found = Vec::new();
    for answer in answers(report) {
        let figures = answer.figures.iter().map(|it| (&it.label.text, &it.working));
        let tables = answer.tables.iter().map(|it| (&it.caption.text, &it.working));
        for (what, working) in figures.chain(tables) {
            let place = format!("{name}: {}: {what}", answer.subject);
            if working.is_empty() {
                found.push(format!("{place}: no working"));
            }
            found.extend(working.iter().filter_map(|step| flaw(&place, step)));
        }
    }
    let steps = report.findings.iter().flat_map(|it| it.working.iter().map(move |step| (it, step)));
    found
        .extend(steps.filter_map(|(it, step)| flaw(&format!("{name}: {}", it.message.code), step)));
    found
}

fn flaw(place: &str, step: &Step) -> Option<String> {
    let is_whole = [step.symbols, &step.filled, &step.result.shown, step.source]
        .iter()
        .all(|text| !text.trim().is_empty());
    (!is_whole || step.source.len() < 4).then(|| format!("{place}: {step:?}"))
}

fn uneven(name: &str, report: &Report) -> Vec<String> {
    let mut found = Vec::new();
    for answer in answers(report) {
        for table in &answer.tables {
            let columns = table.columns.len();
            if table.rows.iter().any(|row| row.cells.len() != columns) {
                found.push(format!("{name}: {}: {}", answer.subject, table.caption.text));
            }
        }
    }
    found
}

#[test]
fn no_sentence_has_an_open_gap_and_no_number_is_lacking() {
    check_none(&found().gaps, "Texts with gaps or without numbers:");
}

#[test]
fn every_number_has_its_working_and_every_step_its_source() {
    check_none(&found().unworked, "Numbers without working:");
}

#[test]
fn rows_have_a_cell_for_each_column() {
    check_none(&found().uneven, "Tables whose rows don't fit their columns:");
}

/// A verdict is read at arm's length by someone with one hand free.
const MOST_WORDS: usize = 12;

#[test]
fn verdicts_are_short() {
    let wordy = found().wordy.iter().map(|(verdict, name)| format!("{verdict} (as in {name})"));
    check_none(&wordy.collect::<Vec<_>>(), "Verdicts of too many words:");
}
