//! Plan files: saved to and opened from the phone's own storage.

use wasm_bindgen::JsCast;
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// Hands a text to the browser as a file to save.
///
/// # Errors
/// Nothing is saved where the browser refuses.
pub(crate) fn save(name: &str, text: &str) -> Result<(), wasm_bindgen::JsValue> {
    save_as(name, text, "application/json")
}

/// The same, of another kind.
///
/// # Errors
/// Nothing is saved where the browser refuses.
pub(crate) fn save_as(name: &str, text: &str, kind: &str) -> Result<(), wasm_bindgen::JsValue> {
    let parts = js_sys::Array::of1(&text.into());
    let options = BlobPropertyBag::new();
    options.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let document = gloo::utils::document();
    let link: HtmlAnchorElement = document.create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    Url::revoke_object_url(&address)
}

/// A file name that every system takes.
pub(crate) fn name_for(plan_name: &str) -> String {
    named(plan_name, "quietpin.json")
}

/// The same, with another ending.
pub(crate) fn named(plan_name: &str, end: &str) -> String {
    let plain: String = plan_name
        .chars()
        .take(60)
        .map(|c| if c.is_ascii_alphanumeric() || !c.is_ascii() { c } else { '-' })
        .collect();
    let plain = plain.trim_matches('-');
    format!("{}.{end}", if plain.is_empty() { "plan" } else { plain })
}

/// Reads a file and hands its text, or nothing where it is no text, to `then`.
///
/// The reader is kept alive until then by `gloo`; dropping it would end the reading.
pub(crate) fn read(file: &web_sys::File, then: impl FnOnce(Read) + 'static) {
    let size = file.size();
    #[expect(clippy::cast_precision_loss, reason = "a limit of a megabyte")]
    let most = quietpin_core::plan::MOST_BYTES as f64;
    if size > most {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a file's size is whole"
        )]
        then(Read::TooLarge(size as usize));
        return;
    }
    let blob = gloo::file::Blob::from(file.clone());
    let reader = gloo::file::callbacks::read_as_text(&blob, move |text| {
        then(text.map_or(Read::Failed, Read::Text));
    });
    std::mem::forget(reader);
}

/// What came of reading a file.
pub(crate) enum Read {
    Text(String),
    TooLarge(usize),
    Failed,
}
