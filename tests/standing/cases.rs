//! Cases worked by hand.

use quietpin_core::report::{Report, Tone, report};

use super::{answer, figure, plan};

/// A heater from permanent battery on a half-bridge, whose body diode leads into 47 ohm of dead supply.
pub(super) const HEATER: [(&str, &str); 6] = [
    ("outputs.0.name", "A1"),
    ("outputs.0.stage", "half-bridge"),
    ("outputs.0.on_level", "ground"),
    ("loads.0.kind", "resistor"),
    ("loads.0.output", "A1"),
    ("loads.0.far_end", "battery"),
];

#[track_caller]
fn check(typed: &[(&str, &str)], tone: Tone, verdict: &str) -> Report {
    let report = report(&plan(typed));
    let found = &answer(&report).verdict;
    assert_eq!((found.tone, found.message.text.as_str()), (tone, verdict), "{typed:?}");
    report
}

fn codes(report: &Report) -> Vec<&str> {
    report.findings.iter().map(|it| it.message.code).collect()
}

fn says(report: &Report, code: &str) -> bool {
    answer(report).to_do.iter().any(|it| it.code == code)
}

/// By hand: 0.5 × 60 Ah = 30 Ah; by itself it loses up to 5 % of 60 Ah in 720 h, 4.17 mA (from memory). 30 Ah / 54.17 mA =
/// 553.8 h = 23.1 days; / 104.17 mA = 288 h = 12 days; / 1.244 A = 24.1 h; / 1.254 A = 23.9 h; / 1.504 A = 19.9 h.
#[test]
fn the_time_is_half_the_capacity_over_the_drain() {
    let report = check(&[("battery.other_draw", "50 mA")], Tone::Good, "It lasts 23.1 days");
    assert!(codes(&report).is_empty(), "a sound car is calm: {:?}", codes(&report));
    assert!(answer(&report).to_do.is_empty(), "nothing to do");
    let report =
        check(&[("battery.other_draw", "100 mA")], Tone::Doubtful, "It only lasts 12 days");
    assert_eq!(codes(&report), ["standing.flat-soon"]);
    assert!(says(&report, "standing.do-search"), "it is to be looked for");
    check(&[("battery.other_draw", "1.24 A")], Tone::Doubtful, "It only lasts 24.1 hours");
    check(
        &[("battery.other_draw", "1.5 A")],
        Tone::Bad,
        "It may not start next morning: 19.9 hours",
    );
}

/// By hand: 30 Ah / (150 + 10 + 4.17) mA = 182.7 h = 7.61 days; without the controller 30 Ah / 14.17 mA = 2118 h = 88.2 days.
#[test]
fn a_controller_that_draws_most_is_named() {
    let typed = [("controller.key_off_draw", "150 mA"), ("battery.other_draw", "10 mA")];
    let report = check(&typed, Tone::Doubtful, "It only lasts 7.61 days");
    let to_do = answer(&report).to_do.iter().find(|it| it.code == "standing.do-controller");
    assert!(to_do.is_some_and(|it| it.text.contains("88.2 days")), "{to_do:?}");
    assert_eq!(report.findings[0].subject, "controller.key_off_draw");
}

/// By hand: 12.6 V less 0.7 V over 95 + 0.05 + 47 ohm = 83.77 mA, with the 4.17 mA that the battery loses by itself 87.94 mA,
/// so that 30 Ah last 341.1 h = 14.2 days with the heater alone, and with 3.17 mA beside it 30 Ah / 91.11 mA = 329.3 h = 13.7
/// days; the heater fed by the key, 30 Ah / 7.34 mA = 4089 h = 170 days; with 100 mA beside it 30 Ah / 187.9 mA = 6.65 days.
#[test]
fn a_load_that_draws_most_is_named_with_the_time_without_it() {
    let heater = [&HEATER[..], &[("loads.0.resistance", "95 ohm")]].concat();
    check(&heater, Tone::Good, "It lasts 14.2 days, if nothing else draws");
    let typed = [&heater[..], &[("battery.other_draw", "3.17 mA")]].concat();
    let report = check(&typed, Tone::Doubtful, "It only lasts 13.7 days");
    let to_do = answer(&report).to_do.iter().find(|it| it.code == "standing.do-switched");
    assert!(to_do.is_some_and(|it| it.text.contains("170 days")), "{to_do:?}");
    let rows = &answer(&report).tables[0].rows;
    let first: Vec<_> = rows[0].cells.iter().map(|it| it.shown.as_str()).collect();
    assert_eq!(first, ["A1: load 1", "83.8 mA", "83.8 mA"]);
    assert_eq!(rows.len(), 2, "what draws nothing has no row");
    // the answer about the heater tells of it already
    assert!(!codes(&report).contains(&"standing.flat-soon"), "{:?}", codes(&report));
    assert!(codes(&report).iter().any(|it| it.starts_with("outputs.")), "{:?}", codes(&report));
    let typed = [&heater[..], &[("battery.other_draw", "100 mA")]].concat();
    let report = check(&typed, Tone::Doubtful, "It only lasts 6.65 days");
    assert!(codes(&report).contains(&"standing.flat-soon"), "no load tells of the 100 mA");
}

/// A load between two outputs makes one circuit of them: it is counted once, whichever load is asked about.
#[test]
fn outputs_that_hang_together_are_counted_once() {
    let pair = [
        ("outputs.0.name", "A1"),
        ("outputs.0.stage", "open-drain"),
        ("outputs.1.name", "A2"),
        ("outputs.1.stage", "open-drain"),
        ("outputs.1.pull_down", "910 ohm"),
        ("loads.0.output", "A1"),
        ("loads.0.kind", "resistor"),
        ("loads.0.resistance", "250 ohm"),
        ("loads.0.far_end", "battery"),
        ("loads.1.output", "A1"),
        ("loads.1.kind", "resistor"),
        ("loads.1.resistance", "100 ohm"),
        ("loads.1.far_end", "output"),
        ("loads.1.far_output", "A2"),
    ];
    let report = report(&plan(&pair));
    // by hand: 12.6 V / (250 + 100 + 910) ohm = 10 mA
    let drain = figure(&report, "standing.figure-drain");
    assert!(drain.is_some_and(|it| (it - 0.01).abs() < 1e-9), "{drain:?}");
    assert_eq!(answer(&report).tables[0].rows[0].cells[0].shown, "A1, A2: load 1, load 2");
}

#[test]
fn what_is_left_out_is_told_and_no_good_news() {
    let typed = [("battery.other_draw", "50 mA"), ("loads.0.name", "horn"), ("loads.0.output", "")];
    let report = check(&typed, Tone::Open, "23.1 days so far, but something is left out");
    let to_do = answer(&report).to_do.iter().find(|it| it.code == "standing.do-left-out");
    assert!(to_do.is_some_and(|it| it.text.contains("horn")), "{to_do:?}");
}
