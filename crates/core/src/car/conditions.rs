//! The supply and the temperatures between which every answer must hold.

pub(crate) mod read;
