//! The test programs of the copy: built once, and run with a mutant switched on.

use std::{
    collections::BTreeSet,
    fs::{self, File},
    path::{Path, PathBuf},
    process::{Command, Stdio},
    thread,
    time::{Duration, Instant},
};

/// A program that holds tests.
#[derive(Clone, Debug)]
pub(crate) struct Program {
    executable: PathBuf,
    /// Where its package stands: tests read files from there.
    folder: PathBuf,
    /// What its tests are called.
    pub(crate) tests: Vec<String>,
}

/// How a run ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Ended {
    /// All tests passed.
    Passed,
    /// These failed.
    Failed(Vec<String>),
    /// The program did not end by itself, or not in time.
    Broken,
}

/// Builds the tests in a copy of the workspace.
pub(crate) fn build(tree: &Path, into: &Path) -> Result<Vec<Program>, String> {
    let output = Command::new("cargo")
        .args(["test", "--no-run", "--tests", "--message-format=json-render-diagnostics"])
        .args(["-p", "quietpin-core", "-p", "quietpin-tests", "-p", "quietpin"])
        .current_dir(tree)
        .env("CARGO_TARGET_DIR", into)
        .output()
        .map_err(|error| format!("cargo: {error}"))?;
    if !output.status.success() {
        return Err(String::from_utf8_lossy(&output.stderr).into_owned());
    }
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut found: Vec<_> = text.lines().filter_map(executable).collect();
    // they are told of in the order in which they are built
    found.sort();
    found.into_iter().map(|(executable, folder)| listed(executable, folder)).collect()
}

/// The program that a message of the build tells of, and the folder of its package.
fn executable(line: &str) -> Option<(PathBuf, PathBuf)> {
    let message: serde_json::Value = serde_json::from_str(line).ok()?;
    let is_test = message.get("profile")?.get("test")?.as_bool()?;
    let executable = message.get("executable")?.as_str()?;
    let manifest = Path::new(message.get("manifest_path")?.as_str()?);
    is_test.then_some((executable.into(), manifest.parent()?.to_owned()))
}

fn listed(executable: PathBuf, folder: PathBuf) -> Result<Program, String> {
    let output = Command::new(&executable)
        .args(["--list", "--format", "terse"])
        .current_dir(&folder)
        .output()
        .map_err(|error| format!("{}: {error}", executable.display()))?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let tests =
        text.lines().filter_map(|line| line.strip_suffix(": test")).map(str::to_owned).collect();
    Ok(Program { executable, folder, tests })
}

impl Program {
    /// Runs these tests with an environment of their own, and no longer than `most`.
    pub(crate) fn run(
        &self,
        tests: &[&str],
        environment: &[(&str, &str)],
        scratch: &Path,
        most: Duration,
    ) -> Ended {
        let Ok(file) = File::create(scratch) else { return Ended::Broken };
        let child = Command::new(&self.executable)
            .args(["--exact", "--test-threads=1"])
            .args(tests)
            .current_dir(&self.folder)
            .envs(environment.iter().copied())
            // as `cargo test` has it, but that a failure is neither looked for in its simplest form nor kept
            .env("CARGO_MANIFEST_DIR", &self.folder)
            .env("PROPTEST_RNG_SEED", "20261")
            .env("PROPTEST_MAX_SHRINK_ITERS", "0")
            .env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "true")
            .env("INSTA_UPDATE", "no")
            .env("INSTA_FORCE_PASS", "0")
            .env("RUST_BACKTRACE", "0")
            .stdin(Stdio::null())
            .stdout(file)
            .stderr(Stdio::null())
            .spawn();
        let Ok(mut child) = child else { return Ended::Broken };
        let began = Instant::now();
        let status = loop {
            match child.try_wait() {
                Ok(Some(status)) => break status,
                Ok(None) if began.elapsed() < most => thread::sleep(Duration::from_millis(3)),
                Ok(None) | Err(_) => {
                    // what was begun is ended, however that goes
                    let _ = child.kill();
                    let _ = child.wait();
                    return Ended::Broken;
                }
            }
        };
        if status.success() {
            return Ended::Passed;
        }
        let failed = failed(&fs::read_to_string(scratch).unwrap_or_default());
        if failed.is_empty() { Ended::Broken } else { Ended::Failed(failed) }
    }
}

/// The tests that failed, by what a test program prints.
fn failed(printed: &str) -> Vec<String> {
    let name =
        |line: &str| Some(line.strip_prefix("test ")?.strip_suffix(" ... FAILED")?.to_owned());
    printed.lines().filter_map(name).collect()
}

/// The numbers that a run has written down.
pub(crate) fn numbers(path: &Path) -> BTreeSet<u32> {
    let text = fs::read_to_string(path).unwrap_or_default();
    text.lines().filter_map(|line| line.parse().ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_failed_is_read_from_what_is_printed() {
        let printed =
            "running 2 tests\ntest a::b ... ok\ntest a::c ... FAILED\n\nfailures:\n    a::c\n";
        assert_eq!(failed(printed), ["a::c"]);
    }

    #[test]
    fn only_programs_with_tests_are_run() {
        let message = r#"{"profile":{"test":true},"executable":"/it/all","manifest_path":"/it/tests/Cargo.toml"}"#;
        assert_eq!(executable(message), Some(("/it/all".into(), "/it/tests".into())));
        assert_eq!(executable(&message.replace("true", "false")), None);
    }
}
