//! Question 1: which channel fires which cylinder, and is it wired like that?

use quietpin_core::{fields, report::Answer};
use yew::prelude::*;

use super::{Props, form, form_of, frame, section};
use crate::components::{AnswerView, FieldView};

#[component]
pub(crate) fn ChannelsView(props: &Props) -> Html {
    let section = section(&props.shown.0.report, "channels");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let answer = |it: &Answer| {
        html! { <AnswerView key={it.subject.clone()} answer={it.clone()}>{ inputs(props, answers, it) }</AnswerView> }
    };
    frame(section, html! { <>{ for answers.iter().map(answer) }</> })
}

/// The fields that an answer rests on. Each stands once: what is found at the car stands with its own answer,
/// and before there is one, with the plan's.
fn inputs(props: &Props, answers: &[Answer], answer: &Answer) -> Html {
    let has_wired = |list: &str| answers.iter().any(|it| it.subject.ends_with(list));
    let planned = |kind: &'static str, list: &'static str| {
        html! {
            <>
                { part(props, kind) }
                if !has_wired(list) { { as_wired(props, list) } }
            </>
        }
    };
    let subject = answer.subject.as_str();
    match subject {
        "engine" => html! {
            <>
                { form_of(props, "engine") }
                // the third thing that a blank plan is asked
                if answers.len() == 1 { { part(props, "ignition") } }
            </>
        },
        "channels.coils_wired" => as_wired(props, "coils_wired"),
        "channels.injectors_wired" => as_wired(props, "injectors_wired"),
        _ if subject.starts_with("channels.ignition") => planned("ignition", "coils_wired"),
        _ => planned("injection", "injectors_wired"),
    }
}

/// The fields of the channels whose names begin alike.
fn part(props: &Props, kind: &str) -> Html {
    let is_part = |path: &str| path.rsplit('.').next().is_some_and(|name| name.starts_with(kind));
    let fields: Vec<_> = fields::of("channels").filter(|field| is_part(field.path)).collect();
    form(props, "channels", &fields)
}

/// A field for each channel that the report speaks of.
fn as_wired(props: &Props, list: &str) -> Html {
    let state = &props.shown.0;
    let prefix = format!("channels.{list}.");
    let number = |path: &String| path.strip_prefix(&prefix)?.parse::<usize>().ok();
    let count = state.report.fields.keys().filter_map(number).max().map_or(0, |last| last + 1);
    if count == 0 {
        return html! {};
    }
    let has_typed = (0..count)
        .any(|at| state.plan.get(&format!("{prefix}{at}")).is_some_and(|it| !it.is_empty()));
    let title = if list == "coils_wired" {
        "Found at the car: each ignition channel fired alone"
    } else {
        "Found at the car: each injection channel pulsed alone"
    };
    html! {
        <details class="wired" open={has_typed} id={format!("at-channels.{list}-fields")} tabindex="-1">
            <summary>{ title }</summary>
            <div class="row-form">
                { for (0..count).map(|at| {
                    let path = format!("{prefix}{at}");
                    html! {
                        <FieldView key={path.clone()} path={path.clone()} label={format!("Channel {} reaches cylinder", at + 1)}
                            shown={props.shown.clone()} dispatch={props.dispatch.clone()} />
                    }
                }) }
            </div>
        </details>
    }
}
