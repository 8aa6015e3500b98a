//! The core as a JavaScript package: for Node.js and for pages, with its types.

use crate::build::{self, Symbols, fill};
use crate::setup::{self, TRIPLE, WasmTarget};
use crate::{folders, shell};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};
use wasm_bindgen_cli_support::Bindgen;

const PACKAGE: &str = "quietpin-wasm";
const COMPILED: &str = "quietpin_wasm.wasm";
/// What is written by hand, as it stands in the package.
const BY_HAND: [&str; 4] = ["README.md", "node.js", "page.js", MANIFEST];
const MANIFEST: &str = "package.json";

/// How the program is compiled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Made {
    /// Small and quick, for those who use it.
    ForUse,
    /// As the tests of the API have compiled it already.
    ForTests,
}

/// Sets up, and writes the package into `dist/package/`.
pub(crate) fn package() -> Result<()> {
    let target = setup::for_build()?;
    shell::heading("Package");
    let folder = folders::dist().join("package");
    write(&target, Made::ForUse, &folder)?;
    shell::say(&format!(
        "The package is in {}; its README.md says how it is used.",
        folder.display()
    ));
    Ok(())
}

/// Writes the package into a folder, in place of what is there.
pub(crate) fn write(target: &WasmTarget, made: Made, folder: &Path) -> Result<()> {
    let compiled = compile(target, made)?;
    let mut bindgen = Bindgen::new();
    // the functions alone, in a module that the two entries put together with the program
    bindgen.input_path(compiled).out_name("quietpin").bundler(true)?;
    bindgen.typescript(true).remove_producers_section(true);
    let mut output = bindgen.generate_output().context("wasm-bindgen")?;
    let types = output.ts().context("wasm-bindgen wrote no types")?.to_owned();
    // beside an entry for bundlers, of which this is not one
    let script = output.start().context("wasm-bindgen wrote no JavaScript")?.to_owned();
    let mut program = output.wasm_mut().emit_wasm();
    if made == Made::ForUse {
        program = build::make_small(&program, Symbols::Dropped)?;
    }

    build::empty(folder)?;
    let put = |name: &str, bytes: &[u8]| build::write(folder, name, bytes);
    put("quietpin.wasm", &program)?;
    put("quietpin.js", script.as_bytes())?;
    put("quietpin.d.ts", types.as_bytes())?;
    let root = folders::root();
    for name in BY_HAND {
        let file = root.join("crates/wasm/package").join(name);
        let text =
            fs::read_to_string(&file).with_context(|| format!("reading {}", file.display()))?;
        let is_manifest = name == MANIFEST;
        let version = env!("CARGO_PKG_VERSION");
        let text = if is_manifest { fill(&text, &[("version", version)])? } else { text };
        put(name, text.as_bytes())?;
    }
    put(build::SCHEMA, &fs::read(root.join("web/static").join(build::SCHEMA))?)?;
    put("LICENSE", &fs::read(root.join("LICENSE"))?)
}

fn compile(target: &WasmTarget, made: Made) -> Result<PathBuf> {
    let mut command = match made {
        Made::ForUse => target.cargo("build"),
        Made::ForTests => target.cargo("test"),
    };
    command.args(["--package", PACKAGE, "--lib"]);
    // where it lies: a library that the tests rest on is not put beside the programs
    let folder = match made {
        Made::ForUse => {
            command.arg("--release");
            "release"
        }
        Made::ForTests => {
            command.args(["--tests", "--no-run"]);
            "debug/deps"
        }
    };
    shell::run(&mut command).context("the package does not compile")?;
    Ok(folders::wasm_target().join(TRIPLE).join(folder).join(COMPILED))
}
