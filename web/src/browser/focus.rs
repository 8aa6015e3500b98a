//! Leading the eye and the keyboard to a place on the page.

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlDetailsElement, HtmlElement, HtmlInputElement};

/// Goes to the element with this id, or to the nearest part above it (`loads.0.kind`, `loads.0`, `loads`).
pub(crate) fn go_to(path: &str) {
    let mut rest = path;
    loop {
        let document = gloo::utils::document();
        let found = ["at-", "answer-"]
            .iter()
            .find_map(|kind| document.get_element_by_id(&format!("{kind}{rest}")));
        if let Some(element) = found {
            return show(&element);
        }
        let Some((above, _)) = rest.rsplit_once('.') else { return };
        rest = above;
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
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        // where it can't take the keyboard, being in view is all there is
        element.focus().ok();
    }
}
