//! The temperatures between which every answer must hold.

pub mod fields;
