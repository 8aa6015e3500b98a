//! The browser of the tests and of the pictures.

use super::apt;
use crate::shell;
use anyhow::{Context, Result, bail};
use std::env;
use std::path::PathBuf;

/// A Chromium, and the driver of the same version.
#[derive(Debug)]
pub(crate) struct Browser {
    pub(crate) chromium: PathBuf,
    pub(crate) driver: PathBuf,
}

/// Chromium without windows, as it comes for tests: beside each page, the one with windows keeps the parts of its own
/// frame at work, and the tests take twice as long.
const WINDOWLESS: [&str; 2] = ["chromium-headless-shell", "chrome-headless-shell"];
const CHROMIUM: [&str; 3] = ["chromium", "chromium-browser", "google-chrome"];

/// Finds the browser, or installs Debian's.
pub(crate) fn browser() -> Result<Browser> {
    if let Some(found) = find(&WINDOWLESS) {
        return Ok(said(found));
    }
    shell::say("The tests need Chromium without windows and its driver, and they are not there.");
    let installed = apt::install(&[
        "chromium",
        "chromium-driver",
        "chromium-headless-shell",
        "fonts-dejavu-core",
    ]);
    if let Some(found) = find(&WINDOWLESS).or_else(|| find(&CHROMIUM)) {
        return Ok(said(found));
    }
    let advice = "install Chromium and ChromeDriver of the same version, and put both on the PATH \
                  (or name them in CHROMIUM and CHROMEDRIVER)";
    installed.context(advice)?;
    bail!(advice)
}

fn said(found: Browser) -> Browser {
    shell::say(&format!("Browser: {}.", found.chromium.display()));
    found
}

fn find(names: &[&str]) -> Option<Browser> {
    let named = |variable| env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file());
    Some(Browser {
        chromium: named("CHROMIUM").or_else(|| shell::find(names))?,
        driver: named("CHROMEDRIVER").or_else(|| shell::find(&["chromedriver"]))?,
    })
}
