//! The npm packages: the optimiser of the build, and what drives the browser in tests.

use crate::{folders, hash, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;
use std::process::Command;

/// The oldest major version of Node.js that the packages run on.
const OLDEST_NODE: u32 = 20;

/// Puts the packages of the lock file into `tests/browser/node_modules`.
pub(crate) fn npm_packages() -> Result<()> {
    let folder = folders::browser_tests();
    let lock =
        fs::read(folder.join("package-lock.json")).context("tests/browser/package-lock.json")?;
    // `npm ci` removes the whole folder first, this mark with it; so the mark says that it finished.
    let mark = folder.join("node_modules").join(".whole");
    let wanted = hash::short(&lock);
    if fs::read_to_string(&mark).is_ok_and(|found| found == wanted) {
        shell::say("npm packages: there.");
        return Ok(());
    }
    require_node()?;
    shell::say("Fetching the npm packages (a few seconds, about 120 MB unpacked).");
    fetch(&folder).context(
        "the npm packages could not be fetched: check the network, then run the same command again",
    )?;
    fs::write(mark, wanted).context("marking tests/browser/node_modules as whole")
}

fn fetch(folder: &Path) -> Result<()> {
    let options = ["ci", "--ignore-scripts", "--no-audit", "--no-fund"];
    shell::run(Command::new("npm").args(options).current_dir(folder))
}

fn require_node() -> Result<()> {
    let advice = format!("install Node.js {OLDEST_NODE} or newer, with npm");
    if shell::find(&["npm"]).is_none() {
        bail!("npm is not there: {advice}");
    }
    let version = shell::output(Command::new("node").arg("--version")).context(advice.clone())?;
    match major(&version) {
        Some(found) if found >= OLDEST_NODE => Ok(()),
        _ => bail!("Node.js is {}: {advice}", version.trim()),
    }
}

/// 20 from "v20.20.2".
fn major(version: &str) -> Option<u32> {
    version.trim().strip_prefix('v')?.split('.').next()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn node_tells_its_major_version() {
        assert_eq!(major("v20.20.2\n"), Some(20), "as node prints it");
        assert_eq!(major("not found"), None, "as a shell prints it");
    }
}
