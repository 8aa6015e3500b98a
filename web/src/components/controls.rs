//! What is pressed.

use web_sys::Event;
use yew::prelude::*;

use super::Dispatch;
use crate::{
    browser::focus,
    element::{Part, View, el, on_click},
    state::Action,
};

/// A plain button.
pub(crate) fn button(
    class: Option<&'static str>,
    label: impl Part,
    pressed: Callback<Event>,
) -> View {
    on_click(el!("button", "type" = "button", "class" = class; label), pressed)
}

/// Does the same at each press.
pub(crate) fn sending(send: &Dispatch, action: Action) -> Callback<Event> {
    let send = send.clone();
    Callback::from(move |_| send.dispatch(action.clone()))
}

/// A link to a place on the page, which also opens what is folded there.
pub(crate) fn link_to(path: &str, inside: View) -> View {
    let href = format!("#at-{path}");
    let path = path.to_owned();
    let go = Callback::from(move |event: Event| {
        event.prevent_default();
        focus::go_to(&path);
    });
    on_click(el!("a", "href" = href; inside), go)
}
