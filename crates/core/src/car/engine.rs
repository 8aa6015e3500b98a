//! The engine.

pub mod fields;
pub(crate) mod read;
pub(crate) mod words;
