//! One mutant after the other is switched on, and the tests that can tell of it are asked, the quickest first.

use std::{collections::BTreeMap, path::Path, sync::Mutex, time::Duration};

use crate::{
    baseline::Test,
    programs::{Ended, Program},
    sites::Mutant,
    work,
};

/// What became of a mutant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// A test that knows what is right failed, or the program did not end.
    Caught(String),
    /// Only a record of what was said before is another.
    ChangesRecords,
    /// None of so many tests failed.
    Survived(usize),
    /// No test comes by where it makes a difference.
    Unreached,
}

/// What the tests asked together take, at the first; three times as long at each that follows.
const FIRST: Duration = Duration::from_millis(300);

/// So many times what it takes by itself a test may take with a mutant, and so long beside.
const PATIENCE: u32 = 20;
const START: Duration = Duration::from_secs(10);

/// Tries these mutants.
pub(crate) fn run(
    mutants: &[&Mutant],
    programs: &[Program],
    tests: &[Test],
    folder: &Path,
) -> Vec<Outcome> {
    let outcomes = Mutex::new(BTreeMap::new());
    work::share(mutants.len(), |worker, at| {
        let Some(mutant) = mutants.get(at) else { return };
        let scratch = folder.join(format!("printed-{worker}.txt"));
        let outcome = Trial { programs, scratch: &scratch, id: mutant.id }.outcome(tests);
        eprintln!("{} {}:{} {}: {outcome:?}", mutant.id, mutant.file, mutant.line, mutant.change);
        if let Ok(mut outcomes) = outcomes.lock() {
            outcomes.insert(at, outcome);
        }
    });
    outcomes.into_inner().unwrap_or_default().into_values().collect()
}

struct Trial<'a> {
    programs: &'a [Program],
    scratch: &'a Path,
    id: u32,
}

impl Trial<'_> {
    fn outcome(&self, tests: &[Test]) -> Outcome {
        let asked: Vec<&Test> = tests.iter().filter(|it| it.infected.contains(&self.id)).collect();
        if asked.is_empty() {
            return Outcome::Unreached;
        }
        let (records, mut others): (Vec<_>, Vec<_>) =
            asked.iter().copied().partition(|it| it.is_record());
        others.sort_by_key(|it| it.takes);
        for batch in batches(&others) {
            if let Some(by) = self.failing(batch) {
                return Outcome::Caught(by);
            }
        }
        if records.iter().any(|it| self.failing(&[it]).is_some()) {
            return Outcome::ChangesRecords;
        }
        Outcome::Survived(asked.len())
    }

    /// The first of these that fails.
    fn failing(&self, batch: &[&Test]) -> Option<String> {
        let id = self.id.to_string();
        self.programs.iter().enumerate().find_map(|(at, program)| {
            let here: Vec<&Test> = batch.iter().copied().filter(|it| it.program == at).collect();
            if here.is_empty() {
                return None;
            }
            let names: Vec<&str> = here.iter().map(|it| it.name.as_str()).collect();
            let takes: Duration = here.iter().map(|it| it.takes).sum();
            let environment = [("QUIETPIN_MUTANT", id.as_str())];
            match program.run(&names, &environment, self.scratch, START + takes * PATIENCE) {
                Ended::Passed => None,
                Ended::Failed(failed) => failed.into_iter().next(),
                Ended::Broken => Some("the program does not end".to_owned()),
            }
        })
    }
}

/// Tests by what they take, cut into pieces each of which takes three times as long as the one before.
fn batches<'a, 'b>(sorted: &'a [&'b Test]) -> Vec<&'a [&'b Test]> {
    let mut batches = Vec::new();
    let (mut rest, mut most) = (sorted, FIRST);
    while !rest.is_empty() {
        let mut sum = Duration::ZERO;
        let fits = |it: &&&Test| {
            sum += it.takes;
            sum <= most
        };
        let many = rest.iter().take_while(fits).count().max(1);
        let (batch, left) = rest.split_at(many);
        batches.push(batch);
        (rest, most) = (left, most * 3);
    }
    batches
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn the_quick_ones_are_asked_together_and_before_the_others() {
        let test = |millis| Test {
            program: 0,
            name: String::new(),
            takes: Duration::from_millis(millis),
            passes: true,
            infected: BTreeSet::new(),
        };
        let tests = [5, 5, 200, 500, 300, 9000].map(test);
        let tests: Vec<&Test> = tests.iter().collect();
        let sizes: Vec<_> = batches(&tests).iter().map(|it| it.len()).collect();
        assert_eq!(sizes, [3, 2, 1]);
    }
}
