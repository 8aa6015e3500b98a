//! The trade of fitting an engine controller to an engine, as a pure function.
//!
//! The core knows no browser, no clock, no chance and no file.
#![forbid(unsafe_code)]

pub mod math;
