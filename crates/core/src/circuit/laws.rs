//! Laws that hold for every network, and cases that a person can work out.

mod cases;
mod planted;
mod random;
