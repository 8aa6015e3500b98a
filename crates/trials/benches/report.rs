//! How long a key state, a load, forty outputs and each example plan take.

#![expect(clippy::indexing_slicing, reason = "a remainder is in range")]

use std::{fs, hint::black_box, path::Path};

use criterion::{Criterion, criterion_group, criterion_main};
use quietpin_core::{
    fields,
    output::{Contact, KeyState, Point, judge, operate, rest},
    plan::{self, Plan},
    report::{Memory, report, report_after},
    schema::Part,
};
use quietpin_trials::subjects::{around, bridge};

fn reports(bench: &mut Criterion) {
    let mut group = bench.benchmark_group("report");
    for (name, plan) in plans() {
        group.bench_function(name, |bench| bench.iter(|| report(&plan)));
    }
    group.finish();
}

/// One key state, and everything about one load: every state at every corner.
fn loads(bench: &mut Criterion) {
    let wiring = bridge();
    let around = around();
    let nominal = Point::nominal(around.nominal, 0, Contact::Closed);
    bench.bench_function("one key state", |bench| {
        bench.iter(|| operate(black_box(&wiring), KeyState::Off, &nominal, &around));
    });
    bench.bench_function("one load, every state at every corner", |bench| {
        bench.iter(|| rest(black_box(&wiring), 0, &around).map(|it| judge(&it, |_| true)));
    });
}

/// A plan of 40 outputs, each with a load: whole, and after an edit of one load.
fn forty(bench: &mut Criterion) {
    let plan = large(40);
    bench.bench_function("40 outputs, from nothing", |bench| {
        bench.iter(|| report(black_box(&plan)));
    });
    let mut memory = Memory::detailed();
    report_after(&mut memory, &plan);
    let mut turn = false;
    bench.bench_function("40 outputs, one load edited", |bench| {
        bench.iter(|| {
            turn = !turn;
            let mut edited = plan.clone();
            edited.set("loads.20.resistance", if turn { "90 ohm" } else { "91 ohm" });
            report_after(&mut memory, &edited)
        });
    });
}

fn large(count: usize) -> Plan {
    let stages = ["open-drain", "half-bridge", "high-side"];
    let ends = ["ignition", "relay", "battery", "ground"];
    let kinds = ["", "solenoid", "lamp", "motor", "led"];
    let mut plan = Plan::default();
    for (at, stage) in stages.iter().cycle().take(count).enumerate() {
        let name = format!("P{at}");
        let output = plan.add(Part::Outputs);
        plan.put(fields::outputs::NAME.at(output), &name);
        plan.put(fields::outputs::STAGE.at(output), stage);
        plan.put(fields::outputs::ON_LEVEL.at(output), "ground");
        let load = plan.add(Part::Loads);
        plan.put(fields::loads::NAME.at(load), &format!("load {at}"));
        plan.put(fields::loads::OUTPUT.at(load), &name);
        plan.put(fields::loads::FAR_END.at(load), ends[at % ends.len()]);
        plan.put(fields::loads::KIND.at(load), kinds[at % kinds.len()]);
    }
    plan
}

/// The example plans by name, in the order of their names.
fn plans() -> Vec<(String, Plan)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/plans");
    let mut plans: Vec<_> = fs::read_dir(folder)
        .into_iter()
        .flatten()
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "json"))
        .filter_map(|path| {
            let name = path.file_stem()?.to_str()?.to_owned();
            Some((name, plan::parse(&fs::read_to_string(&path).ok()?).ok()?))
        })
        .collect();
    plans.sort_by(|one, other| one.0.cmp(&other.0));
    plans
}

criterion_group!(benches, loads, forty, reports);
criterion_main!(benches);
