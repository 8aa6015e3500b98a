//! How long an edit keeps a browser busy.

use crate::{build, folders, setup, shell};
use anyhow::Result;
use std::env;
use std::process::Command;

/// Builds the page and measures it; with `keep`, what is measured is what the next release is compared with.
pub(crate) fn speed(keep: bool) -> Result<()> {
    let (target, browser) = setup::for_browser()?;
    shell::heading("Build");
    build::build_with(&target)?;
    shell::heading("Speed");
    let mut command = Command::new("node");
    command.arg(folders::browser_tests().join("speed.mjs"));
    if keep {
        command.arg("--keep");
    }
    command.env("CHROMIUM", browser.chromium).env("QUIETPIN_XTASK", env::current_exe()?);
    shell::run(&mut command)
}
