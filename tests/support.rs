//! What the tests share: the example plans, and reading the reference files.

#[path = "support/plans.rs"]
pub mod plans;
