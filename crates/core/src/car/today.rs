//! The car as it stands today, while it is measured.

pub mod fields;
