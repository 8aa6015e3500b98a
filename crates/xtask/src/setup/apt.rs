//! Packages of Debian and its relatives.

use crate::shell;
use anyhow::{Context, Result, bail};
use std::process::Command;

/// Installs `packages`, and removes nothing for them.
pub(crate) fn install(packages: &[&str]) -> Result<()> {
    let by_hand = format!("install by hand: {}", packages.join(" "));
    if shell::find(&["apt-get"]).is_none() {
        bail!("this system has no apt-get; {by_hand}");
    }
    if !is_root() {
        bail!("installing needs root; run: sudo apt-get install {}", packages.join(" "));
    }
    shell::say(&format!("Installing {} with apt-get.", packages.join(", ")));
    mend_interrupted()?;
    shell::run(apt().args(["update", "--quiet=2"])).context(by_hand.clone())?;
    let options = ["install", "--yes", "--quiet=1", "--no-install-recommends", "--no-remove"];
    shell::run(apt().args(options).args(packages)).context(by_hand)
}

/// Finishes what an interrupted installation left half unpacked.
fn mend_interrupted() -> Result<()> {
    let half_made = shell::output(Command::new("dpkg").arg("--audit"))?;
    if half_made.trim().is_empty() {
        return Ok(());
    }
    shell::say("Finishing an installation that was interrupted.");
    shell::run(quiet("dpkg").args(["--configure", "-a"]))?;
    shell::run(apt().args(["install", "--yes", "--fix-broken", "--no-remove"]))
}

fn apt() -> Command {
    let mut command = quiet("apt-get");
    // Somebody else's installation may be running: wait for it.
    command.args(["-o", "DPkg::Lock::Timeout=300", "-o", "Dpkg::Use-Pty=0"]);
    command
}

fn quiet(program: &str) -> Command {
    let mut command = Command::new(program);
    command.env("DEBIAN_FRONTEND", "noninteractive");
    command
}

fn is_root() -> bool {
    shell::output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}
