//! Published tables and constants of the trade, each with its source.

pub mod copper;
pub mod fuels;
pub mod fuses;
pub mod preferred;
pub mod wires;
