//! The plans: which are kept, which is open, and the ways in and out.

use std::rc::Rc;

use quietpin_core::plan::{self, Plan};
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::{Dispatch, Page, button};
use crate::{
    address::{PLANS, Shown, shown},
    answering::Details,
    browser::{files, print, storage},
    element::{View, all, el, keyed, on, on_click, on_typing},
    state::{Action, Notice, State},
    words,
};

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    pub(crate) page: Page,
}

#[component]
pub(crate) fn Plans(props: &Props) -> Html {
    let (state, send) = (&props.page.state, &props.page.send);
    let toggles = use_state(|| 0_usize);
    let removing = use_state(|| false);
    // the plans are read anew where another one is opened, and where one looks at them: another page may have kept some
    let kept = use_memo((state.key.clone(), *toggles), |_| (storage::list(), storage::removed()));
    let (kept, removed) = (with_open(kept.0.clone(), state), &kept.1);
    let is_here = shown(&state.address) == Shown::List(PLANS);
    let details = el!("details", "class" = "plans", "open" = is_here.then_some("");
        el!("summary"; "Plans"),
        el!("div", "class" = "sheet";
            name(state, send),
            el!("ul", "class" = "kept", "aria-label" = "Plans kept in this browser";
                all(kept.iter().map(|it| entry(it, &state.key, send)))),
            buttons(state, send, removing),
            el!("ul", "class" = "removed", "aria-label" = "Removed plans";
                all(removed.iter().map(|it| removed_entry(it, send)))),
            state.details.there().map(|details| (details.share)(&props.page)),
        ),
    );
    on("toggle", details, Callback::from(move |_| toggles.set(*toggles + 1))).into()
}

fn name(state: &State, send: &Dispatch) -> View {
    let input = el!("input", "id" = "plan-name", "type" = "text", "autocomplete" = "off");
    let send = send.clone();
    let rename = Callback::from(move |typed| send.dispatch(Action::Type("name".into(), typed)));
    el!("div", "class" = "field";
        el!("label", "for" = "plan-name"; "Name of this plan"),
        el!("div", "class" = "entry"; on_typing(input, &state.plan.name, rename)),
    )
}

fn buttons(state: &State, send: &Dispatch, removing: UseStateHandle<bool>) -> View {
    let open_new = |plan: fn(&Plan) -> Plan| {
        let (send, now) = (send.clone(), state.plan.clone());
        Callback::from(move |_| {
            send.dispatch(Action::Open(storage::free_key(), Box::new(plan(&now))));
        })
    };
    let remove = if *removing { "Press again: remove this plan" } else { "Remove this plan" };
    el!("div", "class" = "buttons";
        button(None, "New, blank", open_new(|_| Plan::default())),
        button(None, "New, from the demo", open_new(|_| quietpin_core::demo())),
        button(None, "New, a copy of this", open_new(copy)),
        el!("label", "class" = "button", "for" = "plan-file"; "Open a file"),
        file_input("plan-file", send.clone(), open),
        button(None, "Save as a file", save(state.plan.clone(), send.clone())),
        button(None, "Print", Callback::from(|_| print::print())),
        state.details.there().map(|details| whole_car(details, send)),
        button(Some("quiet last"), remove, removal(&state.key, send, removing)),
    )
}

/// Opens the invented car that is described to its end.
pub(crate) fn whole_car(details: &'static Details, send: &Dispatch) -> View {
    let send = send.clone();
    let open = Callback::from(move |_| {
        send.dispatch(Action::Open(storage::free_key(), Box::new((details.whole_car)())));
    });
    button(Some("quiet"), "New, from the whole car: 24 outputs, 18 loads, 6 relays", open)
}

/// A field that takes a plan's file; `then` says what is done with the plan.
pub(crate) fn file_input(id: &'static str, send: Dispatch, then: fn(Plan) -> Action) -> View {
    let input = el!(
        "input",
        "id" = id,
        "class" = "file",
        "type" = "file",
        "accept" = ".json,application/json"
    );
    let choose = Callback::from(move |event: Event| {
        if let Some(input) = event.target_dyn_into::<HtmlInputElement>() {
            if let Some(file) = input.files().and_then(|files| files.get(0)) {
                read_file(&file, send.clone(), then);
            }
            // the same file can be chosen again
            input.set_value("");
        }
    });
    on("change", input, choose)
}

/// Removes the open plan at the second press.
fn removal(key: &str, send: &Dispatch, removing: UseStateHandle<bool>) -> Callback<Event> {
    let (key, send) = (key.to_owned(), send.clone());
    Callback::from(move |_| {
        if *removing {
            storage::remove(&key);
            open_any(&send);
            removing.set(false);
        } else {
            removing.set(true);
        }
    })
}

/// The list as it is once the open plan is kept, which happens after the page is drawn.
fn with_open(mut kept: Vec<storage::Kept>, state: &State) -> Vec<storage::Kept> {
    let open = storage::Kept::open(&state.key, &state.plan.name);
    match kept.iter_mut().find(|it| it.key == open.key) {
        Some(same) => *same = open,
        None => kept.push(open),
    }
    kept
}

fn copy(plan: &Plan) -> Plan {
    let name = if plan.name.is_empty() { words::UNNAMED } else { &plan.name };
    plan.clone().renamed(format!("{name}, copy"))
}

fn entry(kept: &storage::Kept, open: &str, send: &Dispatch) -> View {
    let name = if kept.name.is_empty() { words::UNNAMED } else { &kept.name };
    let is_open = kept.key == open;
    let label = if is_open { format!("{name} (open)") } else { name.to_owned() };
    let button = el!("button", "type" = "button", "class" = "quiet",
        "aria-current" = is_open.then_some("true"); label);
    let (key, send) = (kept.key.clone(), send.clone());
    let button = on_click(button, Callback::from(move |_| open_kept(&key, &send)));
    keyed(&kept.key, el!("li"; button))
}

/// A plan that was removed, and can be brought back.
fn removed_entry(kept: &storage::Kept, send: &Dispatch) -> View {
    let name = if kept.name.is_empty() { words::UNNAMED } else { &kept.name };
    let button =
        el!("button", "type" = "button", "class" = "quiet"; format!("Bring back “{name}”"));
    let (key, send) = (kept.key.clone(), send.clone());
    let bring_back = Callback::from(move |_| match storage::bring_back(&key) {
        Some(key) => open_kept(&key, &send),
        None => send.dispatch(Action::Say(Notice { text: words::REFUSED.into(), kept: None })),
    });
    keyed(&kept.key, el!("li"; on_click(button, bring_back)))
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
    read_file(file, send, open);
}

fn open(plan: Plan) -> Action {
    Action::Open(storage::free_key(), Box::new(plan))
}

fn read_file(file: &web_sys::File, send: Dispatch, then: fn(Plan) -> Action) {
    files::read(file, move |read| {
        let parsed = match read {
            files::Read::Text(text) => plan::parse(&text),
            files::Read::TooLarge(bytes) => Err(plan::ReadError::TooLarge { bytes }),
            files::Read::Failed => Err(plan::ReadError::NotJson { detail: "it is no text".into() }),
        };
        send.dispatch(match parsed {
            Ok(plan) => then(plan),
            Err(error) => Action::Say(Notice { text: error.to_string(), kept: None }),
        });
    });
}

/// Saves a plan as a file.
pub(crate) fn save(plan: Rc<Plan>, send: Dispatch) -> Callback<Event> {
    Callback::from(move |_| {
        if files::save(&files::name_for(&plan.name), &plan::write(&plan)).is_err() {
            let text = "This browser did not save the file.".to_owned();
            send.dispatch(Action::Say(Notice { text, kept: None }));
        }
    })
}
