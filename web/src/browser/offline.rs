//! The page without a network.

use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen]
extern "C" {
    /// Whether a part of the program that was sent last is not of this page: it is of another version, or broken.
    #[wasm_bindgen(js_namespace = wasm_bindgen, js_name = isMisplaced)]
    pub(crate) fn is_misplaced() -> bool;
}

/// Whether the page was opened as a file rather than from a server.
pub(crate) fn is_single_file() -> bool {
    gloo::utils::window().location().protocol().is_ok_and(|protocol| protocol == "file:")
}
