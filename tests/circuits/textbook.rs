//! Examples that textbooks work out.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a test fails by them"
)]

use quietpin_core::circuit::{Element, GROUND, Network};
use quietpin_core::transient::{Capacitive, Inductive, TurnOff, stored_energy_j};
use quietpin_tests::{Checked, Worst, reference};
use serde_json::Value;

/// One textbook example: what we find for each quantity that it names.
fn answers(
    id: &str,
    given: &dyn Fn(&str) -> f64,
    resistors: &[f64],
) -> Vec<(&'static str, Option<f64>)> {
    match id {
        "upv2_rl_source" => rl_source(given("emf_V"), given("R_ohm"), given("L_H")),
        "upv2_rl_decay" => {
            let coil = Inductive::new(0.0, 1.0, given("tau_s"));
            let to = |current: f64| coil.and_then(|coil| coil.time_to(1.0, current));
            // One hundredth of the energy is a tenth of the current.
            vec![("t_half_current_s", to(0.5)), ("t_energy_1pct_s", to(0.1))]
        }
        "upv2_rl_check" => rl_check(given("t90_s"), given("R1_ohm"), given("R2_ohm")),
        "ignition_textbook" => {
            ignition(given("V"), given("R_ohm"), given("L_H"), given("t_open_s"))
        }
        "lessons_dc_rl" => {
            let coil = Inductive::new(given("V"), given("R_ohm"), given("L_H"));
            vec![("I_A", coil.and_then(|coil| coil.current_at(0.0, given("t_s"))))]
        }
        "lessons_divider" => divider(given("V"), resistors),
        "divider_loaded" => {
            let middle = |lower: f64| middle_v(given("V"), given("R_pullup"), &[lower]);
            vec![
                ("V_open_with_meter", middle(given("R_meter"))),
                ("V_with_load_to_gnd", middle(given("R_load"))),
            ]
        }
        "meter_on_floating_divider" => {
            vec![("V", middle_v(given("V"), given("R_up"), &[given("R_dn"), given("R_meter")]))]
        }
        "cap_energy" => {
            let capacitor = Capacitive::new(given("V"), 1.0, given("C_F"));
            vec![("E_J", capacitor.map(|capacitor| capacitor.stored_energy_j(given("V"))))]
        }
        "cap_energy_defib" => {
            // The energy grows with the capacitance.
            let of_one_farad =
                Capacitive::new(given("V"), 1.0, 1.0).map(|c| c.stored_energy_j(given("V")));
            vec![("C_F", of_one_farad.map(|energy| given("E_J") / energy))]
        }
        _ => Vec::new(),
    }
}

fn rl_source(emf: f64, ohm: f64, henry: f64) -> Vec<(&'static str, Option<f64>)> {
    let coil = Inductive::new(emf, ohm, henry);
    let tau = coil.and_then(|coil| coil.time_constant_s());
    let at = |t: f64| coil.and_then(|coil| coil.current_at(0.0, t));
    let across = |t: f64| coil.and_then(|coil| coil.inductor_voltage_at(0.0, t));
    vec![
        ("tau_s", tau),
        ("I_final_A", coil.and_then(|coil| coil.final_current_a())),
        ("I_at_2tau_A", tau.and_then(|tau| at(2.0 * tau))),
        ("VL_0_V", across(0.0)),
        ("VL_at_2tau_V", tau.and_then(|tau| across(2.0 * tau))),
    ]
}

fn rl_check(t90: f64, first: f64, second: f64) -> Vec<(&'static str, Option<f64>)> {
    let time_to_90 = |ohm: f64, henry: f64| {
        Inductive::new(1.0, ohm, henry).and_then(|coil| coil.time_to(0.0, 0.9 / ohm))
    };
    // The time grows with the inductance.
    let henry = time_to_90(first, 1.0).map(|of_one_henry| t90 / of_one_henry);
    let coil = henry.and_then(|henry| Inductive::new(1.0, first, henry));
    vec![
        ("tau_s", coil.and_then(|coil| coil.time_constant_s())),
        ("L_H", henry),
        ("t90_R2_s", henry.and_then(|henry| time_to_90(second, henry))),
    ]
}

fn ignition(volt: f64, ohm: f64, henry: f64, t_open: f64) -> Vec<(&'static str, Option<f64>)> {
    let current = Inductive::new(volt, ohm, henry).and_then(|coil| coil.final_current_a());
    // The gap's voltage is the one against which the current stops in that time: 1 V would take this long.
    let against_a_volt = current.and_then(|current| TurnOff::new(current, 1.0, 0.0, henry));
    vec![
        ("I_A", current),
        ("E_J", current.map(|current| stored_energy_j(henry, current))),
        ("V_gap_V", against_a_volt.map(|off| off.time_to_zero_s() / t_open)),
    ]
}

/// A divider of one resistor above and several, in parallel, below.
fn middle_v(volt: f64, upper: f64, lower: &[f64]) -> Option<f64> {
    let mut network = Network::new();
    let (top, middle) = (network.node("top"), network.node("middle"));
    network.source(top, GROUND, volt);
    network.resistor(top, middle, upper);
    for &ohm in lower {
        network.resistor(middle, GROUND, ohm);
    }
    network.solve().ok()?.voltage(middle)
}

fn divider(volt: f64, resistors: &[f64]) -> Vec<(&'static str, Option<f64>)> {
    let mut network = Network::new();
    let top = network.node("top");
    let battery = network.source(top, GROUND, volt);
    let mut above = top;
    let mut elements = Vec::new();
    for (index, &ohm) in resistors.iter().enumerate() {
        let below = if index + 1 == resistors.len() { GROUND } else { network.node("tap") };
        elements.push(network.resistor(above, below, ohm));
        above = below;
    }
    let solution = network.solve().ok();
    let across =
        |element: &Element| solution.as_ref().and_then(|solution| solution.across(*element));
    let mut found = vec![("I_A", solution.as_ref().map(|solution| -solution.current(battery)))];
    found.extend(elements.iter().map(|element| ("V_each", across(element))));
    found
}

/// The unit of the last digit that the source prints; JSON doesn't keep closing zeros.
fn last_digit(id: &str, quantity: &str) -> Option<f64> {
    let unit = match (id, quantity) {
        ("upv2_rl_source", "I_final_A" | "I_at_2tau_A" | "VL_at_2tau_V")
        | ("upv2_rl_decay", "t_half_current_s") => 0.01,
        ("upv2_rl_source", "tau_s" | "VL_0_V")
        | ("upv2_rl_decay", "t_energy_1pct_s")
        | ("upv2_rl_check", "tau_s" | "t90_R2_s") => 0.1,
        ("upv2_rl_check", "L_H") | ("ignition_textbook", "I_A") => 1.0,
        ("ignition_textbook", "E_J") => 0.001,
        ("ignition_textbook", "V_gap_V") => 1000.0,
        _ => return None,
    };
    Some(unit)
}

/// A number, or each of a list.
fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().map_or_else(
        || value.as_f64().into_iter().collect(),
        |list| list.iter().filter_map(Value::as_f64).collect(),
    )
}

/// Sources: in the file. Figures that were written down from memory don't count, their exact values do.
pub(crate) fn examples() -> Vec<Checked> {
    let examples: Vec<Value> = serde_json::from_str(&reference("textbook_examples.json")).unwrap();
    let (mut exact_count, mut published_count) = (0, 0);
    let (mut worst, mut rounded) = (Worst::default(), Worst::default());
    for example in &examples {
        let id = example["id"].as_str().unwrap();
        let given = |name: &str| example["given"][name].as_f64().unwrap();
        let resistors = numbers(&example["given"]["R_ohm"]);
        let answers = answers(id, &given, &resistors);
        let place = format!("tests/reference/textbook_examples.json ({id})");
        let find = |quantity: &str, index: usize| {
            let mut named = answers.iter().filter(|(name, _)| *name == quantity);
            named.nth(index).and_then(|(_, value)| *value)
        };
        let quantities = |kind: &str| example[kind].as_object().cloned().unwrap_or_default();
        for (quantity, value) in quantities("exact") {
            for (index, expected) in numbers(&value).into_iter().enumerate() {
                let place = format!("{place} exact {quantity}");
                worst.check(&place, find(&quantity, index), expected, 1e-9 * expected.abs());
                exact_count += 1;
            }
        }
        if example["confidence"].as_str().unwrap().contains("from memory") {
            continue;
        }
        for (quantity, value) in quantities("published") {
            let place = format!("{place} published {quantity}");
            let half = last_digit(id, &quantity).expect("a printed figure has a last digit") / 2.0;
            rounded.check(&place, find(&quantity, 0), value.as_f64().unwrap(), half);
            published_count += 1;
        }
    }
    assert_eq!((examples.len(), exact_count, published_count), (10, 20, 13), "all were checked");
    vec![
        worst.checked(
            "coils",
            "Windings, dividers and energies, exact",
            "formulas of textbooks",
            "",
        ),
        rounded.checked(
            "coils",
            "The same as printed",
            "OpenStax, University Physics vol. 2, 14.4; a textbook's ignition circuit",
            "",
        ),
    ]
}

#[test]
fn textbook_examples() {
    examples();
}
