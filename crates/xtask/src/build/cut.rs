//! The program, cut in two: what shows the page and takes what is typed, and what answers.

use crate::folders;
use anyhow::{Context, Result, anyhow, bail};
use std::fs;
use std::path::{Path, PathBuf};
use wasm_split_cli_support::{Options, transform};

/// The module from which the first part takes the function that fetches the second.
const LINK: &str = "parts.js";

/// Both parts, as they were linked.
pub(super) struct Cut {
    pub(super) first: PathBuf,
    pub(super) second: Vec<u8>,
}

/// Cuts at the function that the page marks, `answering` in `web`: what only it leads to is the second part.
pub(super) fn cut(compiled: &Path) -> Result<Cut> {
    let folder = folders::wasm_target().join("cut");
    let first = folder.join("first.wasm");
    let whole = fs::read(compiled).context("reading what was compiled")?;
    let mut options = Options::new(&whole);
    (options.output_dir, options.main_out_path, options.link_name) = (&folder, &first, LINK);
    let parts = transform(options).map_err(|error| anyhow!("cutting the program: {error:#}"))?;
    match parts.split_modules.as_slice() {
        [second] => Ok(Cut { second: fs::read(second)?, first }),
        others => bail!("the program should be cut in two, and gave {} parts more", others.len()),
    }
}

/// What the binder writes where it knows nothing of the module.
const REQUIRED: &str = "require(\"parts.js\")";

/// Puts the page's own script in the place of that module. Cut programs are meant for modules, which do not load from a
/// file.
pub(super) fn join(glue: &str, fetching: &str) -> Result<String> {
    match glue.split_once(REQUIRED) {
        Some((before, after)) if !after.contains(REQUIRED) => {
            Ok([before, fetching.trim_end().trim_end_matches(';'), after].concat())
        }
        _ => bail!("the JavaScript has no single place for what fetches the second part"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_script_takes_the_place_of_the_module() {
        let glue = "const import1 = require(\"parts.js\");\n";
        assert_eq!(join(glue, "({ a: 1 });\n").unwrap(), "const import1 = ({ a: 1 });\n");
        assert!(join("", "({});").is_err(), "a place that is not there is told");
    }
}
