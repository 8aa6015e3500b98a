//! Where things are.

use std::path::{Path, PathBuf};

/// The top folder of the project.
///
/// Fixed when this program is compiled: cargo compiles it anew where the project is moved.
pub(crate) fn root() -> &'static Path {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).unwrap_or(here)
}

/// What cargo makes for this machine, and our own scratch work.
pub(crate) fn target() -> PathBuf {
    root().join("target")
}

/// What cargo makes for the browser: apart, so that neither side rebuilds the other.
pub(crate) fn wasm_target() -> PathBuf {
    target().join("wasm")
}

/// The page, ready to be served.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// The tests in a browser, with the npm packages that they and the build use.
pub(crate) fn browser_tests() -> PathBuf {
    root().join("tests").join("browser")
}

/// The program `name` of an npm package.
pub(crate) fn npm_program(name: &str) -> PathBuf {
    browser_tests().join("node_modules").join(".bin").join(name)
}
