//! How a plan comes from another phone and goes to it: by this page's address, or by what is pasted.

use std::cell::RefCell;

use gloo::events::EventListener;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{HtmlDocument, HtmlInputElement};

use super::offline;

/// Where the codes wait for the rest of their series: each link is opened on a page of its own.
const WAITING: &str = "quietpin.scanned";

thread_local! {
    /// The same, for a browser that keeps nothing.
    static KEPT_HERE: RefCell<String> = const { RefCell::new(String::new()) };
}

fn storage() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// The codes that wait.
pub(crate) fn waiting() -> String {
    let kept = storage().and_then(|storage| storage.get_item(WAITING).ok()?);
    kept.unwrap_or_else(|| KEPT_HERE.with_borrow(String::clone))
}

/// Lets these codes wait, in place of those before.
pub(crate) fn wait(codes: &str) {
    let is_kept = storage().is_some_and(|storage| {
        // what can't be removed is written over with the next code
        if codes.is_empty() {
            storage.remove_item(WAITING)
        } else {
            storage.set_item(WAITING, codes)
        }
        .is_ok()
    });
    let here = if is_kept { "" } else { codes };
    KEPT_HERE.with_borrow_mut(|kept| here.clone_into(kept));
}

/// The whole of it: one function of the browser is fewer bytes than one for each part.
fn href() -> String {
    gloo::utils::window().location().href().unwrap_or_default()
}

/// The page's address as it is served, without a fragment; nothing where it was opened as a file.
pub(crate) fn address() -> String {
    let href = if offline::is_single_file() { String::new() } else { href() };
    let end = href.bytes().position(|sign| matches!(sign, b'?' | b'#')).unwrap_or(href.len());
    href.get(..end).unwrap_or_default().to_owned()
}

/// Whether another device can open a page at this address.
pub(crate) fn is_reached_from_elsewhere(address: &str) -> bool {
    let after = |scheme| address.strip_prefix(scheme);
    let is_own = |host: &str| ["localhost", "127.", "[::1]"].iter().any(|it| host.starts_with(it));
    after("http://").or_else(|| after("https://")).is_some_and(|host| !is_own(host))
}

/// The whole address without its fragment, and the fragment with its `#`.
fn parts(href: &str) -> (&str, &str) {
    let at = href.bytes().position(|sign| sign == b'#').unwrap_or(href.len());
    href.split_at_checked(at).unwrap_or_default()
}

/// What stands behind the page's address, with its `#`.
pub(crate) fn fragment() -> String {
    parts(&href()).1.to_owned()
}

/// Takes the fragment off the address, so that it is not opened again with the page.
pub(crate) fn take_off_fragment() {
    let href = href();
    let bare = Some(parts(&href).0);
    // where the browser refuses, a reload opens the plan once more, beside the others
    if let Ok(history) = gloo::utils::window().history() {
        history.replace_state_with_url(&JsValue::NULL, "", bare).ok();
    }
}

/// Does this whenever the fragment is another, as long as the page is open.
pub(crate) fn on_fragment(then: impl Fn() + 'static) {
    EventListener::new(&gloo::utils::window(), "hashchange", move |_| then()).forget();
}

/// Copies what stands in a text field; says whether the browser did. The newer way to copy is closed to a page that comes
/// without encryption, as on a workshop's own network.
pub(crate) fn copy(id: &str) -> bool {
    let document = gloo::utils::document();
    let field = document.get_element_by_id(id);
    let Some(field) = field.and_then(|it| it.dyn_into::<HtmlInputElement>().ok()) else {
        return false;
    };
    field.select();
    // a page's document is always one of HTML
    document.unchecked_into::<HtmlDocument>().exec_command("copy").unwrap_or_default()
}
