//! The command `quietpin`: reads a plan, prints its report. It computes nothing.

pub mod arguments;
pub mod print;
pub mod source;
