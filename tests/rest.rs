//! May this load be connected? Held against hand calculations, data sheets and laws.
//!
//! Source: `tests/reference/SOURCES.md` names them; what was worked by hand has its arithmetic beside it.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

#[path = "rest/common.rs"]
mod common;
#[path = "rest/hand.rs"]
mod hand;
#[path = "rest/laws.rs"]
mod laws;
#[path = "rest/levels.rs"]
mod levels;
#[path = "rest/memory.rs"]
mod memory;
#[path = "rest/pairs.rs"]
mod pairs;
#[path = "rest/plans.rs"]
mod plans;
#[path = "rest/switching.rs"]
mod switching;
