//! How far a bus reaches, and how busy it is.

use quietpin_core::{
    bus::{
        frame::IdentifierKind,
        load::{Busyness, PeriodicFrame, judged, of_frames},
        reach::{Reaching, highest_rate, of_branch, of_bus, turnaround},
    },
    quantity::{Band, BitRate, Measure, bits_per_second, metres, seconds, share},
};
use quietpin_tests::{Checked, Worst};

use super::json;

fn kilobits(number: f64) -> BitRate {
    bits_per_second(number * 1e3)
}

/// Source: `can_bus.json`, `length_vs_bitrate`: two manuals of drives and field buses; 40 m at 1 Mbit/s are ISO 11898-2's.
pub(crate) fn lengths() -> Checked {
    let file = json();
    let mut worst = Worst::default();
    let mut seen = 0;
    for row in file["length_vs_bitrate"].as_array().expect("rows") {
        let number = |name: &str| row[name].as_f64();
        let rate = kilobits(number("kbit").expect("a rate"));
        let reach = of_bus(rate);
        let metres_of = number("bus_m").expect("metres");
        worst.check(&format!("{rate:?}"), Some(reach.sure.base()), metres_of, 0.0);
        assert_eq!(reach.suits(metres(metres_of)), Reaching::Surely, "{rate:?}");
        assert_ne!(reach.suits(metres(metres_of * 1.01)), Reaching::Surely, "{rate:?}");
        assert!(reach.perhaps >= reach.sure, "{rate:?}");
        if let Some(other) = row["alt_m"][1].as_f64() {
            let apart = (reach.perhaps.base() - other).abs();
            assert!(apart < 1e-9 * other, "{other} m are ISO 11898-2's");
        }
        seen += 1;
    }
    assert_eq!(seen, 7, "all rows");
    worst.checked("bus", "Length of a bus by its bit rate", "manuals of two field buses", "m")
}

#[test]
fn a_bus_is_as_long_as_manuals_let_it_be() {
    lengths();
    // the row of 500 kbit/s covers 400
    assert!((of_bus(kilobits(400.0)).sure.base() - 100.0).abs() < 1e-9);
}

/// Source: `can_bus.json`: a field bus's manual for 6 m; 0.3 m and 1 m are from memory, and only windows.
#[test]
fn branches_are_as_long_as_manuals_let_them_be() {
    let file = json();
    let number = |row: &serde_json::Value, name: &str| row[name].as_f64().expect("a number");
    for row in file["stub_m_device_network"].as_array().expect("rows") {
        let (rate, most) = (kilobits(number(row, "kbit")), number(row, "max_each"));
        let reach = of_branch(rate);
        assert!((reach.perhaps.base() - most).abs() < 1e-9, "{rate:?}: {reach:?}");
    }
    for name in ["stub_m_ISO_11898_2", "stub_m_J1939_11"] {
        let row = &file[name];
        let (rate, most) = (kilobits(number(row, "kbit")), number(row, "max_each"));
        let sure = of_branch(rate).sure.base();
        assert!(sure > most / 2.0 && sure < most * 2.0, "{name}: {sure}");
    }
}

/// Source: `can_bus.json`, cable: 5 ns a metre. By hand: 40 m there and back at 1 Mbit/s are 400 of 1000 ns, and 400 ns for both
/// ends.
#[test]
fn the_way_there_and_back_takes_its_part_of_a_bit() {
    let file = json();
    let delay = file["cable"]["delay_ns_per_m"].as_f64().expect("a delay");
    let part = turnaround(kilobits(1000.0), metres(40.0)).base();
    assert!((part - (2.0 * 40.0 * delay + 400.0) / 1000.0).abs() < 1e-12, "{part}");
}

#[test]
fn a_longer_wire_has_a_lower_rate() {
    let of = |long: f64, branch: f64| highest_rate(kilobits(1000.0), metres(long), metres(branch));
    assert_eq!(of(20.0, 0.1), Some(kilobits(1000.0)));
    assert_eq!(of(90.0, 0.1), Some(kilobits(500.0)));
    assert_eq!(of(20.0, 1.1), Some(kilobits(250.0)));
    assert_eq!(of(1e5, 0.1), None);
}

/// Source: `can_bus.json`, `bus_load_example`: 1000 frames a second of 135 bits are 27 % of 500 kbit/s.
#[test]
fn a_load_is_the_bits_in_the_time() {
    let file = json();
    let number = |name: &str| file["bus_load_example"][name].as_f64().expect(name);
    let rate = bits_per_second(number("bitrate"));
    let period = Band::exact(seconds(1.0 / number("frames_per_s")));
    let frame = PeriodicFrame::of_bytes(IdentifierKind::Standard, (8, 8), period);
    assert!((frame.bits.high.base() - number("bits_each")).abs() < 1e-12);
    let load = of_frames([&frame], rate);
    assert!((load.high.base() - number("load")).abs() < 1e-12, "{load:?}");
    // by hand: 47 + 64 bits where nothing is stuffed
    assert!((load.low.base() - 0.222).abs() < 1e-12, "{load:?}");
}

/// 70 %: common practice, no source.
#[test]
fn a_load_has_its_lines() {
    let of = |low: f64, high: f64| {
        judged(&Band { low: share(low), nominal: share(low), high: share(high) })
    };
    assert_eq!(of(0.5, 0.70), Busyness::Easy);
    assert_eq!(of(0.5, 0.71), Busyness::Busy);
    assert_eq!(of(0.9, 1.01), Busyness::PerhapsOver);
    assert_eq!(of(1.01, 1.2), Busyness::Over);
}
