//! The last words of a test run.

use super::count::{Count, Failed};
use super::{Finding, Outcome};
use std::fmt::Write;

/// A line for each stage, a line that a program can read, and a sentence.
pub(super) fn told(outcomes: &[Outcome]) -> String {
    let mut text = String::new();
    for outcome in outcomes {
        let word = if outcome.result.is_ok() { "passed" } else { "FAILED" };
        // Writing to a string cannot fail.
        let _ = writeln!(text, "  {word} {:>7.1} s  {}", outcome.took.as_secs_f64(), outcome.name);
    }
    for (outcome, failed) in failures(outcomes) {
        let _ = writeln!(text, "\n  {}:", outcome.name);
        for line in &failed.complaints {
            let _ = writeln!(text, "    {line}");
        }
    }
    let count = tests(outcomes);
    let _ = write!(
        text,
        "\n{} passed, {} failed\n{}",
        count.passed,
        count.failed,
        sentence(outcomes, count)
    );
    text
}

fn sentence(outcomes: &[Outcome], count: Count) -> String {
    let failed: Vec<_> = outcomes
        .iter()
        .filter(|outcome| outcome.result.is_err())
        .map(|outcome| outcome.name)
        .collect();
    if !failed.is_empty() {
        return format!(
            "{} of {} stages failed: {}.",
            failed.len(),
            outcomes.len(),
            failed.join("; ")
        );
    }
    let bytes = outcomes.iter().find_map(|outcome| outcome.result.as_ref().ok()?.bytes);
    let size = bytes
        .map_or_else(String::new, |bytes| format!(", {}.{} KB", bytes / 1000, bytes % 1000 / 100));
    format!("All {} stages passed: {} tests{size}.", outcomes.len(), count.passed)
}

fn failures(outcomes: &[Outcome]) -> impl Iterator<Item = (&Outcome, &Failed)> {
    outcomes
        .iter()
        .filter_map(|outcome| Some((outcome, outcome.result.as_ref().err()?.downcast_ref()?)))
}

/// Tests over all stages. A stage that failed for another reason counts as one failed test.
fn tests(outcomes: &[Outcome]) -> Count {
    let mut sum = Count::default();
    for outcome in outcomes {
        sum += match &outcome.result {
            Ok(Finding { tests, bytes: _ }) => *tests,
            Err(error) => error
                .downcast_ref::<Failed>()
                .map_or(Count { passed: 0, failed: 1 }, |failed| failed.count),
        };
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::Duration;

    fn outcome(name: &'static str, result: anyhow::Result<Finding>) -> Outcome {
        Outcome { name, took: Duration::from_millis(1500), result }
    }

    fn passed(passed: u64, bytes: Option<u64>) -> Finding {
        Finding { tests: Count { passed, failed: 0 }, bytes }
    }

    #[test]
    fn a_whole_run_ends_in_a_sentence() {
        let text = told(&[
            outcome("Lints", Ok(passed(0, None))),
            outcome("Size", Ok(passed(7, Some(143_270)))),
        ]);
        assert!(
            text.ends_with("\n7 passed, 0 failed\nAll 2 stages passed: 7 tests, 143.2 KB."),
            "{text}"
        );
        assert!(text.starts_with("  passed     1.5 s  Lints\n"), "{text}");
    }

    #[test]
    fn failures_are_named_and_counted() {
        let complaints = vec!["1 is not 2".to_owned()];
        let some = Failed { count: Count { passed: 3, failed: 2 }, complaints };
        let text = told(&[
            outcome("Lints", Err(anyhow::anyhow!("a warning"))),
            outcome("Tests", Err(some.into())),
            outcome("Docs", Ok(passed(0, None))),
        ]);
        assert!(
            text.ends_with(
                "\n\n  Tests:\n    1 is not 2\n\n3 passed, 3 failed\n2 of 3 stages failed: Lints; Tests."
            ),
            "{text}"
        );
    }
}
