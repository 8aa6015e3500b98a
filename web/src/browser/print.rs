//! What a printed sheet needs that a page doesn't: the day it was printed, and what is folded away.

use gloo::events::EventListener;
use wasm_bindgen::JsCast;
use web_sys::HtmlDetailsElement;

/// Today, as `2026-05-31`, by the phone's own calendar.
pub(crate) fn today() -> String {
    let now = js_sys::Date::new_0();
    format!("{}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
}

/// Opens what is folded around fields while a sheet is printed: what was typed there belongs on it.
pub(crate) fn unfold_for_print() {
    let window = gloo::utils::window();
    EventListener::new(&window, "beforeprint", |_| set_all(FOLDED, true)).forget();
    EventListener::new(&window, "afterprint", |_| set_all(UNFOLDED, false)).forget();
}

const FOLDED: &str = ":is(.rare, .wired, .second, .ways, .cautions):not([open])";
const UNFOLDED: &str = ".for-print";

/// Opens, or closes again, all that this selects.
fn set_all(selected: &str, open: bool) {
    // a list that does not change while it is gone through
    let Ok(all) = gloo::utils::document().query_selector_all(selected) else { return };
    for at in 0..all.length() {
        if let Some(details) = all.get(at).and_then(|it| it.dyn_into::<HtmlDetailsElement>().ok()) {
            details.set_open(open);
            // where the mark can't be set, it stays open
            details.class_list().toggle_with_force("for-print", open).ok();
        }
    }
}

/// Opens the browser's print dialog.
pub(crate) fn print() {
    // a browser without printing says so itself
    gloo::utils::window().print().ok();
}
