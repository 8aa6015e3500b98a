//! A serial bus of two wires between controllers (CAN, ISO 11898): how its ends are closed, how long it may be, what its lines
//! read while it runs, how busy it is.

pub mod frame;
pub mod levels;
pub mod load;
pub mod pair;
pub mod reach;
