//! The bytes that travel before the page can be used, and those that travel before it answers.

use crate::build::{self, Load};
use crate::{folders, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::process::Command;

/// Above this the test run fails: a phone on a weak signal should have the page within seconds.
pub(crate) const LIMIT: u64 = 152_000;
/// The same for what comes until something is answered.
pub(crate) const LIMIT_OF_ALL: u64 = 538_000;
/// What we would like the first load to stay under.
const AIM: u64 = 130_000;
/// The same for what comes until something is answered.
const AIM_OF_ALL: u64 = 425_000;

/// A file of the page.
#[derive(Debug)]
pub(crate) struct Part {
    name: String,
    plain: u64,
    packed: u64,
    load: Load,
}

/// Everything that is loaded, and how small Brotli makes it at its best.
pub(crate) fn parts() -> Result<Vec<Part>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folders::dist()).context("there is no dist/")? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if build::load(&name) != Load::Other {
            names.push(name);
        }
    }
    names.sort();
    let packed = pack(&names)?;
    names.into_iter().zip(packed).map(|(name, packed)| part(name, packed)).collect()
}

fn part(name: String, packed: u64) -> Result<Part> {
    let plain = fs::metadata(folders::dist().join(&name))?.len();
    let load = build::load(&name);
    Ok(Part { name, plain, packed, load })
}

/// Node.js brings Brotli along; a crate for it would take longer to compile than all the chores.
fn pack(names: &[String]) -> Result<Vec<u64>> {
    const SCRIPT: &str = "
        const { readFileSync } = require('node:fs');
        const { brotliCompressSync, constants } = require('node:zlib');
        const params = { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24 };
        for (const file of process.argv.slice(1)) console.log(brotliCompressSync(readFileSync(file), { params }).length);
    ";
    let mut command = Command::new("node");
    command.args(["-e", SCRIPT, "--"]).args(names.iter().map(|name| folders::dist().join(name)));
    let printed = shell::output(&mut command)?;
    let sizes: Vec<u64> = printed.lines().map(str::parse).collect::<Result<_, _>>()?;
    if sizes.len() == names.len() { Ok(sizes) } else { bail!("not every file could be compressed") }
}

/// What is loaded before the page can be used, compressed.
pub(crate) fn first(parts: &[Part]) -> u64 {
    total(parts.iter().filter(|part| part.load == Load::First))
}

/// What is loaded until the page answers, compressed.
pub(crate) fn all(parts: &[Part]) -> u64 {
    total(parts.iter().filter(|part| part.load != Load::Last))
}

fn total<'a>(parts: impl Iterator<Item = &'a Part>) -> u64 {
    parts.map(|part| part.packed).sum()
}

/// A table: as it is, compressed, name.
pub(crate) fn print(parts: &[Part]) {
    shell::say(&format!("{:>8}  {:>8}", "plain", "brotli"));
    for part in parts {
        let when = match part.load {
            Load::First => "at first",
            Load::Next => "once the page is there",
            Load::Last | Load::Other => "once it has answered",
        };
        shell::say(&format!("{:>8}  {:>8}  {}, {when}", part.plain, part.packed, part.name));
    }
    let bytes = first(parts);
    shell::say(&format!("{bytes:>18}  at first; the limit is {LIMIT}, the aim {AIM}"));
    let bytes = all(parts);
    shell::say(&format!(
        "{bytes:>18}  until it answers; the limit is {LIMIT_OF_ALL}, the aim {AIM_OF_ALL}"
    ));
}
