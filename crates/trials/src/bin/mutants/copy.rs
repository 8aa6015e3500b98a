//! A copy of the workspace in which every mutant can be switched on.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs, io,
    path::{Path, PathBuf},
};

use proc_macro2::TokenStream;

use crate::{
    scope,
    sites::{self, Found, Mutant},
    uses::{self, Late, Names},
};

/// Where the core's files are.
const CORE: &str = "crates/core/src/";

/// What is neither read nor copied.
const NO_SOURCES: &[&str] = &[".git", "dist", "node_modules", "target"];

/// All files, by their paths from the top, with `/`.
pub(crate) type Files = BTreeMap<String, Vec<u8>>;

/// The files of the workspace.
pub(crate) fn read(top: &Path) -> io::Result<Files> {
    let mut files = Files::new();
    gather(top, top, &mut files)?;
    Ok(files)
}

fn gather(top: &Path, folder: &Path, files: &mut Files) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let (name, path) = (entry.file_name().to_string_lossy().into_owned(), entry.path());
        if NO_SOURCES.contains(&name.as_str()) {
            continue;
        }
        if entry.file_type()?.is_dir() {
            gather(top, &path, files)?;
        } else if entry.file_type()?.is_file() {
            let below =
                path.strip_prefix(top).unwrap_or(&path).to_string_lossy().replace('\\', "/");
            files.insert(below, fs::read(&path)?);
        }
    }
    Ok(())
}

/// Puts all mutants into the files; tells of them.
pub(crate) fn mutate(files: &mut Files) -> Result<Vec<Mutant>, String> {
    let texts = texts(files);
    let (found, late) = found(&texts)?;
    let mut mutants = Vec::new();
    let mut found: BTreeMap<String, Found> = found;
    for (path, text) in &texts {
        let mut here = found.remove(path).unwrap_or_default();
        mutants.append(&mut here.mutants);
        let tokens: TokenStream = text.parse().map_err(|error| format!("{path}: {error}"))?;
        Names::of(module(path), &tokens, &late).mark(&tokens, &mut here.splices);
        files.insert(path.clone(), here.splices.put_into(text).into_bytes());
    }
    let library = format!("{CORE}lib.rs");
    let text = texts.get(&library).ok_or("the core has a lib.rs")?;
    // what was put in is not written as a person would
    let with = text.replacen(
        "#![forbid(unsafe_code)]",
        "#![forbid(unsafe_code)]\n#![allow(warnings)]\nmod mutant;",
        1,
    );
    files.insert(library, with.into_bytes());
    files.insert(format!("{CORE}mutant.rs"), include_bytes!("runtime.rs").to_vec());
    Ok(mutants)
}

/// The Rust files that may name a constant of the core.
fn texts(files: &Files) -> BTreeMap<String, String> {
    let is_ours = |path: &str| {
        Path::new(path).extension().is_some_and(|extension| extension == "rs")
            && ["crates/core/", "crates/cli/", "tests/"]
                .iter()
                .any(|folder| path.starts_with(folder))
    };
    let text = |(path, bytes): (&String, &Vec<u8>)| {
        (path.clone(), String::from_utf8_lossy(bytes).into_owned())
    };
    files.iter().filter(|(path, _)| is_ours(path)).map(text).collect()
}

fn module(path: &str) -> uses::Module {
    path.strip_prefix(CORE).map(uses::module).unwrap_or_default()
}

/// What is found in each file of the trade, and the constants that are worked out when the program runs. One that is made of
/// such a one is such a one as well.
fn found(texts: &BTreeMap<String, String>) -> Result<(BTreeMap<String, Found>, Late), String> {
    let mut late = Late { alone: alone(texts)?, ..Late::default() };
    loop {
        let (mut all, mut next) = (BTreeMap::new(), 0);
        let mut grown = Late { alone: late.alone.clone(), ..Late::default() };
        for (path, text) in texts {
            let Some(below) = path.strip_prefix(CORE).filter(|it| scope::is_changed(it)) else {
                continue;
            };
            let here = module(path);
            let needing =
                needing(&here, text, &late).map_err(|error| format!("{path}: {error}"))?;
            let found = sites::find(below, text, next, &needing)
                .map_err(|error| format!("{path}: {error}"))?;
            next = found.mutants.last().map_or(next, |it| it.id + 1);
            for name in &found.constants {
                grown.there.entry(name.clone()).or_default().insert(here.clone());
            }
            all.insert(path.clone(), found);
        }
        if grown == late {
            return Ok((all, late));
        }
        late = grown;
    }
}

/// The names of constants that stand in one file of the core alone.
fn alone(texts: &BTreeMap<String, String>) -> Result<BTreeSet<String>, String> {
    let (none, mut files) = (Late::default(), BTreeMap::<String, usize>::new());
    for (path, text) in texts.iter().filter(|(path, _)| path.starts_with(CORE)) {
        let tokens: TokenStream = text.parse().map_err(|error| format!("{path}: {error}"))?;
        for name in Names::of(module(path), &tokens, &none).own {
            *files.entry(name).or_default() += 1;
        }
    }
    Ok(files.into_iter().filter(|(_, files)| *files == 1).map(|(name, _)| name).collect())
}

/// The constants of a file that are made of others that are worked out when the program runs.
fn needing(here: &uses::Module, text: &str, late: &Late) -> syn::Result<BTreeSet<String>> {
    let tokens: TokenStream = text.parse()?;
    let names = Names::of(here.clone(), &tokens, late);
    let file = syn::parse_file(text)?;
    let constants = file.items.iter().filter_map(|item| match item {
        syn::Item::Const(it) => Some(it),
        _ => None,
    });
    let is_needing = |it: &&syn::ItemConst| names.are_in(&it.expr);
    Ok(constants.filter(is_needing).map(|it| it.ident.to_string()).collect())
}

/// Writes the files into a folder, those that are there as they are set aside, so that what is built stays built; takes out
/// what is no longer there.
pub(crate) fn write(files: &Files, into: &Path) -> io::Result<()> {
    let there = if into.is_dir() { read(into)? } else { Files::new() };
    for path in there.keys().filter(|path| !files.contains_key(*path)) {
        fs::remove_file(into.join(path))?;
    }
    for (path, bytes) in files.iter().filter(|(path, bytes)| there.get(*path) != Some(*bytes)) {
        let path: PathBuf = into.join(path);
        fs::create_dir_all(path.parent().unwrap_or(into))?;
        fs::write(path, bytes)?;
    }
    Ok(())
}
