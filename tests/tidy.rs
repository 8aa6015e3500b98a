//! The project's own rules, held against its sources and its answers.

#[path = "tidy/answers.rs"]
mod answers;
#[path = "tidy/codes.rs"]
mod codes;
#[path = "tidy/layers.rs"]
mod layers;
#[path = "tidy/references.rs"]
mod references;
#[path = "tidy/sizes.rs"]
mod sizes;
#[path = "tidy/sources.rs"]
mod sources;
#[path = "support/texts.rs"]
mod texts;

/// Fails with all that was found, a line each.
#[track_caller]
fn check_none(found: &[String], rule: &str) {
    assert!(found.is_empty(), "{rule}\n  {}", found.join("\n  "));
}
