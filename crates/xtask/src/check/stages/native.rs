//! What needs nothing but Rust.

use crate::check::count::{self, Count, Failed};
use crate::{folders, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::process::Command;

pub(super) fn formatting() -> Result<()> {
    shell::run(shell::cargo().args(["fmt", "--all", "--check"]))?;
    // their modules are declared by a macro, behind which the formatter does not look
    let folder = folders::root().join("crates/core/src/questions");
    let mut faces = Vec::new();
    for entry in fs::read_dir(&folder).context("listing the questions")? {
        let path = entry?.path();
        if path.extension().is_some_and(|extension| extension == "rs") {
            faces.push(path);
        }
    }
    faces.sort();
    shell::run(Command::new("rustfmt").args(["--edition", "2024", "--check"]).args(faces))
}

pub(super) fn lints() -> Result<()> {
    let what = ["clippy", "--workspace", "--all-targets", "--all-features"];
    shell::run(shell::cargo().args(what).args(["--", "-D", "warnings"]))
}

/// The chores are tested in the profile they already stand compiled in.
pub(super) fn tests() -> Result<Count> {
    let product = count::run(shell::cargo().args([
        "test",
        "--workspace",
        "--exclude",
        "xtask",
        "--no-fail-fast",
    ]));
    let chores =
        count::run(shell::cargo().args(["test", "--package", "xtask", "--profile", "dev"]));
    both(product, chores)
}

/// The sum of two runs; an error of the first doesn't hide the count of the second.
fn both(one: Result<Count>, other: Result<Count>) -> Result<Count> {
    let mut sum = Count::default();
    let mut complaints = Vec::new();
    for result in [one, other] {
        match result {
            Ok(count) => sum += count,
            Err(error) => {
                let failed = error.downcast::<Failed>()?;
                sum += failed.count;
                complaints.extend(failed.complaints);
            }
        }
    }
    if sum.failed == 0 { Ok(sum) } else { bail!(Failed { count: sum, complaints }) }
}

pub(super) fn docs() -> Result<()> {
    let mut command = shell::cargo();
    command
        .args(["doc", "--workspace", "--all-features", "--no-deps"])
        .env("RUSTDOCFLAGS", "-D warnings");
    shell::run(&mut command)
}
