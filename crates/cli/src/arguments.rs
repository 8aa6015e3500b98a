//! What was asked for on the command line.

use std::{ffi::OsString, path::PathBuf};

use lexopt::Arg;

use quietpin_core::{checked, questions, report::lists::HarnessList};

use crate::{print::Options, source::Source};

/// What `--help` prints.
pub const HELP: &str = "\
quietpin: what to know before power is switched on, from a plan

Usage:
  quietpin report PLAN.json          print the report of a plan: a page or two to take to the car
  quietpin report --full PLAN.json   print all of it: every answer, number and table, and why
  quietpin report --json PLAN.json   print all of it, for scripts
  quietpin report -                  read the plan from the standard input
  quietpin list NAME PLAN.json       print a list of the harness as CSV: wires, cuts, labels or shopping
  quietpin checked [QUESTION]        print what was compared with what, of all or of one question

Options:
  --full          all of the report, and all that was assumed
  --working       all of it, and for each number the formula, the values put in, and the source
  --json          the whole report as JSON, its working included
  -h, --help      print this
  -V, --version   print the version

Ends with 0 if nothing dangerous or faulty was found, with 1 if something was, and with 2 if there is
no plan that can be read.

This plans and checks. It does not replace the makers' data sheets, local codes or a licensed
person.
";

/// What `--version` prints.
pub const VERSION: &str = concat!("quietpin ", env!("CARGO_PKG_VERSION"), "\n");

/// What is to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Command {
    /// Print [`HELP`].
    Help,
    /// Print [`VERSION`].
    Version,
    /// Print the record of what was compared with what, of all questions or of one.
    Checked(&'static str),
    /// Print a list of the harness.
    List {
        /// Where the plan is.
        source: Source,
        /// Which list.
        list: HarnessList,
    },
    /// Print the report of a plan.
    Report {
        /// Where the plan is.
        source: Source,
        /// How to print it.
        form: Form,
    },
}

/// How a report is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A page or two.
    Usual,
    /// All of it, for reading.
    Full(Options),
    /// For scripts.
    Json,
}

/// Reads the arguments that follow the program's name. `--help` and `--version` count wherever they stand.
///
/// # Errors
/// What is wrong with them and what would be right, for a person.
pub fn read(arguments: impl IntoIterator<Item = OsString>) -> Result<Command, String> {
    let mut parser = lexopt::Parser::from_args(arguments);
    let (mut json, mut full, mut options) = (false, false, Options::default());
    let mut words = Vec::new();
    while let Some(argument) = parser.next().map_err(|error| advised(&error.to_string()))? {
        match argument {
            Arg::Short('h') | Arg::Long("help") => return Ok(Command::Help),
            Arg::Short('V') | Arg::Long("version") => return Ok(Command::Version),
            Arg::Long("json") => json = true,
            Arg::Long("full") => full = true,
            Arg::Long("working") => options.working = true,
            Arg::Long(name) => return Err(advised(&format!("there is no option --{name}"))),
            Arg::Short(name) => return Err(advised(&format!("there is no option -{name}"))),
            Arg::Value(word) => words.push(word),
        }
    }
    if words.first().is_some_and(|word| word == "checked") {
        return record_of(words.get(1..).unwrap_or_default()).map(Command::Checked);
    }
    if words.first().is_some_and(|word| word == "list") {
        return list_of(words);
    }
    let source = plan_of(words)?;
    let form = match (json, full || options.working) {
        (true, _) => Form::Json,
        (false, true) => Form::Full(options),
        (false, false) => Form::Usual,
    };
    Ok(Command::Report { source, form })
}

/// The record of the question named after the command `checked`.
fn record_of(words: &[OsString]) -> Result<&'static str, String> {
    let [question] = words else {
        return match words {
            [] => Ok(checked::record()),
            _ => Err(advised("one question at a time")),
        };
    };
    let question = question.to_string_lossy();
    checked::of(&question).ok_or_else(|| {
        let known: Vec<_> = questions::ALL.iter().map(|it| it.id).collect();
        advised(&format!("there is no question “{question}”, only {}", known.join(", ")))
    })
}

/// The list and the plan named after the command `list`.
fn list_of(mut words: Vec<OsString>) -> Result<Command, String> {
    let known = HarnessList::ALL.map(HarnessList::name).join(", ");
    let Some(name) = words.get(1) else {
        return Err(advised(&format!("the list is missing: {known}")));
    };
    let Some(list) = HarnessList::ALL.into_iter().find(|it| name == it.name()) else {
        let name = name.to_string_lossy();
        return Err(advised(&format!("there is no list “{name}”, only {known}")));
    };
    words.remove(1);
    if let Some(command) = words.first_mut() {
        *command = "report".into();
    }
    Ok(Command::List { source: plan_of(words)?, list })
}

/// The plan named after the command `report`.
fn plan_of(words: Vec<OsString>) -> Result<Source, String> {
    let mut words = words.into_iter();
    let Some(command) = words.next() else {
        return Err(advised("nothing was asked for"));
    };
    if command != "report" {
        let command = command.to_string_lossy();
        return Err(advised(&format!(
            "there is no command “{command}”, only “report”, “list” and “checked”"
        )));
    }
    let Some(plan) = words.next() else {
        return Err(advised("the plan is missing: name its file, or - for the standard input"));
    };
    if let Some(more) = words.next() {
        let more = more.to_string_lossy();
        return Err(advised(&format!("one plan at a time: “{more}” is one too many")));
    }
    Ok(if plan == "-" { Source::Input } else { Source::File(PathBuf::from(plan)) })
}

fn advised(problem: &str) -> String {
    format!("{problem}.\nAs in: quietpin report PLAN.json   (quietpin --help tells more)")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(line: &str, expected: &Command) {
        let read = read(line.split_whitespace().map(OsString::from));
        assert_eq!(read.as_ref(), Ok(expected), "{line}");
    }

    #[track_caller]
    fn check_fails(line: &str, expected: &str) {
        let error = read(line.split_whitespace().map(OsString::from)).expect_err(line);
        assert!(error.contains(expected), "{line}: {error}");
        assert!(error.contains("quietpin report PLAN.json"), "{line}: no word of what is right");
    }

    fn report(source: Source, form: Form) -> Command {
        Command::Report { source, form }
    }

    #[test]
    fn options_may_stand_anywhere() {
        let file = || Source::File("plan.json".into());
        check("report plan.json", &report(file(), Form::Usual));
        check("report plan.json --full", &report(file(), Form::Full(Options { working: false })));
        check("report --working plan.json", &report(file(), Form::Full(Options { working: true })));
        check("--json report plan.json", &report(file(), Form::Json));
        check("report plan.json --json --working", &report(file(), Form::Json));
        check("report -", &report(Source::Input, Form::Usual));
        check("report -- --json", &report(Source::File("--json".into()), Form::Usual));
        check("report --help", &Command::Help);
        check("-V", &Command::Version);
        check("list cuts -", &Command::List { source: Source::Input, list: HarnessList::Cuts });
        check("checked", &Command::Checked(checked::record()));
        let coils = checked::of("coils").expect("it is a question");
        check("checked coils", &Command::Checked(coils));
    }

    #[test]
    fn what_is_not_understood_is_named() {
        check_fails("", "nothing was asked for");
        check_fails("report", "the plan is missing");
        check_fails("report one.json two.json", "“two.json” is one too many");
        check_fails("plan.json", "no command “plan.json”");
        check_fails("list", "the list is missing: wires, cuts, labels, shopping");
        check_fails("list paint plan.json", "no list “paint”");
        check_fails("list wires", "the plan is missing");
        check_fails("checked paint", "no question “paint”, only firing, injectors");
        check_fails("checked coils firing", "one question at a time");
        check_fails("report --jason plan.json", "--jason");
        check_fails("report -x plan.json", "-x");
        check_fails("report --json=yes plan.json", "--json");
    }
}
