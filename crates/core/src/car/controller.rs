//! The controller: what stands entered in it, and its supply.

pub mod fields;
