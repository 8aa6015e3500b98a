//! What comes from outside says where it comes from.

use std::{
    fs,
    path::{Path, PathBuf},
};

use super::{check_none, sources};

/// Tests of our own rules; the others hold the core against something published.
const OWN: &[&str] = &[
    "tests/all.rs",
    "tests/plans.rs",
    "tests/schema.rs",
    "tests/car.rs",
    "tests/former.rs",
    "tests/laws.rs",
    "tests/tidy.rs",
    "tests/support.rs",
    "tests/build.rs",
];

#[test]
fn every_reference_file_stands_among_the_sources() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference");
    let mut files = Vec::new();
    gather(&folder, &mut files);
    if files.is_empty() {
        return;
    }
    let sources =
        fs::read_to_string(folder.join("SOURCES.md")).expect("tests/reference/SOURCES.md");
    let unnamed =
        files.iter().filter(|path| !names(&sources, path)).map(|path| path.display().to_string());
    check_none(&unnamed.collect::<Vec<_>>(), "Not named in tests/reference/SOURCES.md:");
}

fn names(sources: &str, path: &Path) -> bool {
    path.file_name().is_some_and(|name| sources.contains(&*name.to_string_lossy()))
}

fn gather(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            gather(&path, files);
        } else if path.file_name().is_some_and(|name| name != "SOURCES.md") {
            files.push(path);
        }
    }
}

/// A file of reference tests at the top of `tests/` has one `Source:` for each test, or one for all of them.
#[test]
fn every_reference_test_names_its_source() {
    let mut found = Vec::new();
    for source in sources::under("tests") {
        let is_at_top = source.path.matches('/').count() == 1;
        if is_at_top && !OWN.contains(&&*source.path) && !source.text.contains("Source: ") {
            found.push(format!("{}: no “Source: ”", source.path));
        }
    }
    check_none(&found, "Tests against unnamed sources:");
}
