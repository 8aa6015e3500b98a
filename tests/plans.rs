//! Every plan in `tests/plans/`: its report as a person reads it, and as the browser must give it too.
//!
//! `cargo xtask bless` takes today's answers as the expected ones; by hand, that is
//! `INSTA_UPDATE=always QUIETPIN_BLESS=1 cargo test -p quietpin-tests --test plans`.
#![expect(clippy::panic, reason = "a test fails by it")]

use std::{collections::BTreeSet, env, fs, panic, path::PathBuf};

use quietpin::print::{self, Options, WIDTH};
use quietpin_core::{
    plan::{self, Plan},
    report::report,
};
use quietpin_tests::plans::{self, Example};

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("plans")
}

fn plan_of(example: &Example) -> Plan {
    plan::parse(example.text).unwrap_or_else(|error| panic!("{}: {error}", example.name))
}

/// Runs a check on every plan, and says of all that fail.
#[track_caller]
fn check_all(check: impl Fn(&Example) + panic::RefUnwindSafe) {
    let fails = |example: &&Example| panic::catch_unwind(|| check(example)).is_err();
    let failed: Vec<_> = plans::ALL.iter().filter(fails).map(|example| example.name).collect();
    assert!(failed.is_empty(), "these plans fail, see above: {}", failed.join(", "));
}

#[test]
fn every_plan_is_read_and_says_what_it_is_for() {
    assert!(!plans::ALL.is_empty(), "there are plans");
    check_all(|example| {
        let plan = plan_of(example);
        assert!(plan.notes.len() > 10, "{}: its notes say what it is for", example.name);
        assert!(!plan.name.is_empty(), "{}: it has a name", example.name);
    });
}

#[test]
fn the_reports_are_as_they_were_read_and_accepted() {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(folder().join("snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        check_all(|example| {
            let text = print::report(&report(&plan_of(example)), Options { working: true });
            insta::assert_snapshot!(example.name, text);
        });
    });
}

#[test]
fn no_snapshot_is_left_of_a_plan_that_is_gone() {
    let known: BTreeSet<_> =
        plans::ALL.iter().map(|example| format!("{}.snap", example.name)).collect();
    let entries = fs::read_dir(folder().join("snapshots")).expect("the folder of the snapshots");
    for entry in entries {
        let name = entry.expect("an entry").file_name().to_string_lossy().into_owned();
        // a snapshot that waits to be looked at is called `….snap.new`
        let is_known = known.contains(name.trim_end_matches(".new"));
        assert!(is_known, "{name} belongs to no plan: remove it");
    }
}

#[test]
fn no_line_is_too_wide_for_a_terminal() {
    check_all(|example| {
        let text = print::report(&report(&plan_of(example)), Options { working: true });
        for line in text.lines() {
            let width = line.chars().count();
            assert!(width <= WIDTH, "{}: {width} columns: {line}", example.name);
        }
    });
}

/// The browser's side of this is in `crates/wasm/tests/api.rs`.
#[test]
fn the_hashes_for_the_browser_are_current() {
    let digests: String = plans::ALL
        .iter()
        .map(|example| plans::digest(example.name, &report(&plan_of(example))))
        .collect();
    if env::var_os("QUIETPIN_BLESS").is_some() {
        fs::write(folder().join("reports.sha256"), digests).expect("the file is written");
        return;
    }
    let changed: Vec<_> =
        digests.lines().filter(|line| !plans::NATIVE.lines().any(|known| known == *line)).collect();
    assert!(
        digests == plans::NATIVE,
        "tests/plans/reports.sha256 is not current: read the snapshots, then `cargo xtask bless`. Changed:\n{}",
        changed.join("\n")
    );
}
