//! Everything that can be checked, in one run. A stage that fails does not keep the others from running.

mod count;
mod machine;
mod stages;
mod verdict;

use crate::shell;
use count::Count;
use machine::Machine;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// What a stage found.
#[derive(Debug)]
pub(crate) struct Finding {
    tests: Count,
    /// Bytes of the page, from the stage that measures them.
    bytes: Option<u64>,
}

/// How a stage ended.
#[derive(Debug)]
pub(crate) struct Outcome {
    name: &'static str,
    took: Duration,
    result: anyhow::Result<Finding>,
}

/// Runs all stages, and sums up.
pub(crate) fn check() -> ExitCode {
    let machine = Machine::set_up();
    let outcomes: Vec<_> = stages::ALL.iter().map(|stage| run(stage, &machine)).collect();
    shell::heading("Result");
    println!("{}", verdict::told(&outcomes));
    let whole = outcomes.iter().all(|outcome| outcome.result.is_ok());
    if whole { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

fn run(stage: &stages::Stage, machine: &Machine) -> Outcome {
    shell::heading(stage.name);
    let start = Instant::now();
    let result = (stage.run)(machine);
    let took = start.elapsed();
    match &result {
        Ok(_) => shell::say(&format!("Passed in {:.1} s.", took.as_secs_f64())),
        Err(error) => shell::say(&format!("FAILED after {:.1} s: {error:#}", took.as_secs_f64())),
    }
    Outcome { name: stage.name, took, result }
}
