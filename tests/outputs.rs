//! May this load be connected? Held against hand calculations, data sheets and laws.
//!
//! Source: `tests/reference/SOURCES.md` names them; what was worked by hand has its arithmetic beside it.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

mod across;
mod alike;
mod common;
mod drain;
pub(crate) mod hand;
mod laws;
mod levels;
mod memory;
mod pairs;
pub(crate) mod plans;
mod spared;
mod switching;
mod usual;
