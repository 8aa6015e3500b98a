//! `quietpin`: reads a plan, prints its report.

use std::{
    env,
    io::{self, ErrorKind, Write},
    process::ExitCode,
};

use quietpin::{
    arguments::{self, Command, Form, HELP, VERSION},
    print, source,
};
use quietpin_core::{
    plan,
    report::{lists::csv, report},
};

/// Something in the plan can hurt, destroy or will not work.
const FOUND: u8 = 1;
/// There was no plan to report on.
const NO_PLAN: u8 = 2;

fn main() -> ExitCode {
    match run() {
        Ok(code) => ExitCode::from(code),
        Err(message) => {
            // with nowhere to complain to, the exit code alone has to say it
            let _ = writeln!(io::stderr(), "quietpin: {message}");
            ExitCode::from(NO_PLAN)
        }
    }
}

fn run() -> Result<u8, String> {
    let (text, code) = match arguments::read(env::args_os().skip(1))? {
        Command::Help => (HELP.to_owned(), 0),
        Command::Version => (VERSION.to_owned(), 0),
        Command::Checked(record) => (record.to_owned(), 0),
        Command::List { source, list } => {
            let plan = plan::parse(&source.read()?)
                .map_err(|error| format!("{}: {error}", source::name(&source)))?;
            (csv(list, &plan, &report(&plan)), 0)
        }
        Command::Report { source, form } => {
            let plan = plan::parse(&source.read()?)
                .map_err(|error| format!("{}: {error}", source::name(&source)))?;
            let report = report(&plan);
            let text = match form {
                Form::Usual => print::usual(&report),
                Form::Full(options) => print::report(&report, options),
                Form::Json => print::json(&report),
            };
            (text, if report.has_danger_or_fault() { FOUND } else { 0 })
        }
    };
    write(&text)?;
    Ok(code)
}

/// Writes to the standard output. A reader that has seen enough (`| head`) is no error.
fn write(text: &str) -> Result<(), String> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(format!("the report can't be written: {error}"))
        }
        _ => Ok(()),
    }
}
