//! The licences of what is compiled into the page: the text of each, with those that it belongs to.

use crate::{folders, shell};
use anyhow::{Context, Result};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// The name under which they are served.
pub(crate) const NAME: &str = "LICENSES-third-party.txt";

const HEAD: &str = "What Quietpin's page is made with, and under which licences.\n\n\
    Of those that leave a choice, the MIT licence is taken where it is among them.\n";

/// A crate of the page, from where it was built.
#[derive(Debug)]
struct Package {
    title: String,
    licence: String,
    authors: String,
    folder: PathBuf,
}

/// All of them, as one text.
pub(super) fn texts() -> Result<String> {
    let used = used()?;
    let packages = packages(&used)?;
    let mut owners: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for package in &packages {
        for text in texts_of(package)? {
            owners.entry(text).or_default().push(package.title.clone());
        }
    }
    // the library that comes with the compiler
    let library = of_authors("The Rust Project contributors")?;
    owners.entry(library).or_default().push("the standard library of Rust".into());
    Ok(together(&owners))
}

/// Name and version of each crate that is compiled into the page.
fn used() -> Result<BTreeSet<String>> {
    let mut command = shell::cargo();
    command.args([
        "tree",
        "--locked",
        "--package",
        "quietpin-web",
        "--edges",
        "normal,no-proc-macro",
        "--target",
        crate::setup::TRIPLE,
        "--prefix",
        "none",
        "--format",
        "{p}",
    ]);
    Ok(shell::output(&mut command)?.lines().filter_map(title).collect())
}

/// `name v1.2.3 (…)` as `name 1.2.3`.
fn title(line: &str) -> Option<String> {
    let mut words = line.split(' ');
    let (name, version) = (words.next()?, words.next()?.strip_prefix('v')?);
    Some(format!("{name} {version}"))
}

/// Where these lie; our own have no source, and the licence of the whole.
fn packages(used: &BTreeSet<String>) -> Result<Vec<Package>> {
    let mut command = shell::cargo();
    command.args(["metadata", "--locked", "--format-version", "1"]);
    // of no other machine: what only those need is not fetched
    command.args(["--filter-platform", crate::setup::TRIPLE]);
    let metadata: Value = serde_json::from_str(&shell::output(&mut command)?)?;
    let all = metadata.get("packages").and_then(Value::as_array);
    let all = all.context("cargo tells of no packages")?;
    let mut packages: Vec<_> = all.iter().filter_map(package).collect();
    packages.retain(|it| used.contains(&it.title));
    packages.sort_by(|one, other| one.title.cmp(&other.title));
    Ok(packages)
}

fn package(value: &Value) -> Option<Package> {
    let text = |name: &str| value.get(name).and_then(Value::as_str).unwrap_or_default();
    value.get("source").filter(|it| !it.is_null())?;
    let authors = value.get("authors").and_then(Value::as_array);
    let authors: Vec<_> = authors.into_iter().flatten().filter_map(Value::as_str).collect();
    Some(Package {
        title: format!("{} {}", text("name"), text("version")),
        licence: text("license").to_owned(),
        authors: authors.join(", "),
        folder: Path::new(text("manifest_path")).parent()?.to_owned(),
    })
}

/// The texts that come with a crate; where none does, that of the MIT licence with the names of those who wrote it.
fn texts_of(package: &Package) -> Result<Vec<String>> {
    let names = names_in(package)?;
    let wanted = wanted(&package.licence, &names);
    let read = |name: &&str| {
        let path = package.folder.join(name);
        fs::read_to_string(&path).with_context(|| path.display().to_string())
    };
    let texts: Vec<_> = wanted.iter().map(read).collect::<Result<_>>()?;
    if texts.is_empty() {
        let named =
            if package.authors.is_empty() { "those who wrote it" } else { &package.authors };
        return Ok(vec![of_authors(named)?]);
    }
    Ok(texts.into_iter().map(|it| it.trim().replace('\r', "")).collect())
}

/// The files of a crate, and those in its folder of licences, where it has one.
fn names_in(package: &Package) -> Result<Vec<String>> {
    const FOLDER: &str = "LICENSES";
    let listed = |folder: &Path| -> Result<Vec<String>> {
        let mut names = Vec::new();
        for entry in fs::read_dir(folder).with_context(|| package.title.clone())? {
            names.push(entry?.file_name().to_string_lossy().into_owned());
        }
        Ok(names)
    };
    let mut names = listed(&package.folder)?;
    let inside = package.folder.join(FOLDER);
    if inside.is_dir() {
        names.retain(|it| it != FOLDER);
        names.extend(listed(&inside)?.into_iter().map(|it| [FOLDER, "/", it.as_str()].concat()));
    }
    names.sort();
    Ok(names)
}

/// Of the files of a crate those with the licence that is taken.
fn wanted<'a>(licence: &str, names: &'a [String]) -> Vec<&'a str> {
    const BEGIN: [&str; 5] = ["LICENSE", "LICENCE", "COPYING", "UNLICENSE", "NOTICE"];
    let is_text = |name: &&str| {
        let name = name.to_uppercase();
        BEGIN.iter().any(|it| name.starts_with(it))
    };
    let all: Vec<_> = names.iter().map(String::as_str).filter(is_text).collect();
    // where all hold together, none is left out
    let is_choice = !licence.contains("AND") && all.iter().any(|it| it.contains("MIT"));
    let is_taken = |it: &&str| !is_choice || it.contains("MIT") || it.starts_with("NOTICE");
    all.into_iter().filter(is_taken).collect()
}

/// The MIT licence in the name of these: as it stands over Quietpin, with other names.
fn of_authors(authors: &str) -> Result<String> {
    let own = fs::read_to_string(folders::root().join("LICENSE"))?;
    let terms = own.find("Permission is hereby granted").and_then(|at| own.get(at..));
    let terms = terms.context("LICENSE is not that of MIT")?.trim();
    Ok(format!("MIT License\n\nCopyright (c) {authors}\n\n{terms}"))
}

fn together(owners: &BTreeMap<String, Vec<String>>) -> String {
    let mut all: Vec<_> = owners.iter().map(|(text, names)| (names, text)).collect();
    all.sort();
    let mut whole = HEAD.to_owned();
    for (names, text) in all {
        whole.extend(["\n", &"-".repeat(72), "\n", &names.join(", "), "\n\n", text, "\n"]);
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(licence: &str, names: &[&str], expected: &[&str]) {
        let names: Vec<_> = names.iter().map(|it| (*it).to_owned()).collect();
        assert_eq!(wanted(licence, &names), expected, "{licence}");
    }

    #[test]
    fn of_several_licences_one_is_taken_unless_all_hold() {
        let both = ["Cargo.toml", "LICENSE-APACHE", "LICENSE-MIT", "README.md"];
        check("MIT OR Apache-2.0", &both, &["LICENSE-MIT"]);
        check("MIT AND Apache-2.0", &both, &["LICENSE-APACHE", "LICENSE-MIT"]);
        check("MIT", &["LICENSE.md", "src"], &["LICENSE.md"]);
        check("Apache-2.0", &["LICENSE", "NOTICE"], &["LICENSE", "NOTICE"]);
        check("MIT", &["src"], &[]);
        let folder = ["LICENSES/Apache-2.0.txt", "LICENSES/MIT.txt", "src"];
        check("MIT OR Apache-2.0", &folder, &["LICENSES/MIT.txt"]);
    }

    #[test]
    fn every_crate_of_the_page_is_named_with_a_licence() {
        let whole = texts().unwrap();
        let used = used().unwrap();
        assert!(used.iter().any(|it| it.starts_with("yew ")), "{used:?}");
        let ours = |name: &&String| name.starts_with("quietpin");
        let missing: Vec<_> =
            used.iter().filter(|it| !ours(it) && !whole.contains(it.as_str())).collect();
        assert!(missing.is_empty(), "{missing:?}");
        assert!(whole.matches("Permission is hereby granted").count() > 5, "{whole}");
        assert!(whole.len() < 100_000, "it is kept for use with no network");
    }

    #[test]
    fn a_text_stands_once_with_all_to_whom_it_belongs() {
        let owners = BTreeMap::from([
            ("terms".to_owned(), vec!["one 1".to_owned(), "other 2".to_owned()]),
            ("more".to_owned(), vec!["third 3".to_owned()]),
        ]);
        let whole = together(&owners);
        assert!(whole.contains("one 1, other 2\n\nterms\n"), "{whole}");
        assert_eq!(whole.matches("terms").count(), 1);
    }
}
