//! The tables against their standards.

use std::{fs, path::PathBuf};

use quietpin_core::{
    quantity::{Area, Measure, celsius, metres, ohms, read},
    tables::{copper, preferred::Series},
};
use quietpin_tests::{Checked, Worst};
use serde_json::Value;

fn reference(file: &str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("reference").join(file);
    fs::read_to_string(&path).expect(file)
}

fn json(file: &str) -> Value {
    serde_json::from_str(&reference(file)).expect(file)
}

#[track_caller]
fn near(what: &str, found: f64, expected: f64, tolerance: f64) {
    let apart = (found - expected).abs();
    assert!(apart <= tolerance * expected.abs(), "{what}: {found}, not {expected}");
}

/// Source: IEC 60063, `e_series.json`.
pub(crate) fn series() -> Checked {
    let (file, mut cases) = (json("e_series.json"), 0);
    for (name, series) in [("E6", Series::E6), ("E12", Series::E12), ("E24", Series::E24)] {
        let listed: Vec<u64> =
            file[name].as_array().expect(name).iter().filter_map(Value::as_u64).collect();
        let ours: Vec<u64> = series.decade().iter().map(|tenths| u64::from(*tenths)).collect();
        assert_eq!(ours, listed, "{name}");
        cases += ours.len();
    }
    let against = "IEC 60063, as the package eseries 1.2.1 lists it";
    Checked::exact("injectors", "Resistors of E6, E12 and E24", against, cases)
}

#[test]
fn the_series_are_those_of_the_standard() {
    series();
}

/// Source: IEC 60063, `e_series.json`: each decade has the same figures.
#[test]
fn the_next_value_is_the_first_of_the_list_that_is_not_below() {
    let file = json("e_series.json");
    let decade: Vec<f64> =
        file["E12"].as_array().expect("E12").iter().filter_map(Value::as_f64).collect();
    let all: Vec<f64> = [0.001, 0.01, 0.1, 1.0, 10.0]
        .iter()
        .flat_map(|factor| decade.iter().map(move |figure| figure * factor))
        .collect();
    for step in 1..5000 {
        let least = f64::from(step) * 0.05 + 0.001;
        let expected = all.iter().find(|value| **value >= least).expect("in the list");
        let next = Series::E12.next_at_or_above(ohms(least)).expect("there is one").base();
        near(&format!("next at or above {least}"), next, *expected, 1e-12);
    }
}

/// Source: IEC 60028, `copper_constants.json`.
#[test]
fn copper_has_the_constants_of_the_standard() {
    let file = json("copper_constants.json");
    let rho = file["rho20_ohm_mm2_per_m"].as_f64().expect("rho");
    near("resistivity", copper::RESISTIVITY_OHM_M * 1e6, rho, 1e-12);
    let alpha = file["alpha20_per_K"].as_f64().expect("alpha");
    near("coefficient", copper::COEFFICIENT_PER_K, alpha, 1e-12);
}

/// Source: `copper_constants.json`, computed from IEC 60028.
pub(crate) fn copper_factors() -> Checked {
    let (file, mut worst) = (json("copper_constants.json"), Worst::default());
    let factors = file["resistance_factor_vs_20C"].as_object().expect("factors");
    assert!(factors.len() > 10, "the table is there");
    for (degrees, factor) in factors {
        let temperature = celsius(degrees.parse().expect("a temperature"));
        let factor = factor.as_f64().expect("a factor");
        worst.check(degrees, Some(copper::factor(temperature)), factor, 1e-6 * factor);
    }
    let worked = file["worked"].as_array().expect("worked");
    let stranded = |at: usize| worked[at]["r_ohm"].as_f64().expect("a resistance");
    let hot = copper::at(celsius(80.0), ohms(stranded(0))).base();
    near("2.5 mm² cable at 80 °C", hot, stranded(1), 1e-6);
    worst.checked("injectors", "Copper from −40 °C to 180 °C", "IEC 60028", "of 20 °C")
}

#[test]
fn copper_follows_temperature() {
    copper_factors();
}

/// Source: ASTM B258 and IEC 60028, `wire_awg.csv`.
pub(crate) fn gauges() -> Checked {
    let mut worst = Worst::default();
    let text = reference("wire_awg.csv");
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let mut seen = 0;
    for record in rows.records() {
        let record = record.expect("a row");
        let number = |column: usize| record[column].parse::<f64>().expect("a number");
        let typed = format!("{} AWG", &record[0]);
        let area: Area = read(&typed, "mm2").expect("a gauge");
        let mut printed = |place: &str, found: f64, printed: f64| {
            // six decimals are written, of which six figures at most are good
            worst.check(place, Some(found), printed, (1e-5 * printed).max(0.5e-6));
        };
        printed(&typed, area.base() * 1e6, number(3));
        for (degrees, column) in [(20.0, 4), (80.0, 5)] {
            let wire = copper::wire(metres(1.0), area, celsius(degrees)).base();
            printed(&format!("{typed} at {degrees} °C"), wire * 1e3, number(column));
        }
        seen += 1;
    }
    assert!(seen > 20, "only {seen} rows");
    let against = "ASTM B258 and IEC 60028, computed";
    worst.checked("injectors", "Size and resistance of wires by AWG", against, "mm², mΩ")
}

#[test]
fn wires_have_the_resistance_of_their_gauge() {
    gauges();
}

/// Source: `copper_constants.json`: 5 A through 3 m of AWG 18, one way, at 20 °C.
#[test]
fn a_worked_voltage_drop_comes_out() {
    let file = json("copper_constants.json");
    let worked = &file["worked"][2];
    let area: Area = read("18 AWG", "mm2").expect("a gauge");
    near("area", area.base() * 1e6, worked["area_mm2"].as_f64().expect("area"), 1e-9);
    let drop = 5.0 * copper::wire(metres(3.0), area, celsius(20.0)).base();
    near("drop", drop, worked["drop_v"].as_f64().expect("a drop"), 1e-6);
}
