//! Changes one thing in the trade at a time, and sees whether the tests notice. Run by hand, not among the tests (an hour at the
//! most; it writes `tests/MUTANTS.md`):
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin mutants
//! cargo run --release -p quietpin-trials --bin mutants -- --in output/judge.rs
//! ```
//!
//! A copy of the workspace in `target/mutants` is built once, with all mutants in it; each is switched on when a test program
//! starts. With `--in` all mutants of those files are tried whose path holds that text, and nothing is written. What was found
//! is kept there too, and a further run asks only what was not asked: `--quick` asks no record, `--most 10` also tests that take
//! up to ten seconds, and `--minutes 5` begins with none after five minutes.
#![expect(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a command for people, not a part of the core"
)]

mod baseline;
mod copy;
mod known;
mod past;
mod planted;
mod programs;
mod scope;
mod sites;
mod splice;
mod tell;
mod trial;
mod uses;
mod work;

use std::{
    fs,
    path::Path,
    process::ExitCode,
    time::{Duration, Instant},
};

use quietpin_trials::random::Random;

use crate::sites::{Kind, Mutant};

const SEED: u64 = 1;

/// A test that takes longer is not asked where nothing else is said: what it alone would tell counts as survived.
const MOST: Duration = Duration::from_secs(1);

/// How many comparisons are drawn.
const COMPARISONS: usize = 200;

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), String> {
    let wanted = wanted()?;
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let top = top.canonicalize().map_err(|error| error.to_string())?;
    let folder = top.join("target/mutants");
    let mut files = copy::read(&top).map_err(|error| error.to_string())?;
    let mutants = copy::mutate(&mut files)?;
    copy::write(&files, &folder.join("tree")).map_err(|error| error.to_string())?;
    let programs = programs::build(&folder.join("tree"), &folder.join("build"))?;
    let mut tests = baseline::run(&programs, &files, &folder);
    tests.sort_by_key(|it| it.takes);
    for test in tests.iter().filter(|it| !it.is_asked(wanted.most)) {
        eprintln!("not asked: {}, {:.1} s", test.name, test.takes.as_secs_f64());
    }
    tests.retain(|it| it.is_asked(wanted.most) && !(wanted.is_quick && it.is_record()));
    let chosen = match &wanted.part {
        Some(part) => mutants.iter().filter(|it| it.file.contains(part)).collect(),
        None => drawn(&mutants),
    };
    let past = past::Past::of(&folder, &baseline::key(&programs, &files));
    let until = wanted.minutes.map(|it| Instant::now() + Duration::from_mins(it));
    let outcomes = trial::run(&chosen, &programs, &tests, (&folder, wanted.most), (&past, until));
    let found = |(at, outcome): (usize, trial::Outcome)| Some((*chosen.get(at)?, outcome));
    let mut tried: Vec<_> = outcomes.into_iter().filter_map(found).collect();
    tried.sort_by_key(|(mutant, _)| mutant.id);
    let record = tell::record(&mutants, &tried, SEED);
    if wanted.part.is_some() {
        println!("{record}");
    } else {
        fs::write(top.join("tests/MUTANTS.md"), record).map_err(|error| error.to_string())?;
    }
    Ok(())
}

/// What is asked for.
struct Wanted {
    /// A part of the paths of the files; all files where there is none.
    part: Option<String>,
    /// Tests that take longer are not asked.
    most: Duration,
    /// Whether no record is asked.
    is_quick: bool,
    /// After so many minutes no other mutant is tried.
    minutes: Option<u64>,
}

fn wanted() -> Result<Wanted, String> {
    use lexopt::ValueExt as _;

    let mut arguments = lexopt::Parser::from_env();
    let mut wanted = Wanted { part: None, most: MOST, is_quick: false, minutes: None };
    while let Some(argument) = arguments.next().map_err(|error| error.to_string())? {
        match argument {
            lexopt::Arg::Long("in") => {
                let part = arguments.value().map_err(|error| error.to_string())?;
                wanted.part = Some(part.to_string_lossy().into_owned());
            }
            lexopt::Arg::Long("quick") => wanted.is_quick = true,
            lexopt::Arg::Long("minutes") => {
                let minutes = arguments.value().and_then(|it| it.parse());
                wanted.minutes = Some(minutes.map_err(|error| error.to_string())?);
            }
            lexopt::Arg::Long("most") => {
                let seconds = arguments.value().and_then(|it| it.parse());
                wanted.most = Duration::from_secs(seconds.map_err(|error| error.to_string())?);
            }
            _ => return Err(argument.unexpected().to_string()),
        }
    }
    Ok(wanted)
}

/// All constants, and so many of the comparisons, each as likely, in an order of chance.
fn drawn(mutants: &[Mutant]) -> Vec<&Mutant> {
    let (mut comparisons, mut drawn): (Vec<_>, Vec<_>) =
        mutants.iter().partition(|it| it.kind == Kind::Comparison);
    let mut random = Random::of(SEED, 0);
    for _ in 0..COMPARISONS.min(comparisons.len()) {
        drawn.push(comparisons.swap_remove(random.below(comparisons.len())));
    }
    // what can't be tried in the time there is is then as likely one as another
    for last in (1..drawn.len()).rev() {
        drawn.swap(last, random.below(last + 1));
    }
    drawn
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_comparisons_are_drawn_each_time_and_all_constants() {
        let mutant = |id: u32| Mutant {
            id,
            kind: if id.is_multiple_of(10) { Kind::Constant } else { Kind::Comparison },
            file: String::new(),
            line: 1,
            text: String::new(),
            change: String::new(),
        };
        let mutants: Vec<_> = (0..1000).map(mutant).collect();
        let once = drawn(&mutants);
        assert_eq!(once.iter().filter(|it| it.kind == Kind::Constant).count(), 100);
        assert_eq!(once.len(), 100 + COMPARISONS);
        assert_eq!(once, drawn(&mutants));
    }
}
