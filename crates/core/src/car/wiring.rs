//! How the wires of the car are laid.

pub mod fields;
