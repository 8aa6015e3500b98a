//! The project's own rules, held against its sources and its answers.
#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by them")]
#![expect(clippy::print_stdout, reason = "the sizes are worth seeing, with --nocapture")]

mod answers;
mod codes;
mod colours;
mod glossary;
mod layers;
mod names;
mod references;
mod sizes;
mod sources;
mod wording;

/// Fails with all that was found, a line each.
#[track_caller]
fn check_none(found: &[String], rule: &str) {
    assert!(found.is_empty(), "{rule}\n  {}", found.join("\n  "));
}
