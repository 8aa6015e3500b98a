//! The page: compiled, bound to JavaScript, made small, and laid out in `dist/`.

mod asset;
mod compile;
mod cut;
mod licences;
mod names;
mod page;
mod policy;
mod single;
mod style;
mod template;
mod worker;

pub(crate) use compile::{Symbols, make_small, program};
pub(crate) use licences::NAME as LICENCES;
pub(crate) use page::{ENTRY, Load, load};
pub(crate) use policy::served as policy;
pub(crate) use template::fill;

use crate::{folders, setup, shell};
use anyhow::{Context, Result};
use asset::Sources;
use setup::WasmTarget;
use std::fs;
use std::path::Path;

/// The page in one file, to be kept on a phone.
pub(crate) const SINGLE: &str = "quietpin.html";

/// What a plan file may hold, for those who write one by hand or by a program of their own.
pub(crate) const SCHEMA: &str = "plan.schema.json";

/// Sets up and builds.
pub(crate) fn build() -> Result<()> {
    let target = setup::for_build()?;
    shell::heading("Build");
    build_with(&target)
}

/// Builds `dist/` beside, then puts it in place.
pub(crate) fn build_with(target: &WasmTarget) -> Result<()> {
    let program = program(target, Symbols::Dropped)?;
    let sources = Sources::read(program)?;
    let beside = folders::target().join("dist.part");
    empty(&beside)?;
    let site = page::site(&sources)?;
    for file in &site {
        write(&beside, &file.name, &file.bytes)?;
    }
    write(&beside, SINGLE, single::page(&sources)?.as_bytes())?;
    write(&beside, SCHEMA, sources.schema.as_bytes())?;
    put_in_place(&beside)?;
    shell::say(&format!("The page is in dist/, and in one file in dist/{SINGLE}."));
    Ok(())
}

pub(crate) fn write(folder: &Path, name: &str, bytes: &[u8]) -> Result<()> {
    fs::write(folder.join(name), bytes).with_context(|| format!("writing {name}"))
}

fn put_in_place(beside: &Path) -> Result<()> {
    let (dist, old) = (folders::dist(), folders::target().join("dist.old"));
    empty(&old)?;
    if dist.exists() {
        fs::rename(&dist, old.join("dist")).context("moving the old dist/ aside")?;
    }
    fs::rename(beside, &dist).context("putting dist/ in place")?;
    fs::remove_dir_all(old).context("removing the old dist/")
}

pub(crate) fn empty(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("emptying {}", folder.display()))?;
    }
    fs::create_dir_all(folder).with_context(|| format!("making {}", folder.display()))
}
