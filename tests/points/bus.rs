//! The bus between controllers: each finding on both sides of its line.
//!
//! Source: ISO 11898 as data sheets of transceivers and manuals of field buses quote it (`can_bus.json`), and Ohm's law.

use quietpin_core::finding::Severity::{self, Doubt, Fault};

use super::{told, words};

const NOTHING: [Severity; 0] = [];

const WRONG: &str = "bus-planned-wrong";
const TIGHT: &str = "bus-not-at-ends";

/// By hand: two of 120 Ω are 60 Ω, three are 40 Ω.
#[test]
fn two_terminators_are_needed() {
    let of = |count: &str| told(WRONG, &[("bus.terminators", count)], "bus.terminators");
    for count in ["0", "1", "3", "4"] {
        assert_eq!(of(count), [Fault], "{count}");
    }
    assert_eq!(of("2"), NOTHING);
    let said = words(WRONG, &[], "bus.terminators");
    assert!(said.contains("40 Ω") && said.contains("Two terminators, one at each end."), "{said}");
    // where the meter sees what is planned, it is said once
    let read = [("bus.reading", "40 ohm")];
    assert_eq!(told(WRONG, &read, "bus.many-read"), NOTHING);
    assert_eq!(told(WRONG, &read, "bus.terminators"), [Fault]);
    let other = [("bus.reading", "120 ohm")];
    assert_eq!(told(WRONG, &other, "bus.one-read"), [Fault]);
}

/// By hand: at 500 kbit/s a wire of 0.6 m is no more than a branch that is sure, 0.3 m for each Mbit/s.
#[test]
fn terminators_belong_to_the_ends() {
    let of = |texts: &[(&str, &str)]| told(TIGHT, texts, "bus.not-at-ends");
    assert_eq!(of(&[]), [Doubt]);
    assert_eq!(of(&[("bus.terminated_at", "ends")]), NOTHING);
    assert_eq!(of(&[("bus.terminated_at", "")]), NOTHING, "not known is not wrong");
    assert_eq!(of(&[("bus.length", "0.6 m")]), NOTHING);
    assert_eq!(of(&[("bus.length", "0.7 m")]), [Doubt]);
}

/// By hand: 108 to 132 Ω each; 1 Ω for the leads, and 2 kΩ of inputs beside them: 52 to 67 Ω are two, 101 to 133 Ω are one.
#[test]
fn a_reading_tells_what_is_wrong() {
    let of = |ohm: &str, code: &str| told("bus-one-read", &[("bus.reading", ohm)], code);
    assert_eq!(of("120 ohm", "bus.one-read"), [Fault]);
    assert_eq!(of("105 ohm", "bus.one-read"), [Fault]);
    for right in ["53 ohm", "60 ohm", "66 ohm"] {
        for code in ["bus.one-read", "bus.none-read", "bus.many-read", "bus.shorted", "bus.contact"]
        {
            assert_eq!(of(right, code), NOTHING, "{right}: {code}");
        }
    }
    assert_eq!(of("OL", "bus.none-read"), [Fault]);
    assert_eq!(of("1 kohm", "bus.none-read"), [Fault]);
    assert_eq!(of("990 ohm", "bus.none-read"), NOTHING, "one through a bad contact");
    assert_eq!(of("40 ohm", "bus.many-read"), [Fault]);
    assert_eq!(of("15 ohm", "bus.many-read"), [Fault]);
    assert_eq!(of("48 ohm", "bus.many-read"), NOTHING);
    assert_eq!(of("2 ohm", "bus.shorted"), [Fault]);
    assert_eq!(of("4 ohm", "bus.shorted"), NOTHING);
    let said = words("bus-none-read", &[], "bus.none-read");
    assert!(said.contains("No end (OL)"), "{said}");
    assert_eq!(told("bus-many-read", &[], "bus.many-read"), [Fault]);
    assert_eq!(told("bus-shorted", &[], "bus.shorted"), [Fault]);
}

/// By hand: 120 Ω beside 120 + 120 Ω are 80 Ω. Transceivers are stated for 45 to 70 Ω.
#[test]
fn a_reading_between_is_a_bad_contact() {
    let of = |ohm: &str| told("bus-contact", &[("bus.reading", ohm)], "bus.contact");
    assert_eq!(of("80 ohm"), [Fault]);
    assert_eq!(of("71 ohm"), [Fault]);
    assert_eq!(of("69 ohm"), [Doubt]);
    assert_eq!(of("66 ohm"), NOTHING);
    assert_eq!(of("48 ohm"), [Doubt]);
    assert_eq!(of("46 ohm"), [Doubt]);
    assert_eq!(of("44.9 ohm"), NOTHING, "those are three");
    assert_eq!(of("200 ohm"), [Fault]);
    let said = words("bus-contact", &[], "bus.contact");
    assert!(said.contains("with 120 Ω in one branch"), "{said}");
}

/// By hand: 0.8 of 2 µs less 0.4 µs are 1.2 µs, there and back 120 m at 5 ns/m. 100 m are the manuals' row.
#[test]
fn a_bus_is_no_longer_than_its_bits_allow() {
    let of = |long: &str, code: &str| told(WRONG, &[("bus.length", long)], code);
    assert_eq!(of("121 m", "bus.too-long"), [Fault]);
    assert_eq!(of("120 m", "bus.too-long"), NOTHING);
    assert_eq!(of("120 m", "bus.length-tight"), [Doubt]);
    assert_eq!(of("101 m", "bus.length-tight"), [Doubt]);
    assert_eq!(of("100 m", "bus.length-tight"), NOTHING);
    assert_eq!(of("121 m", "bus.length-tight"), NOTHING, "that is too long");
    let said =
        words(TIGHT, &[("bus.branch", ""), ("frames.0.period", "10 ms")], "bus.length-tight");
    assert!(said.contains("Set all devices to 250 kbit/s."), "{said}");
}

/// By hand: 0.3 m at 1 Mbit/s are 0.6 m at 500 kbit/s; an echo of 3% of 2 µs is 60 ns, there and back 6 m.
#[test]
fn a_branch_is_no_longer_than_its_bits_allow() {
    let of = |long: &str, code: &str| told(WRONG, &[("bus.branch", long)], code);
    assert_eq!(of("6.1 m", "bus.branch-too-long"), [Fault]);
    assert_eq!(of("6 m", "bus.branch-too-long"), NOTHING);
    assert_eq!(of("6 m", "bus.branch-long"), [Doubt]);
    assert_eq!(of("0.61 m", "bus.branch-long"), [Doubt]);
    assert_eq!(of("0.6 m", "bus.branch-long"), NOTHING);
    // the arms of a star are branches: half of its two longest
    let star = [("bus.branch", ""), ("bus.shape", "star"), ("bus.length", "13 m")];
    assert_eq!(told(WRONG, &star, "bus.branch-too-long"), [Fault]);
    let star = [("bus.branch", ""), ("bus.shape", "star"), ("bus.length", "1.2 m")];
    assert_eq!(told(WRONG, &star, "bus.branch-long"), NOTHING);
    assert_eq!(told(TIGHT, &[], "bus.branch-long"), [Doubt]);
}

#[test]
fn all_devices_have_one_bit_rate() {
    let of = |rate: &str| told(WRONG, &[("bus.other_rate", rate)], "bus.rates-differ");
    assert_eq!(of("250 kbit/s"), [Fault]);
    assert_eq!(of("500 kbit/s"), NOTHING);
    assert_eq!(of(""), NOTHING);
}

/// Source: `can_bus.json`, `levels_V`: 2 to 3 V each while nobody drives, 1.5 to 3 V apart in a dominant bit.
#[test]
fn the_levels_tell_what_is_wrong() {
    let of = |high: &str, low: &str, code: &str| {
        told("bus-one-read", &[("bus.high", high), ("bus.low", low)], code)
    };
    let all = ["swapped", "stuck", "to-ground", "to-battery", "silent", "uneven"];
    let right = [("2.6 V", "2.4 V"), ("2.53 V", "2.5 V"), ("3.2 V", "1.8 V"), ("2.9 V", "2.8 V")];
    for (high, low) in right {
        for code in all {
            assert_eq!(of(high, low, &["bus.", code].concat()), NOTHING, "{high} {low} {code}");
        }
    }
    assert_eq!(of("2.48 V", "2.5 V", "bus.swapped"), [Fault]);
    assert_eq!(of("2.49 V", "2.5 V", "bus.swapped"), NOTHING, "no meter is that sure");
    assert_eq!(of("2.49 V", "2.5 V", "bus.silent"), [Doubt]);
    assert_eq!(of("2.51 V", "2.5 V", "bus.silent"), [Doubt]);
    assert_eq!(of("3.3 V", "1.8 V", "bus.stuck"), [Fault]);
    assert_eq!(of("0.1 V", "0.1 V", "bus.to-ground"), [Fault]);
    assert_eq!(of("0.9 V", "0.2 V", "bus.to-ground"), [Fault]);
    assert_eq!(of("0.9 V", "0.4 V", "bus.to-ground"), NOTHING);
    assert_eq!(of("0.9 V", "0.4 V", "bus.uneven"), [Doubt]);
    assert_eq!(of("4.7 V", "4.5 V", "bus.to-battery"), [Fault]);
    assert_eq!(of("4.5 V", "4.3 V", "bus.to-battery"), NOTHING);
    assert_eq!(of("3.1 V", "3.0 V", "bus.uneven"), [Doubt]);
    // a pair that touches is told by the ohms
    let touching = [("bus.reading", "0.4 ohm")];
    assert_eq!(told("bus-contact", &[], "bus.silent"), [Doubt]);
    assert_eq!(told("bus-contact", &touching, "bus.silent"), NOTHING);
}

/// By hand: a frame of 8 bytes has 111 bits, and 135 with the most of its stuffing. At 500 kbit/s, and 222 µs apart, the 111 are all;
/// 386 µs apart the 135 are 70%.
#[test]
fn a_bus_carries_no_more_than_its_bits() {
    let alone = |period: &str, code: &str| told(TIGHT, &[("frames.0.period", period)], code);
    assert_eq!(alone("0.2219 ms", "bus.overloaded"), [Fault]);
    assert_eq!(alone("0.2221 ms", "bus.overloaded"), NOTHING);
    assert_eq!(alone("0.2221 ms", "bus.busy"), [Doubt]);
    assert_eq!(alone("0.385 ms", "bus.busy"), [Doubt]);
    assert_eq!(alone("0.387 ms", "bus.busy"), NOTHING);
    assert_eq!(told(WRONG, &[], "bus.overloaded"), [Fault]);
    // what is only assumed to have eight bytes may have none: 47 bits are no more than 500 kbit/s carry
    let assumed = [("frames.0.bytes", ""), ("frames.0.period", "0.2 ms")];
    assert_eq!(told(TIGHT, &assumed, "bus.overloaded"), NOTHING);
    assert_eq!(told(TIGHT, &assumed, "bus.busy"), [Doubt]);
    // on a wire that is short enough, faster is a fix
    let short = [("bus.length", "3 m"), ("bus.branch", "0.3 m")];
    let said = words(TIGHT, &short, "bus.busy");
    assert!(said.contains("Set all devices to 800 kbit/s."), "{said}");
}

#[test]
fn an_identifier_is_sent_by_one() {
    let of = |identifier: &str| {
        told(WRONG, &[("frames.1.identifier", identifier)], "bus.identifier-twice")
    };
    assert_eq!(of("0x5f0"), [Fault]);
    assert_eq!(of("5F1"), NOTHING);
    // 29 bits are another identifier
    let extended = [("frames.1.identifier_kind", "29")];
    assert_eq!(told(WRONG, &extended, "bus.identifier-twice"), NOTHING);
}

#[test]
fn what_is_no_identifier_and_no_data_is_told() {
    let identifier = |text: &str, kind: &str| {
        let texts = [("frames.2.identifier", text), ("frames.2.identifier_kind", kind)];
        told(WRONG, &texts, "bus.no-identifier")
    };
    assert_eq!(identifier("800", ""), [Fault]);
    assert_eq!(identifier("7FF", ""), NOTHING);
    assert_eq!(identifier("800", "29"), NOTHING);
    assert_eq!(identifier("1FFFFFFF", "29"), NOTHING);
    assert_eq!(identifier("20000000", "29"), [Fault]);
    let data = |text: &str| told(WRONG, &[("frames.2.data", text)], "bus.no-data");
    assert_eq!(data("01 F"), [Fault]);
    assert_eq!(data("01 0F 00"), [Fault], "two bytes are typed");
    assert_eq!(data("01 0F"), NOTHING);
}
