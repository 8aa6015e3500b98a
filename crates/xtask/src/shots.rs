//! Pictures of the page.

use crate::{build, folders, setup, shell};
use anyhow::{Context, Result};
use std::env;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// Builds the page and photographs it.
pub(crate) fn shots(folder: Option<PathBuf>) -> Result<()> {
    let (target, browser) = setup::for_browser()?;
    shell::heading("Build");
    build::build_with(&target)?;
    shell::heading("Pictures");
    let folder = folder.unwrap_or_else(|| folders::target().join("shots"));
    fs::create_dir_all(&folder).with_context(|| format!("making {}", folder.display()))?;
    let mut command = Command::new("node");
    command.arg(folders::browser_tests().join("shots.mjs")).arg(&folder);
    command.env("CHROMIUM", browser.chromium).env("QUIETPIN_XTASK", env::current_exe()?);
    shell::run(&mut command)?;
    shell::say(&format!("The pictures are in {}.", folder.display()));
    Ok(())
}
