//! Every row of the tables of thermistors, platinum and thermocouples.

use quietpin_core::{
    quantity::{Band, Measure, Resistance, Temperature, celsius, ohms, volts},
    sensor::{divider::Divider, platinum, thermistor::Thermistor, thermocouple},
};
use quietpin_tests::{Checked, Row, Worst, reference, rows};
use serde_json::Value;

/// The points of a table that one of its columns gives.
fn points(rows: &[Row], ohm: &str, wanted: &[f64]) -> Vec<(Temperature, Resistance)> {
    let point = |row: &Row| (celsius(row.number("t_C")), ohms(row.number(ohm)));
    let is_wanted = |row: &&Row| wanted.is_empty() || wanted.contains(&row.number("t_C"));
    rows.iter().filter(is_wanted).map(point).collect()
}

fn degrees(curve: &Thermistor, ohm: f64) -> Option<f64> {
    curve.temperature(ohms(ohm)).map(Measure::base)
}

fn divider(pull_up: f64) -> Divider {
    Divider { supply: Band::exact(volts(5.0)), pull_up: Band::exact(ohms(pull_up)), second: None }
}

/// Source: `ntc_10k_b3435_table.csv`.
pub(crate) fn ten_kiloohms() -> Vec<Checked> {
    const FILE: &str = "ntc_10k_b3435_table.csv";
    let rows = rows(FILE);
    let series = points(&rows, "r_ohm_published", &[-20.0, 25.0, 85.0]);
    let series = Thermistor::by_points(&series).expect("three points");
    let beta = Thermistor::by_beta(ohms(10e3), 3435.0).expect("a B value");
    let (mut by_three, mut by_beta, mut between) =
        (Worst::default(), Worst::default(), Worst::default());
    for row in &rows {
        let ohm = row.number("r_ohm_published");
        by_three.check(&row.place(), degrees(&series, ohm), row.number("t_from_SH3_C"), 0.6e-3);
        by_beta.check(&row.place(), degrees(&beta, ohm), row.number("t_from_beta3435_C"), 0.6e-3);
    }
    let every_other: Vec<_> =
        points(&rows, "r_ohm_published", &[]).into_iter().step_by(2).collect();
    let table = Thermistor::by_points(&every_other).expect("seven points");
    for row in &rows {
        let found = degrees(&table, row.number("r_ohm_published"));
        between.check(&row.place(), found, row.number("t_C"), 0.25);
    }
    let against = "a component maker's table of 14 points, see SOURCES.md";
    vec![
        by_three.checked("sensors", "Temperature by three points of it", against, "°C"),
        by_beta.checked("sensors", "Temperature by its B value", against, "°C"),
        between.checked("sensors", "Temperature between every other point", against, "°C"),
    ]
}

/// Source: `ntc_10k_b3977.csv`, and `ntc_10k_b3977` of `ntc_coefficients.json`.
pub(crate) fn four_terms() -> Vec<Checked> {
    let facts: Value = serde_json::from_str(&reference("ntc_coefficients.json")).expect("facts");
    let inverse = &facts["ntc_10k_b3977"]["inverse_1_over_T"];
    let terms = ["A1", "B1", "C1", "D1"].map(|it| inverse[it].as_f64().expect("a term"));
    let curve = Thermistor::by_terms(ohms(10e3), terms).expect("four terms");
    let beta = Thermistor::by_beta(ohms(10e3), 3977.0).expect("a B value");
    let (mut back, mut alone, mut divided) = (Worst::default(), Worst::default(), Worst::default());
    for row in rows("ntc_10k_b3977.csv") {
        let ohm = row.number("r_ohm_4term");
        let found = degrees(&curve, ohm);
        // the resistance is rounded too: a degree is 2 % of it or more
        let tolerance = 0.6e-4 + 0.005 / (0.02 * ohm);
        back.check(&row.place(), found, row.number("t_back_from_inverse_C"), tolerance);
        let found = beta.resistance(celsius(row.number("t_C"))).map(Measure::base);
        alone.check(&row.place(), found, row.number("r_ohm_beta3977_only"), 0.6e-2);
        for (column, pull) in [("v_5V_pullup_2490", 2490.0), ("v_5V_pullup_1000", 1000.0)] {
            let found = divider(pull).nominal(ohms(ohm)).base();
            // the resistance is rounded too
            let tolerance = 0.6e-5 + 5.0 * 0.005 / pull;
            divided.check(&row.place(), Some(found), row.number(column), tolerance);
        }
    }
    let against = "a component maker's polynomials, computed by others";
    vec![
        back.checked("sensors", "Temperature by four terms", against, "°C"),
        alone.checked("sensors", "Resistance by a B value", against, "Ω"),
        divided.checked("sensors", "Voltage under a pull-up", against, "V"),
    ]
}

/// Source: `ntc_automotive_2k45_table.csv`.
pub(crate) fn coolant() -> Vec<Checked> {
    let rows = rows("ntc_automotive_2k45_table.csv");
    let series = points(&rows, "r_ohm_published", &[-20.0, 20.0, 80.0]);
    let series = Thermistor::by_points(&series).expect("three points");
    let (mut by_three, mut divided) = (Worst::default(), Worst::default());
    for row in &rows {
        let ohm = row.number("r_ohm_published");
        by_three.check(&row.place(), degrees(&series, ohm), row.number("t_from_SH3_C"), 0.6e-2);
        for (column, pull) in [("v_5V_pullup_1000", 1000.0), ("v_5V_pullup_2490", 2490.0)] {
            let found = divider(pull).nominal(ohms(ohm)).base();
            divided.check(&row.place(), Some(found), row.number(column), 0.6e-4);
        }
    }
    let against = "a coolant sensor of workshop literature";
    vec![
        by_three.checked("sensors", "Temperature of a coolant sensor", against, "°C"),
        divided.checked("sensors", "Its voltage under a pull-up", against, "V"),
    ]
}

/// Source: `ntc_automotive_2k5_service_windows.csv`.
pub(crate) fn windows() -> Checked {
    let rows = rows("ntc_automotive_2k5_service_windows.csv");
    let middle = |row: &Row| f64::midpoint(row.number("r_min_ohm"), row.number("r_max_ohm"));
    let known: Vec<_> = rows
        .iter()
        .filter(|row| [20.0, 90.0].contains(&row.number("t_C")))
        .map(|row| (celsius(row.number("t_C")), ohms(middle(row))))
        .collect();
    let curve = Thermistor::by_points(&known).expect("two points");
    let mut worst = Worst::default();
    for row in &rows {
        let found = curve.resistance(celsius(row.number("t_C"))).map(Measure::base);
        let half = (row.number("r_max_ohm") - row.number("r_min_ohm")) / 2.0;
        worst.check(&row.place(), found, middle(row), half);
    }
    let against = "windows of workshop literature";
    worst.checked("sensors", "Resistance of a coolant sensor by two of its points", against, "Ω")
}

/// Source: `ntc_coefficients.json`.
pub(crate) fn coefficients() -> Checked {
    let facts: Value = serde_json::from_str(&reference("ntc_coefficients.json")).expect("facts");
    let mut worst = Worst::default();
    for (file, sensor, series, at) in [
        ("ntc_10k_b3435_table.csv", "ntc_10k_b3435", "SH3_from_minus20_25_85", [-20.0, 25.0, 85.0]),
        (
            "ntc_automotive_2k45_table.csv",
            "ntc_auto_2k45",
            "SH3_from_minus20_20_80",
            [-20.0, 20.0, 80.0],
        ),
    ] {
        let curve = points(&rows(file), "r_ohm_published", &at);
        let Some(Thermistor::Series { terms: [a, b, _, c], .. }) = Thermistor::by_points(&curve)
        else {
            panic!("{sensor} is no series");
        };
        for (name, found) in [("A", a), ("B", b), ("C", c)] {
            let expected = facts[sensor][series][name].as_f64().expect(name);
            worst.check(&format!("{sensor} {name}"), Some(found / expected), 1.0, 1e-9);
        }
    }
    let against = "coefficients computed by others from the same points";
    worst.checked("sensors", "Coefficients of Steinhart and Hart", against, "relative")
}

/// Source: `pt100_iec60751.csv`.
pub(crate) fn platinum() -> Checked {
    let mut worst = Worst::default();
    for row in rows("pt100_iec60751.csv") {
        let t = celsius(row.number("t_C"));
        let at = |zero: f64| platinum::resistance(ohms(zero), t).base();
        worst.check(&row.place(), Some(at(100.0)), row.number("pt100_ohm"), 0.6e-5);
        worst.check(&row.place(), Some(at(1000.0)), row.number("pt1000_ohm"), 0.6e-4);
        // the printed table has two decimals; a five behind them may be rounded either way
        worst.check(&row.place(), Some(at(100.0)), row.number("pt100_ohm_2dp_table"), 0.00501);
        let back = platinum::temperature(ohms(100.0), ohms(at(100.0))).map(Measure::base);
        worst.check(&row.place(), back, t.base(), 1e-9);
    }
    worst.checked(
        "sensors",
        "Resistance of platinum, and back",
        "IEC 60751, computed by others",
        "Ω",
    )
}

/// Source: `thermocouple_k_its90.csv`, `thermocouple_k_cold_junction.csv`.
pub(crate) fn type_k() -> Checked {
    let mut worst = Worst::default();
    for row in rows("thermocouple_k_its90.csv") {
        let t = celsius(row.number("t_C"));
        let found = thermocouple::voltage(t).base() * 1e3;
        let exact = row.number("emf_mV_ref0C_exact_polynomial");
        worst.check(&row.place(), Some(found), exact, 0.6e-6);
        worst.check(&row.place(), Some(found), row.number("emf_mV_3dp_table"), 0.501e-3);
        let slope = |by: f64| thermocouple::voltage(celsius(t.base() + by)).base() * 1e6;
        // at the ends of the range there is no other side
        if (-200.0..1372.0).contains(&t.base()) {
            let found = (slope(0.01) - slope(-0.01)) / 0.02;
            worst.check(&row.place(), Some(found), row.number("seebeck_uV_per_C"), 1e-3);
        }
        let back = thermocouple::temperature(thermocouple::voltage(t), celsius(0.0));
        worst.check(&row.place(), back.map(Measure::base), t.base(), 1e-6);
    }
    for row in rows("thermocouple_k_cold_junction.csv") {
        let (cold, hot) = (row.number("t_reference_C"), row.number("t_hot_C"));
        let found = thermocouple::between(celsius(hot), celsius(cold)).base() * 1e3;
        worst.check(&row.place(), Some(found), row.number("emf_measured_mV"), 0.6e-6);
    }
    let against = "ITS-90, computed by a program of others";
    worst.checked("sensors", "Voltage of a thermocouple of type K, and back", against, "mV")
}

#[test]
fn thermistors_are_as_their_makers_print_them() {
    ten_kiloohms();
    four_terms();
    coolant();
    windows();
    coefficients();
}

#[test]
fn platinum_is_as_its_standard_prints_it() {
    platinum();
}

#[test]
fn thermocouples_are_as_their_tables_print_them() {
    type_k();
}
