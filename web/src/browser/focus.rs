//! Leading the eye and the keyboard to a place on the page.

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlDetailsElement, HtmlElement, HtmlInputElement};

/// Comes to a card at its top, to a field or an answer within it at that.
pub(crate) fn arrive_at(path: &str) {
    let document = gloo::utils::document();
    let id = |kind: &str| document.get_element_by_id(&format!("{kind}-{path}"));
    if let Some(place) = id("at") {
        show(&place);
    } else {
        gloo::utils::window().scroll_to_with_x_and_y(0.0, 0.0);
        to_title();
    }
}

/// Puts the keyboard at the title of what is on the screen.
pub(crate) fn to_title() {
    if let Some(title) = gloo::utils::document().get_element_by_id("title") {
        hold(&title);
    }
}

/// Goes to the answer about this, where it is on the screen; says whether it is.
pub(crate) fn to_answer(subject: &str) -> bool {
    let answer = gloo::utils::document().get_element_by_id(&format!("answer-{subject}"));
    if let Some(answer) = &answer {
        show(answer);
    }
    answer.is_some()
}

/// The name of what asks for the next tap.
pub(crate) const ASK: &str = "ask";

/// Shows what asks for the next tap.
pub(crate) fn to_ask() {
    if let Some(ask) = gloo::utils::document().get_element_by_id(ASK) {
        show(&ask);
    }
}

/// Puts a text into a field, which was not drawn anew.
pub(crate) fn show_text(path: &str, text: &str) {
    let field = gloo::utils::document().get_element_by_id(&format!("at-{path}"));
    if let Some(input) = field.as_ref().and_then(|it| it.dyn_ref::<HtmlInputElement>()) {
        input.set_value(text);
    }
}

fn show(element: &Element) {
    let mut above = element.parent_element();
    while let Some(parent) = above {
        if let Some(details) = parent.dyn_ref::<HtmlDetailsElement>() {
            details.set_open(true);
        }
        above = parent.parent_element();
    }
    element.scroll_into_view();
    hold(element);
}

fn hold(element: &Element) {
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        // where it can't take the keyboard, being in view is all there is
        element.focus().ok();
    }
}
