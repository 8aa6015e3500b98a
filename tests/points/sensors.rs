//! Sensors that don't suit, each on both sides of its line.

use quietpin_core::finding::Severity::{Doubt, Fault};

use super::{told, words};

const WRONG: &str = "sensors-wrong";

/// By hand: 10 bar and not 7 bar at 4.5 V are 3 of 10; 2 % of the span is a doubt, 5 % a fault (common practice, no source), and 2 %
/// is the sensor's own tolerance.
#[test]
fn a_line_that_ends_elsewhere_is_told_by_how_much_it_shows() {
    let with = |table| told(WRONG, &[("sensors.4.table", table)], "sensors.table-differs");
    assert_eq!(with("0 0.5, 700 4.5"), [Fault]);
    assert_eq!(with("0 0.5, 1000 4.5"), []);
    assert_eq!(with("0 0.5, 970 4.5"), [], "3 %: 1 % beyond its tolerance");
    assert_eq!(with("0 0.5, 950 4.5"), [Doubt], "5 %: 3 % beyond it");
    assert_eq!(with("0 0.5, 500 2.5"), [], "the same line");
    assert_eq!(with("0 0.5, 900 4.5"), [Fault]);
    let said = words(WRONG, &[], "sensors.table-differs");
    assert!(said.contains("At 10 bar the controller will show 7 bar"), "{said}");
}

/// By hand, along the logarithm: 5756 Ω at 40 °C lie between 9500 Ω and 2980 Ω, 43 % of the way from 40 to 60 °C.
#[test]
fn a_table_that_is_wrong_between_its_ends_is_told() {
    let with = |table| told(WRONG, &[("sensors.2.table", table)], "sensors.table-differs");
    assert_eq!(
        with("-20 77500, 20 12170, 40 9500, 60 2980"),
        [Fault, Doubt],
        "and another sensor's"
    );
    assert_eq!(with("-20 77500, 20 12170, 40 5756, 60 2980"), [Fault], "the other's alone");
}

#[test]
fn a_table_that_ends_before_the_engine_does_is_told() {
    let with = |table| told(WRONG, &[("sensors.2.table", table)], "sensors.table-ends");
    assert_eq!(with("0 28680, 20 12170, 40 5756"), [Doubt]);
    assert_eq!(with("-20 77500, 0 28680, 20 12170, 40 5756, 60 2980"), []);
}

/// What is said first of a sensor is the gravest, and what is right is not told.
#[test]
fn an_oil_sensor_with_the_coolants_table_reads_cold() {
    let said = words(WRONG, &[], "sensors.table-reads-cold");
    assert!(said.starts_with("At 100 °C the controller will show 42"), "{said}");
    let own = "-20 77500, 0 28680, 20 12170, 40 5756, 60 2980, 80 1660, 100 987, 120 618";
    assert_eq!(told(WRONG, &[("sensors.1.table", own)], "sensors.table-reads-cold"), []);
}
