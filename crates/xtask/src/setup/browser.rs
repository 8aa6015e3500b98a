//! The browser of the tests and of the pictures.

use super::apt;
use crate::shell;
use anyhow::{Context, Result};
use std::env;
use std::path::PathBuf;

/// A Chromium, and the driver of the same version.
#[derive(Debug)]
pub(crate) struct Browser {
    pub(crate) chromium: PathBuf,
    pub(crate) driver: PathBuf,
}

const CHROMIUM: [&str; 3] = ["chromium", "chromium-browser", "google-chrome"];

/// Finds the browser, or installs Debian's.
pub(crate) fn browser() -> Result<Browser> {
    if let Some(found) = find() {
        shell::say(&format!("Browser: {}.", found.chromium.display()));
        return Ok(found);
    }
    shell::say("The tests need Chromium and its driver, and they are not there.");
    let advice = "install Chromium and ChromeDriver of the same version, and put both on the PATH \
                  (or name them in CHROMIUM and CHROMEDRIVER)";
    apt::install(&["chromium", "chromium-driver", "fonts-dejavu-core"]).context(advice)?;
    find().context(advice)
}

fn find() -> Option<Browser> {
    let named = |variable| env::var_os(variable).map(PathBuf::from).filter(|path| path.is_file());
    Some(Browser {
        chromium: named("CHROMIUM").or_else(|| shell::find(&CHROMIUM))?,
        driver: named("CHROMEDRIVER").or_else(|| shell::find(&["chromedriver"]))?,
    })
}
