//! Running other programs, and telling what is done.

use anyhow::{Context, Result, bail};
use std::cell::RefCell;
use std::env;
use std::fs::File;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

thread_local! {
    /// Where this thread tells what it does, where that is not the terminal.
    static TOLD: RefCell<Option<File>> = const { RefCell::new(None) };
}

/// Does `work`, and writes all that is said meanwhile, by the programs that it starts too, to a file: two that work side by
/// side would talk at once.
pub(crate) fn told_in<T>(file: &Path, work: impl FnOnce() -> T) -> Result<T> {
    let told = File::create(file).with_context(|| format!("making {}", file.display()))?;
    TOLD.set(Some(told));
    let done = work();
    TOLD.set(None);
    Ok(done)
}

/// A line as it is.
pub(crate) fn line(text: &str) {
    let is_told = TOLD.with_borrow_mut(|told| {
        let file = told.as_mut()?;
        // What can't be told is no reason to stop.
        let _ = writeln!(file, "{text}");
        Some(())
    });
    if is_told.is_none() {
        println!("{text}");
    }
}

/// One line about what comes next.
pub(crate) fn say(text: &str) {
    line(&format!("  {text}"));
}

/// The title of a part of the work.
pub(crate) fn heading(text: &str) {
    line(&format!("\n== {text}"));
}

/// Where a program that is started says what it says, and what it complains of.
fn heard() -> Stdio {
    let file = TOLD.with_borrow(|told| told.as_ref().and_then(|it| it.try_clone().ok()));
    file.map_or_else(Stdio::inherit, Stdio::from)
}

/// The same program, complaining where this thread tells what it does.
pub(crate) fn complaining(command: &mut Command) -> &mut Command {
    command.stderr(heard())
}

/// Runs a program in the open: its command line first, then what it prints.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    say(&format!("> {}", spelled(command)));
    let program = name(command);
    let status = command
        .stdout(heard())
        .stderr(heard())
        .status()
        .with_context(|| format!("{program} did not start"))?;
    if status.success() { Ok(()) } else { bail!("{program} failed ({status})") }
}

/// What a program prints; an error if it fails.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let program = name(command);
    let output =
        command.stderr(heard()).output().with_context(|| format!("{program} did not start"))?;
    if !output.status.success() {
        bail!("{program} failed ({})", output.status);
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// The first of `names` that is on the PATH.
pub(crate) fn find(names: &[&str]) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    let folders: Vec<_> = env::split_paths(&path).collect();
    names.iter().find_map(|name| {
        folders.iter().map(|folder| folder.join(name)).find(|candidate| is_program(candidate))
    })
}

/// Cargo: the one that started this program, or the one on the PATH.
pub(crate) fn cargo() -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    // Set by `cargo run` for this program alone; another compiler must not load these libraries.
    command.env_remove("LD_LIBRARY_PATH").current_dir(crate::folders::root());
    command
}

/// The program's name, without its folder.
pub(crate) fn name(command: &Command) -> String {
    let program = Path::new(command.get_program());
    program.file_name().unwrap_or_default().to_string_lossy().into_owned()
}

fn is_program(path: &Path) -> bool {
    path.is_file()
}

/// As a person would type it in the project's folder.
fn spelled(command: &Command) -> String {
    let inside = format!("{}/", crate::folders::root().display());
    let arguments = command.get_args().map(|word| word.to_string_lossy().replace(&inside, ""));
    std::iter::once(name(command)).chain(arguments).collect::<Vec<_>>().join(" ")
}
