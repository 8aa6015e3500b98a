//! What is typed is kept, taken back, brought back, and met by what another page of the same browser keeps.

use std::{cell::RefCell, rc::Rc};

use gloo::{events::EventListener, timers::callback::Timeout};
use quietpin_core::plan::Plan;
use wasm_bindgen::JsCast;
use yew::prelude::*;

use crate::{
    browser::{address, focus, storage},
    components::{Dispatch, Page, button, sending},
    element::{View, el},
    state::{Action, Done, Notice, State},
    words,
};

/// The plan that was open last; where it can't be read, a blank one beside it.
pub(crate) fn opened() -> State {
    let state = |key, plan| {
        let mut state = State::new(key, plan, storage::KEEP);
        state.address = address::now();
        state
    };
    let blank = || state(storage::free_key(), Plan::default());
    let Some(key) = storage::last_open() else { return blank() };
    match storage::read(&key) {
        storage::Stored::Plan(plan) => {
            let past = storage::past(&key, &plan);
            state(key, *plan).coming_from(past)
        }
        storage::Stored::Nothing => blank(),
        storage::Stored::Unreadable(text, _) => {
            let mut state = blank();
            state.notices.push(Notice { text: words::UNREADABLE.into(), kept: Some(text) });
            state
        }
    }
}

/// So long it is told what a press did, in milliseconds; it can be taken back for longer.
const TOLD: u32 = 10_000;

/// What the page showed last.
pub(crate) type Held = Rc<RefCell<Option<State>>>;

/// Takes in what another page keeps, when that is told, and when one comes back to this page: one that was put away is told
/// nothing. What can be taken back is kept when this page itself is put away.
pub(crate) fn listen(send: &Dispatch, held: Held) {
    let window = gloo::utils::window();
    let put_away = move || {
        if let Some(state) = &*held.borrow() {
            storage::keep_past(&state.key, &state.plan, state.past());
        }
    };
    let meet = |target: &web_sys::EventTarget, event: &'static str| {
        let send = send.clone();
        EventListener::new(target, event, move |event| {
            if event.dyn_ref().is_none_or(storage::is_of_plan) {
                send.dispatch(Action::Meet);
            }
        })
    };
    let listeners = [
        EventListener::new(&window, "pagehide", move |_| put_away()),
        meet(&window, "storage"),
        meet(&window, "pageshow"),
        meet(&gloo::utils::document(), "visibilitychange"),
    ];
    listeners.into_iter().for_each(EventListener::forget);
}

/// Tells for a while what a press did. A field whose text was refused shows what stands in the plan. What it returns is
/// kept when the page is put away.
#[hook]
pub(crate) fn use_keeping(state: &State, dispatch: &Dispatch) -> Held {
    let held = use_mut_ref(|| None::<State>);
    *held.borrow_mut() = Some(state.clone());
    let send = dispatch.clone();
    use_effect_with(state.done.clone(), move |done| {
        let told = done.is_some().then(|| Timeout::new(TOLD, move || send.dispatch(Action::Fade)));
        move || drop(told)
    });
    let stands = state.plan.get(&state.refused.1).unwrap_or_default().to_owned();
    use_effect_with(state.refused.clone(), move |(_, path)| focus::show_text(path, &stands));
    held
}

/// What has to do with what is kept and taken back, once there is what answers.
pub(crate) fn aside(page: &Page) -> View {
    // each is there before it says something: only then is it read aloud
    el!("div", "class" = "aside";
        el!("div", "role" = "alert"; page.state.is_held.then(|| held(page))),
        el!("div", "class" = "told", "role" = "status"; page.state.done.as_ref().map(|it| done(page, it))),
    )
}

/// That a plan is not answered, since that did not come to an end last time.
fn held(page: &Page) -> View {
    el!("div", "class" = "notices";
        el!("div", "class" = "notice"; el!("p"; words::HELD)),
        button(None, "Answer it now", sending(&page.send, Action::AnswerNow)),
    )
}

/// What was done with one press, and the press that does the contrary.
fn done(page: &Page, done: &Done) -> View {
    let (label, contrary) =
        if done.is_taken_back { ("Redo this", Action::Redo) } else { ("Undo this", Action::Undo) };
    el!("div", "class" = "done";
        el!("p"; &done.text),
        button(Some("quiet"), label, sending(&page.send, contrary)),
    )
}

/// Where the licences stand of what this page is made with.
pub(crate) fn licences() -> View {
    el!("p"; el!("a", "href" = "LICENSES-third-party.txt"; "Licences"))
}
