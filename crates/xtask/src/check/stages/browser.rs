//! What is compiled for wasm32, apart from the page.

use crate::check::count::{self, Count};
use crate::check::machine::Machine;
use crate::setup::Browser;
use crate::{folders, shell};
use anyhow::{Context, Result};
use serde_json::json;
use std::fs;
use std::path::PathBuf;

/// The crates that have code for wasm32 only; the others are linted natively.
pub(super) fn lints(machine: &Machine) -> Result<()> {
    let target = machine.wasm()?;
    for what in [
        ["--package", "quietpin-wasm", "--lib", "--tests"].as_slice(),
        &["--package", "quietpin-web"],
    ] {
        let mut command = target.clippy()?;
        command.args(what);
        if target.clippy_is_usual() {
            command.args(["--", "-D", "warnings"]);
        }
        shell::run(&mut command)?;
    }
    Ok(())
}

pub(super) fn tests(machine: &Machine) -> Result<Count> {
    let (target, browser) = (machine.wasm()?, machine.browser()?);
    let mut command = target.cargo("test");
    command.args(["--package", "quietpin-wasm", "--lib", "--tests", "--no-fail-fast"]);
    command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", machine.runner()?);
    command.env("CHROMEDRIVER", &browser.driver);
    command.env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities(browser)?);
    command.env("WASM_BINDGEN_TEST_ONLY_WEB", "1").env("WASM_BINDGEN_TEST_TIMEOUT", "120");
    count::run(&mut command)
}

/// What the driver is to start, and how: quietly, and asking nobody on the network.
fn capabilities(browser: &Browser) -> Result<PathBuf> {
    let arguments = [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ];
    let wanted = json!({ "goog:chromeOptions": { "binary": browser.chromium, "args": arguments } });
    let file = folders::target().join("webdriver.json");
    fs::write(&file, wanted.to_string()).context("writing the browser's options")?;
    Ok(file)
}
