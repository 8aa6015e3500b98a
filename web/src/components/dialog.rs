//! The plans: which are kept, which is open, and the ways in and out.

use quietpin_core::plan::{self, Plan};
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::{Dispatch, Page};
use crate::{
    browser::{files, print, storage},
    state::{Action, Notice, State},
    words,
};

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    pub(crate) page: Page,
}

#[component]
pub(crate) fn Plans(props: &Props) -> Html {
    let state = &props.page.state;
    let redraw = use_force_update();
    let removing = use_state(|| false);
    let kept = with_open(storage::list(), state);
    let send = props.page.send.clone();
    let rename = {
        let send = send.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                send.dispatch(Action::Type("name".into(), input.value()));
            }
        })
    };
    let open_new = |plan: fn(&Plan) -> Plan| {
        let (send, now) = (send.clone(), state.plan.clone());
        Callback::from(move |_: MouseEvent| {
            send.dispatch(Action::Open(storage::free_key(), Box::new(plan(&now))));
        })
    };
    let choose = {
        let send = send.clone();
        Callback::from(move |event: Event| {
            if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
                if let Some(file) = input.files().and_then(|files| files.get(0)) {
                    open_file(&file, send.clone());
                }
                // the same file can be chosen again
                input.set_value("");
            }
        })
    };
    let remove = {
        let (send, key, removing) = (send.clone(), state.key.clone(), removing.clone());
        Callback::from(move |_: MouseEvent| {
            if *removing {
                storage::remove(&key);
                open_any(&send);
                removing.set(false);
            } else {
                removing.set(true);
            }
        })
    };
    html! {
        <details class="plans" ontoggle={Callback::from(move |_: Event| redraw.force_update())}>
            <summary>{ "Plans" }</summary>
            <div class="sheet">
                <div class="field">
                    <label for="plan-name">{ "Name of this plan" }</label>
                    <div class="entry"><input id="plan-name" type="text" value={state.plan.name.clone()}
                        oninput={rename} autocomplete="off" /></div>
                </div>
                <ul class="kept" aria-label="Plans kept in this browser">{ for kept.iter().map(|it| entry(it, &state.key, &send)) }</ul>
                <div class="buttons">
                    <button type="button" onclick={open_new(|_| Plan::default())}>{ "New, blank" }</button>
                    <button type="button" onclick={open_new(|_| quietpin_core::demo())}>{ "New, from the demo" }</button>
                    <button type="button" onclick={open_new(copy)}>{ "New, a copy of this" }</button>
                    <label class="button" for="plan-file">{ "Open a file" }</label>
                    <input id="plan-file" class="file" type="file" accept=".json,application/json" onchange={choose} />
                    <button type="button" onclick={save(state.plan.clone(), send.clone())}>{ "Save as a file" }</button>
                    <button type="button" onclick={Callback::from(|_: MouseEvent| print::print())}>{ "Print" }</button>
                    <button type="button" onclick={remove}>{
                        if *removing { "Press again: remove this plan for good" } else { "Remove this plan" }
                    }</button>
                </div>
            </div>
        </details>
    }
}

/// The list as it is once the open plan is kept, which happens after the page is drawn.
fn with_open(mut kept: Vec<storage::Kept>, state: &State) -> Vec<storage::Kept> {
    let open = storage::Kept { key: state.key.clone(), name: state.plan.name.clone() };
    match kept.iter_mut().find(|it| it.key == open.key) {
        Some(same) => *same = open,
        None => kept.push(open),
    }
    kept
}

fn copy(plan: &Plan) -> Plan {
    let name = if plan.name.is_empty() { words::UNNAMED } else { &plan.name };
    Plan { name: format!("{name}, copy"), ..plan.clone() }
}

fn entry(kept: &storage::Kept, open: &str, send: &Dispatch) -> Html {
    let name = if kept.name.is_empty() { words::UNNAMED } else { &kept.name };
    let (key, send) = (kept.key.clone(), send.clone());
    let is_open = kept.key == open;
    let onclick = Callback::from(move |_: MouseEvent| open_kept(&key, &send));
    html! {
        <li key={kept.key.clone()}>
            <button type="button" class="quiet" {onclick} aria-current={is_open.then_some("true")}>
                { if is_open { format!("{name} (open)") } else { name.to_owned() } }
            </button>
        </li>
    }
}

/// Opens a kept plan; one that can't be read stays kept, and its text can be saved.
pub(crate) fn open_kept(key: &str, send: &Dispatch) {
    match storage::read(key) {
        storage::Stored::Plan(plan) => send.dispatch(Action::Open(key.to_owned(), plan)),
        storage::Stored::Nothing => {}
        storage::Stored::Unreadable(text, error) => {
            send.dispatch(Action::Say(Notice { text: error.to_string(), kept: Some(text) }));
        }
    }
}

fn open_any(send: &Dispatch) {
    match storage::list().first() {
        Some(kept) => open_kept(&kept.key, send),
        None => send.dispatch(Action::Open(storage::free_key(), Box::default())),
    }
}

/// Opens a plan file beside the plans that are kept; the open plan is not touched.
pub(crate) fn open_file(file: &web_sys::File, send: Dispatch) {
    files::read(file, move |read| {
        let parsed = match read {
            files::Read::Text(text) => plan::parse(&text),
            files::Read::TooLarge(bytes) => Err(plan::ReadError::TooLarge { bytes }),
            files::Read::Failed => Err(plan::ReadError::NotJson { detail: "it is no text".into() }),
        };
        send.dispatch(match parsed {
            Ok(plan) => Action::Open(storage::free_key(), Box::new(plan)),
            Err(error) => Action::Say(Notice { text: error.to_string(), kept: None }),
        });
    });
}

fn save(plan: std::rc::Rc<Plan>, send: Dispatch) -> Callback<MouseEvent> {
    Callback::from(move |_| {
        if files::save(&files::name_for(&plan.name), &plan::write(&plan)).is_err() {
            let text = "This browser did not save the file.".to_owned();
            send.dispatch(Action::Say(Notice { text, kept: None }));
        }
    })
}
