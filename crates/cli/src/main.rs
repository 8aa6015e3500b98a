//! `quietpin`: reads a plan, prints its report.

fn main() {}
