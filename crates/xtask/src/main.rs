//! The chores of the project: `cargo xtask --help` lists them.
#![expect(clippy::print_stdout, reason = "a chore speaks to the person who started it")]

mod arguments;
mod bless;
mod build;
mod check;
mod folders;
mod hash;
mod laws;
mod package;
mod serve;
mod setup;
mod shell;
mod shots;
mod size;
mod speed;

use arguments::Chore;
use std::process::ExitCode;

fn main() -> ExitCode {
    let done = arguments::read(lexopt::Parser::from_env()).and_then(run);
    match done {
        Ok(code) => code,
        Err(error) => {
            println!("\nStopped: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run(chore: Chore) -> anyhow::Result<ExitCode> {
    match chore {
        Chore::Help => println!("{}", arguments::HELP.trim_end()),
        Chore::Build => build::build()?,
        Chore::Serve(how) => serve::serve(&how)?,
        Chore::Test => return Ok(check::check()),
        Chore::Package => package::package()?,
        Chore::Size => size::size()?,
        Chore::Speed { keep } => speed::speed(keep)?,
        Chore::Shots { folder } => shots::shots(folder)?,
        Chore::Bless => bless::bless()?,
        Chore::Laws { seed } => laws::laws(seed)?,
    }
    Ok(ExitCode::SUCCESS)
}
