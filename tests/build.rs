//! Lists the example plans with their texts, so that they can be had where there are no files.

use std::{env, error::Error, fmt::Write, fs, path::Path};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = Path::new(&env::var("CARGO_MANIFEST_DIR")?).join("plans");
    println!("cargo::rerun-if-changed={}", folder.display());
    let mut names = Vec::new();
    for entry in fs::read_dir(&folder)? {
        let path = entry?.path();
        if path.extension().is_some_and(|extension| extension == "json") {
            names.extend(path.file_stem().map(|name| name.to_string_lossy().into_owned()));
        }
    }
    names.sort();
    let mut list = "&[\n".to_owned();
    for name in names {
        let path = folder.join(format!("{name}.json")).display().to_string();
        writeln!(list, "    Example {{ name: {name:?}, text: include_str!({path:?}) }},")?;
    }
    list.push_str("]\n");
    fs::write(Path::new(&env::var("OUT_DIR")?).join("plans.rs"), list)?;
    Ok(())
}
