//! The frame of the page, and the order of the questions.

use std::rc::Rc;

use gloo::events::{EventListener, EventListenerOptions};
use quietpin_core::{finding::Severity, plan::Plan};
use wasm_bindgen::JsCast;
use web_sys::{DragEvent, KeyboardEvent};
use yew::prelude::*;

use crate::{
    browser::{files, focus, offline, print, storage},
    components::{Dispatch, Page, Plans, findings_view, open_file},
    questions::{channels_view, conditions_view, cranking_view, injectors_view, rest_view},
    state::{Action, Notice, State},
    words,
};

/// The page.
#[component]
pub(crate) fn App() -> Html {
    let state = use_reducer(opened);
    let dispatch = state.dispatcher();
    use_keeping(&state, &dispatch);
    use_drops(&dispatch);
    use_keys(&dispatch);
    let page = &Page { state: Rc::new((*state).clone()), send: dispatch };
    let is_blank = *state.plan == Plan::default();
    html! {
        <>
            { header(page) }
            <main>
                { notices(page) }
                if is_blank { { welcome(&page.send) } } else { { findings_view(&page.state) } }
                { channels_view(page) }
                { injectors_view(page) }
                { rest_view(page) }
                { cranking_view(page) }
                { conditions_view(page) }
                { caution() }
            </main>
            { bar(page) }
        </>
    }
}

/// The plan that was open last; where it can't be read, a blank one beside it.
fn opened() -> State {
    let blank = || State::new(storage::free_key(), Plan::default());
    let Some(key) = storage::last_open() else { return blank() };
    match storage::read(&key) {
        storage::Stored::Plan(plan) => State::new(key, *plan),
        storage::Stored::Nothing => blank(),
        storage::Stored::Unreadable(text, _) => {
            let mut state = blank();
            state.notices.push(Notice { text: words::UNREADABLE.into(), kept: Some(text) });
            state
        }
    }
}

/// Keeps the plan at every change; a blank plan that was never touched is not worth a key.
#[hook]
fn use_keeping(state: &UseReducerHandle<State>, dispatch: &Dispatch) {
    let (key, plan, touched) = (state.key.clone(), state.plan.clone(), state.can_undo());
    let send = dispatch.clone();
    use_effect_with((key, plan), move |(key, plan)| {
        let is_blank = **plan == Plan::default() && !touched;
        if !is_blank && storage::write(key, plan).is_err() {
            send.dispatch(Action::Say(Notice { text: words::REFUSED.into(), kept: None }));
        }
    });
}

/// Opens a plan file that is dropped anywhere on the page.
#[hook]
fn use_drops(dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((), move |()| {
        let options = EventListenerOptions::enable_prevent_default();
        let window = gloo::utils::window();
        let over = EventListener::new_with_options(&window, "dragover", options, |event| {
            event.prevent_default();
        });
        let drop = EventListener::new_with_options(&window, "drop", options, move |event| {
            event.prevent_default();
            let transfer = event.dyn_ref::<DragEvent>().and_then(DragEvent::data_transfer);
            if let Some(file) = transfer.and_then(|it| it.files()).and_then(|files| files.get(0)) {
                open_file(&file, send.clone());
            }
        });
        move || std::mem::drop((over, drop))
    });
}

/// Undo and redo by the keys that every program uses, except inside a text field, which has its own.
#[hook]
fn use_keys(dispatch: &Dispatch) {
    let send = dispatch.clone();
    use_effect_with((), move |()| {
        let options = EventListenerOptions::enable_prevent_default();
        let listener = EventListener::new_with_options(
            &gloo::utils::document(),
            "keydown",
            options,
            move |event| {
                let Some(key) = event.dyn_ref::<KeyboardEvent>() else { return };
                if !(key.ctrl_key() || key.meta_key()) || key.alt_key() {
                    return;
                }
                let action = match (key.key().to_ascii_lowercase().as_str(), key.shift_key()) {
                    ("z", false) => Action::Undo,
                    ("z", true) | ("y", false) => Action::Redo,
                    _ => return,
                };
                event.prevent_default();
                send.dispatch(action);
            },
        );
        move || drop(listener)
    });
}

fn header(page: &Page) -> Html {
    let (state, send) = (&page.state, &page.send);
    let button = |action: Action, label: &'static str, sign: &'static str, can: bool| {
        let send = send.clone();
        let onclick = Callback::from(move |_: MouseEvent| send.dispatch(action.clone()));
        html! { <button type="button" class="tool" {onclick} disabled={!can} aria-label={label} title={label}>{ sign }</button> }
    };
    let name = if state.plan.name.is_empty() { words::UNNAMED } else { &state.plan.name };
    html! {
        <header class="top">
            <div class="title">
                <h1>{ "Quietpin" }</h1>
                <p class="plan-name">{ name }<span class="printed">{ format!(", printed {}", print::today()) }</span></p>
                { button(Action::Undo, "Undo", "↶", state.can_undo()) }
                { button(Action::Redo, "Redo", "↷", state.can_redo()) }
            </div>
            <Plans page={page.clone()} />
        </header>
    }
}

fn notices(page: &Page) -> Html {
    let (notices, send) = (&page.state.notices, &page.send);
    if notices.is_empty() {
        return html! {};
    }
    let dismiss = {
        let send = send.clone();
        Callback::from(move |_: MouseEvent| send.dispatch(Action::Dismiss))
    };
    html! {
        <div class="notices" role="alert">
            { for notices.iter().map(|notice| {
                let kept = notice.kept.clone();
                html! {
                    <div class="notice">
                        <p>{ &notice.text }</p>
                        if let Some(text) = kept {
                            <button type="button" onclick={Callback::from(move |_: MouseEvent| {
                                // where the browser refuses, the text is still kept
                                files::save("unreadable-plan.txt", &text).ok();
                            })}>{ "Save the old text as a file" }</button>
                        }
                    </div>
                }
            }) }
            <button type="button" class="quiet" onclick={dismiss}>{ "Understood" }</button>
        </div>
    }
}

fn welcome(send: &Dispatch) -> Html {
    let demo = {
        let send = send.clone();
        Callback::from(move |_: MouseEvent| {
            send.dispatch(Action::Open(storage::free_key(), Box::new(quietpin_core::demo())));
        })
    };
    html! {
        <section class="welcome">
            <p class="lead">{ "Plan the wiring of an engine controller, then check it, before anything is powered." }</p>
            <p>{ "Answer what you know. Each question says what it needs first; blanks are fine. Everything stays on this device." }</p>
            <button type="button" onclick={demo}>{ "Look at the demo: a hill-climb special" }</button>
        </section>
    }
}

fn caution() -> Html {
    html! {
        <footer>
            <p class="caution"><strong>{ "Caution: " }</strong>
                { "This page plans and checks; it does not replace the maker’s data sheet, local codes, a sanctioning body’s \
                   rules or a licensed person. Fuel burns, ignition voltage kills, and parts move by themselves at key-on: \
                   disconnect the battery before you touch the wiring." }
            </p>
            if offline::is_single_file() {
                <p>{ "This is the single-file page: it needs no server and no network." }</p>
            }
        </footer>
    }
}

/// The bar under the thumb: to the findings and to each question.
fn bar(page: &Page) -> Html {
    let report = &page.state.report;
    let grave = report.findings.iter().filter(|it| it.severity <= Severity::Fault).count();
    let link = |id: &'static str, name: String| {
        let onclick = Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            focus::go_to(id);
        });
        html! { <a href={format!("#at-{id}")} {onclick}>{ name }</a> }
    };
    let found = if grave == 0 { "Found".to_owned() } else { format!("Found {grave}") };
    html! {
        <nav class="bar" aria-label="Questions">
            { link("found", found) }
            { for report.sections.iter().map(|it| link(it.id, words::short_name(it.id).to_owned())) }
        </nav>
    }
}
