//! Long files hide things.

use super::{check_none, sources};

/// Past this many lines, look for the seam.
const LONG: usize = 500;
/// Past this many, there is one.
const TOO_LONG: usize = 700;

#[test]
fn no_file_is_too_long() {
    let folders = ["crates", "web", "tests"];
    let sources: Vec<_> = folders.into_iter().flat_map(sources::under).collect();
    let mut lengths: Vec<_> =
        sources.iter().map(|source| (source.text.lines().count(), &source.path)).collect();
    lengths.sort_unstable();
    let median = lengths[lengths.len() / 2].0;
    println!("{} files, half of them under {median} lines", lengths.len());
    for (lines, path) in lengths.iter().filter(|(lines, _)| *lines > LONG) {
        println!("{path}: {lines} lines: look for the seam");
    }
    let too_long = lengths.iter().filter(|(lines, _)| *lines > TOO_LONG);
    let too_long: Vec<_> = too_long.map(|(lines, path)| format!("{path}: {lines} lines")).collect();
    check_none(&too_long, &format!("Files of more than {TOO_LONG} lines:"));
}
