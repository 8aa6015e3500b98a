//! A report as plain text, at most [`WIDTH`] columns wide.

mod answer;
mod assumed;
mod finding;
mod grid;
mod sheet;
mod steps;
mod usual;

use std::rc::Rc;

use quietpin_core::{
    finding::Finding,
    report::{Report, Section},
};

use sheet::Sheet;

/// The widest line, in columns of a terminal.
pub const WIDTH: usize = 100;

const CAUTION: &str = "This plans and checks. It does not replace the makers' data sheets, local codes, the rules of \
                       a sanctioning body or a licensed person.";

/// What to print of a report.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// For each number the formula, the values put in, and the source.
    pub working: bool,
}

/// The widest line of the usual report: it is printed, and read on paper.
pub const USUAL_WIDTH: usize = 80;

/// The usual report: a page or two to take to the car.
pub fn usual(report: &Report) -> String {
    let mut sheet = Sheet::of_width(USUAL_WIDTH);
    usual::print(&mut sheet, &quietpin_core::report::usual::usual(report));
    sheet.blank();
    sheet.paragraph(0, CAUTION);
    sheet.into_text()
}

/// The whole report for reading: findings first, then each question, then what was assumed.
pub fn report(report: &Report, options: Options) -> String {
    let mut sheet = Sheet::default();
    let name = if report.name.trim().is_empty() { "A plan without a name" } else { &report.name };
    sheet.heading(name, '=');
    finding::print(&mut sheet, &report.findings, options);
    for section in &report.sections {
        print_section(&mut sheet, section, options);
    }
    assumed::print(&mut sheet, report);
    sheet.blank();
    sheet.paragraph(0, CAUTION);
    sheet.into_text()
}

/// Findings alone, as the report has them.
pub fn findings(findings: &[Rc<Finding>], options: Options) -> String {
    let mut sheet = Sheet::default();
    finding::print(&mut sheet, findings, options);
    sheet.into_text()
}

/// One question alone, as the report has it.
pub fn section(section: &Section, options: Options) -> String {
    let mut sheet = Sheet::default();
    print_section(&mut sheet, section, options);
    sheet.into_text()
}

/// The whole report for scripts.
pub fn json(report: &Report) -> String {
    // a report has no form that JSON lacks
    serde_json::to_string_pretty(report).unwrap_or_default() + "\n"
}

fn print_section(sheet: &mut Sheet, section: &Section, options: Options) {
    sheet.heading(&section.question.text, '-');
    for answer in &section.answers {
        answer::print(sheet, answer, options);
    }
}
