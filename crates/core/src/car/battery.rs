//! The battery, as it stands between cranking and charging.

pub mod fields;
