//! The chores of the project.

fn main() {}
