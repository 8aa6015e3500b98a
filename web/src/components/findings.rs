//! What the fitter should know, worst first: a row each on the list, each leading to its card; in full on the card.

use std::rc::Rc;

use quietpin_core::{finding::Finding, message::Message, report::Tone};

use super::{Drawn, Page, is_as_before, link_to, parts};
use crate::{
    cards::Card,
    element::{View, all, el, nothing, several, whole},
    words,
};

/// What stands out in the report: its findings, in full or a row each, or that there are none.
pub(crate) fn found(page: &Page, is_full: bool) -> View {
    let report = &page.state.report;
    let findings = &report.findings;
    let mut answers = report.sections.iter().flat_map(|section| &section.answers);
    let nothing_yet = if answers.any(|answer| answer.verdict.tone != Tone::Open) {
        "Nothing wrong so far."
    } else {
        "Nothing yet: each question needs a few things first."
    };
    let list = || el!("ol"; parts(page, findings.len(), if is_full { IN_FULL } else { IN_A_ROW }));
    if findings.is_empty() { el!("p", "class" = "why"; nothing_yet) } else { list() }
}

const IN_FULL: Drawn = Drawn { draw: |page, at| drawn(page, at, in_full), is_same };
const IN_A_ROW: Drawn = Drawn { draw: |page, at| drawn(page, at, |_, it| in_a_row(it)), is_same };

fn drawn(page: &Page, at: usize, draw: fn(&Page, &Finding) -> View) -> View {
    page.state.report.findings.get(at).map_or_else(nothing, |it| draw(page, it))
}

fn is_same(one: &crate::state::State, other: &crate::state::State, at: usize) -> bool {
    one.is_tried == other.is_tried
        && is_as_before(one.report.findings.get(at), other.report.findings.get(at))
}

fn said(finding: &Finding) -> View {
    several!(
        el!("span", "class" = "severity"; words::severity(finding.severity)),
        el!("span", "class" = "said"; whole(&finding.message.text)),
    )
}

fn in_a_row(finding: &Finding) -> View {
    let cure =
        finding.remedies.first().map(|it| el!("span", "class" = "first-cure"; whole(&it.text)));
    let words = several!(el!("span", "class" = "clamped"; said(finding)), cure);
    el!("li", "class" = words::severity_class(finding.severity); link_to(&finding.subject, words))
}

fn in_full(page: &Page, finding: &Finding) -> View {
    el!("li", "class" = words::severity_class(finding.severity);
        link_to(&finding.subject, said(finding)),
        finding.remedies.first().map(|it| el!("p", "class" = "cure"; whole(&it.text))),
        page.state.details.there().map(|it| (it.more)(page, finding)),
    )
}

/// What was found on a card. What its answers say already is not said again.
pub(crate) fn found_here(page: &Page, findings: &[Rc<Finding>], card: &Card) -> View {
    if findings.is_empty() {
        return nothing();
    }
    let is_said = |message: &Message| {
        card.answers
            .iter()
            .any(|it| it.why.iter().chain(it.to_do.first()).any(|it| it.text == message.text))
    };
    let finding = |it: &Rc<Finding>| {
        // where the answer says “no”, it has said why, and the best way out
        let is_short = card.worst().is_some_and(|it| it.verdict.tone == Tone::Bad);
        // the answer says it, with how grave it is
        let words = (!is_said(&it.message))
            .then(|| el!("p", "class" = is_short.then_some("clamped"); said(it)));
        let cure = it.remedies.first().filter(|it| !is_short && !is_said(it));
        el!("li", "class" = words::severity_class(it.severity);
            words,
            cure.map(|it| el!("p", "class" = "cure"; whole(&it.text))),
            page.state.details.there().map(|details| (details.more)(page, it)),
        )
    };
    el!("div", "class" = "found here"; el!("ol", "aria-label" = "Found here"; all(findings.iter().map(finding))))
}
