//! What a machine needs beyond Rust, Node.js and a C compiler: looked for first, fetched if it is not there.
//!
//! Every step can be repeated, and interrupted: what is made is made beside its place and renamed into it.

mod apt;
mod browser;
mod debian;
mod npm;
mod wasm;

pub(crate) use browser::Browser;
pub(crate) use wasm::{TRIPLE, WasmTarget};

use crate::{folders, shell};
use anyhow::Result;
use std::path::PathBuf;

/// What each step brought.
#[derive(Debug)]
pub(crate) struct Set {
    pub(crate) npm: Result<()>,
    pub(crate) wasm: Result<WasmTarget>,
    pub(crate) browser: Result<Browser>,
}

/// Everything that building the page needs.
pub(crate) fn for_build() -> Result<WasmTarget> {
    shell::heading("Set-up");
    npm::npm_packages()?;
    wasm::wasm_target()
}

/// Everything that looking at the page with a browser needs, too.
pub(crate) fn for_browser() -> Result<(WasmTarget, Browser)> {
    let Set { npm, wasm, browser } = all();
    npm?;
    Ok((wasm?, browser?))
}

/// All steps; one that fails does not keep the others from being tried.
pub(crate) fn all() -> Set {
    shell::heading("Set-up");
    Set { npm: npm::npm_packages(), wasm: wasm::wasm_target(), browser: browser::browser() }
}

/// Compiles the program that runs tests in a browser.
pub(crate) fn test_runner() -> Result<PathBuf> {
    let name = "wasm-test-runner";
    let mut command = shell::cargo();
    command.args([
        "build",
        "--package",
        "xtask",
        "--features",
        name,
        "--bin",
        name,
        "--target-dir",
    ]);
    let folder = folders::target();
    shell::run(command.arg(&folder))?;
    Ok(folder.join("debug").join(name))
}
