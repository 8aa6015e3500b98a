//! The service worker: it keeps one whole version of the page, and answers from that.

use super::asset::Asset;
use super::template;
use crate::hash;
use anyhow::Result;
use serde_json::{Value, json};

/// The worker for exactly these files.
pub(super) fn script(text: &str, files: &[Asset]) -> Result<String> {
    let list: Vec<Value> =
        files.iter().map(|file| json!([file.name, hash::integrity(&file.bytes)])).collect();
    let list = serde_json::to_string_pretty(&list)?;
    // The worker's own text counts too: a mended worker is a new version.
    let version = hash::short(format!("{text}{list}").as_bytes());
    template::fill(text, &[("version", &version), ("files", &list)])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_change_makes_another_version() {
        let worker =
            |content: &str| script("{{version}} {{files}}", &[Asset::named("a", content)]).unwrap();
        assert_ne!(worker("one"), worker("other"), "other content");
        assert_eq!(worker("one"), worker("one"), "same content");
    }
}
