//! From Rust to a small WebAssembly module and the JavaScript that loads it.

use super::cut::{self, Further};
use super::names;
use crate::setup::WasmTarget;
use crate::{folders, shell};
use anyhow::{Context, Result};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_bindgen_cli_support::Bindgen;

const PACKAGE: &str = "quietpin-web";
const PROFILE: &str = "page";

/// Whether functions keep their names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Symbols {
    Dropped,
    Kept,
}

/// What the browser runs.
#[derive(Debug)]
pub(crate) struct Program {
    /// Shows the page and takes what is typed.
    pub(crate) first: Vec<u8>,
    /// What the first fetches.
    pub(crate) further: Vec<Further>,
    pub(crate) glue: String,
}

/// Compiles and binds the page's program.
pub(crate) fn program(target: &WasmTarget, symbols: Symbols) -> Result<Program> {
    shell::say("Compiling the page.");
    let compiled = compile(target)?;
    shell::say("Cutting it into parts.");
    let cut::Cut { first, further } = cut::cut(&compiled)?;
    shell::say("Binding it to JavaScript.");
    let (first, glue) = bind(&first)?;
    let glue = cut::join(&glue, &fetching()?)?;
    shell::say("Making it small.");
    let first = make_small(&first, symbols)?;
    let small = |Further { name, modules }| {
        let modules = modules.iter().map(|module| make_small(module, symbols));
        Ok(Further { name, modules: modules.collect::<Result<_>>()? })
    };
    let further = further.into_iter().map(small).collect::<Result<_>>()?;
    let glue = make_script_small(&glue)?;
    Ok(Program { first, further, glue })
}

fn scratch() -> Result<PathBuf> {
    let folder = folders::wasm_target().join("small");
    fs::create_dir_all(&folder)?;
    Ok(folder)
}

fn fetching() -> Result<String> {
    let file = folders::root().join("web/static/further_parts.js");
    fs::read_to_string(file).context("reading how the further parts are fetched")
}

fn compile(target: &WasmTarget) -> Result<PathBuf> {
    let mut command = target.cargo_build_small();
    command.args(["--package", PACKAGE, "--profile", PROFILE]);
    // The names are needed where the program is cut, and for the sizes by function; the last step drops them.
    command.args(["--config", "profile.page.strip=\"none\""]);
    shell::run(&mut command).context("the page does not compile")?;
    let folder = folders::wasm_target().join(crate::setup::TRIPLE).join(PROFILE);
    Ok(folder.join(format!("{PACKAGE}.wasm")))
}

/// A plain script rather than a module: modules do not load from a file.
fn bind(compiled: &Path) -> Result<(Vec<u8>, String)> {
    let mut bindgen = Bindgen::new();
    bindgen.input_path(compiled).out_name("quietpin").no_modules(true)?;
    bindgen.typescript(false).omit_default_module_path(true).demangle(false);
    // The second part takes the table of functions from the first.
    bindgen.keep_lld_exports(true);
    // The optimiser sorts by the names, and drops them.
    bindgen.remove_name_section(false).remove_producers_section(true);
    let mut output = bindgen.generate_output().context("wasm-bindgen")?;
    let glue = output.js().to_owned();
    let program = output.wasm_mut();
    let glue = names::shorten(program.imports.iter_mut().map(|it| &mut it.name), &glue);
    Ok((program.emit_wasm(), glue))
}

/// What the compiler may have used; the optimiser must know, and must use no more than that.
const FEATURES: [&str; 7] = [
    "--mvp-features",
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// What makes the page smallest as it is sent, compressed: measured, one option after the other. The optimiser's own
/// options for size (`-Oz`) leave fewer bytes and worse ones: pieces of code that are alike become less so, and once
/// compressed there is 1.5 % more. The same of a function that is put into its only caller; and functions that are
/// alike are neighbours when they are sorted by name, as one generic function is named by its types. More rounds take
/// minutes and save one part in five hundred. Arithmetic keeps its bits: the option that would loosen it is not used.
///
/// The lowest kilobyte of the memory is the end of the stack, where nothing has an address: so an address and what is
/// added to it are one.
const SMALL: [&str; 6] = [
    "--reorder-functions-by-name",
    "--low-memory-unused",
    "-O2",
    "--shrink-level=2",
    "--one-caller-inline-max-function-size=20",
    "--skip-pass=simplify-locals",
];

/// Makes a module small.
pub(crate) fn make_small(wasm: &[u8], symbols: Symbols) -> Result<Vec<u8>> {
    let scratch = scratch()?;
    let (before, after) = (scratch.join("before.wasm"), scratch.join("after.wasm"));
    fs::write(&before, wasm)?;
    let mut command = Command::new(folders::npm_program("wasm-opt"));
    command.args(FEATURES).args(SMALL);
    match symbols {
        Symbols::Dropped => {
            command.args(["--strip-debug", "--strip-producers", "--strip-target-features"])
        }
        Symbols::Kept => command.arg("--debuginfo"),
    };
    command.arg(&before).arg("--output").arg(&after);
    shell::run(&mut command)?;
    fs::read(&after).context("reading what wasm-opt wrote")
}

/// Without comments and with short names inside; the names that the program calls by are left.
pub(super) fn make_script_small(script: &str) -> Result<String> {
    let before = scratch()?.join("before.js");
    fs::write(&before, script)?;
    let mut command = Command::new(folders::npm_program("terser"));
    command.arg(&before).args(["--compress", "--mangle"]);
    shell::output(&mut command)
}
