//! The program, cut into parts: what shows the page and takes what is typed, what answers, what explains.

use crate::folders;
use anyhow::{Context, Result, anyhow, bail};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use wasm_split_cli_support::{Options, transform};

/// The module from which the first part takes the functions that fetch the others.
const LINK: &str = "parts.js";

/// The parts, as they were linked.
pub(super) struct Cut {
    pub(super) first: PathBuf,
    pub(super) further: Vec<Further>,
}

/// A part that the first one fetches.
#[derive(Debug)]
pub(crate) struct Further {
    pub(crate) name: &'static str,
    /// What it is made of, in the order to load it: the last is its own, the others later parts lead to as well.
    pub(crate) modules: Vec<Vec<u8>>,
}

/// The further parts at which the page is cut, in the order in which they are fetched.
const FURTHER: [&str; 3] = ["answers", "details", "reports"];

/// Cuts at the functions that the page marks, in `web/src/answering.rs`: what only one of them leads to is its part.
pub(super) fn cut(compiled: &Path) -> Result<Cut> {
    let folder = folders::wasm_target().join("cut");
    let first = folder.join("first.wasm");
    let whole = fs::read(compiled).context("reading what was compiled")?;
    let mut options = Options::new(&whole);
    (options.output_dir, options.main_out_path, options.link_name) = (&folder, &first, LINK);
    let parts = transform(options).map_err(|error| anyhow!("cutting the program: {error:#}"))?;
    let mut there = BTreeSet::new();
    let further = FURTHER.into_iter().map(|name| {
        let own = format!("split_{name}");
        let needed = parts.prefetch_map.get(name).into_iter().flatten();
        let mut stems: Vec<_> = needed.filter(|stem| **stem != own).cloned().collect();
        stems.sort();
        stems.push(own);
        stems.retain(|stem| there.insert(stem.clone()));
        let read = |stem: &String| {
            fs::read(folder.join(stem).with_extension("wasm"))
                .with_context(|| format!("the program has no part “{stem}”"))
        };
        Ok(Further { name, modules: stems.iter().map(read).collect::<Result<_>>()? })
    });
    let further: Vec<_> = further.collect::<Result<_>>()?;
    let count: usize = further.iter().map(|part| part.modules.len()).sum();
    if parts.split_modules.len() != count {
        bail!("{count} modules are fetched, of {:?}", parts.split_modules);
    }
    Ok(Cut { first, further })
}

/// What the binder writes where it knows nothing of the module.
const REQUIRED: &str = "require(\"parts.js\")";

/// Puts the page's own script in the place of that module. Cut programs are meant for modules, which do not load from a
/// file.
pub(super) fn join(glue: &str, fetching: &str) -> Result<String> {
    let place = glue.split_once(REQUIRED).and_then(|(before, after)| {
        let (_, name) = before.trim_end().strip_suffix('=')?.trim_end().rsplit_once(' ')?;
        Some((before, name, after))
    });
    let (before, name, after) =
        place.context("the JavaScript has no place for what fetches its further parts")?;
    // for each further part once more
    let after = after.replace(REQUIRED, name);
    Ok([before, fetching.trim_end().trim_end_matches(';'), &after].concat())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_script_takes_the_place_of_the_module() {
        let glue =
            "const import1 = require(\"parts.js\");\nconst import2 = require(\"parts.js\");\n";
        let joined = "const import1 = ({ a: 1 });\nconst import2 = import1;\n";
        assert_eq!(join(glue, "({ a: 1 });\n").unwrap(), joined);
        assert!(join("", "({});").is_err(), "a place that is not there is told");
    }
}
