//! How long the whole report of each example plan takes.

use std::{fs, path::Path};

use criterion::{Criterion, criterion_group, criterion_main};
use quietpin_core::{
    plan::{self, Plan},
    report::report,
};

fn reports(bench: &mut Criterion) {
    let mut group = bench.benchmark_group("report");
    for (name, plan) in plans() {
        group.bench_function(name, |bench| bench.iter(|| report(&plan)));
    }
    group.finish();
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

criterion_group!(benches, reports);
criterion_main!(benches);
