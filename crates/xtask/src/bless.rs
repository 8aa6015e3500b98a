//! Taking today's answers as the expected ones.

use crate::shell;
use anyhow::{Context, Result};

/// Writes snapshots and the generated type file anew. What changed is then read as a diff.
pub(crate) fn bless() -> Result<()> {
    shell::heading("Snapshots of the reports");
    let mut snapshots = shell::cargo();
    snapshots.args(["test", "--package", "quietpin-tests"]);
    snapshots.env("INSTA_UPDATE", "always").env("QUIETPIN_BLESS", "1");
    shell::run(&mut snapshots).context("tests other than snapshots fail: mend them first")?;

    shell::heading("TypeScript types");
    let mut types = shell::cargo();
    types.args(["test", "--package", "quietpin-wasm"]).env("QUIETPIN_BLESS", "1");
    shell::run(&mut types)?;
    shell::say(
        "Done. Read the diff before you commit it: every change in it is a change of an answer.",
    );
    Ok(())
}
