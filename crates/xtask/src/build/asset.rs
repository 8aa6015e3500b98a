//! The files that a page is made of.

use super::compile::{self, Program};
use super::licences;
use crate::{folders, hash};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};

/// A file of the page, under the name it is served by.
#[derive(Debug)]
pub(crate) struct Asset {
    pub(crate) name: String,
    pub(crate) bytes: Vec<u8>,
}

impl Asset {
    pub(super) fn named(name: &str, bytes: impl Into<Vec<u8>>) -> Self {
        Self { name: name.to_owned(), bytes: bytes.into() }
    }

    /// With the hash of its content in its name, so that a name never means two contents.
    pub(super) fn hashed(name: &str, bytes: impl Into<Vec<u8>>) -> Self {
        let bytes = bytes.into();
        let (stem, extension) = name.rsplit_once('.').unwrap_or((name, "bin"));
        Self { name: format!("{stem}-{}.{extension}", hash::short(&bytes)), bytes }
    }
}

/// What is written by hand, and the program.
pub(super) struct Sources {
    pub(super) program: Program,
    pub(super) entry: String,
    pub(super) starter: String,
    pub(super) style: String,
    pub(super) worker: String,
    pub(super) manifest: String,
    pub(super) schema: String,
    /// Of all that the program is made with.
    pub(super) licences: String,
    /// By plain name.
    pub(super) icons: Vec<(String, Vec<u8>)>,
}

impl Sources {
    pub(super) fn read(program: Program) -> Result<Self> {
        let (root, web) = (folders::root(), folders::root().join("web"));
        let fixed = web.join("static");
        Ok(Self {
            program,
            entry: text(&root.join("index.html"))?,
            starter: starter(&fixed)?,
            style: style(&web.join("style"))?,
            worker: text(&web.join("service_worker.js"))?,
            manifest: text(&fixed.join("manifest.webmanifest"))?,
            schema: text(&fixed.join(super::SCHEMA))?,
            licences: licences::texts()?,
            icons: icons(&fixed)?,
        })
    }
}

/// What starts the program, and keeps a second copy of what is typed.
fn starter(fixed: &Path) -> Result<String> {
    let parts = ["second_copy.js", "start.js"].map(|name| text(&fixed.join(name)));
    let [second_copy, start] = parts;
    compile::make_script_small(&[second_copy?, start?].concat())
}

/// All style sheets, in the order of their names.
fn style(folder: &Path) -> Result<String> {
    let mut whole = String::new();
    for file in with_extensions(folder, &["css"])? {
        whole.push_str(&text(&file)?);
        whole.push('\n');
    }
    super::style::small(&whole)
}

fn icons(folder: &Path) -> Result<Vec<(String, Vec<u8>)>> {
    let files = with_extensions(folder, &["svg", "png"])?;
    let read = |file: PathBuf| {
        let name = file.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let bytes = fs::read(&file).with_context(|| format!("reading {}", file.display()))?;
        Ok((name, bytes))
    };
    files.into_iter().map(read).collect()
}

/// Sorted by name; none if there is no such folder.
fn with_extensions(folder: &Path, extensions: &[&str]) -> Result<Vec<PathBuf>> {
    if !folder.exists() {
        return Ok(Vec::new());
    }
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).with_context(|| format!("reading {}", folder.display()))? {
        let path = entry?.path();
        let wanted = path.extension().and_then(|extension| extension.to_str());
        if wanted.is_some_and(|extension| extensions.contains(&extension)) {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

fn text(path: &Path) -> Result<String> {
    fs::read_to_string(path).with_context(|| format!("reading {}", path.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_follows_the_content() {
        let (one, other) = (Asset::hashed("a.b.css", "one"), Asset::hashed("a.b.css", "other"));
        assert_ne!(one.name, other.name, "two contents, two names");
        let middle = one.name.strip_prefix("a.b-").and_then(|rest| rest.strip_suffix(".css"));
        assert_eq!(middle.map(str::len), Some(16), "{}", one.name);
    }
}
