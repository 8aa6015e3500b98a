//! Every plan in `tests/plans/`: its report as a person reads it, and as the browser must give it too.
//!
//! `cargo xtask bless` takes today's answers as the expected ones; by hand, that is
//! `INSTA_UPDATE=always QUIETPIN_BLESS=1 cargo test -p quietpin-tests -- plans::`.
#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by them")]

mod own;

use std::{
    collections::{BTreeMap, BTreeSet},
    env, fs, panic,
    path::PathBuf,
};

use quietpin::print::{self, Options, WIDTH};
use quietpin_core::{
    explained,
    plan::{self, Plan},
    report::report,
};
use quietpin_tests::plans::{self, Example};

use own::{WHOLE, snapshot};

/// As many lines as can still be read when they change.
const MOST_LINES: usize = 25_000;

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("plans").join(name)
}

/// The files in a folder under `tests/plans/`: name and text.
fn files(name: &str) -> Vec<(String, String)> {
    let entries = fs::read_dir(folder(name)).unwrap_or_else(|error| panic!("{name}: {error}"));
    let read = |entry: fs::DirEntry| {
        let name = entry.file_name().to_string_lossy().into_owned();
        let text =
            fs::read_to_string(entry.path()).unwrap_or_else(|error| panic!("{name}: {error}"));
        (name, text)
    };
    entries.map(|entry| read(entry.unwrap_or_else(|error| panic!("{name}: {error}")))).collect()
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
fn the_plans_that_the_page_offers_are_among_the_examples() {
    for (name, mut offered) in
        [("demo", quietpin_core::demo()), ("whole-car", quietpin_core::whole_car())]
    {
        let example = plans::ALL.iter().find(|it| it.name == name).map(plan_of);
        // an example says what it is for
        let notes = example.as_ref().map(|it| it.notes.clone()).unwrap_or_default();
        offered.notes = notes;
        assert_eq!(example, Some(offered), "{name}");
    }
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
    settings.set_snapshot_path(folder("snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| {
        check_all(|example| {
            let plan = plan_of(example);
            insta::assert_snapshot!(example.name, snapshot(example, &plan, &report(&plan)));
        });
    });
}

#[test]
fn no_snapshot_is_left_of_a_plan_that_is_gone() {
    let known: BTreeSet<_> =
        plans::ALL.iter().map(|example| format!("{}.snap", example.name)).collect();
    for (name, _) in files("snapshots") {
        // a snapshot that waits to be looked at is called `….snap.new`
        let is_known = known.contains(name.trim_end_matches(".new"));
        assert!(is_known, "{name} belongs to no plan: remove it");
    }
    for name in WHOLE {
        assert!(known.contains(&format!("{name}.snap")), "{name} is no plan");
    }
}

/// A change of an answer is read before it is accepted, so it must be short enough to be read.
#[test]
fn the_snapshots_stay_short_enough_to_be_read() {
    let lines: usize = files("snapshots").iter().map(|(_, text)| text.lines().count()).sum();
    assert!(lines <= MOST_LINES, "{lines} lines: fewer whole reports, or shorter plans");
}

/// What is said of a finding in general stands in no report, and so in no hash.
#[test]
fn every_explanation_stands_in_a_snapshot() {
    let one_line = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let snapshots =
        one_line(&files("snapshots").into_iter().map(|(_, text)| text + " ").collect::<String>());
    let missing: Vec<_> = explained::explanations()
        .filter(|it| !snapshots.contains(&one_line(it.why)))
        .map(|it| it.code)
        .collect();
    assert!(missing.is_empty(), "no snapshot shows these in full: {}", missing.join(", "));
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
    let mut hashes: BTreeMap<String, String> = BTreeMap::new();
    for example in plans::ALL {
        for (part, hash) in plans::digest(&report(&plan_of(example))) {
            hashes.entry(part).or_default().extend([example.name, " ", hash.as_str(), "\n"]);
        }
    }
    if env::var_os("QUIETPIN_BLESS").is_some() {
        write_hashes(&hashes);
        return;
    }
    let known: BTreeMap<_, _> =
        plans::NATIVE.iter().map(|(part, text)| ((*part).to_owned(), (*text).to_owned())).collect();
    let parts: BTreeSet<_> = hashes.keys().chain(known.keys()).collect();
    let changed: Vec<_> = parts
        .into_iter()
        .filter(|part| hashes.get(*part) != known.get(*part))
        .map(|part| changed(part, hashes.get(part), known.get(part)))
        .collect();
    assert!(
        changed.is_empty(),
        "tests/plans/hashes/ is not current: read the snapshots, then `cargo xtask bless`. Changed:\n{}",
        changed.join("\n")
    );
}

/// A part, and the plans in which it is another or in one of both alone.
fn changed(part: &str, here: Option<&String>, known: Option<&String>) -> String {
    let lines = |text: Option<&String>| -> BTreeSet<String> {
        text.map_or("", String::as_str).lines().map(str::to_owned).collect()
    };
    let (here, known) = (lines(here), lines(known));
    let plans: BTreeSet<_> =
        here.symmetric_difference(&known).filter_map(|line| line.split(' ').next()).collect();
    format!("  {part}: {}", plans.into_iter().collect::<Vec<_>>().join(", "))
}

fn write_hashes(hashes: &BTreeMap<String, String>) {
    for (name, _) in files("hashes") {
        if !hashes.contains_key(name.trim_end_matches(".sha256")) {
            fs::remove_file(folder("hashes").join(&name)).expect("the file is removed");
        }
    }
    for (part, text) in hashes {
        let file = folder("hashes").join(format!("{part}.sha256"));
        if fs::read_to_string(&file).ok().as_ref() != Some(text) {
            fs::write(file, text).expect("the file is written");
        }
    }
}
