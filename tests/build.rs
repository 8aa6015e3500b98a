//! Lists the example plans and the hashes of their reports with their texts, so that they can be had where there are no
//! files.

use std::{env, error::Error, fmt::Write, fs, path::Path};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new(&env::var("CARGO_MANIFEST_DIR")?).join("plans");
    let list = |folder: &Path, ending, entry: fn(&str, &str) -> String| {
        println!("cargo::rerun-if-changed={}", folder.display());
        let mut list = String::new();
        for name in names(folder, ending)? {
            let path = folder.join(format!("{name}.{ending}")).display().to_string();
            writeln!(list, "    {},", entry(&name, &path))?;
        }
        Ok::<_, Box<dyn Error>>(list)
    };
    let long = list(&folder, "json", |name, path| {
        format!("Example {{ name: {name:?}, text: include_str!({path:?}), is_point: false }}")
    })?;
    let points = list(&folder.join("points"), "json", |name, path| {
        format!("Example {{ name: {name:?}, text: include_str!({path:?}), is_point: true }}")
    })?;
    let hashes = list(&folder.join("hashes"), "sha256", |part, path| {
        format!("({part:?}, include_str!({path:?}))")
    })?;
    let (plans, hashes) = (format!("&[\n{long}{points}]\n"), format!("&[\n{hashes}]\n"));
    let out = env::var("OUT_DIR")?;
    fs::write(Path::new(&out).join("plans.rs"), plans)?;
    fs::write(Path::new(&out).join("hashes.rs"), hashes)?;
    Ok(())
}

/// The files of a folder with this ending, without it, in order.
fn names(folder: &Path, ending: &str) -> Result<Vec<String>, Box<dyn Error>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.extension().is_some_and(|extension| extension == ending) {
            names.extend(path.file_stem().map(|name| name.to_string_lossy().into_owned()));
        }
    }
    names.sort();
    Ok(names)
}
