//! How long one operating point takes.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use quietpin_trials::subjects::{exponential, half_bridge, threshold};

fn operating_point(criterion: &mut Criterion) {
    let [threshold, exponential] = [threshold(), exponential()].map(half_bridge);
    criterion.bench_function("half-bridge, threshold diodes", |bencher| {
        bencher.iter(|| black_box(&threshold).solve());
    });
    criterion.bench_function("half-bridge, exponential diodes", |bencher| {
        bencher.iter(|| black_box(&exponential).solve());
    });
}

criterion_group!(benches, operating_point);
criterion_main!(benches);
