//! What is pressed.

use web_sys::Event;
use yew::prelude::*;

use super::Dispatch;
use crate::{
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

/// A link to a place on the page: a question, a card, a field.
pub(crate) fn link_to(path: &str, inside: View) -> View {
    el!("a", "href" = format!("#{path}"); inside)
}
