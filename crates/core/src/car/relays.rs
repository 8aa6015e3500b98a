//! The relays: one record each, with coil and contact, whoever asks.

pub mod fields;
pub(crate) mod read;

pub use read::{feeding, is_switched_by_key, of_coils, with_coil};
