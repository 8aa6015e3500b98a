//! What comes back, held against a standard's table, and laws of it.
//!
//! Source: IEC 60228:2004, table 3, class 5 (`wire_iec60228.csv`), with Ohm's law; two equal resistors side by side are half of one, a
//! textbook's example, from memory.

use quietpin_core::{
    finding::Severity,
    plan::Plan,
    report::{Report, report},
};
use quietpin_tests::{Checked, Worst, rows};

use super::{figure, found, plan};

/// A strap of half a metre that a starter of 100 A needs, and a sink of 14.8 V / 5 Ω through two ground wires of 1 m.
fn grounded(typed: &[(&str, &str)]) -> Plan {
    let whole = [
        ("battery.starter", "100 A"),
        ("grounds.minus_to", "body"),
        ("grounds.strap", "fitted"),
        ("grounds.strap_size", "16 mm2"),
        ("grounds.strap_length", "0.5 m"),
        ("grounds.wires", "2"),
        ("grounds.wire_size", "1.5 mm2"),
        ("grounds.wire_length", "1 m"),
        ("outputs.0.name", "D1"),
        ("outputs.0.stage", "open-drain"),
        ("loads.0.name", "heater"),
        ("loads.0.output", "D1"),
        ("loads.0.far_end", "ignition"),
        ("loads.0.kind", "resistor"),
        ("loads.0.resistance", "5 ohm"),
    ];
    plan(&[&whole[..], typed].concat())
}

fn lost(report: &Report) -> f64 {
    figure(report, "feeds.strap", "feeds.figure-strap").expect("the strap is answered")
}

fn rise(report: &Report) -> f64 {
    figure(report, "feeds.ground", "feeds.figure-rise").expect("the wires are answered")
}

/// Source: `wire_iec60228.csv`: 100 A through half a metre, and 2.96 A through two wires of a metre.
pub(crate) fn come_back() -> Checked {
    let mut worst = Worst::default();
    for row in rows("wire_iec60228.csv") {
        let size = row.number("size_mm2");
        if size > 120.0 {
            continue;
        }
        let text = format!("{size} mm2");
        let report =
            report(&grounded(&[("grounds.strap_size", &text), ("grounds.wire_size", &text)]));
        let ohm_per_m = row.number("max_ohm_per_km") / 1000.0;
        let strap = 100.0 * 0.5 * ohm_per_m;
        let wires = 14.8 / 5.0 * ohm_per_m / 2.0;
        worst.check(&row.place(), Some(lost(&report)), strap, strap * 0.06);
        worst.check(&row.place(), Some(rise(&report)), wires, wires * 0.06);
        assert!(lost(&report) > strap * 0.999, "{}: no better than the standard", row.place());
    }
    let against = "IEC 60228:2004, table 3, class 5, and Ohm's law";
    worst.checked("feeds", "Lost in strap and ground wires", against, "V, 6 %, never less")
}

#[test]
fn strap_and_ground_wires_lose_what_the_standard_allows_them() {
    come_back();
}

/// How grave what is found is, nothing least.
fn gravest(report: &Report) -> u8 {
    let of = |severity: Severity| match severity {
        Severity::Danger => 4,
        Severity::Fault => 3,
        Severity::Doubt => 2,
        Severity::Note => 1,
    };
    found(report).iter().map(|it| of(it.severity)).max().unwrap_or_default()
}

#[test]
fn more_copper_is_never_worse() {
    let sizes = ["0.5 mm2", "1 mm2", "2.5 mm2", "6 mm2", "16 mm2", "35 mm2", "70 mm2"];
    for starter in ["60 A", "200 A", "600 A"] {
        let of = |size: &str| {
            report(&grounded(&[("grounds.strap_size", size), ("battery.starter", starter)]))
        };
        let all: Vec<_> = sizes.iter().map(|size| of(size)).collect();
        for pair in all.windows(2) {
            assert!(lost(&pair[1]) < lost(&pair[0]), "{starter}");
            assert!(gravest(&pair[1]) <= gravest(&pair[0]), "{starter}");
        }
    }
    for load in ["0.5 ohm", "1.5 ohm", "5 ohm"] {
        let of = |count: u32| {
            let (count, size) = (count.to_string(), "0.5 mm2");
            report(&grounded(&[
                ("grounds.wires", &count),
                ("grounds.wire_size", size),
                ("loads.0.resistance", load),
            ]))
        };
        let all: Vec<_> = (1..=16).map(of).collect();
        for (count, pair) in (1_u32..).zip(all.windows(2)) {
            let times = f64::from(count) / f64::from(count + 1);
            assert!((rise(&pair[1]) / rise(&pair[0]) - times).abs() < 1e-6, "{load}: they share");
            assert!(gravest(&pair[1]) <= gravest(&pair[0]), "{load}");
        }
    }
}

/// The first cure of each finding, as often as one is offered, leaves nothing.
#[test]
fn what_is_offered_for_the_grounds_cures() {
    for typed in [
        &[("grounds.strap", "none")][..],
        &[("grounds.strap", "none"), ("grounds.minus_to", "engine")],
        &[("grounds.strap_size", "1 mm2")],
        &[("grounds.strap_size", "6 mm2"), ("battery.starter", "400 A")],
        &[("grounds.wires", "1"), ("loads.0.resistance", "1 ohm")],
        &[("grounds.wire_length", "6 m"), ("grounds.sensors", "engine")],
        &[("grounds.wire_length", "2 m"), ("grounds.sensors", "engine")],
        &[("battery.kill_switch", "battery"), ("battery.alternator", "90 A")],
    ] {
        let mut plan = grounded(typed);
        for _ in 0..8 {
            let report = report(&plan);
            let cures = found(&report);
            let mut cures =
                cures.iter().flat_map(|it| &it.remedies).filter(|it| !it.edits.is_empty());
            let Some(cure) = cures.next() else { break };
            plan = plan.edited(&cure.edits).expect("it has its place");
        }
        assert_eq!(super::codes(&report(&plan)), [""; 0], "{typed:?}");
    }
}
