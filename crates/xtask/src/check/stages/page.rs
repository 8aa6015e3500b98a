//! The built page: used as a person would, and weighed.

use crate::check::Finding;
use crate::check::count::{self, Count};
use crate::check::machine::Machine;
use crate::package::{self, Made};
use crate::size::{self, LIMIT, LIMIT_OF_ALL};
use crate::{folders, shell};
use anyhow::{Context, Result, bail};
use std::env;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

pub(super) fn build(machine: &Machine) -> Result<()> {
    machine.npm()?;
    // A page of an earlier build must not pass for this one.
    let dist = folders::dist();
    if dist.exists() {
        fs::remove_dir_all(&dist).context("removing the old dist/")?;
    }
    crate::build::build_with(machine.wasm()?)
}

pub(super) fn tests(machine: &Machine) -> Result<Count> {
    machine.npm()?;
    let browser = machine.browser()?;
    if !folders::dist().exists() {
        bail!("the page was not built");
    }
    let package = folders::target().join("package");
    package::write(machine.wasm()?, Made::ForTests, &package)?;
    let mut command = Command::new("node");
    command
        // more at a time than there are cores: a test waits for the browser more than it works
        .args(["--test", "--test-concurrency=3", "--test-reporter=spec"])
        .args(test_files()?)
        .current_dir(folders::root());
    command.env("CHROMIUM", &browser.chromium).env("QUIETPIN_XTASK", env::current_exe()?);
    command.env("QUIETPIN_PACKAGE", package);
    count::run(&mut command)
}

fn test_files() -> Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folders::browser_tests())? {
        let path = entry?.path();
        if path.to_string_lossy().ends_with(".test.mjs") {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

pub(super) fn size() -> Result<Finding> {
    let parts = size::parts()?;
    size::print(&parts);
    let bytes = size::first(&parts);
    within(bytes, LIMIT, "what is loaded at first")?;
    within(size::all(&parts), LIMIT_OF_ALL, "the page with all that it answers by")?;
    shell::say("Within the limits.");
    Ok(Finding { tests: Count::default(), bytes: Some(bytes) })
}

fn within(bytes: u64, limit: u64, what: &str) -> Result<()> {
    if bytes > limit {
        bail!(
            "{what} is {bytes} bytes, over the limit of {limit}; `cargo xtask size` tells what is large"
        );
    }
    Ok(())
}
