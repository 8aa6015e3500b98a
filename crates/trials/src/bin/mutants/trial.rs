//! One mutant after the other is switched on, and the tests that can tell of it are asked, the quickest first.

use std::{
    collections::BTreeMap,
    path::Path,
    sync::Mutex,
    time::{Duration, Instant},
};

use crate::{
    baseline::Test,
    past::{Known, Past},
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

/// What takes no longer is asked in any case.
const QUICK: Duration = Duration::from_secs(1);

/// So many times what it takes by itself a test may take with a mutant, and so long beside.
const PATIENCE: u32 = 20;
const START: Duration = Duration::from_secs(10);

/// Tries these mutants with as many of the tests as take no longer than `budget`, as far as that is not known; tells of each
/// by its place among them, of none that is neither known nor tried until then.
pub(crate) fn run(
    mutants: &[&Mutant],
    programs: &[Program],
    tests: &[Test],
    (folder, budget): (&Path, Duration),
    (past, until): (&Past, Option<Instant>),
) -> BTreeMap<usize, Outcome> {
    let outcomes = Mutex::new(BTreeMap::new());
    work::share(mutants.len(), |worker, at| {
        let is_late = until.is_some_and(|until| Instant::now() > until);
        let Some(mutant) = mutants.get(at) else { return };
        let scratch = folder.join(format!("printed-{worker}.txt"));
        let first = past.catcher(mutant.id);
        let trial = Trial { programs, scratch: &scratch, id: mutant.id, budget, first };
        let before = past.get(mutant.id);
        let known = match before {
            Some(known) if is_late => known.clone(),
            None if is_late => return,
            _ => trial.known(tests, before),
        };
        if before != Some(&known) {
            past.note(mutant.id, &known);
            eprintln!("{} {}:{} {}: {known:?}", mutant.id, mutant.file, mutant.line, mutant.change);
        }
        if let Ok(mut outcomes) = outcomes.lock() {
            outcomes.insert(at, Outcome::of(known));
        }
    });
    outcomes.into_inner().unwrap_or_default()
}

impl Outcome {
    fn of(known: Known) -> Self {
        match known {
            Known::Caught(by) => Self::Caught(by),
            Known::Left { changes: Some(true), .. } => Self::ChangesRecords,
            Known::Left { asked: 0, .. } => Self::Unreached,
            Known::Left { asked, .. } => Self::Survived(asked),
        }
    }
}

struct Trial<'a> {
    programs: &'a [Program],
    scratch: &'a Path,
    id: u32,
    budget: Duration,
    /// The test that caught it in an earlier run.
    first: Option<&'a str>,
}

impl Trial<'_> {
    /// What is known after all of these are asked that were not asked before.
    fn known(&self, tests: &[Test], before: Option<&Known>) -> Known {
        let (done, mut asked, mut changes) = match before {
            Some(Known::Caught(by)) => return Known::Caught(by.clone()),
            Some(Known::Left { most, asked, changes }) => (Some(*most), *asked, *changes),
            None => (None, 0, None),
        };
        let infected: Vec<&Test> =
            tests.iter().filter(|it| it.infected.contains(&self.id)).collect();
        let (records, others): (Vec<_>, Vec<_>) =
            infected.into_iter().partition(|it| it.is_record());
        let is_new = |it: &&Test| done.is_none_or(|done| it.takes > done);
        let mut others: Vec<&Test> = others.into_iter().filter(is_new).collect();
        others.sort_by_key(|it| it.takes);
        let first = others.iter().copied().find(|it| Some(it.name.as_str()) == self.first);
        if let Some(by) = first.and_then(|it| self.failing(&[it])) {
            return Known::Caught(by);
        }
        let mut left = self.budget;
        let fits = |it: &&&Test| {
            let fits = it.takes <= QUICK || it.takes <= left;
            left = left.saturating_sub(if it.takes <= QUICK { Duration::ZERO } else { it.takes });
            fits
        };
        others.truncate(others.iter().take_while(fits).count());
        for batch in batches(&others) {
            if let Some(by) = self.failing(batch) {
                return Known::Caught(by);
            }
        }
        asked += others.len();
        if let Some(record) = records.first().filter(|_| changes.is_none()) {
            changes = Some(self.failing(&[record]).is_some());
        }
        let most = others.last().map_or(done.unwrap_or_default(), |it| it.takes);
        Known::Left { most, asked, changes }
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
