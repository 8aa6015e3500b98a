//! The supply and the temperatures between which every answer must hold.

pub mod fields;
pub(crate) mod read;
