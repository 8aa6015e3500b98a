//! The findings, worst first.

use std::rc::Rc;

use quietpin_core::{
    explained,
    finding::{Basis, Finding, Severity},
    quantity::Holds,
    schema::Place,
};

use super::{Options, sheet::Sheet, steps};

/// Prints the findings, or that there are none.
pub(super) fn print(sheet: &mut Sheet, findings: &[Rc<Finding>], options: Options) {
    sheet.heading("Findings", '-');
    if findings.is_empty() {
        sheet.paragraph(0, "No findings. What is not answered below is not known to be right.");
    }
    for (at, finding) in findings.iter().enumerate() {
        sheet.blank();
        let mark = format!("{}. ", at + 1);
        let severity = word(finding.severity);
        sheet.item(0, &mark, &format!("{severity}: {}", finding.message.text));
        print_rest(sheet, finding, mark.len(), options);
    }
}

fn print_rest(sheet: &mut Sheet, finding: &Finding, indent: usize, options: Options) {
    sheet.labelled(indent, "Where:", &place(finding));
    let explanation = explained::explanation(finding.message.code);
    if let Some(explanation) = explanation {
        sheet.labelled(indent, "Why it matters:", explanation.why);
    }
    // what was solved for this plan stands before what is true in general
    if finding.remedies.is_empty() {
        if let Some(explanation) = explanation {
            sheet.labelled(indent, "What to do:", explanation.act);
        }
    } else {
        sheet.paragraph(indent, "What to do, best first:");
        for remedy in &finding.remedies {
            sheet.item(indent + 2, "- ", &remedy.text);
        }
    }
    if options.working {
        steps::print(sheet, indent + 2, &finding.working);
    }
}

/// What it is about, whether plan or car shows it, and at which corners.
fn place(finding: &Finding) -> String {
    let place = Place::at_path(&finding.subject);
    let label = place.map(|it| format!("{} ", it.field().label));
    let basis = basis(finding.basis);
    let corners = match &finding.holds {
        Holds::Always => String::new(),
        Holds::Never => "; in no case".to_owned(),
        Holds::AtSome(corners) => format!("; only at: {}", corners.join("; ")),
    };
    format!("{}({}), {basis}{corners}", label.unwrap_or_default(), finding.subject)
}

/// How much a finding matters, in a word.
pub(super) fn word(severity: Severity) -> &'static str {
    match severity {
        Severity::Danger => "DANGER",
        Severity::Fault => "FAULT",
        Severity::Doubt => "CHECK",
        Severity::Note => "NOTE",
    }
}

/// What a finding or an answer was made from, in words.
pub(super) fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::AsPlanned => "as planned",
        Basis::AsWired => "as found at the car",
    }
}
