//! The laws, tried with other cases than in the test run.

use crate::shell;
use anyhow::{Context, Result};
use std::time::{SystemTime, UNIX_EPOCH};

/// How many sequences of edits are tried.
const SEQUENCES: &str = "5000";

/// Runs every law with the cases of a seed: that of the clock where none is given. In the test run the seed is fixed, so
/// that a run that passed for one passes for all.
pub(crate) fn laws(seed: Option<u64>) -> Result<()> {
    let seed = match seed {
        Some(seed) => seed,
        None => SystemTime::now().duration_since(UNIX_EPOCH).context("the clock")?.as_secs(),
    };
    shell::heading(&format!("Laws, with the cases of {seed}"));
    let mut command = shell::cargo();
    command.args(["test", "--package", "quietpin-core", "--package", "quietpin-tests"]);
    command.env("PROPTEST_RNG_SEED", seed.to_string()).env("QUIETPIN_SEQUENCES", SEQUENCES);
    shell::run(&mut command)
        .with_context(|| format!("`cargo xtask laws --seed {seed}` finds it again"))
}
