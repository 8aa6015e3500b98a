//! What every answer to every example plan has.

use std::collections::BTreeMap;

use quietpin_core::{
    plan,
    report::{Report, report},
    working::Step,
};
use quietpin_tests::plans;

use crate::{check_none, texts::Texts};

/// The report of each example plan.
pub(crate) fn reports() -> Vec<(&'static str, Report)> {
    let report_of = |text| report(&plan::parse(text).expect("a plan"));
    plans::ALL.iter().map(|example| (example.name, report_of(example.text))).collect()
}

#[test]
fn no_sentence_has_an_open_gap_and_no_number_is_lacking() {
    let mut found = Vec::new();
    for (name, report) in reports() {
        let texts = Texts::of(&report);
        for (place, text) in texts.all() {
            if text.contains(['{', '}']) || text.contains("NaN") {
                found.push(format!("{name}: {place}: {text:?}"));
            }
        }
        found.extend(
            texts.without_number().iter().map(|place| format!("{name}: {place}: no number")),
        );
    }
    check_none(&found, "Texts with gaps or without numbers:");
}

#[test]
fn every_number_has_its_working_and_every_step_its_source() {
    let mut found = Vec::new();
    for (name, report) in reports() {
        for answer in report.sections.iter().flat_map(|section| &section.answers) {
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
        let steps =
            report.findings.iter().flat_map(|it| it.working.iter().map(move |step| (it, step)));
        found.extend(
            steps.filter_map(|(it, step)| flaw(&format!("{name}: {}", it.message.code), step)),
        );
    }
    check_none(&found, "Numbers without working:");
}

fn flaw(place: &str, step: &Step) -> Option<String> {
    let is_whole = [step.symbols, &step.filled, &step.result.shown, step.source]
        .iter()
        .all(|text| !text.trim().is_empty());
    (!is_whole || step.source.len() < 4).then(|| format!("{place}: {step:?}"))
}

#[test]
fn rows_have_a_cell_for_each_column() {
    let mut found = Vec::new();
    for (name, report) in reports() {
        for answer in report.sections.iter().flat_map(|section| &section.answers) {
            for table in &answer.tables {
                let columns = table.columns.len();
                if table.rows.iter().any(|row| row.cells.len() != columns) {
                    found.push(format!("{name}: {}: {}", answer.subject, table.caption.text));
                }
            }
        }
    }
    check_none(&found, "Tables whose rows don't fit their columns:");
}

/// A verdict is read at arm's length by someone with one hand free.
#[test]
fn verdicts_are_short() {
    const MOST_WORDS: usize = 12;
    let mut found = BTreeMap::new();
    for (name, report) in reports() {
        for answer in report.sections.iter().flat_map(|section| &section.answers) {
            let verdict = &answer.verdict.message.text;
            if verdict.split_whitespace().count() > MOST_WORDS {
                found.insert(verdict.clone(), name);
            }
        }
    }
    let found = found.into_iter().map(|(verdict, name)| format!("{verdict} (as in {name})"));
    check_none(&found.collect::<Vec<_>>(), "Verdicts of too many words:");
}
