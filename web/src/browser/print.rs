//! What a printed sheet needs that a page doesn't: the day it was printed.

/// Today, as `2026-05-31`, by the phone's own calendar.
pub(crate) fn today() -> String {
    let now = js_sys::Date::new_0();
    format!("{}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date())
}

/// Opens the browser's print dialog.
pub(crate) fn print() {
    // a browser without printing says so itself
    gloo::utils::window().print().ok();
}
