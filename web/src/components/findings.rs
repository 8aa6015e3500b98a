//! What the fitter should know, worst first, each leading to its place.

use quietpin_core::{
    fields,
    finding::{Basis, Finding, Severity},
    quantity::Holds,
    words as core_words,
};
use yew::prelude::*;

use super::working;
use crate::{browser::focus, state::State, words};

/// The findings, or that there are none.
pub(crate) fn findings_view(state: &State) -> Html {
    let report = &state.report;
    let findings = &report.findings;
    let has_answer = report
        .sections
        .iter()
        .flat_map(|section| &section.answers)
        .any(|answer| answer.verdict.tone != quietpin_core::report::Tone::Open);
    html! {
        <section id="at-found" class="found" tabindex="-1" aria-labelledby="found-title">
            <h2 id="found-title">{ "What stands out" }</h2>
            if findings.is_empty() {
                <p class="why">{
                    if has_answer { "Nothing wrong in what is answered so far." }
                    else { "Nothing yet: each question below asks for a few things first." }
                }</p>
            } else {
                <p class="count">{ count(findings) }</p>
                <ol>{ for findings.iter().enumerate().map(|(at, it)| finding(at, it)) }</ol>
            }
        </section>
    }
}

fn count(findings: &[Finding]) -> String {
    let kinds = [
        (Severity::Danger, "danger", "dangers"),
        (Severity::Fault, "fault", "faults"),
        (Severity::Doubt, "doubt", "doubts"),
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

fn finding(at: usize, finding: &Finding) -> Html {
    let path = finding.subject.clone();
    let onclick = Callback::from(move |event: MouseEvent| {
        event.prevent_default();
        focus::go_to(&path);
    });
    let explanation = core_words::explanation(finding.message.code);
    html! {
        <li key={at} class={words::severity_class(finding.severity)}>
            <a href={format!("#at-{}", finding.subject)} {onclick}>
                <span class="severity">{ words::severity(finding.severity) }</span>
                <span class="said">{ &finding.message.text }</span>
            </a>
            if let Some(first) = finding.remedies.first() { <p class="cure">{ &first.text }</p> }
            <details>
                <summary>{ "Why, and what to do" }</summary>
                { holds(finding) }
                if let Some(it) = explanation { <p>{ it.why }</p> <p>{ it.act }</p> }
                if finding.remedies.len() > 1 {
                    <ul>{ for finding.remedies.iter().skip(1).map(|it| html! { <li>{ &it.text }</li> }) }</ul>
                }
                if let Some(it) = explanation { <p class="source">{ "Source: " }{ it.source }</p> }
                { working(std::iter::once(("How it was found", finding.working.as_slice()))) }
            </details>
        </li>
    }
}

fn holds(finding: &Finding) -> Html {
    let from = match finding.basis {
        Basis::AsPlanned => "From the plan",
        Basis::AsWired => "From what was found at the car",
    };
    let place = fields::find(&finding.subject).map_or("", |field| field.label);
    let when = match &finding.holds {
        Holds::AtSome(corners) => format!("; at: {}", corners.join("; ")),
        Holds::Always | Holds::Never => String::new(),
    };
    let field = if place.is_empty() { String::new() } else { format!("; field “{place}”") };
    html! { <p class="basis">{ format!("{from}{when}{field}.") }</p> }
}
