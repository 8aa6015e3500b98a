//! The wasm32 standard library where rustup cannot fetch it: built once from Debian's source, by Debian's compiler.

use super::apt;
use super::wasm::{FLAG_END, TRIPLE, has_std, without_paths_of_this_machine};
use crate::{folders, hash, shell};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Named in full: rustup's stays first on the PATH.
pub(super) const COMPILER: &str = "/usr/bin/rustc";
const CLIPPY: &str = "/usr/bin/cargo-clippy";
const SOURCE: &str = "/usr/lib/rustlib/src/rust/library/std/Cargo.toml";

/// What the packages of the project ask of a compiler (`rust-version` in Cargo.toml).
const OLDEST: &str = env!("CARGO_PKG_RUST_VERSION");

/// What the compiler is told to use.
#[derive(Debug)]
pub(crate) struct Toolchain {
    pub(super) sysroot: PathBuf,
    pub(super) linker: PathBuf,
}

/// The toolchain, if an earlier run has made it.
pub(super) fn ready() -> Option<Toolchain> {
    if !Path::new(COMPILER).is_file() {
        return None;
    }
    let version = Version::ask().ok()?;
    let sysroot = version.sysroot();
    let linker = version.linker()?;
    has_std(&library_folder(&sysroot)).then_some(Toolchain { sysroot, linker })
}

/// Installs what is missing, and builds the library.
pub(super) fn make() -> Result<Toolchain> {
    let advice = format!(
        "the page needs the wasm32 standard library of Rust: run `rustup target add {TRIPLE}` where rustup can \
         download, or use a Debian with the packages rustc-web, rust-web-src and lld of Rust {OLDEST} or newer"
    );
    let version = install().context(advice)?;
    let linker =
        version.linker().context("the linker wasm-ld is not where its package should put it")?;
    let sysroot = version.sysroot();
    if !has_std(&library_folder(&sysroot)) {
        shell::say(
            "Building the wasm32 standard library from source, once (half a minute to a few minutes).",
        );
        build(&sysroot).context("building the wasm32 standard library")?;
    }
    Ok(Toolchain { sysroot, linker })
}

/// Debian's Clippy, called with the cargo in use.
pub(super) fn clippy() -> Result<Command> {
    if !Path::new(CLIPPY).is_file() {
        shell::say("Code for wasm32 needs the Clippy of the compiler that compiles it.");
        apt::install(&["rust-web-clippy"])?;
    }
    let mut command = Command::new(CLIPPY);
    command.env_remove("LD_LIBRARY_PATH").current_dir(folders::root());
    Ok(command)
}

fn install() -> Result<Version> {
    if !Path::new(COMPILER).is_file() || !Path::new(SOURCE).is_file() {
        shell::say("Using Debian's compiler and its source instead (about 600 MB).");
        apt::install(&["rustc-web", "rust-web-src"])?;
    }
    let version = Version::ask()?;
    if !version.is_at_least(OLDEST) {
        bail!("{COMPILER} is {}, too old: Rust {OLDEST} is needed", version.release);
    }
    if version.linker().is_none() {
        apt::install(&[&format!("lld-{}", version.llvm)])?;
    }
    Ok(version)
}

/// Builds in a scratch folder, gathers beside, and renames at the end.
fn build(sysroot: &Path) -> Result<()> {
    let scratch = sysroot.with_extension("build");
    let gathered = sysroot.with_extension("part");
    for leftover in [&scratch, &gathered, &sysroot.to_path_buf()] {
        remove(leftover)?;
    }
    write_empty_crate(&scratch)?;
    compile(&scratch)?;
    let library = library_folder(&gathered);
    fs::create_dir_all(&library)?;
    let made = scratch.join("target").join(TRIPLE).join("release").join("deps");
    for entry in fs::read_dir(made)? {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let is_library = path.extension().is_some_and(|extension| extension == "rlib");
        if is_library && !name.starts_with(&format!("lib{EMPTY}-")) {
            fs::copy(&path, library.join(name))?;
        }
    }
    fs::rename(gathered, sysroot)?;
    remove(&scratch)
}

const EMPTY: &str = "nothing";

fn write_empty_crate(folder: &Path) -> Result<()> {
    fs::create_dir_all(folder.join("src"))?;
    let manifest = format!("[package]\nname = \"{EMPTY}\"\nedition = \"2024\"\n[workspace]\n");
    fs::write(folder.join("Cargo.toml"), manifest)?;
    fs::write(folder.join("src").join("lib.rs"), "")?;
    Ok(())
}

fn compile(folder: &Path) -> Result<()> {
    let parts = "-Zbuild-std=std,panic_abort,proc_macro,test";
    let mut command = shell::cargo();
    command.args(["build", "--release", "--target", TRIPLE, parts, "--target-dir"]);
    command.arg(folder.join("target")).current_dir(folder);
    // For size, as the rest of the page.
    command.args([
        "--config",
        "profile.release.opt-level=\"z\"",
        "-Zbuild-std-features=optimize_for_size",
    ]);
    command.env("RUSTC", COMPILER);
    // Building the standard library is an unstable feature of a stable compiler.
    command.env("RUSTC_BOOTSTRAP", "1");
    let mut flags = without_paths_of_this_machine();
    // Link-time optimisation reads the bitcode.
    flags.push("-Cembed-bitcode=yes".to_owned());
    command.env("CARGO_ENCODED_RUSTFLAGS", flags.join(FLAG_END));
    shell::run(&mut command)
}

fn library_folder(sysroot: &Path) -> PathBuf {
    sysroot.join("lib").join("rustlib").join(TRIPLE).join("lib")
}

fn remove(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder).with_context(|| format!("removing {}", folder.display()))?;
    }
    Ok(())
}

/// What `rustc -vV` tells.
struct Version {
    whole: String,
    release: String,
    llvm: String,
}

impl Version {
    fn ask() -> Result<Self> {
        let whole = shell::output(Command::new(COMPILER).arg("-vV").env_remove("LD_LIBRARY_PATH"))?;
        Self::read(whole).context("rustc did not tell its version")
    }

    fn read(whole: String) -> Option<Self> {
        let field = |name: &str| whole.lines().find_map(|line| line.strip_prefix(name));
        let release = field("release: ")?.to_owned();
        let llvm = field("LLVM version: ")?.split('.').next()?.to_owned();
        Some(Self { whole, release, llvm })
    }

    /// A compiler reads only the libraries of its own build: another compiler, another folder.
    fn sysroot(&self) -> PathBuf {
        // "small": built for size
        let key = hash::short(format!("{} small", self.whole).as_bytes());
        folders::target()
            .join("wasm-std")
            .join(format!("rust-{}-{key}", self.release.replace('.', "-")))
    }

    fn linker(&self) -> Option<PathBuf> {
        shell::find(&[&format!("wasm-ld-{}", self.llvm)])
    }

    fn is_at_least(&self, oldest: &str) -> bool {
        numbers(&self.release) >= numbers(oldest)
    }
}

/// 1, 95 and 0 from "1.95.0": compared like words, they order versions.
fn numbers(version: &str) -> Vec<u32> {
    version.split(['.', '-']).map_while(|part| part.parse().ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn version(release: &str) -> Version {
        let whole = format!("rustc {release}\nrelease: {release}\nLLVM version: 22.1.8\n");
        Version::read(whole).unwrap()
    }

    #[test]
    fn the_linker_has_the_major_version_of_llvm() {
        assert_eq!(version("1.96.0").llvm, "22", "from 22.1.8");
    }

    #[test]
    fn versions_are_ordered_as_numbers() {
        assert!(version("1.100.0").is_at_least("1.95"), "100 comes after 95");
        assert!(version("1.95.0").is_at_least("1.95"), "the oldest one is enough");
        assert!(!version("1.63.0").is_at_least("1.95"), "63 comes before 95");
    }

    #[test]
    fn another_compiler_gets_another_folder() {
        assert_ne!(version("1.95.0").sysroot(), version("1.96.0").sysroot(), "keyed by version");
    }
}
