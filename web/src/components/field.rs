//! One field: label, input, how it stands, what is wrong with it.

use quietpin_core::{
    fields::{Field, Kind},
    plan::Plan,
    read::{FieldState, State as Standing},
};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::{Dispatch, Page};
use crate::state::Action;

/// A field and the page it stands on.
pub(crate) struct Props<'a> {
    pub(crate) path: String,
    pub(crate) page: &'a Page,
    /// Said in place of the field's own label, where the same field stands many times.
    pub(crate) label: Option<String>,
}

/// The field at a path of the plan; nothing where there is none.
pub(crate) fn field_view(props: &Props<'_>) -> Html {
    let path = &props.path;
    let Some(field) = quietpin_core::fields::find(path) else { return html! {} };
    let state = &props.page.state;
    let typed = state.plan.get(path).unwrap_or_default();
    let standing = state.report.fields.get(path);
    let problem = standing.and_then(|it| it.problem.as_ref());
    let label = props.label.clone().unwrap_or_else(|| field.label.to_owned());
    let (id, note_id, problem_id) =
        (format!("at-{path}"), format!("note-{path}"), format!("problem-{path}"));
    let described =
        if problem.is_some() { format!("{problem_id} {note_id}") } else { note_id.clone() };
    html! {
        <div key={path.clone()} class={classes!("field", problem.is_some().then_some("wrong"))}>
            <label for={id.clone()}>{ label }</label>
            if let Some(problem) = problem {
                <p class="problem" id={problem_id}><strong>{ "Error: " }</strong>{ &problem.text }</p>
            }
            { input(props, field, typed, &id, &described, problem.is_some()) }
            { note(field, standing, typed, &note_id, props) }
        </div>
    }
}

fn input(
    props: &Props<'_>,
    field: &Field,
    typed: &str,
    id: &str,
    described: &str,
    wrong: bool,
) -> Html {
    let path = props.path.clone();
    let send = props.page.send.clone();
    let wrong = if wrong { "true" } else { "false" };
    let (id, described, typed) = (id.to_owned(), described.to_owned(), typed.to_owned());
    match field.kind {
        Kind::Choice(choices) => {
            let options =
                choices.iter().map(|it| (it.code.to_owned(), it.label.to_owned())).collect();
            select(
                &Select { id, described, wrong, typed, options, blank: blank_choice(field) },
                path,
                send,
            )
        }
        Kind::OutputName => {
            let options = output_names(&props.page.state.plan);
            select(
                &Select { id, described, wrong, typed, options, blank: "Choose".into() },
                path,
                send,
            )
        }
        Kind::Text | Kind::Row | Kind::Whole(..) | Kind::Quantity { .. } => {
            let unit = if let Kind::Quantity { unit, .. } = field.kind { unit } else { "" };
            let mode = if matches!(field.kind, Kind::Whole(..)) { "numeric" } else { "text" };
            let oninput = Callback::from(move |event: InputEvent| {
                if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                    send.dispatch(Action::Type(path.clone(), input.value()));
                }
            });
            html! {
                <div class="entry">
                    <input {id} type="text" inputmode={mode} value={typed} {oninput} autocomplete="off"
                        autocapitalize="off" spellcheck="false" aria-describedby={described} aria-invalid={wrong} />
                    if !unit.is_empty() { <span class="unit">{ unit }</span> }
                </div>
            }
        }
    }
}

struct Select {
    id: String,
    described: String,
    wrong: &'static str,
    typed: String,
    options: Vec<(String, String)>,
    blank: String,
}

fn select(it: &Select, path: String, send: Dispatch) -> Html {
    let onchange = Callback::from(move |event: Event| {
        if let Some(select) = event.target().and_then(|it| it.dyn_into::<HtmlSelectElement>().ok())
        {
            send.dispatch(Action::Type(path.clone(), select.value()));
        }
    });
    // a word from a plan file that is no choice stays to be seen
    let is_known = it.typed.is_empty() || it.options.iter().any(|(code, _)| *code == it.typed);
    html! {
        <div class="entry">
            <select id={it.id.clone()} {onchange} aria-describedby={it.described.clone()} aria-invalid={it.wrong}>
                <option value="" selected={it.typed.is_empty()}>{ &it.blank }</option>
                if !is_known { <option value={it.typed.clone()} selected=true>{ &it.typed }</option> }
                { for it.options.iter().map(|(code, label)| html! {
                    <option key={code.clone()} value={code.clone()} selected={*code == it.typed}>{ label }</option>
                }) }
            </select>
        </div>
    }
}

fn blank_choice(field: &Field) -> String {
    let Kind::Choice(choices) = field.kind else { return String::new() };
    let usual = field.assumed.and_then(|assumed| choices.iter().find(|it| it.code == assumed.text));
    usual.map_or_else(
        || "Choose, or leave if not known".to_owned(),
        |it| format!("Not said: {}", it.label),
    )
}

fn output_names(plan: &Plan) -> Vec<(String, String)> {
    let named = plan
        .outputs
        .iter()
        .map(|output| output.name.trim().to_owned())
        .filter(|name| !name.is_empty());
    named.map(|name| (name.clone(), name)).collect()
}

fn note(
    field: &Field,
    standing: Option<&FieldState>,
    typed: &str,
    id: &str,
    props: &Props<'_>,
) -> Html {
    let value = standing.and_then(|it| it.value.as_ref());
    let stands = standing.map(|it| it.state);
    let text = match (stands, value) {
        (Some(Standing::Assumed), Some(value)) => {
            let basis = standing.and_then(|it| it.basis.as_deref()).unwrap_or_default();
            format!("Blank: taken as {} ({basis}).", value.shown)
        }
        (Some(Standing::Given), Some(value))
            if differs(&value.shown, typed) && !is_choice(field) =>
        {
            format!("Read as {}.", value.shown)
        }
        _ if typed.is_empty() && !field.hint.is_empty() => hint(field),
        _ => String::new(),
    };
    let can_be_set_back = stands == Some(Standing::Given) && field.assumed.is_some();
    html! {
        <div class="notes" id={id.to_owned()}>
            if !text.is_empty() { <p>{ text }</p> }
            if can_be_set_back { { set_back(props) } }
            if !field.measure.is_empty() && typed.is_empty() {
                <details class="measure"><summary>{ "How to find it" }</summary><p>{ field.measure }</p></details>
            }
        </div>
    }
}

fn hint(field: &Field) -> String {
    match field.kind {
        Kind::Row => format!("For example {}", field.hint),
        _ => field.hint.to_owned(),
    }
}

fn is_choice(field: &Field) -> bool {
    matches!(field.kind, Kind::Choice(_) | Kind::OutputName)
}

/// Whether reading it back tells the fitter something.
fn differs(shown: &str, typed: &str) -> bool {
    let plain = |text: &str| {
        let lower =
            text.to_ascii_lowercase().replace('−', "-").replace("ohms", "Ω").replace("ohm", "Ω");
        lower.chars().filter(|c| !c.is_whitespace()).collect::<String>()
    };
    let (shown, typed) = (plain(shown), plain(typed));
    shown != typed && shown.trim_end_matches(|c: char| !c.is_ascii_digit()) != typed
}

fn set_back(props: &Props<'_>) -> Html {
    let (path, send) = (props.path.clone(), props.page.send.clone());
    let onclick = Callback::from(move |_| send.dispatch(Action::Type(path.clone(), String::new())));
    html! { <button type="button" class="quiet" {onclick}>{ "Set back to the usual value" }</button> }
}
