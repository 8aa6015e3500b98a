//! One of the things that the benches time, done so many times and nothing else, so that its instructions can be counted on a
//! machine that does other things as well:
//!
//! ```text
//! cargo build --release -p quietpin-trials --bin work
//! valgrind --tool=callgrind target/release/work load 10
//! ```
//!
//! With a place and two texts a plan is edited so many times, from the one text to the other and back, and answered after each:
//!
//! ```text
//! valgrind --tool=callgrind target/release/work crates/core/src/demo.json 10 injectors.resistance "2.4 ohm" "2.5 ohm"
//! ```
//!
//! What it takes to set up is what `0` times take. Prints the time of one as well: worth reading on a quiet machine.
#![expect(
    clippy::expect_used,
    clippy::print_stdout,
    reason = "a command for people, not a part of the core"
)]

use std::{env, fs, hint::black_box, mem, process::ExitCode, time::Instant};

use quietpin_core::{
    output::{Contact, KeyState, Point, judge, operate, rest},
    plan::{self, Plan},
    report::{Memory, report, report_after},
};
use quietpin_trials::subjects;

fn main() -> ExitCode {
    let mut given = env::args().skip(1);
    let (Some(what), Some(times)) = (given.next(), given.next().and_then(|it| it.parse().ok()))
    else {
        println!(
            "work threshold|exponential|state|load|joined-N|FILE.json TIMES [PLACE ONE OTHER]"
        );
        return ExitCode::FAILURE;
    };
    let edit: Vec<_> = given.collect();
    let begun = Instant::now();
    match edit.as_slice() {
        [place, one, other] => edits(&read(&what), times, place, [one, other]),
        _ => work(&what, times),
    }
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
        path => reports(&read(path), times),
    }
}

fn read(path: &str) -> Plan {
    let text = fs::read_to_string(path).expect("a file with a plan");
    plan::parse(&text).expect("a plan")
}

fn edits(plan: &Plan, times: u32, place: &str, texts: [&str; 2]) {
    let [mut plan, mut next] = texts.map(|text| {
        let mut edited = plan.clone();
        edited.set(place, text);
        edited
    });
    let mut memory = Memory::detailed();
    report_after(&mut memory, &plan);
    again(times, || {
        mem::swap(&mut plan, &mut next);
        report_after(&mut memory, black_box(&plan))
    });
}

fn reports(plan: &Plan, times: u32) {
    again(times, || report(black_box(plan)));
}

fn again<T>(times: u32, mut once: impl FnMut() -> T) {
    for _ in 0..times {
        black_box(once());
    }
}
