//! A module of the core uses only what stands in its own layer or below.

use super::{check_none, sources};

/// The layers, lowest first; what stands in one, and what it may know.
const LAYERS: [&[&str]; 4] = [
    // vocabulary: knows nothing
    &["budget", "counted", "finding", "math", "message", "quantity", "sorted", "words", "working"],
    // mathematics that knows no car
    &["assignment", "circuit", "corners", "permutation", "timeline", "transient"],
    // the trade: knows cars, but not what was typed
    &[
        "allocate",
        "battery",
        "bus",
        "channels",
        "coil",
        "conditions",
        "cranking",
        "engine",
        "fuel",
        "injector",
        "loom",
        "output",
        "proving",
        "sensor",
        "supply",
        "tables",
        "trigger",
    ],
    // the document: knows the whole
    &["car", "checked", "explained", "fields", "plan", "questions", "read", "report", "schema"],
];

/// What the core exports by name beside its modules.
const MACROS: [&str; 2] = ["say", "say_of"];

fn layer(module: &str) -> Option<usize> {
    LAYERS.iter().position(|modules| modules.contains(&module))
}

/// `crates/core/src/read/row.rs` is of `read`.
fn module_of(path: &str) -> Option<&str> {
    let name = path.strip_prefix("crates/core/src/")?;
    let name = name.split_once('/').map_or(name.strip_suffix(".rs")?, |(folder, _)| folder);
    (name != "lib").then_some(name)
}

#[test]
fn a_module_uses_only_its_own_layer_and_those_below() {
    let mut found = Vec::new();
    for (path, contents) in sources::of_the_core() {
        let Some(module) = module_of(path) else { continue };
        let Some(own) = layer(module) else {
            found.push(format!("{path}: `{module}` has no layer: give it one in {}", file!()));
            continue;
        };
        for (used, line) in &contents.modules {
            match layer(used) {
                Some(other) if other > own => found.push(format!(
                    "{path}:{line}: `{module}` (layer {own}) uses `{used}` (layer {other}), which stands above it"
                )),
                None if !MACROS.contains(&used.as_str()) => {
                    found.push(format!("{path}:{line}: `crate::{used}` is in no layer"));
                }
                _ => {}
            }
        }
    }
    check_none(&found, "Layers:");
}

#[test]
fn the_layer_of_a_file_is_that_of_its_module() {
    assert_eq!(module_of("crates/core/src/read/row.rs"), Some("read"));
    assert_eq!(module_of("crates/core/src/plan.rs"), Some("plan"));
    assert_eq!(module_of("crates/core/src/lib.rs"), None);
    assert_eq!(layer("plan"), Some(3), "the document stands on top");
    assert_eq!(layer("math"), Some(0), "and vocabulary at the bottom");
}
