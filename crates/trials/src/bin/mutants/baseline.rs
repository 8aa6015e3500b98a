//! What each test takes, and which mutants it can tell of, with none switched on.

use std::{
    collections::BTreeSet,
    fs,
    hash::{DefaultHasher, Hash, Hasher},
    path::Path,
    sync::Mutex,
    time::{Duration, Instant},
};

use crate::{
    copy::Files,
    programs::{self, Ended, Program},
    work,
};

/// What takes longer, with notes taken, is ended.
const MOST: Duration = Duration::from_mins(1);
/// The same of the record that is asked.
const MOST_OF_A_RECORD: Duration = Duration::from_mins(3);

/// The record that is asked: it holds all of each report of the example plans.
const WHOLE: &str = "plans::the_hashes_for_the_browser_are_current";

/// Tests that hold what the core says against what it said when a person last read it: they tell that something changed, not
/// that it is wrong.
const RECORDS: &[&str] = &[
    WHOLE,
    "plans::the_reports_are_as_they_were_read_and_accepted",
    "schema::the_published_schema_is_that_of_the_fields",
    "schema::what_the_schema_must_refuse_is_listed",
    "severities::the_table_is_as_it_was_read_and_accepted",
    "validation::the_record_says_what_the_comparisons_say",
];

/// Tests that see whether an answer comes at all, whatever is typed, in how many steps, and written as texts are; what it says is not
/// looked at, and they take long. By how their names begin, or end.
const NO_JUDGES: &[&str] = &[
    "tidy::",
    "severities::",
    "validation::",
    "plans::no_line",
    "laws::costliest::",
    "laws::merged::",
    "laws::sequences::",
    "report::bounded::",
    "::no_text_stops_the_report",
    "::nothing_that_is_typed_breaks_the_report",
    "::nothing_that_is_typed_breaks_the_answer",
    "any_input::anything_typed_gives_a_report",
    "laws::a_report_is_total_and_the_same_every_time",
    "laws::a_text_that_looks_like_a_gap_does_no_harm",
    "laws::every_field_stands_as_it_was_typed",
    "laws::texts_are_whole_and_numbers_are_numbers",
    "laws::what_cannot_be_read_is_said_at_the_field",
    "former::a_former_file_says_what_the_plan_of_today_says",
];

fn is_judge(name: &str) -> bool {
    !NO_JUDGES.iter().any(|it| name.starts_with(it) || name.ends_with(it))
}

/// A test, as it runs with no mutant switched on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Test {
    /// Which program it stands in.
    pub(crate) program: usize,
    /// What it is called.
    pub(crate) name: String,
    /// What it takes.
    pub(crate) takes: Duration,
    /// How it ends: what does not pass, or not in time, is not asked.
    pub(crate) passes: bool,
    /// The mutants that make a difference where it comes by.
    pub(crate) infected: BTreeSet<u32>,
}

impl Test {
    /// Whether it is asked: it passes, and takes no longer than this; of the records one is.
    pub(crate) fn is_asked(&self, most: Duration) -> bool {
        let is_record = RECORDS.contains(&self.name.as_str());
        let is_quick = self.takes <= most && !is_record && is_judge(&self.name);
        self.passes && (is_quick || self.is_record())
    }

    /// Whether it is the record that is asked.
    pub(crate) fn is_record(&self) -> bool {
        self.name == WHOLE
    }
}

/// Runs every test by itself; or recalls how they ran, where nothing has changed since.
pub(crate) fn run(programs: &[Program], files: &Files, folder: &Path) -> Vec<Test> {
    let path = folder.join("baseline.txt");
    let key = key(programs, files);
    if let Some(tests) = fs::read_to_string(&path).ok().and_then(|text| recalled(&text, &key)) {
        return tests;
    }
    let all = programs.iter().enumerate();
    let all: Vec<(usize, &str)> =
        all.flat_map(|(at, it)| it.tests.iter().map(move |name| (at, name.as_str()))).collect();
    let tests = Mutex::new(Vec::new());
    work::share(all.len(), |worker, at| {
        let Some((program, name)) = all.get(at).copied() else { return };
        let Some(run) = programs.get(program) else { return };
        let notes = folder.join(format!("infects-{worker}.txt"));
        // there may be none from before
        let _ = fs::remove_file(&notes);
        let began = Instant::now();
        let noted = notes.to_string_lossy().into_owned();
        let scratch = folder.join(format!("printed-{worker}.txt"));
        let most = match name {
            WHOLE => MOST_OF_A_RECORD,
            _ if !is_judge(name) => return,
            _ => MOST,
        };
        let ended = run.run(&[name], &[("QUIETPIN_INFECTS", &noted)], &scratch, most);
        let test = Test {
            program,
            name: name.to_owned(),
            takes: began.elapsed(),
            passes: ended == Ended::Passed,
            infected: programs::numbers(&notes),
        };
        if let Ok(mut tests) = tests.lock() {
            tests.push(test);
        }
    });
    let tests = tests.into_inner().unwrap_or_default();
    // without it, they are run again next time
    let _ = fs::write(&path, written(&tests, &key));
    tests
}

/// What the same sources and tests have in common.
pub(crate) fn key(programs: &[Program], files: &Files) -> String {
    let mut hasher = DefaultHasher::new();
    for program in programs {
        program.tests.hash(&mut hasher);
    }
    let folders = ["crates/core", "crates/cli", "tests"];
    // what is written down in the end changes no test
    let is_read =
        |path: &str| folders.iter().any(|it| path.starts_with(it)) && path != "tests/MUTANTS.md";
    for file in files.iter().filter(|(path, _)| is_read(path)) {
        file.hash(&mut hasher);
    }
    format!("{:016x}", hasher.finish())
}

fn written(tests: &[Test], key: &str) -> String {
    let line = |it: &Test| {
        let infected: Vec<_> = it.infected.iter().map(u32::to_string).collect();
        let (program, name, millis) = (it.program, &it.name, it.takes.as_millis());
        format!("{program}\t{name}\t{millis}\t{}\t{}\n", it.passes, infected.join(" "))
    };
    format!("{key}\n{}", tests.iter().map(line).collect::<String>())
}

fn recalled(text: &str, key: &str) -> Option<Vec<Test>> {
    let (first, rest) = text.split_once('\n')?;
    let test = |line: &str| {
        let mut cells = line.split('\t');
        Some(Test {
            program: cells.next()?.parse().ok()?,
            name: cells.next()?.to_owned(),
            takes: Duration::from_millis(cells.next()?.parse().ok()?),
            passes: cells.next()?.parse().ok()?,
            infected: cells.next()?.split(' ').filter_map(|it| it.parse().ok()).collect(),
        })
    };
    (first == key).then(|| rest.lines().map(test).collect())?
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_baseline_is_recalled_for_the_same_sources_alone() {
        let test = |name: &str, infected: &[u32]| Test {
            program: 1,
            name: name.to_owned(),
            takes: Duration::from_millis(12),
            passes: true,
            infected: infected.iter().copied().collect(),
        };
        let tests = vec![test("a::b", &[1, 7]), test("a::c", &[])];
        let text = written(&tests, "it");
        assert_eq!(recalled(&text, "it"), Some(tests));
        assert_eq!(recalled(&text, "another"), None);
    }
}
