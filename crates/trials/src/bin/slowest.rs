//! The slowest plan that is accepted: fields at their limits, changed at random, and what was slower kept. Run by hand, not
//! among the tests (it takes minutes, and its answer hangs on the machine):
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin slowest -- 2000
//! cargo run --release -p quietpin-trials --bin slowest -- plan.json
//! ```
//!
//! Prints, for each kind of plan that it began with, what its slowest plan makes the core do, how many findings say that a search
//! was left out (relays that open too often, loads that hang together too much), and the seconds that it takes, and writes that plan into the folder for temporary files; or the same of plans that are named. What stops a report is counted
//! work (`budget.rs` of the core); here it is seen how long that takes.
#![expect(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a command for people, not a part of the core"
)]

use std::{
    env, fs,
    hint::black_box,
    time::{Duration, Instant},
};

use quietpin_core::{
    counted::counting,
    plan::{self, Plan},
    report::report,
};
use quietpin_trials::{
    climb::{beginnings, climb},
    random::Random,
};

const SEED: u64 = 1;

/// How many changes are tried on each plan where nothing else is said.
const TRIES: u32 = 500;

fn main() {
    let arguments: Vec<String> = env::args().skip(1).collect();
    println!("reports  networks      teeth  connections  left out  seconds  plan");
    let tries = match arguments.as_slice() {
        [] => TRIES,
        [one] if one.parse::<u32>().is_ok() => one.parse().unwrap_or(TRIES),
        files => {
            for path in files {
                let text = fs::read_to_string(path).expect("a file that can be read");
                let plan = plan::parse(&text).expect("a plan");
                tell(path, &plan, time(&plan));
            }
            return;
        }
    };
    let mut random = Random::of(SEED, 0);
    for (name, plan) in beginnings() {
        let (slowest, took) = climb(plan, tries, &mut random, time);
        let path = env::temp_dir().join(format!("slowest-{name}.json"));
        fs::write(&path, plan::write(&slowest)).expect("the folder for temporary files");
        tell(&format!("{name}: {}", path.display()), &slowest, took);
    }
}

fn tell(name: &str, plan: &Plan, took: Duration) {
    let (report, done) = counting(|| report(plan));
    let codes = ["cranking.unsearched", "outputs.too-much-together"];
    let count = |code| report.findings.iter().filter(|it| it.message.code == code).count();
    let left_out = codes.map(|code| count(code).to_string()).join(", ");
    println!(
        "{:7}  {:8}  {:9}  {:11}  {left_out:>8}  {:7.3}  {name}",
        done.reports,
        done.networks,
        done.teeth,
        done.connections,
        took.as_secs_f64()
    );
}

/// The sooner of two, as the machine does other things as well.
fn time(plan: &Plan) -> Duration {
    let once = || {
        let begun = Instant::now();
        black_box(report(black_box(plan)));
        begun.elapsed()
    };
    once().min(once())
}
