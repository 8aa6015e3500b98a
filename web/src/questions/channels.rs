//! Question 1: which channel fires which cylinder, and is it wired like that?

use quietpin_core::fields::{self, Field};
use yew::prelude::*;

use super::{Props, form, form_of, frame, section};
use crate::components::{AnswerView, FieldView};

#[component]
pub(crate) fn ChannelsView(props: &Props) -> Html {
    let section = section(&props.shown.0.report, "channels");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let part = |prefix: &'static str| {
        let fields: Vec<_> = fields::of("channels").filter(|it| is_part(it, prefix)).collect();
        form(props, "channels", &fields)
    };
    let (ignition, injection) = (answers.first(), answers.get(1));
    let engine_and_ignition = html! {
        <>
            <h4>{ "The engine" }</h4>
            { form_of(props, "engine") }
            <h4>{ "The coils" }</h4>
            { part("ignition") }
            { as_wired(props, "coils_wired", "Found at the car: each ignition channel fired alone") }
        </>
    };
    frame(
        section,
        html! {
            <>
                if let Some(answer) = ignition { <AnswerView answer={answer.clone()}>{ engine_and_ignition }</AnswerView> }
                if let Some(answer) = injection {
                    <AnswerView answer={answer.clone()}>
                        { part("injection") }
                        { as_wired(props, "injectors_wired", "Found at the car: each injection channel pulsed alone") }
                    </AnswerView>
                }
            </>
        },
    )
}

fn is_part(field: &Field, prefix: &str) -> bool {
    let name = field.path.rsplit('.').next().unwrap_or_default();
    name.starts_with(prefix)
}

/// A field for each channel of the scheme, and for each that was typed before the scheme changed.
fn as_wired(props: &Props, list: &str, title: &'static str) -> Html {
    let state = &props.shown.0;
    let prefix = format!("channels.{list}.");
    let paths: Vec<_> =
        state.report.fields.keys().filter(|path| path.starts_with(&prefix)).cloned().collect();
    if paths.is_empty() {
        return html! {};
    }
    let mut numbered: Vec<_> = paths
        .into_iter()
        .filter_map(|path| Some((path.strip_prefix(&prefix)?.parse::<usize>().ok()?, path)))
        .collect();
    numbered.sort_unstable();
    let has_typed =
        numbered.iter().any(|(_, path)| state.plan.get(path).is_some_and(|text| !text.is_empty()));
    html! {
        <details class="wired" open={has_typed} id={format!("at-channels.{list}")} tabindex="-1">
            <summary>{ title }</summary>
            <div class="row-form">
                { for numbered.into_iter().map(|(at, path)| html! {
                    <FieldView key={path.clone()} path={path.clone()} label={format!("Channel {} reaches cylinder", at + 1)}
                        shown={props.shown.clone()} dispatch={props.dispatch.clone()} />
                }) }
            </div>
        </details>
    }
}
