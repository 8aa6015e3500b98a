//! What the set-up brought, or why it did not.

use crate::setup::{Browser, Set, WasmTarget};
use crate::{setup, shell};
use anyhow::{Result, anyhow};
use std::path::{Path, PathBuf};

/// A part that could not be set up fails the stages that need it, and no others.
#[derive(Debug)]
pub(super) struct Machine {
    npm: Result<()>,
    wasm: Result<WasmTarget>,
    browser: Result<Browser>,
    runner: Result<PathBuf>,
}

impl Machine {
    pub(super) fn set_up() -> Self {
        let Set { npm, wasm, browser } = setup::all();
        for error in
            [npm.as_ref().err(), wasm.as_ref().err(), browser.as_ref().err()].into_iter().flatten()
        {
            shell::say(&format!("Not set up: {error:#}"));
        }
        // compiled before two that compile get into each other's way
        Self { npm, wasm, browser, runner: setup::test_runner() }
    }

    pub(super) fn npm(&self) -> Result<()> {
        self.npm.as_ref().copied().map_err(again)
    }

    pub(super) fn wasm(&self) -> Result<&WasmTarget> {
        self.wasm.as_ref().map_err(again)
    }

    /// The program that runs tests in a browser.
    pub(super) fn runner(&self) -> Result<&Path> {
        self.runner.as_deref().map_err(again)
    }

    pub(super) fn browser(&self) -> Result<&Browser> {
        self.browser.as_ref().map_err(again)
    }
}

/// The reason, once more at the stage that it fails.
fn again(error: &anyhow::Error) -> anyhow::Error {
    anyhow!("{error:#}")
}
