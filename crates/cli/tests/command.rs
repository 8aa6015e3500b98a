//! The command as it is run: what it prints, and what it ends with.
#![expect(clippy::expect_used, reason = "a test fails by it")]

use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Output, Stdio},
};

const BLANK: &str = r#"{"quietpin": 1, "name": "The special"}"#;
const FAULTY: &str = r#"{"quietpin": 1, "conditions": {"charging": "14.8 ohm"}}"#;

fn quietpin(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_quietpin"));
    command.args(arguments).stdin(Stdio::null());
    command
}

fn file(name: &str, content: &[u8]) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    fs::write(&path, content).expect("a file in the target folder");
    path
}

fn run(arguments: &[&str], path: &Path) -> Output {
    quietpin(arguments).arg(path).output().expect("it runs")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("it speaks UTF-8")
}

/// The command refuses the content of a file, for the reason given, and prints no report.
#[track_caller]
fn check_unreadable(name: &str, content: &[u8], reason: &str) {
    refused(&run(&["report"], &file(name, content)), reason);
}

#[track_caller]
fn refused(output: &Output, reason: &str) {
    let message = text(&output.stderr);
    assert_eq!(output.status.code(), Some(2), "{message}");
    assert!(output.stdout.is_empty(), "no half report");
    assert!(message.contains(reason), "{reason}: {message}");
    assert!(!message.contains("panicked"), "{message}");
}

#[test]
fn a_plan_with_nothing_wrong_ends_with_0() {
    let output = run(&["report"], &file("blank.json", BLANK.as_bytes()));
    let printed = text(&output.stdout);
    assert_eq!(output.status.code(), Some(0), "{printed}");
    assert!(printed.starts_with("The special\n===========\n"), "{printed}");
    assert!(
        printed.contains("Nothing was found.") || printed.contains("Nothing wrong was found."),
        "{printed}"
    );
    assert!(output.stderr.is_empty(), "nothing to complain of");
}

#[test]
fn a_plan_with_a_fault_ends_with_1_and_says_it_first() {
    let output = run(&["report"], &file("faulty.json", FAULTY.as_bytes()));
    let printed = text(&output.stdout);
    assert_eq!(output.status.code(), Some(1), "{printed}");
    let finding = printed.find("1. FAULT").expect("the finding");
    assert!(printed.find("Take care").is_none_or(|care| finding < care), "worst first: {printed}");
}

#[test]
fn the_full_report_says_why_and_what_was_assumed() {
    let output = run(&["report", "--full"], &file("full.json", FAULTY.as_bytes()));
    let printed = text(&output.stdout);
    assert_eq!(output.status.code(), Some(1), "the same code as without --full");
    let finding = printed.find("1. FAULT: ").expect("the finding");
    assert!(printed.contains("(battery.charging), as planned"), "{printed}");
    assert!(printed.contains("Why it matters: "), "{printed}");
    assert!(printed.contains("What to do: "), "{printed}");
    let questions = printed.find("Which channel fires").expect("the questions");
    assert!(finding < questions, "worst first: {printed}");
}

#[test]
fn json_is_the_whole_report() {
    let output = run(&["report", "--json"], &file("json.json", FAULTY.as_bytes()));
    assert_eq!(output.status.code(), Some(1), "the same code as without --json");
    let printed: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    let plan = quietpin_core::plan::parse(FAULTY).expect("a plan");
    let report = serde_json::to_string(&quietpin_core::report::report(&plan)).expect("data");
    let report: serde_json::Value = serde_json::from_str(&report).expect("JSON");
    assert_eq!(printed, report, "as the core gives it");
}

#[test]
fn a_plan_may_come_from_the_standard_input() {
    let mut child = piped(&["report", "-"]);
    child.stdin.take().expect("its input").write_all(BLANK.as_bytes()).expect("it listens");
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
    assert!(text(&output.stdout).starts_with("The special\n"), "the plan's name comes first");
}

#[test]
fn a_reader_that_goes_away_is_no_error() {
    let mut child = piped(&["report", "-"]);
    drop(child.stdout.take());
    child.stdin.take().expect("its input").write_all(BLANK.as_bytes()).expect("it listens");
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(text(&output.stderr), "", "it ends quietly");
    assert_eq!(output.status.code(), Some(0), "and as if it had been read");
}

fn piped(arguments: &[&str]) -> std::process::Child {
    quietpin(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it runs")
}

#[test]
fn what_is_no_plan_ends_with_2_and_the_reason() {
    check_unreadable("empty.json", b"", "can't be read as JSON");
    check_unreadable(
        "latin.json",
        b"{\"quietpin\": 1, \"name\": \"\xfc\"}",
        "not text in UTF-8 (byte 26)",
    );
    check_unreadable("utf16.json", b"\xff\xfe{\0}\0", "UTF-16");
    check_unreadable("large.json", &vec![b' '; 10_000_000], "10000000 bytes");
    check_unreadable("random.json", &random_bytes(4096), "not text in UTF-8");
    check_unreadable("deep.json", "[".repeat(200_000).as_bytes(), "can't be read as JSON");
    check_unreadable("list.json", b"[]", "not an object");
    check_unreadable("other.json", b"{\"colour\": \"red\"}", "does not begin with its version");
    check_unreadable("newer.json", b"{\"quietpin\": 99}", "newer");
}

#[test]
fn what_is_no_file_ends_with_2_and_the_reason() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"));
    refused(&run(&["report"], &folder.join("missing.json")), "there is no such file");
    refused(&run(&["report"], folder), "this is a folder");
}

#[test]
fn a_call_that_is_not_understood_ends_with_2() {
    for (arguments, reason) in [
        (vec![], "nothing was asked for"),
        (vec!["report"], "the plan is missing"),
        (vec!["report", "--jason", "x.json"], "--jason"),
        (vec!["repeat", "x.json"], "“repeat”"),
    ] {
        refused(&quietpin(&arguments).output().expect("it runs"), reason);
    }
}

#[test]
fn it_tells_what_it_is_and_how_it_is_used() {
    for (argument, expected) in [
        ("--version", concat!("quietpin ", env!("CARGO_PKG_VERSION"), "\n")),
        ("--help", quietpin::arguments::HELP),
    ] {
        let output = quietpin(&[argument]).output().expect("it runs");
        assert_eq!(text(&output.stdout), expected, "{argument}");
        assert_eq!(output.status.code(), Some(0), "{argument}");
    }
}

/// The same on every run: a linear congruence, its multiplier from The Art of Computer Programming 2, 3.3.4,
/// written from memory.
fn random_bytes(count: usize) -> Vec<u8> {
    let mut state = 1_u64;
    let next = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        state.to_be_bytes()[0]
    };
    std::iter::repeat_with(next).take(count).collect()
}
