//! One of the things that the benches time, done so many times and nothing else, so that its instructions can be counted on a
//! machine that does other things as well:
//!
//! ```text
//! cargo build --release -p quietpin-trials --bin work
//! valgrind --tool=callgrind target/release/work load 10
//! ```
//!
//! What it takes to set up is what `0` times take. Prints the time of one as well: worth reading on a quiet machine.
#![expect(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a command for people, not a part of the core"
)]

use std::{env, fs, hint::black_box, process::ExitCode, time::Instant};

use quietpin_core::{
    output::{Contact, KeyState, Point, judge, operate, rest},
    plan::{self, Plan},
    report::report,
};
use quietpin_trials::subjects;

fn main() -> ExitCode {
    let mut given = env::args().skip(1);
    let (Some(what), Some(times)) = (given.next(), given.next().and_then(|it| it.parse().ok()))
    else {
        println!("work threshold|exponential|state|load|joined-N|FILE.json TIMES");
        return ExitCode::FAILURE;
    };
    let begun = Instant::now();
    work(&what, times);
    let each = begun.elapsed().as_secs_f64() / f64::from(times.max(1)) * 1e6;
    println!("{what}: {each:.2} microseconds each");
    ExitCode::SUCCESS
}

fn work(what: &str, times: u32) {
    if let Some(joined) = what.strip_prefix("joined-").and_then(|it| it.parse().ok()) {
        return reports(&subjects::chain(joined), times);
    }
    let around = subjects::around();
    let bridge = subjects::bridge();
    match what {
        "threshold" | "exponential" => {
            let diode =
                if what == "threshold" { subjects::threshold() } else { subjects::exponential() };
            let network = subjects::half_bridge(diode);
            again(times, || black_box(&network).solve());
        }
        "state" => {
            let nominal = Point::nominal(around.nominal, 0, Contact::Closed);
            again(times, || operate(black_box(&bridge), KeyState::Off, &nominal, &around));
        }
        "load" => {
            again(times, || rest(black_box(&bridge), 0, &around).map(|it| judge(&it, |_| true)));
        }
        path => {
            let text = fs::read_to_string(path).expect("a file with a plan");
            reports(&plan::parse(&text).expect("a plan"), times);
        }
    }
}

fn reports(plan: &Plan, times: u32) {
    again(times, || report(black_box(plan)));
}

fn again<T>(times: u32, mut once: impl FnMut() -> T) {
    for _ in 0..times {
        black_box(once());
    }
}
