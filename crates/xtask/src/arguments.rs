//! What was typed after `cargo xtask`.

use anyhow::{Context, Result, bail};
use lexopt::{Arg, Parser, ValueExt};
use std::path::PathBuf;

pub(crate) const HELP: &str = "\
The chores of Quietpin. Each one sets up by itself what it needs.

  cargo xtask build             build the page into dist/, and dist/quietpin.html, the page in one file
  cargo xtask serve             build, then serve the page on this machine
      --lan                     … and to the phones on the same network
      --port N                  … on port N instead of 8360; 0 takes a free one
      --as-built                … without building
      --folder FOLDER           … FOLDER as it is, without building
  cargo xtask test              everything that can be checked: lints, tests, browser, docs, size
  cargo xtask laws              the laws with cases that no other run tried, and 5000 sequences of edits
      --seed N                  … with the cases of N, as a run that failed has told
  cargo xtask package           the core as a JavaScript package, for scripts, into dist/package/
  cargo xtask size              the page's bytes by part, and its largest functions
  cargo xtask speed             how long an edit keeps a browser busy, beside the release before
      --keep                    … and keep that for the next one
  cargo xtask shots [FOLDER]    pictures of the page, into target/shots/ or FOLDER
  cargo xtask bless             take today's answers as the expected ones (then read the diff)
  cargo xtask --help            this list
";

/// One line of the list of chores.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Chore {
    Help,
    Build,
    Serve(Serve),
    Test,
    Package,
    Size,
    Speed { keep: bool },
    Shots { folder: Option<PathBuf> },
    Bless,
    Laws { seed: Option<u64> },
}

/// How the page is served.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Serve {
    pub(crate) lan: bool,
    pub(crate) port: u16,
    pub(crate) source: Source,
}

/// What is served.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Source {
    NewBuild,
    LastBuild,
    Folder(PathBuf),
}

/// The browser keeps plans by address and port, so the port stays the same from one day to the next.
const PORT: u16 = 8360;

pub(crate) fn read(mut parser: Parser) -> Result<Chore> {
    let Some(first) = parser.next()? else { return Ok(Chore::Help) };
    let chore = match first {
        Arg::Long("help") | Arg::Short('h') => Chore::Help,
        Arg::Value(name) => match name.string()?.as_str() {
            "help" => Chore::Help,
            "build" => Chore::Build,
            "serve" => return read_serve(parser),
            "test" => Chore::Test,
            "package" => Chore::Package,
            "size" => Chore::Size,
            "speed" => return read_speed(parser),
            "shots" => return read_shots(parser),
            "bless" => Chore::Bless,
            "laws" => return read_laws(parser),
            other => bail!("there is no chore \"{other}\"; `cargo xtask --help` lists them"),
        },
        other => return Err(other.unexpected().into()),
    };
    match parser.next()? {
        None => Ok(chore),
        Some(Arg::Long("help") | Arg::Short('h')) => Ok(Chore::Help),
        Some(extra) => Err(extra.unexpected().into()),
    }
}

fn read_speed(mut parser: Parser) -> Result<Chore> {
    let mut keep = false;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("keep") => keep = true,
            Arg::Long("help") | Arg::Short('h') => return Ok(Chore::Help),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Chore::Speed { keep })
}

fn read_serve(mut parser: Parser) -> Result<Chore> {
    let mut serve = Serve { lan: false, port: PORT, source: Source::NewBuild };
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("lan") => serve.lan = true,
            Arg::Long("port") => {
                serve.port = parser.value()?.parse().context("--port takes 0 to 65535")?;
            }
            Arg::Long("as-built") => serve.source = Source::LastBuild,
            Arg::Long("folder") => serve.source = Source::Folder(parser.value()?.into()),
            Arg::Long("help") | Arg::Short('h') => return Ok(Chore::Help),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Chore::Serve(serve))
}

fn read_laws(mut parser: Parser) -> Result<Chore> {
    let mut seed = None;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Long("seed") => {
                seed = Some(parser.value()?.parse().context("--seed takes a number")?);
            }
            Arg::Long("help") | Arg::Short('h') => return Ok(Chore::Help),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Chore::Laws { seed })
}

fn read_shots(mut parser: Parser) -> Result<Chore> {
    let mut folder = None;
    while let Some(argument) = parser.next()? {
        match argument {
            Arg::Value(value) if folder.is_none() => folder = Some(value.into()),
            Arg::Long("help") | Arg::Short('h') => return Ok(Chore::Help),
            other => return Err(other.unexpected().into()),
        }
    }
    Ok(Chore::Shots { folder })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(typed: &[&str], expected: &Chore) {
        assert_eq!(&read(Parser::from_args(typed)).unwrap(), expected, "{typed:?}");
    }

    #[track_caller]
    fn refused(typed: &[&str], with: &str) {
        let error = format!("{:#}", read(Parser::from_args(typed)).unwrap_err());
        assert!(error.contains(with), "{error}");
    }

    #[test]
    fn nothing_typed_asks_for_help() {
        check(&[], &Chore::Help);
        check(&["serve", "--help"], &Chore::Help);
        check(&["build", "-h"], &Chore::Help);
    }

    #[test]
    fn serve_takes_its_options_in_any_order() {
        let expected = Serve { lan: true, port: 0, source: Source::LastBuild };
        check(&["serve", "--port", "0", "--as-built", "--lan"], &Chore::Serve(expected));
        let plain = Serve { lan: false, port: PORT, source: Source::NewBuild };
        check(&["serve"], &Chore::Serve(plain));
    }

    #[test]
    fn shots_take_a_folder() {
        check(&["shots", "here"], &Chore::Shots { folder: Some("here".into()) });
    }

    #[test]
    fn a_package_takes_nothing() {
        check(&["package"], &Chore::Package);
        refused(&["package", "here"], "here");
    }

    #[test]
    fn laws_take_a_seed() {
        check(&["laws"], &Chore::Laws { seed: None });
        check(&["laws", "--seed", "7"], &Chore::Laws { seed: Some(7) });
        refused(&["laws", "--seed", "seven"], "a number");
    }

    #[test]
    fn a_slip_is_told() {
        refused(&["sreve"], "there is no chore \"sreve\"");
        refused(&["serve", "--port", "70000"], "0 to 65535");
        refused(&["build", "now"], "now");
        refused(&["shots", "one", "two"], "two");
    }
}
