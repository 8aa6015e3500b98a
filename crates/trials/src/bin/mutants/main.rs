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
//! is kept there too, and a further run asks only what was not asked: `--quick` asks no record, `--most 1` no test that takes
//! longer than a second, `--budget 20` ends with a mutant when its tests have taken as long, and `--minutes 5` begins with none
//! after five minutes. With `--seed 2` other comparisons are drawn, and nothing is written; `--list` only prints what would be tried. What caught a mutant in an earlier
//! run is asked first, so that a run after a change of the tests is a short one.
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
    collections::BTreeMap,
    fs,
    path::Path,
    process::ExitCode,
    time::{Duration, Instant},
};

use quietpin_trials::random::Random;

use crate::sites::{Kind, Mutant};

const SEED: u64 = 1;

/// A test that takes longer is not asked where nothing else is said: what it alone would tell counts as survived.
const MOST: Duration = Duration::from_secs(40);

/// Where no quick test tells of a mutant, the long ones are asked, the shortest first, until they have taken this.
const BUDGET: Duration = Duration::from_secs(8);

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
    if wanted.is_list {
        for it in drawn(&mutants, wanted.seed) {
            println!("{}\t{}:{}\t{}\t{}", it.id, it.file, it.line, it.change, it.text);
        }
        return Ok(());
    }
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
        None => drawn(&mutants, wanted.seed),
    };
    let past = past::Past::of(&folder, &baseline::key(&programs, &files), &mutants);
    let until = wanted.minutes.map(|it| Instant::now() + Duration::from_mins(it));
    let outcomes = trial::run(&chosen, &programs, &tests, (&folder, wanted.budget), (&past, until));
    let found = |(at, outcome): (usize, trial::Outcome)| Some((*chosen.get(at)?, outcome));
    let mut tried: Vec<_> = outcomes.into_iter().filter_map(found).collect();
    tried.sort_by_key(|(mutant, _)| mutant.id);
    let record = tell::record(&mutants, &tried, wanted.seed);
    if wanted.part.is_some() || wanted.seed != SEED {
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
    /// Whether what would be tried is only listed.
    is_list: bool,
    /// Whether no record is asked.
    is_quick: bool,
    /// What the long tests that are asked of one mutant may take together.
    budget: Duration,
    /// With which the comparisons are drawn.
    seed: u64,
    /// After so many minutes no other mutant is tried.
    minutes: Option<u64>,
}

fn wanted() -> Result<Wanted, String> {
    use lexopt::ValueExt as _;

    let mut arguments = lexopt::Parser::from_env();
    let mut wanted = Wanted {
        part: None,
        most: MOST,
        is_list: false,
        is_quick: false,
        budget: BUDGET,
        seed: SEED,
        minutes: None,
    };
    while let Some(argument) = arguments.next().map_err(|error| error.to_string())? {
        match argument {
            lexopt::Arg::Long("in") => {
                let part = arguments.value().map_err(|error| error.to_string())?;
                wanted.part = Some(part.to_string_lossy().into_owned());
            }
            lexopt::Arg::Long("budget") => {
                let seconds = arguments.value().and_then(|it| it.parse());
                wanted.budget = Duration::from_secs(seconds.map_err(|error| error.to_string())?);
            }
            lexopt::Arg::Long("seed") => {
                let seed = arguments.value().and_then(|it| it.parse());
                wanted.seed = seed.map_err(|error| error.to_string())?;
            }
            lexopt::Arg::Long("list") => wanted.is_list = true,
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

/// All constants, and so many of the comparisons, each as likely, in an order of chance. What is drawn hangs on the seed and on
/// the text of its own line alone, so that it stays when other lines change.
fn drawn(mutants: &[Mutant], seed: u64) -> Vec<&Mutant> {
    let mut before = BTreeMap::new();
    let lot = |it: &Mutant| {
        let alike = before.entry((it.file.clone(), it.text.clone(), it.change.clone()));
        let nth = *alike.and_modify(|nth| *nth += 1).or_insert(0);
        lot(&format!("{seed} {} {} {} {nth}", it.file, it.text, it.change))
    };
    let lots: Vec<usize> = mutants.iter().map(lot).collect();
    let mut all: Vec<_> = lots.into_iter().zip(mutants).collect();
    all.sort_by_key(|(lot, _)| *lot);
    let mut left = COMPARISONS;
    let is_drawn = |it: &&Mutant| {
        let is_taken = it.kind != Kind::Comparison || left > 0;
        left -= usize::from(is_taken && it.kind == Kind::Comparison);
        is_taken
    };
    all.into_iter().map(|(_, it)| it).filter(is_drawn).collect()
}

/// A number of chance that a text always has: the hash named FNV-1a, stirred once more.
fn lot(text: &str) -> usize {
    let stir = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    Random::of(text.bytes().fold(0xcbf2_9ce4_8422_2325, stir), 0).below(usize::MAX)
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
        let once = drawn(&mutants, 1);
        assert_eq!(once.iter().filter(|it| it.kind == Kind::Constant).count(), 100);
        assert_eq!(once.len(), 100 + COMPARISONS);
        assert_eq!(once, drawn(&mutants, 1));
    }
}
