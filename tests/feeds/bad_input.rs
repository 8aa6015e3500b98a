//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::report::report;
use quietpin_tests::typed::{check_refused, lacking};

use super::{about, feed};

const FIELDS: [&str; 18] = [
    "relays.0.draws",
    "relays.0.inrush",
    "relays.0.behind",
    "battery.lead_length",
    "battery.lead_size",
    "battery.starter",
    "battery.alternator",
    "battery.alternator_idle",
    "switched_feeds.fuse",
    "switched_feeds.size",
    "switched_feeds.battery_fuse",
    "switched_feeds.battery_size",
    "wiring.insulation",
    "wiring.ambient",
    "wiring.bundled",
    "injectors.fuse",
    "second_injectors.fuse",
    "loads.0.fuse",
];

/// The finding at the field, and the feed is answered all the same.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = feed(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    assert!(about(&report, "feeds.relay.0").is_some(), "{path}: {text:?}");
}

#[test]
fn what_is_none_is_named_at_its_field() {
    for path in FIELDS
        .into_iter()
        .filter(|it| !["relays.0.behind", "wiring.insulation", "wiring.bundled"].contains(it))
    {
        check(path, "letters", "field.no-number");
        check(path, "10 Hz", "field.wrong-unit");
        check(path, "1e999", "field.not-finite");
    }
    check("wiring.insulation", "e", "field.unknown-choice");
    check("wiring.bundled", "1.5", "field.not-whole");
    check("relays.0.behind", "no such", "feeds.no-such-relay");
    check("relays.0.behind", "Pump relay", "feeds.behind-itself");
}

#[test]
fn what_can_not_be_is_named_at_its_field() {
    for (path, low, high) in [
        ("relays.0.draws", "0 A", "501 A"),
        ("relays.0.inrush", "0 A", "2001 A"),
        ("battery.lead_length", "-1 m", "21 m"),
        ("battery.lead_size", "3.9 mm2", "121 mm2"),
        ("battery.starter", "9 A", "2001 A"),
        ("battery.alternator", "0.9 A", "501 A"),
        ("battery.alternator_idle", "0.9 A", "501 A"),
        ("switched_feeds.fuse", "0.4 A", "501 A"),
        ("switched_feeds.size", "0.04 mm2", "121 mm2"),
        ("switched_feeds.battery_fuse", "0.4 A", "501 A"),
        ("switched_feeds.battery_size", "0.04 mm2", "121 mm2"),
        ("wiring.ambient", "-21 °C", "141 °C"),
        ("wiring.bundled", "0", "21"),
        ("injectors.fuse", "0.4 A", "101 A"),
        ("second_injectors.fuse", "0.4 A", "101 A"),
        ("loads.0.fuse", "0.4 A", "501 A"),
    ] {
        check(path, low, "field.too-small");
        check(path, high, "field.too-large");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(150) })]

    /// Whatever is typed, each field stands somehow and the question is answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(A|mA|mm2|m|°C|)",
                "\\PC{0,12}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
                Just("a".to_owned()),
                Just("pump relay".to_owned()),
            ],
            FIELDS.len(),
        ),
    ) {
        let typed: Vec<_> = FIELDS.into_iter().zip(texts.iter().map(String::as_str)).collect();
        prop_assert_eq!(lacking(&report(&feed(&typed)), "feeds", &typed), Vec::<String>::new());
    }
}
