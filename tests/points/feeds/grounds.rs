//! Strap, ground wires and the sensors' bolt.

use quietpin_core::{
    finding::Severity::{self, Danger, Doubt, Fault, Note},
    report::{Tone, report},
};

use crate::points::{planned, told, words};

const NOTHING: [Severity; 0] = [];

/// Common practice, no source: with the minus on the body the starter's current needs a strap.
#[test]
fn no_strap_is_a_danger_where_the_starter_needs_it_and_else_a_fault() {
    let of = |texts: &[(&str, &str)], code: &str| told("feeds-no-strap", texts, code);
    let (starts, back) = ("feeds.no-strap", "feeds.no-strap-back");
    assert_eq!(of(&[], starts), [Danger]);
    assert_eq!(of(&[], back), NOTHING);
    assert_eq!(of(&[("grounds.minus_to", "engine")], starts), NOTHING);
    assert_eq!(of(&[("grounds.minus_to", "engine")], back), [Fault]);
    for blank in [[("grounds.minus_to", "")], [("grounds.strap", "")]] {
        assert_eq!(of(&blank, starts), NOTHING, "a blank says nothing");
        assert_eq!(of(&blank, back), NOTHING, "a blank says nothing");
    }
    assert_eq!(of(&[("grounds.strap", "fitted")], starts), NOTHING);
    assert_eq!(told("feeds-no-strap-back", &[], back), [Fault]);
    let said = report(&planned("feeds-no-strap-back", &[]));
    let answers = said.sections.iter().flat_map(|section| &section.answers);
    let strap: Vec<_> = answers.filter(|it| it.subject == "feeds.strap").collect();
    let why = strap.first().and_then(|it| it.why.as_ref()).expect("it is answered");
    assert!(why.text.contains("9 A"), "what comes back is told: {}", why.text);
}

/// Source: IEC 60364-4-43, k = 115 A √s / mm² of PVC, from memory: 2.5 mm² bear 200 A for 2 s, 16 mm² for 85 s.
#[test]
fn a_strap_that_burns_in_a_long_start_is_a_danger() {
    let of =
        |size: &str| told("feeds-strap-hot", &[("grounds.strap_size", size)], "feeds.strap-hot");
    assert_eq!(of("2.5 mm2"), [Danger]);
    assert_eq!(of("16 mm2"), NOTHING);
    // within a hair of the limit
    assert_eq!(told("feeds-strap-warm", &[], "feeds.strap-warm"), [Doubt]);
    assert_eq!(told("feeds-strap-warm", &[], "feeds.strap-hot"), NOTHING);
    let engine = [("grounds.minus_to", "engine")];
    assert_eq!(told("feeds-strap-hot", &engine, "feeds.strap-hot"), NOTHING);
    let unknown = [("battery.starter", "")];
    assert_eq!(told("feeds-strap-hot", &unknown, "feeds.strap-hot"), NOTHING);
}

/// By hand: 1.16 × 1.5 m / (58 × 10 mm²) = 3 mΩ; 0.4 V (common practice, no source) are lost at 133.3 A. A cable of 3 m and 35 mm² has
/// 1.714 mΩ: 0.8 V are lost in both at 169.7 A; with 16 mm², 1.875 mΩ of strap, more than the cable, at 222.9 A.
#[test]
fn a_strap_may_lose_what_the_cable_leaves_it() {
    let of = |texts: &[(&str, &str)]| told("feeds-strap-drops", texts, "feeds.strap-drops");
    assert_eq!(of(&[("battery.starter", "134 A")]), [Doubt]);
    assert_eq!(of(&[("battery.starter", "133 A")]), NOTHING);
    let cable = |starter: &'static str, size: &'static str| {
        [
            ("battery.lead_length", "3 m"),
            ("battery.lead_size", "35 mm2"),
            ("battery.starter", starter),
            ("grounds.strap_size", size),
        ]
    };
    assert_eq!(of(&cable("170 A", "10 mm2")), [Doubt]);
    assert_eq!(of(&cable("169 A", "10 mm2")), NOTHING);
    assert_eq!(of(&cable("223 A", "16 mm2")), [Doubt]);
    assert_eq!(of(&cable("222 A", "16 mm2")), NOTHING);
    // of a strap that is as good the cable is told
    let good = cable("240 A", "25 mm2");
    assert_eq!(of(&good), NOTHING);
    assert_eq!(told("feeds-strap-drops", &good, "feeds.cable-drops"), [Doubt]);
    // by hand: 20 % of 9 V (common practice, no source) are 1.8 V: 382 A through 4.714 mΩ
    assert_eq!(of(&cable("383 A", "10 mm2")), [Fault]);
}

/// By hand: 39 A × √(80 K / 85 K × 1.33405 / 1.3144) = 38.12 A, from the distributor's 39 A at 105 °C to the 100 °C of class B. Where each
/// of them is grounded is common practice, no source: a doubt.
#[test]
fn what_is_on_the_body_comes_back_through_the_strap() {
    let of = |draws: &str| {
        told("feeds-strap-carries", &[("relays.0.draws", draws)], "feeds.strap-carries")
    };
    assert_eq!(of("38.2 A"), [Doubt]);
    assert_eq!(of("38.1 A"), NOTHING);
}

/// By hand: 14.8 V / 2.5 Ω = 5.92 A each; 0.5 mm² of class B carries 11 A × 0.9774 = 10.75 A. 3 % more than that is a hair.
#[test]
fn a_ground_wire_carries_what_the_outputs_sink() {
    let of = |texts: &[(&str, &str)]| told("feeds-ground-hot", texts, "feeds.ground-hot");
    let second = |ohm: &'static str| [("loads.1.resistance", ohm)];
    assert_eq!(of(&[]), [Danger]);
    // 5.92 A + 4.93 A = 10.85 A
    assert_eq!(of(&second("3 ohm")), [Doubt]);
    // 5.92 A + 4.81 A = 10.73 A
    assert_eq!(of(&second("3.08 ohm")), NOTHING);
    assert_eq!(of(&[("grounds.wires", "2")]), NOTHING);
    // what is usual of a load is no more than a doubt
    assert_ne!(of(&second("")), [Danger]);
    // what a high-side switches comes back elsewhere
    let high = [("outputs.0.stage", "high-side"), ("loads.1.far_end", "ground")];
    assert_eq!(of(&high), NOTHING);
    assert_eq!(of(&[("grounds.wires", "")]), NOTHING, "a blank says nothing");
}

/// By hand: 1.16 × 2 m / (58 × 1 mm²) = 40 mΩ, two of them 20 mΩ; 0.1 V (common practice, no source) and 3 % more are lifted by
/// 5.15 A, 14.8 V / 2.874 Ω.
#[test]
fn a_controllers_ground_may_rise_by_a_tenth_of_a_volt() {
    let of = |texts: &[(&str, &str)]| told("feeds-ground-rises", texts, "feeds.ground-rises");
    assert_eq!(of(&[]), [Doubt]);
    assert_eq!(of(&[("loads.0.resistance", "2.86 ohm")]), [Doubt]);
    assert_eq!(of(&[("loads.0.resistance", "2.89 ohm")]), NOTHING);
    assert_eq!(of(&[("grounds.wires", "3")]), NOTHING);
    assert!(words("feeds-ground-rises", &[], "feeds.ground-rises").contains("3 such wires"));
}

/// By hand: 20 mΩ / 2 × 5.92 A = 59.2 mV; 1 % of 5 V (common practice, no source) and 3 % more are 51.5 mV, 5.15 A.
#[test]
fn sensors_at_the_block_read_low_by_what_lifts_the_controller() {
    let of = |texts: &[(&str, &str)]| told("feeds-sensors-block", texts, "feeds.sensors-block");
    assert_eq!(of(&[]), [Doubt]);
    assert_eq!(of(&[("loads.0.resistance", "2.89 ohm")]), NOTHING);
    assert_eq!(of(&[("grounds.sensors", "pin")]), NOTHING);
    let longer = [("grounds.wire_length", "2 m")];
    assert_eq!(of(&longer), NOTHING, "what lifts it is told");
    assert_eq!(told("feeds-sensors-block", &longer, "feeds.ground-rises"), [Doubt]);
}

/// Common practice, no source: a pump's 14 A over 20 mΩ are 0.28 V. By hand: 2 % of 5 V and 3 % more are 5.15 A over 20 mΩ, 1 % and 3 %
/// more 2.575 A.
#[test]
fn a_pump_at_the_bolt_of_the_sensors_moves_them() {
    let of = |texts: &[(&str, &str)]| told("feeds-sensors-offset", texts, "feeds.sensors-offset");
    assert_eq!(of(&[]), [Fault]);
    let draws = |draws: &'static str| [("relays.0.draws", draws)];
    assert_eq!(of(&draws("5.2 A")), [Fault]);
    assert_eq!(of(&draws("5.1 A")), [Doubt]);
    assert_eq!(of(&draws("2.6 A")), [Doubt]);
    assert_eq!(of(&draws("2.5 A")), NOTHING);
    assert_eq!(of(&[("grounds.bolt", "")]), [Doubt], "what is usual is no more than a doubt");
    assert_eq!(of(&[("relays.0.ground", "")]), NOTHING);
    assert_eq!(of(&[("grounds.sensors", "pin")]), NOTHING);
    let said = words("feeds-sensors-offset", &[], "feeds.sensors-offset");
    assert!(said.contains("280 mV") && said.contains("5.6%"), "{said}");
    assert!(said.contains("Pump relay"), "the greatest is named: {said}");
    // 2 A of the other over 20 mΩ are 0.8 %
    let shared = [("relays.1.ground", "sensors")];
    assert!(words("feeds-sensors-offset", &shared, "feeds.sensors-offset").contains("320 mV"));
}

/// Common practice, no source: what starter, pump or fan draw comes back to the battery, and a blank strap is not yet one that is there.
#[test]
fn a_strap_that_is_left_blank_is_asked_for_once_feeds_are_known() {
    const BLANK: [(&str, &str); 4] = [
        ("grounds.minus_to", ""),
        ("grounds.strap", ""),
        ("grounds.strap_size", ""),
        ("grounds.strap_length", ""),
    ];
    let of = |texts: &[(&'static str, &'static str)]| {
        let said = report(&planned("sound-four", &[&BLANK[..], texts].concat()));
        let found: Vec<_> = said.findings.iter().filter(|it| it.severity != Note).collect();
        assert!(found.is_empty(), "a blank says nothing: {found:?}");
        let mut all = said.sections.iter().flat_map(|it| &it.answers);
        let strap = all.find(|it| it.subject == "feeds.strap");
        strap.map(|it| (it.verdict.tone, it.verdict.message.text.clone()))
    };
    let asked = "Needs: whether engine and body are joined by a strap";
    assert_eq!(of(&[]), Some((Tone::Open, asked.to_owned())));
    let without_starter =
        [("battery.starter", ""), ("battery.lead_length", ""), ("battery.lead_size", "")];
    assert_eq!(of(&without_starter), Some((Tone::Open, asked.to_owned())), "pump and fan");
    let undrawn = [("relays.0.draws", ""), ("relays.1.draws", "")];
    assert_eq!(of(&[&without_starter[..], &undrawn].concat()), None);
    let fitted = [("grounds.minus_to", "engine"), ("grounds.strap", "fitted")];
    assert_eq!(of(&fitted), Some((Tone::Open, "Needs: the strap's size and length".to_owned())));
}
