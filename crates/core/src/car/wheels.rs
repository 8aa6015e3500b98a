//! The wheels at crank and cam.

pub mod fields;
