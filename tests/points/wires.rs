//! Whether each wire reaches, is told apart, and fits its pin.

use quietpin_core::finding::Severity::{self, Danger, Doubt, Fault, Note};

use super::{told, words};

const NOTHING: [Severity; 0] = [];

/// By hand: 2.75 m of way are 0.25 m more than wires of 2.5 m.
#[test]
fn a_wire_that_does_not_reach_is_a_fault() {
    let of = |way: &str| told("wires-too-short", &[("harness.coils.3", way)], "wires.too-short");
    assert_eq!(of("2.75 m"), [Fault]);
    assert_eq!(of("2.51 m"), [Fault]);
    assert_eq!(of("2.5 m"), NOTHING);
    let said = words("wires-too-short", &[], "wires.too-short");
    assert!(said.contains("coil 4") && said.contains("0.25 m"), "{said}");
    // each that is too short is named once, in one finding
    let two = [("harness.coils.0", "2.9 m")];
    let said = words("wires-too-short", &two, "wires.too-short");
    assert!(
        said.contains("coil 1") && said.contains("coil 4") && said.contains("0.40 m"),
        "{said}"
    );
}

/// By hand: 2.45 m and 0.1 m to spare are 5 cm more than 2.5 m; 2.4 m and 0.1 m are as much.
#[test]
fn a_wire_that_reaches_without_its_spare_is_a_note() {
    let of = |way: &str| told("wires-too-tight", &[("harness.coils.3", way)], "wires.too-tight");
    assert_eq!(of("2.45 m"), [Note]);
    assert_eq!(of("2.5 m"), [Note]);
    assert_eq!(of("2.4 m"), NOTHING);
    assert_eq!(of("2.6 m"), NOTHING, "that is too short");
    let none = [("harness.spare", "0 m")];
    assert_eq!(told("wires-too-tight", &none, "wires.too-tight"), NOTHING);
}

/// Common practice, no source: feeds and grounds are told apart by their colour.
#[test]
fn feeds_and_grounds_of_one_colour_are_a_doubt() {
    let of = |texts: &[(&str, &str)]| told("wires-alike", texts, "wires.alike");
    assert_eq!(of(&[]), [Doubt]);
    assert_eq!(of(&[("harness.permanent", ""), ("harness.switched", "bk")]), [Doubt]);
    assert_eq!(of(&[("harness.permanent", "RD")]), NOTHING);
    assert_eq!(of(&[("harness.permanent", "")]), NOTHING, "what is proposed is told apart");
    assert_eq!(of(&[("harness.ground", "BN")]), NOTHING);
    let said = |texts: &[(&str, &str)]| words("wires-alike", texts, "wires.alike");
    assert!(said(&[]).starts_with("Battery feeds (30) and grounds"), "only what clashes is named");
    assert!(said(&[("harness.switched", "BK")]).starts_with("Feeds and grounds"));
}

/// By hand: 14.8 V / 1.2 Ω = 12.33 A; 12.33 A / 1.28 = 9.64 A, 12.33 A / 1.03 = 11.97 A.
#[test]
fn a_pin_carries_what_it_is_rated_for() {
    let of = |most: &str| told("wires-pin-hot", &[("harness.pin_current", most)], "wires.pin-hot");
    assert_eq!(of("9.6 A"), [Danger]);
    assert_eq!(of("9.7 A"), [Fault]);
    assert_eq!(of("11.9 A"), [Fault]);
    assert_eq!(of("12 A"), [Doubt]);
    assert_eq!(of("12.4 A"), NOTHING);
    assert_eq!(of(""), NOTHING);
}

/// By hand: two outputs sink 5.92 A each; one ground pin takes both, two take 5.92 A each, as the outputs' own pins do.
#[test]
fn what_outputs_sink_comes_back_through_the_ground_pins() {
    let of = |wires: &str| {
        let texts =
            [("harness.length", "3 m"), ("harness.pin_current", "8 A"), ("grounds.wires", wires)];
        told("feeds-ground-hot", &texts, "wires.pin-hot")
    };
    assert_eq!(of("1"), [Danger]);
    assert_eq!(of("2"), NOTHING);
}

/// The connector's data: a wire of its own range, both ends of it included.
#[test]
fn a_wire_beyond_what_a_pin_takes_is_a_fault() {
    let of =
        |size: &str| told("wires-pin-wire", &[("injectors.wire_size", size)], "wires.pin-wire");
    assert_eq!(of("1.5 mm2"), [Fault]);
    assert_eq!(of("0.35 mm2"), [Fault]);
    assert_eq!(of("0.5 mm2"), NOTHING);
    assert_eq!(of("1 mm2"), NOTHING);
    assert_eq!(of(""), NOTHING);
}

/// IEC 60757, from memory: colours by letters.
#[test]
fn a_colour_is_told_by_its_letters() {
    let of =
        |text: &str| told("wires-no-colour", &[("harness.permanent", text)], "wires.no-colour");
    assert_eq!(of("red"), [Fault]);
    assert_eq!(of("RD RD"), [Fault]);
    assert_eq!(of("rd"), NOTHING);
    assert_eq!(of("RDWH"), NOTHING);
}

/// By hand: 3.5 m of a cable of 3 m can't be.
#[test]
fn a_piece_is_no_longer_than_its_cable() {
    let code = "wires.beyond-cable";
    let of = |typed: &str| told("wires-beyond-cable", &[("relays.0.to_contact", typed)], code);
    assert_eq!(of("3.5 m"), [Fault]);
    assert_eq!(of("3 m"), NOTHING);
    assert_eq!(of(""), NOTHING);
}
