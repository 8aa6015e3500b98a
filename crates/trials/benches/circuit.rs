//! How long one operating point takes.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use quietpin_core::circuit::{Diode, GROUND, Network, thermal_voltage_v};

/// A half-bridge whose supply is off: a load on a live feed pushes current back through the upper body diode.
fn half_bridge(model: Diode) -> Network {
    let mut network = Network::new();
    let [battery, rail, out, feed] =
        ["battery", "rail", "out", "feed"].map(|name| network.node(name));
    network.source(battery, GROUND, 12.6);
    network.resistor(rail, GROUND, 150.0);
    network.diode(out, rail, model);
    network.diode(GROUND, out, model);
    network.resistor(battery, feed, 0.05);
    network.resistor(feed, GROUND, 60.0);
    network.resistor(out, feed, 14.0);
    network.resistor(out, GROUND, 1e7);
    network
}

fn operating_point(criterion: &mut Criterion) {
    let threshold =
        half_bridge(Diode::Threshold { forward_voltage_v: 0.7, on_resistance_ohm: 0.05 });
    let exponential = half_bridge(Diode::Exponential {
        saturation_current_a: 1e-10,
        emission_coefficient: 1.5,
        thermal_voltage_v: thermal_voltage_v(300.15),
    });
    criterion.bench_function("half-bridge, threshold diodes", |bencher| {
        bencher.iter(|| black_box(&threshold).solve());
    });
    criterion.bench_function("half-bridge, exponential diodes", |bencher| {
        bencher.iter(|| black_box(&exponential).solve());
    });
}

criterion_group!(benches, operating_point);
criterion_main!(benches);
