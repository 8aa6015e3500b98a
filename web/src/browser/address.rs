//! The address of what is on the screen: its fragment, with the browser's own history.

use std::cell::{Cell, RefCell};

use gloo::events::{EventListener, EventListenerOptions};
use wasm_bindgen::JsCast;
use web_sys::{Element, HashChangeEvent, ScrollRestoration};

use super::focus;

thread_local! {
    /// How far down each address was left.
    static LEFT: RefCell<Vec<(String, f64)>> = const { RefCell::new(Vec::new()) };
    /// Whether a link was followed: then one arrives at its place; by the browser's buttons one comes back to where one was.
    static BY_LINK: Cell<bool> = const { Cell::new(false) };
}

/// The fragment of the address, without its sign.
pub(crate) fn now() -> String {
    let hash = gloo::utils::window().location().hash().unwrap_or_default();
    hash.trim_start_matches('#').to_owned()
}

/// Goes to another address.
pub(crate) fn go(address: &str) {
    BY_LINK.set(true);
    // where it can't be set, one stays
    gloo::utils::window().location().set_hash(address).ok();
}

/// Says where one comes to, each time, as long as the page is there.
pub(crate) fn listen(then: impl Fn(String) + 'static) {
    let window = gloo::utils::window();
    if let Ok(history) = window.history() {
        // the page scrolls by itself, once what belongs there is drawn
        history.set_scroll_restoration(ScrollRestoration::Manual).ok();
    }
    let may_prevent = EventListenerOptions::enable_prevent_default();
    let document = gloo::utils::document();
    let clicked = EventListener::new_with_options(&document, "click", may_prevent, |event| {
        if event.default_prevented() {
            return;
        }
        let target = event.target().and_then(|it| it.dyn_into::<Element>().ok());
        let link = target.and_then(|it| it.closest("a[href^='#']").ok()?);
        if let Some(link) = link {
            BY_LINK.set(true);
            // one is there already: it leads to the place once more
            if link.get_attribute("href").is_some_and(|it| it == format!("#{}", now())) {
                event.prevent_default();
                arrive(&now());
            }
        }
    });
    let changed = EventListener::new(&window, "hashchange", move |event| {
        let old = event.dyn_ref::<HashChangeEvent>().map(HashChangeEvent::old_url);
        let old = old.as_deref().and_then(|it| it.split_once('#')).map_or("", |it| it.1);
        let down = gloo::utils::window().scroll_y().unwrap_or(0.0);
        LEFT.with_borrow_mut(|left| {
            left.retain(|it| it.0 != old);
            left.push((old.to_owned(), down));
        });
        then(now());
    });
    clicked.forget();
    changed.forget();
}

/// Shows what belongs to the address, once it is drawn.
pub(crate) fn arrive(address: &str) {
    let left = LEFT.with_borrow(|left| Some(left.iter().find(|it| it.0 == address)?.1));
    let is_by_link = BY_LINK.take();
    match left.filter(|_| !is_by_link) {
        Some(down) => gloo::utils::window().scroll_to_with_x_and_y(0.0, down),
        None => focus::arrive_at(address),
    }
}
