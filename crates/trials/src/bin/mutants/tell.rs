//! What is written down of a run.

use std::fmt::Write as _;

use crate::{
    known, scope,
    sites::{Kind, Mutant},
    trial::Outcome,
};

/// How many there are of each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Tally {
    tried: usize,
    equivalent: usize,
    caught: usize,
    records: usize,
    survived: usize,
    unreached: usize,
}

/// A mutant and what became of it.
pub(crate) type Tried<'a> = (&'a Mutant, Outcome);

impl Tally {
    fn of(tried: &[Tried<'_>], kind: Kind) -> Self {
        let mut tally = Self::default();
        for (mutant, outcome) in tried.iter().filter(|(mutant, _)| mutant.kind == kind) {
            tally.tried += 1;
            match outcome {
                Outcome::Caught(_) => tally.caught += 1,
                Outcome::ChangesRecords => tally.records += 1,
                _ if known::is_equivalent(why(mutant, outcome)) => tally.equivalent += 1,
                Outcome::Survived(_) => tally.survived += 1,
                Outcome::Unreached => tally.unreached += 1,
            }
        }
        tally
    }

    fn row(self, name: &str, all: usize) -> String {
        let Self { tried, equivalent, caught, records, survived, unreached } = self;
        let can_be = tried - equivalent;
        let percent = |part: usize| (100 * part).checked_div(can_be).unwrap_or(0);
        let either = caught + records;
        format!(
            "| {name} | {all} | {tried} | {equivalent} | {can_be} | {caught} ({} %) | {records} | {either} ({} %) | {survived} | {unreached} |\n",
            percent(caught),
            percent(either)
        )
    }
}

/// The whole record.
pub(crate) fn record(all: &[Mutant], tried: &[Tried<'_>], seed: u64) -> String {
    let mut text = format!("{INTRODUCTION}\n");
    text += "| what | there are | tried | equivalent | can be caught | caught | by records alone | in all | survived | reached by no test |\n\
             | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    let kinds = [
        (Kind::Comparison, "comparisons"),
        (Kind::Constant, "constants"),
        (Kind::Planted, "limits typed or counted"),
    ];
    for (kind, name) in kinds {
        let there = all.iter().filter(|it| it.kind == kind).count();
        text += &Tally::of(tried, kind).row(name, there);
    }
    // a text takes all that is written to it
    let _ = writeln!(text, "\nThe comparisons are drawn with the seed {seed}.\n");
    text += "Constants that are none of the trade, and are left as they are:\n\n";
    for (file, name, why) in scope::LEFT_OUT {
        let _ = writeln!(text, "- `{name}` in `{file}`: {why}");
    }
    let is_left = |outcome: &Outcome| matches!(outcome, Outcome::Survived(_) | Outcome::Unreached);
    text += &listed("What survives", tried, is_left);
    text +=
        &listed("What records alone tell", tried, |outcome| *outcome == Outcome::ChangesRecords);
    text
}

/// Why a mutant is not caught.
fn why(mutant: &Mutant, outcome: &Outcome) -> &'static str {
    let is_reached = *outcome != Outcome::Unreached;
    known::why(&mutant.file, &mutant.text, &mutant.change, is_reached)
}

fn listed(title: &str, tried: &[Tried<'_>], counts: impl Fn(&Outcome) -> bool) -> String {
    let mut text =
        format!("\n## {title}\n\n| where | line | change | why |\n| --- | --- | --- | --- |\n");
    for (mutant, outcome) in tried.iter().filter(|(_, outcome)| counts(outcome)) {
        let line = mutant.text.replace('|', "\\|");
        let change = mutant.change.replace('|', "\\|");
        let why = why(mutant, outcome);
        let _ = writeln!(text, "| `{}` | `{line}` | {change} | {why} |", mutant.file);
    }
    text
}

const INTRODUCTION: &str = "# What the tests notice

Written by `cargo run --release -p quietpin-trials --bin mutants`: one thing in the trade is changed at a time, and the tests
should notice.

- *Comparisons*: each is tried with its boundary moved (`<` is `<=`) and turned round (`<` is `>=`), `&&` and `||` exchanged;
  200 of them, drawn at random.
- *Constants*: each limit and each trade value, row by row, a tenth more and a tenth less. Nought, what takes up rounding, and
  in formulas parts of a whole, turns in degrees, minutes, and powers of ten are mathematics, and left as they are.
- *Limits typed or counted*: how many targets are asked of a channel, the stall time-out, what an input bears, wherever they
  are held against something.
- Changed are the modules of the trade and what judges in the questions; not what is read, advised, worded, drawn or listed, and nothing
  that is worked out when the program is built.
- The native tests of the core, of `tests` and of the command are asked, the long ones only of a mutant that no quick one catches. Not
  asked are those that see alone that an answer comes, whatever it says.
- *Equivalent*: with it the program does the same, or differs by what rounding leaves, so that no test can tell; each is
  named with its reason below. The shares are of those that can be caught.
- *Caught*: a test that knows what is right fails, or the program does not end. *By records alone*: only the snapshots, hashes
  and tables of what was said before are others; they tell that something changed, not that it is wrong.
";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_survives_is_named_with_its_line() {
        let mutant = Mutant {
            id: 3,
            kind: Kind::Comparison,
            file: "coil.rs".to_owned(),
            line: 7,
            text: "if a || b {".to_owned(),
            change: "`||` is `&&`".to_owned(),
        };
        let caught = Mutant { id: 4, ..mutant.clone() };
        let tried = [(&mutant, Outcome::Survived(2)), (&caught, Outcome::Caught("it".to_owned()))];
        let text = record(&[mutant.clone(), caught.clone()], &tried, 1);
        assert!(
            text.contains("| comparisons | 2 | 2 | 0 | 2 | 1 (50 %) | 0 | 1 (50 %) | 1 | 0 |"),
            "{text}"
        );
        assert_eq!(text.matches("`if a \\|\\| b {`").count(), 1, "{text}");
    }
}
