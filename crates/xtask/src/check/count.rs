//! How many tests a program says it has run.

use crate::shell;
use anyhow::{Context, Result, bail};
use std::io::{BufRead, BufReader};
use std::ops::AddAssign;
use std::process::{Command, Stdio};

/// Tests that ran.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Count {
    pub(crate) passed: u64,
    pub(crate) failed: u64,
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

/// Runs a program that tests, passes on what it prints, and counts. A run without a single test is a failure.
pub(super) fn run(command: &mut Command) -> Result<Count> {
    let program = shell::name(command);
    let mut child = shell::complaining(command)
        .stdout(Stdio::piped())
        .spawn()
        .with_context(|| format!("{program} did not start"))?;
    let mut count = Count::default();
    let mut complaints = Complaints::default();
    for line in
        BufReader::new(child.stdout.take().context("its output cannot be read")?).split(b'\n')
    {
        let line = line?;
        let line = String::from_utf8_lossy(&line);
        shell::line(&line);
        count += read(&line);
        complaints.hear(&line);
    }
    let status = child.wait()?;
    match (status.success(), count) {
        (_, Count { failed: 1.., .. }) => bail!(Failed { count, complaints: complaints.heard }),
        (false, _) => bail!("{program} failed ({status})"),
        (true, Count { passed: 0, .. }) => bail!("not one test ran"),
        (true, _) => Ok(count),
    }
}

/// Some tests failed; the error that carries how many, and what they said.
#[derive(Debug)]
pub(super) struct Failed {
    pub(super) count: Count,
    pub(super) complaints: Vec<String>,
}

impl std::fmt::Display for Failed {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(formatter, "{} tests passed, {} failed", self.count.passed, self.count.failed)
    }
}

impl std::error::Error for Failed {}

/// What the tests that failed say, to be said once more at the end of a long run.
#[derive(Debug, Default)]
struct Complaints {
    heard: Vec<String>,
    is_listening: bool,
}

impl Complaints {
    /// A page of a terminal.
    const MOST: usize = 40;

    /// Cargo's tests and wasm-bindgen's complain between "failures:" and the closing line, Node.js after "failing tests:".
    fn hear(&mut self, line: &str) {
        let bare = line.trim();
        if bare.starts_with("test result: ") {
            self.is_listening = false;
        }
        if self.is_listening && !bare.is_empty() && self.heard.len() < Self::MOST {
            self.heard.push(line.trim_end().to_owned());
        }
        self.is_listening |= bare == "failures:" || bare.ends_with("failing tests:");
    }
}

/// Reads the closing lines of cargo's tests ("test result: ok. 3 passed; 0 failed; …"), of wasm-bindgen's (the same),
/// and of Node.js ("ℹ pass 3", "ℹ fail 0").
fn read(line: &str) -> Count {
    let line = line.trim();
    if let Some(result) = line.strip_prefix("test result: ") {
        let number_before = |word: &str| {
            let (before, _) = result.split_once(word)?;
            before.trim_end().rsplit([' ', '.']).next()?.parse().ok()
        };
        let count = |word| number_before(word).unwrap_or(0);
        return Count { passed: count("passed"), failed: count("failed;") };
    }
    let number_after =
        |word: &str| line.strip_prefix(word).and_then(|rest| rest.trim().parse().ok());
    Count {
        passed: number_after("ℹ pass ").unwrap_or(0),
        failed: number_after("ℹ fail ").unwrap_or(0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(line: &str, passed: u64, failed: u64) {
        assert_eq!(read(line), Count { passed, failed }, "{line}");
    }

    #[test]
    fn closing_lines_are_read() {
        check(
            "test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s",
            12,
            0,
        );
        check(
            "test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out",
            3,
            2,
        );
        check("ℹ pass 4", 4, 0);
        check("ℹ fail 1", 0, 1);
    }

    #[test]
    fn what_failed_is_heard_again() {
        let heard = |printed: &str| {
            let mut complaints = Complaints::default();
            printed.lines().for_each(|line| complaints.hear(line));
            complaints.heard
        };
        let cargo = "test a ... FAILED\n\nfailures:\n\n---- a stdout ----\n1 is not 2\n\ntest result: FAILED. 0 passed; 1 failed\nmore";
        assert_eq!(heard(cargo), ["---- a stdout ----", "1 is not 2"], "of cargo's tests");
        let node = "✖ a (3 ms)\nℹ fail 1\n\n✖ failing tests:\n\n✖ a (3 ms)\n  Error: 1 is not 2";
        assert_eq!(heard(node), ["✖ a (3 ms)", "  Error: 1 is not 2"], "of tests in a browser");
        assert_eq!(heard("test a ... ok\nfine"), [""; 0], "of nothing");
    }

    #[test]
    fn other_lines_count_nothing() {
        check("test page::tests::all_passed ... ok", 0, 0);
        check("✔ pass 4 (12 ms)", 0, 0);
    }
}
