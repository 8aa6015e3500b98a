//! The slowest plan that is accepted: fields at their limits, changed at random, and what was slower kept. Run by hand, not
//! among the tests (it takes minutes, and its answer hangs on the machine):
//!
//! ```text
//! cargo run --release -p quietpin-trials --bin slowest -- 2000
//! ```
//!
//! Prints the seconds of the slowest plan of each kind it began with, and writes that plan into the folder for temporary files.
//! What stops a report is counted work (`budget.rs` of the core); here it is seen how long that takes.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a command for people, not a part of the core"
)]

use std::{
    env, fs,
    hint::black_box,
    time::{Duration, Instant},
};

use quietpin_core::{
    fields::{cranking, engine, loads, outputs, relays, wheels},
    plan::{self, Plan},
    report::report,
    schema::{self, Field, Kind, Part, Place},
};
use quietpin_trials::random::Random;

const SEED: u64 = 1;

/// How many changes are tried on each plan where nothing else is said.
const TRIES: u32 = 500;

/// As many as a list may have.
const MANY: usize = 64;

/// Rows that are typed in the fields that take one.
const ROWS: &[&str] = &[
    "",
    "1",
    "1-2",
    "1-3-4-2",
    "1-5-3-6-2-4",
    "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16",
    "0 90 240 330 480 570",
    "0 120 240",
    "90",
];

fn main() {
    let tries = env::args().nth(1).and_then(|it| it.parse().ok()).unwrap_or(TRIES);
    let mut random = Random::of(SEED, 0);
    for (name, plan) in beginnings() {
        let (slowest, took) = climb(plan, tries, &mut random);
        let path = env::temp_dir().join(format!("slowest-{name}.json"));
        fs::write(&path, plan::write(&slowest)).expect("the folder for temporary files");
        println!("{:7.3} s  {name}: {}", took.as_secs_f64(), path.display());
    }
}

/// Plans of each kind that is known to cost something.
fn beginnings() -> Vec<(String, Plan)> {
    let mut plans = vec![
        ("cranking".to_owned(), start(1)),
        ("relays".to_owned(), start(MANY)),
        ("engine".to_owned(), every_field()),
    ];
    for joined in [2, 3, 4, 8, MANY] {
        plans.push((format!("chain-{joined}"), hung(joined, Shape::Chain)));
        plans.push((format!("shared-{joined}"), hung(joined, Shape::Shared)));
    }
    plans.push(("alone".to_owned(), hung(MANY, Shape::Alone)));
    plans.push(("nowhere".to_owned(), hung(MANY, Shape::Nowhere)));
    plans
}

/// A start with many teeth, and so many relays that are switched at a speed.
fn start(count: usize) -> Plan {
    let mut plan = Plan::default();
    plan.put(engine::CYLINDERS, "1");
    plan.put(engine::ORDER, "1");
    plan.put(cranking::SPEED, "900 to 1000 rpm");
    plan.put(cranking::RUN_UP, "0 to 5000 ms");
    plan.put(wheels::CRANK_TEETH, "360");
    for nth in 0..count {
        let at = plan.add(Part::Relays);
        plan.put(relays::PURPOSE.at(at), if nth == 0 { "coils" } else { "pump" });
        plan.put(relays::RELAY_ON_AT.at(at), "100 rpm");
    }
    plan
}

/// Everything that an engine, its sensors and its parts may be asked, and no loads.
fn every_field() -> Plan {
    let mut plan = Plan::default();
    for place in schema::places().filter(|place| !place.part().is_list()) {
        plan.put(place, &place.field().example());
    }
    plan.put(engine::CYLINDERS, "16");
    plan.put(engine::ORDER, "1-2-3-4-5-6-7-8-9-10-11-12-13-14-15-16");
    plan
}

/// How loads hang on outputs.
#[derive(Clone, Copy)]
enum Shape {
    /// Each between two outputs.
    Chain,
    /// All on one.
    Shared,
    /// Each on its own.
    Alone,
    /// Each on none.
    Nowhere,
}

fn hung(count: usize, shape: Shape) -> Plan {
    let mut plan = Plan::default();
    plan.set_count(Part::Outputs, count);
    plan.set_count(Part::Loads, count);
    for at in 0..count {
        plan.put(outputs::NAME.at(at), &format!("A{at}"));
        plan.put(outputs::STAGE.at(at), "half-bridge");
        plan.put(loads::NAME.at(at), &format!("load {at}"));
        let (own, far) = match shape {
            Shape::Chain => (format!("A{at}"), format!("A{}", at + 1)),
            Shape::Shared => ("A0".to_owned(), String::new()),
            Shape::Alone => (format!("A{at}"), String::new()),
            Shape::Nowhere => ("?".to_owned(), String::new()),
        };
        plan.put(loads::OUTPUT.at(at), &own);
        plan.put(loads::FAR_END.at(at), if far.is_empty() { "relay" } else { "output" });
        plan.put(loads::FAR_OUTPUT.at(at), &far);
    }
    plan
}

/// Changes a plan again and again, and keeps what is slower.
fn climb(mut plan: Plan, tries: u32, random: &mut Random) -> (Plan, Duration) {
    let mut took = time(&plan);
    for _ in 0..tries {
        let mut other = plan.clone();
        for _ in 0..=random.below(3) {
            change(&mut other, random);
        }
        let takes = time(&other);
        if takes > took {
            (plan, took) = (other, takes);
        }
    }
    (plan, took)
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

/// Types one field at one of its limits: in one record of its list, or in all.
fn change(plan: &mut Plan, random: &mut Random) {
    let places: Vec<Place> = schema::places().collect();
    let place = random.one_of(&places);
    let count = plan.count(place.part());
    if count == 0 || matches!(place.field().kind, Kind::Text | Kind::NameIn(_)) {
        return;
    }
    let typed = text(place.field(), random);
    let one = random.below(count);
    let is_one = random.below(3) == 0;
    for at in (0..count).filter(|at| !is_one || *at == one) {
        plan.put(place.at(at), &typed);
    }
}

fn text(field: &Field, random: &mut Random) -> String {
    match field.kind {
        Kind::Quantity { unit, low, high, .. } => {
            let middle = if low > 0.0 { (low * high).sqrt() } else { f64::midpoint(low, high) };
            let typed = [
                String::new(),
                format!("{low} {unit}"),
                format!("{high} {unit}"),
                format!("{middle} {unit}"),
                format!("{low} to {high} {unit}"),
                format!("{middle} to {high} {unit}"),
            ];
            typed[random.below(typed.len())].clone()
        }
        Kind::Whole(low, high) => {
            [String::new(), low.to_string(), high.to_string()][random.below(3)].clone()
        }
        Kind::Choice(choices) => {
            let at = random.below(choices.len() + 1);
            choices.get(at).map_or_else(String::new, |choice| choice.code.to_owned())
        }
        Kind::Row => random.one_of(ROWS).to_owned(),
        Kind::Text | Kind::NameIn(_) => String::new(),
    }
}
