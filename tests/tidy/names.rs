//! The name of a type stands for one thing in the whole of the core.

use std::collections::BTreeMap;

use super::{
    check_none,
    sources::{self, Source},
};

/// Each question has one of these names, by the recipe for questions: what it remembers, what makes its details.
const OF_EACH_QUESTION: [&str; 2] = ["Memory", "Details"];

/// The names declared twice or more, each with every place where it is declared.
fn repeated(sources: &[Source]) -> Vec<String> {
    let read = sources::outside_tests(sources);
    let mut places: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    for (path, contents) in &read {
        for (name, line) in
            contents.types.iter().filter(|(name, _)| !OF_EACH_QUESTION.contains(&name.as_str()))
        {
            places.entry(name).or_default().push(format!("{path}:{line}"));
        }
    }
    places.retain(|_, places| places.len() > 1);
    places.iter().map(|(name, places)| format!("`{name}`: {}", places.join(", "))).collect()
}

#[test]
fn a_name_of_a_type_has_one_meaning() {
    let found = repeated(&sources::under("crates/core/src"));
    check_none(&found, "A type is named in full where its short name is taken:");
}

#[test]
fn a_name_is_repeated_wherever_it_is_declared_again() {
    let source = |path: &str, text: &str| Source { path: path.into(), text: text.into() };
    let found = repeated(&[
        source("a/lib.rs", "#[cfg(test)] mod laws; mod coil; struct Kind; type Memory = u8;"),
        source("a/laws.rs", "struct Kind; enum Feed {}"),
        source("a/laws/random.rs", "struct Kind;"),
        source(
            "a/coil.rs",
            "pub enum Feed {} type Memory = u16; fn f() { struct Kind; } #[cfg(test)] mod tests { struct Feed; }",
        ),
        source("a/coil/one.rs", "impl Deref for Feed {\n type Target = u8; }"),
        source("a/coil/two.rs", "\ntype Target = u8;"),
        source("a/coil/three.rs", "parts! {\n pub struct Feed { } }"),
        source("a/coil/four.rs", "pub trait Part {}"),
        source("a/coil/five.rs", "#[cfg(test)] type Part = u8;"),
    ]);
    assert_eq!(
        found,
        ["`Feed`: a/coil.rs:1, a/coil/three.rs:2", "`Kind`: a/lib.rs:1, a/coil.rs:1"]
    );
}
