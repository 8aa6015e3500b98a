//! What the fitter should know, worst first, each leading to its place.

use std::rc::Rc;

use quietpin_core::{
    finding::{Finding, Severity},
    report::Tone,
};

use super::{Drawn, Page, is_as_before, link_to, parts};
use crate::{
    element::{View, el, nothing, several, whole},
    words,
};

/// What stands out in the report: its findings, or that there are none.
pub(crate) fn found(page: &Page) -> View {
    let report = &page.state.report;
    let findings = &report.findings;
    let mut answers = report.sections.iter().flat_map(|section| &section.answers);
    let nothing_yet = if answers.any(|answer| answer.verdict.tone != Tone::Open) {
        "Nothing wrong so far."
    } else {
        "Nothing yet: each question needs a few things first."
    };
    let list = || {
        several!(
            el!("p", "class" = "count"; count(findings)),
            el!("ol"; parts(page, findings.len(), FINDING)),
        )
    };
    if findings.is_empty() { el!("p", "class" = "why"; nothing_yet) } else { list() }
}

fn count(findings: &[Rc<Finding>]) -> String {
    let kinds = [
        (Severity::Danger, "danger", "dangers"),
        (Severity::Fault, "fault", "faults"),
        (Severity::Doubt, "to check", "to check"),
        (Severity::Note, "note", "notes"),
    ];
    let parts: Vec<_> = kinds
        .into_iter()
        .filter_map(|(kind, one, many)| {
            let count = findings.iter().filter(|it| it.severity == kind).count();
            (count > 0).then(|| format!("{count} {}", if count == 1 { one } else { many }))
        })
        .collect();
    parts.join(", ")
}

const FINDING: Drawn = Drawn {
    draw: |page, at| {
        let found = page.state.report.findings.get(at);
        found.map_or_else(nothing, |it| finding(page, it))
    },
    is_same: |one, other, at| {
        one.is_tried == other.is_tried
            && is_as_before(one.report.findings.get(at), other.report.findings.get(at))
    },
};

fn finding(page: &Page, finding: &Finding) -> View {
    let said = several!(
        el!("span", "class" = "severity"; words::severity(finding.severity)),
        el!("span", "class" = "said"; whole(&finding.message.text)),
    );
    el!("li", "class" = words::severity_class(finding.severity);
        link_to(&finding.subject, said),
        finding.remedies.first().map(|it| el!("p", "class" = "cure"; whole(&it.text))),
        page.state.details.there().map(|it| (it.more)(page, finding)),
    )
}
