//! Elements that listen to what is done to them.

use std::{cell::RefCell, rc::Rc};

use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlInputElement, MouseEvent};
use yew::{
    Callback,
    virtual_dom::{Listener, ListenerKind},
};

use super::{View, changed, shared};

/// The name of an event, and what is done then.
struct Listening {
    event: &'static str,
    then: Callback<Event>,
}

impl Listener for Listening {
    fn kind(&self) -> ListenerKind {
        // by its name: to clone one of yew's hundred kinds takes far more bytes
        ListenerKind::other(self.event.into())
    }

    fn handle(&self, event: Event) {
        self.then.emit(event);
    }

    fn passive(&self) -> bool {
        false
    }
}

/// The same element, listening to events of this name.
#[inline(never)]
pub(crate) fn on(event: &'static str, element: View, then: Callback<Event>) -> View {
    changed(element, |tag| {
        tag.add_listener(Rc::new(Listening { event, then }));
    })
}

/// The same element, which does something when it is pressed.
pub(crate) fn on_click(element: View, then: Callback<Event>) -> View {
    on("click", element, then)
}

/// The same text field, with what stands in it, and what is done with what is typed.
#[inline(never)]
pub(crate) fn on_typing(input: View, typed: &str, then: Callback<String>) -> View {
    let input = changed(input, |tag| tag.set_value(Some(shared(typed))));
    let then = Callback::from(move |event: Event| {
        let input = event.target().and_then(|it| it.dyn_into::<HtmlInputElement>().ok());
        if let Some(input) = input {
            then.emit(input.value());
        }
    });
    on("input", input, then)
}

/// Which way a finger was drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Step {
    /// To the right: what was before.
    Back,
    /// To the left: what comes next.
    Forth,
}

/// A finger that moves less than this, in pixels, was meant to stay.
const LEAST: i32 = 40;

/// The same element, which steps when a finger is drawn across it. `start` keeps where the finger came down.
pub(crate) fn on_swipe(
    element: View,
    start: &Rc<RefCell<Option<i32>>>,
    then: &Callback<Step>,
) -> View {
    let place = |event: &Event| event.dyn_ref::<MouseEvent>().map(MouseEvent::client_x);
    let (came, went, then) = (Rc::clone(start), Rc::clone(start), then.clone());
    let down = Callback::from(move |event: Event| *came.borrow_mut() = place(&event));
    let up = Callback::from(move |event: Event| {
        let from = went.borrow_mut().take();
        match from.zip(place(&event)).map(|(from, to)| to - from) {
            Some(moved) if moved >= LEAST => then.emit(Step::Back),
            Some(moved) if moved <= -LEAST => then.emit(Step::Forth),
            _ => {}
        }
    });
    on("pointerup", on("pointerdown", element, down), up)
}
