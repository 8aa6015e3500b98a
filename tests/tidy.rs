//! The project's own rules, held against its sources and its answers.
#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by them")]
#![expect(clippy::print_stdout, reason = "the sizes are worth seeing, with --nocapture")]

#[path = "tidy/answers.rs"]
mod answers;
#[path = "tidy/codes.rs"]
mod codes;
#[path = "tidy/colours.rs"]
mod colours;
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
