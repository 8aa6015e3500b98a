//! Everything that can be checked, in one run. A stage that fails does not keep the others from running; what is compiled for
//! this machine and what for the browser is done side by side.

mod count;
mod machine;
mod stages;
mod verdict;

use crate::{folders, shell};
use anyhow::anyhow;
use count::Count;
use machine::Machine;
use std::fs;
use std::process::ExitCode;
use std::thread;
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
    let mut outcomes = side_by_side(&machine);
    outcomes.extend(all(&stages::LAST, &machine));
    shell::heading("Result");
    println!("{}", verdict::told(&outcomes));
    let whole = outcomes.iter().all(|outcome| outcome.result.is_ok());
    if whole { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// What is compiled for this machine, and what for the browser: each has a folder of its own, and the compiler is on one core for
/// most of its time. What the second says is told when both are done.
fn side_by_side(machine: &Machine) -> Vec<Outcome> {
    let told = folders::target().join("for-the-browser.log");
    thread::scope(|scope| {
        let beside =
            scope.spawn(|| shell::told_in(&told, || all(&stages::FOR_THE_BROWSER, machine)));
        let mut outcomes = all(&stages::FOR_THIS_MACHINE, machine);
        match beside.join() {
            Ok(Ok(further)) => {
                shell::line(&fs::read_to_string(&told).unwrap_or_default());
                outcomes.extend(further);
            }
            Ok(Err(error)) => outcomes.push(lost(error)),
            Err(_) => outcomes.push(lost(anyhow!("it panicked"))),
        }
        outcomes
    })
}

fn lost(error: anyhow::Error) -> Outcome {
    Outcome { name: "What is compiled for the browser", took: Duration::ZERO, result: Err(error) }
}

fn all(stages: &[stages::Stage], machine: &Machine) -> Vec<Outcome> {
    stages.iter().map(|stage| run(stage, machine)).collect()
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
