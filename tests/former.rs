//! Files of earlier programs, as those wrote them: they open, and say what they said.
//!
//! `tests/plans-former/` has copies of some plans of `tests/plans/` from the day before names changed, and
//! `tests/plans-version1/` all that there were when each question still had facts of its own. Where a plan of
//! `tests/plans/` is changed otherwise, its copies are to be changed in the same way.
#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by it")]

use std::{fs, path::PathBuf};

use quietpin_core::{
    plan::{self, Plan},
    report::report,
};
use quietpin_tests::plans;

/// The former files, by the name of the plan.
fn former() -> Vec<(String, String)> {
    let folders = ["plans-former", "plans-version1"].map(|name| {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(name);
        fs::read_dir(folder).expect("a folder of former files")
    });
    let entries = folders.into_iter().flatten();
    let file = |entry: std::io::Result<fs::DirEntry>| {
        let path = entry.expect("an entry").path();
        let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
        (name, fs::read_to_string(path).expect("a text"))
    };
    let mut all: Vec<_> = entries.map(file).collect();
    all.sort();
    all
}

#[track_caller]
fn open(name: &str, text: &str) -> Plan {
    plan::parse(text).unwrap_or_else(|error| panic!("{name}: {error}"))
}

#[test]
fn a_former_file_says_what_the_plan_of_today_says() {
    let all = former();
    assert!(all.len() >= 150, "there are former files");
    for (name, text) in all {
        let today = plans::ALL.iter().find(|it| it.name == name).expect(&name);
        assert_ne!(text, today.text, "{name} has nothing that is called otherwise today");
        let (earlier, today) = (open(&name, &text), open(&name, today.text));
        assert_eq!(earlier, today, "{name}");
        assert_eq!(report(&earlier), report(&today), "{name}");
    }
}

#[test]
fn a_former_file_is_written_with_the_names_of_today() {
    for (name, text) in former() {
        let written = plan::write(&open(&name, &text));
        assert_eq!(open(&name, &written), open(&name, &text), "{name}: nothing is lost");
        let names = ["\"arming\"", "\"threshold\"", "\"release\""];
        let codes = ["\"injection_mode\": \"sequential\"", "\"paired\"", "\"bank\""];
        let parts = ["\"conditions\"", "\"injector_feed\"", "\"relay-coil\"", "\"quietpin\": 1"];
        for gone in names.into_iter().chain(codes).chain(parts) {
            assert!(!written.contains(gone), "{name} is written with {gone}");
        }
    }
}
