//! What the page may load: its own files, and nothing else.

use crate::hash;

/// For the page that a server hands out.
pub(crate) fn served() -> String {
    let rules = [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
    ];
    join(&rules)
}

/// For the page in one file: it loads nothing, and runs only the scripts it was built with.
pub(super) fn single(scripts: &[&str], style: &str) -> String {
    let hashes = |texts: &[&str]| {
        let quoted: Vec<_> =
            texts.iter().map(|text| format!("'{}'", hash::integrity(text.as_bytes()))).collect();
        quoted.join(" ")
    };
    let script_rule = format!("script-src {} 'wasm-unsafe-eval'", hashes(scripts));
    let style_rule = format!("style-src {}", hashes(&[style]));
    join(&["default-src 'none'", &script_rule, &style_rule, "img-src data: blob:"])
}

fn join(rules: &[&str]) -> String {
    let always = ["base-uri 'none'", "form-action 'none'"];
    [rules, &always].concat().join("; ")
}
