//! The standard library for wasm32: rustup's, or one built from Debian's source.

use super::debian;
use crate::{folders, shell};
use anyhow::Result;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

pub(crate) const TRIPLE: &str = "wasm32-unknown-unknown";

/// What cargo wants between flags that may have spaces in them.
pub(super) const FLAG_END: &str = "\u{1f}";

/// A panic is a trap without words, and `{:?}` prints nothing: nobody reads either on a phone. The core never panics,
/// shows nothing by `{:?}`, and a trap is told by the page's starter.
const SMALL: [&str; 5] = [
    "-Zunstable-options",
    "-Cpanic=immediate-abort",
    "-Zlocation-detail=none",
    "-Zfmt-debug=none",
    // The program is cut in two after it was linked: what points where must still be known then.
    "-Clink-arg=--emit-relocs",
];

/// How this machine compiles for the browser.
#[derive(Debug)]
pub(crate) enum WasmTarget {
    /// The usual compiler has the target.
    Usual,
    /// Debian's compiler, with a standard library that was built here.
    Debian(debian::Toolchain),
}

/// Finds the target, or fetches it.
pub(crate) fn wasm_target() -> Result<WasmTarget> {
    if usual_compiler_has_both() {
        shell::say("wasm32 standard library, and its source: there.");
        return Ok(WasmTarget::Usual);
    }
    if let Some(ready) = debian::ready() {
        shell::say("wasm32 standard library: there, built from Debian's source.");
        return Ok(WasmTarget::Debian(ready));
    }
    if rustup_adds_it() {
        return Ok(WasmTarget::Usual);
    }
    debian::make().map(WasmTarget::Debian)
}

fn rustup_adds_it() -> bool {
    if shell::find(&["rustup"]).is_none() {
        shell::say("There is no rustup to fetch the wasm32 standard library with.");
        return false;
    }
    shell::say("Fetching the wasm32 standard library and its source with rustup (about 25 MB).");
    for what in [["target", "add", TRIPLE], ["component", "add", "rust-src"]] {
        if shell::run(Command::new("rustup").args(what)).is_err() {
            break;
        }
    }
    if usual_compiler_has_both() {
        return true;
    }
    shell::say("rustup could not fetch it.");
    false
}

/// The library as it comes for tests, and its source for the page, which compiles its own.
fn usual_compiler_has_both() -> bool {
    let folder = |question: &[&str]| {
        let compiler = env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
        let answer = shell::output(Command::new(compiler).arg("--print").args(question)).ok()?;
        Some(PathBuf::from(answer.trim()))
    };
    let source = |sysroot: PathBuf| sysroot.join("lib/rustlib/src/rust/library/std/Cargo.toml");
    folder(&["target-libdir", "--target", TRIPLE]).is_some_and(|it| has_std(&it))
        && folder(&["sysroot"]).is_some_and(|it| source(it).is_file())
}

/// Whether `folder` holds a compiled standard library.
pub(super) fn has_std(folder: &Path) -> bool {
    let Ok(entries) = fs::read_dir(folder) else { return false };
    entries.filter_map(Result::ok).any(|entry| {
        let name = entry.file_name();
        let name = name.to_string_lossy();
        name.starts_with("libstd-") && name.ends_with(".rlib")
    })
}

impl WasmTarget {
    /// `cargo SUBCOMMAND` for wasm32, in a target folder of its own.
    pub(crate) fn cargo(&self, subcommand: &str) -> Command {
        let mut command = shell::cargo();
        command.arg(subcommand);
        self.aim(&mut command);
        command
    }

    /// Clippy of the same version as the compiler.
    pub(crate) fn clippy(&self) -> Result<Command> {
        let mut command = match self {
            Self::Usual => shell::cargo(),
            Self::Debian(_) => debian::clippy()?,
        };
        command.arg("clippy");
        self.aim(&mut command);
        Ok(command)
    }

    /// Clippy's newest lints differ between versions; only the one that lints everything else may fail the run.
    pub(crate) fn clippy_is_usual(&self) -> bool {
        matches!(self, Self::Usual)
    }

    /// `cargo build` for wasm32 where every byte counts: the standard library is compiled along, for size.
    pub(crate) fn cargo_build_small(&self) -> Command {
        let mut command = shell::cargo();
        command.args(["build", "-Zbuild-std=std,panic_abort"]);
        command.arg("-Zbuild-std-features=optimize_for_size");
        // Unstable features of a stable compiler.
        command.env("RUSTC_BOOTSTRAP", "1");
        self.aim_with(&mut command, &SMALL, false);
        command
    }

    fn aim(&self, command: &mut Command) {
        self.aim_with(command, &[], true);
    }

    fn aim_with(&self, command: &mut Command, more: &[&str], std_is_there: bool) {
        command.args(["--target", TRIPLE, "--target-dir"]).arg(folders::wasm_target());
        let mut flags = without_paths_of_this_machine();
        flags.extend(more.iter().map(|&flag| flag.to_owned()));
        if let Self::Debian(toolchain) = self {
            if std_is_there {
                flags.push(format!("--sysroot={}", toolchain.sysroot.display()));
            }
            command.env("RUSTC", debian::COMPILER);
            command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER", &toolchain.linker);
        }
        command.env("CARGO_ENCODED_RUSTFLAGS", flags.join(FLAG_END));
    }
}

/// Panic messages name source files; the page should name none of this machine's folders, and saves their bytes.
pub(super) fn without_paths_of_this_machine() -> Vec<String> {
    let mut folders = vec![folders::root().to_path_buf()];
    if let Ok(registries) = fs::read_dir(cargo_home().join("registry").join("src")) {
        folders.extend(registries.filter_map(Result::ok).map(|entry| entry.path()));
    }
    folders.sort();
    folders.iter().map(|folder| format!("--remap-path-prefix={}=", folder.display())).collect()
}

fn cargo_home() -> PathBuf {
    let in_home = || PathBuf::from(env::var_os("HOME").unwrap_or_default()).join(".cargo");
    env::var_os("CARGO_HOME").map_or_else(in_home, PathBuf::from)
}
