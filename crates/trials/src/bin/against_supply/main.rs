//! Wires, heated by their current, and feeds with a load or a short at their end, at random: in closed form by the core, step by step by
//! scipy's solver of differential equations, and by ngspice, a general-purpose circuit simulator. Run by hand, not among the tests
//! (needs Python with scipy, and ngspice):
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin against_supply > tests/reference/against_supply.md
//! ```
//!
//! Source: scipy, `scipy.integrate.solve_ivp`, and ngspice; see `tests/reference/SOURCES.md`.
#![expect(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a command for people, not a part of the core"
)]

mod grounds;
mod shorts;
mod simulator;
mod wires;

use std::{
    io::{self, Write as _},
    process::{Command, ExitCode, Stdio},
};

const SEED: u64 = 1;

fn heated() -> io::Result<bool> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/src/bin/against_supply/heated.py");
    let mut python = Command::new("python3").arg(script).stdin(Stdio::piped()).spawn()?;
    if let Some(mut stdin) = python.stdin.take() {
        stdin.write_all(wires::lines(SEED).as_bytes())?;
    }
    Ok(python.wait()?.success())
}

fn main() -> ExitCode {
    println!("# Wires, feeds and grounds at random against scipy and ngspice\n");
    println!(
        "Written by `cargo run --release -p quietpin-trials --bin against_supply`, seed {SEED}.\n"
    );
    let well = heated().and_then(|one| Ok(one & shorts::compare(SEED)? & grounds::compare(SEED)?));
    match well {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("python3 with scipy, and ngspice, are needed: {error}");
            ExitCode::FAILURE
        }
    }
}
