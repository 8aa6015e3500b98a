//! What a snapshot shows of a report.

use std::fmt::Write as _;

use quietpin::print::{self, Options};
use quietpin_core::{
    finding::{Finding, Severity},
    plan::Plan,
    report::{Report, Section, Tone},
};
use quietpin_tests::plans::Example;

/// These stand in full, with every question, every working and all that was assumed: each question's answers, each kind
/// of answer, and the two plans that everybody opens first. Of the others a snapshot shows what they are about.
pub(super) const WHOLE: [&str; 14] = [
    "blank",
    "bus-right",
    "firing-light-right",
    "firing-six-right",
    "coils-weak",
    "conditions-unreadable",
    "cranking-usual",
    "demo",
    "feeds-suits",
    "outputs-right",
    "sensors-suits",
    "standing-flat",
    "trigger-suits",
    "wires-reach",
];

/// The question under which something is answered that has a name of its own.
const UNDER: [(&str, &str); 2] = [("engine", "firing"), ("fuel", "injectors")];

/// The text of a plan's snapshot: it changes with the answers to the plan's own question, and where findings come or go.
/// Of a plan that is there for one thing, the findings alone.
pub(super) fn snapshot(example: &Example, plan: &Plan, report: &Report) -> String {
    let name = example.name;
    if WHOLE.contains(&name) {
        // the longest are read without their workings
        let working = !["demo", "feeds-suits", "sensors-suits", "wires-reach"].contains(&name);
        let mut shown = report.clone();
        // what no question is begun of is told by the blank plan
        let is_begun = |it: &Section| {
            it.answers.len() > 1 || it.answers.iter().any(|it| it.verdict.tone != Tone::Open)
        };
        shown.sections.retain(|it| name == "blank" || is_begun(it));
        return print::report(&shown, Options { working });
    }
    let question = question(name, '-');
    let is_own = |it: &Finding| {
        let of = self::question(it.message.code, '.');
        // what is wrong with a field is told where it is, whatever the question
        of == question || of == "field"
    };
    let (own, others): (Vec<_>, Vec<_>) =
        report.findings.iter().cloned().partition(|it| is_own(it));
    let options = Options { working: false };
    let mut text =
        format!("{}\n{}\n\n{}\n", plan.name, "=".repeat(plan.name.chars().count()), plan.notes);
    if !own.is_empty() {
        let _ = write!(text, "\n{}", print::findings(&own, options));
    }
    if !others.is_empty() {
        let _ = writeln!(text, "\nElsewhere\n---------\n");
    }
    for it in others {
        let _ = writeln!(text, "{} {} at {}", word(it.severity), it.message.code, it.subject);
    }
    for section in report.sections.iter().filter(|it| it.id == question && !example.is_point) {
        let _ = write!(text, "\n{}", print::section(section, options));
    }
    text
}

/// The id of the question that the first word of a plan's name or of a code belongs to.
fn question(name: &str, end: char) -> &str {
    let word = name.split(end).next().unwrap_or_default();
    UNDER.iter().find(|(it, _)| *it == word).map_or(word, |(_, question)| question)
}

fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Danger => "DANGER",
        Severity::Fault => "FAULT",
        Severity::Doubt => "DOUBT",
        Severity::Note => "NOTE",
    }
}
