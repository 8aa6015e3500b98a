//! Loads on outputs: each finding on both sides of its line.
//!
//! Source: P. Hall, On representatives of subsets, 1935; Ohm's law for what each draws, at 14.8 V.

use quietpin_core::finding::Severity::{self, Doubt, Fault};

use super::{told, words};

const NOTHING: [Severity; 0] = [];

/// Hall's theorem, by hand: three that share two outputs. One that a switch works needs none; one output more is enough.
#[test]
fn three_loads_need_three_outputs_that_suit() {
    let of = |texts: &[(&str, &str)]| told("pins-too-few", texts, "pins.too-few");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("outputs.0.name", "D1 to D3")]), NOTHING);
    assert_eq!(of(&[("loads.2.keeps", "by-hand")]), NOTHING);
    assert_eq!(of(&[("outputs.1.stage", "")]), NOTHING, "of an unknown output nothing is sure");
    assert_eq!(of(&[("loads.2.resistance", "")]), [Doubt], "what is only usual");
    let said = words("pins-too-few", &[], "pins.too-few");
    assert!(said.contains("2 outputs (D1, D2): 1 too few"), "{said}");
    assert!(said.contains("Switch water valve by hand"), "{said}");
    let stays =
        [("loads.0.keeps", "stays"), ("loads.0.output", "S1"), ("loads.0.far_end", "ground")];
    assert_eq!(of(&stays), NOTHING, "it is on the third");
}

/// By hand: four that can be on two outputs are two too many, of which three are a set that competes.
#[test]
fn what_can_be_nowhere_else_is_told_with_those_that_compete() {
    let of = |texts: &[(&str, &str)]| told("pins-many", texts, "pins.too-few-more");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("outputs.0.name", "D1 to D3")]), NOTHING);
    assert_eq!(told("pins-many", &[("outputs.0.name", "D1 to D3")], "pins.too-few"), [Fault]);
    let said = words("pins-many", &[], "pins.too-few-more");
    assert!(said.contains("2 too few"), "{said}");
}

/// By hand: 14.8 V / 2.6 Ω are 5.7 A; of 5 Ω 3 A.
#[test]
fn a_heater_that_no_output_carries_is_told() {
    let of = |texts: &[(&str, &str)]| told("pins-no-output", texts, "pins.no-output");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("loads.0.resistance", "6 ohm")]), NOTHING);
    assert_eq!(of(&[("loads.0.output", "D1")]), NOTHING, "what is on an output is told there");
    let said = words("pins-no-output", &[], "pins.no-output");
    assert!(said.contains("Put a relay between for heater: its coil on D1"), "{said}");
}

/// By hand: twice 14.8 V / 10 Ω are 2.96 A.
#[test]
fn outputs_of_a_group_carry_no_more_than_their_driver() {
    let of = |texts: &[(&str, &str)]| told("pins-group-over", texts, "pins.group-over");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("outputs.0.group_limit", "3 A")]), NOTHING);
    assert_eq!(of(&[("outputs.0.group", "")]), NOTHING);
    let usual = [("loads.1.resistance", ""), ("outputs.0.group_limit", "2 A")];
    assert_eq!(of(&usual), [Doubt], "what is only usual");
}

#[test]
fn outputs_with_one_timer_have_one_frequency() {
    let of = |texts: &[(&str, &str)]| told("pins-group-pulses", texts, "pins.group-pulses");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("loads.1.frequency", "100 Hz")]), NOTHING);
    assert_eq!(of(&[("outputs.0.group_pulse", "each")]), NOTHING);
    assert_eq!(of(&[("loads.1.frequency", "")]), NOTHING);
}

/// Hall's theorem, by hand: two thermistors need a pull-up each; one that is pulled serves one.
#[test]
fn two_thermistors_need_two_inputs_that_are_pulled_up() {
    let of = |texts: &[(&str, &str)]| told("pins-too-few-inputs", texts, "pins.too-few-inputs");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("inputs.1.pull", "up")]), NOTHING);
    assert_eq!(of(&[("inputs.1.takes", "")]), NOTHING, "of an unknown input nothing is sure");
    assert_eq!(of(&[("sensors.1.kind", "")]), NOTHING, "nor of an unknown sensor");
    assert_eq!(of(&[("sensors.1.kind", "pot")]), NOTHING, "a potentiometer needs none");
    let said = words("pins-too-few-inputs", &[], "pins.too-few-inputs");
    assert!(said.contains("1 input (A1): 1 too few"), "{said}");
}

#[test]
fn noise_is_read_by_a_knock_input_alone() {
    let of = |texts: &[(&str, &str)]| told("pins-no-input", texts, "pins.no-input");
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("inputs.1.takes", "knock")]), NOTHING);
    assert_eq!(of(&[("sensors.0.kind", "switch")]), NOTHING);
}
