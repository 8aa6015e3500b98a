//! The bytes that travel before the page can be used.

use crate::{build, folders, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::process::Command;

/// Above this the test run fails: a phone on a weak signal should have the page within seconds.
pub(crate) const LIMIT: u64 = 250_000;
/// What we would like to stay under.
const AIM: u64 = 150_000;

/// A file of the page.
#[derive(Debug)]
pub(crate) struct Part {
    name: String,
    plain: u64,
    packed: u64,
}

/// Everything that is loaded at first, and how small Brotli makes it at its best.
pub(crate) fn parts() -> Result<Vec<Part>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folders::dist()).context("there is no dist/")? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        if build::first_load(&name) {
            names.push(name);
        }
    }
    names.sort();
    let packed = pack(&names)?;
    names.into_iter().zip(packed).map(|(name, packed)| part(name, packed)).collect()
}

fn part(name: String, packed: u64) -> Result<Part> {
    let plain = fs::metadata(folders::dist().join(&name))?.len();
    Ok(Part { name, plain, packed })
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

/// The sum over all parts, compressed.
pub(crate) fn total(parts: &[Part]) -> u64 {
    parts.iter().map(|part| part.packed).sum()
}

/// A table: as it is, compressed, name.
pub(crate) fn print(parts: &[Part]) {
    shell::say(&format!("{:>8}  {:>8}  loaded at first", "plain", "brotli"));
    for part in parts {
        shell::say(&format!("{:>8}  {:>8}  {}", part.plain, part.packed, part.name));
    }
    let plain: u64 = parts.iter().map(|part| part.plain).sum();
    let packed = total(parts);
    shell::say(&format!("{plain:>8}  {packed:>8}  together; the limit is {LIMIT}, the aim {AIM}"));
}
