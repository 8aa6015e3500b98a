//! What the commands that are run by hand share.

pub mod climb;
pub mod random;
pub mod subjects;
