//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    report::{Tone, report},
    schema::{Part, Place},
};
use quietpin_tests::typed::{answers, check_refused, lacking, planned};

use super::plan;

/// The finding at the field; every answer is still given.
#[track_caller]
fn check(path: &str, text: &str, finding: &str) {
    let plan = plan(&[(path, text)]);
    let report = report(&plan);
    check_refused(&plan, &report, path, finding);
    let subjects: Vec<_> = answers(&report, "bus").iter().map(|it| it.subject.as_str()).collect();
    assert_eq!(subjects, ["bus.termination", "bus.wire", "bus.levels", "bus.load"], "{path}");
    let is_good = |subject: &str| {
        let all = answers(&report, "bus");
        all.iter().any(|it| it.subject == subject && it.verdict.tone == Tone::Good)
    };
    // what does not rest on it is answered as before
    let others = subjects.iter().filter(|it| is_good(it)).count();
    let least = usize::from(!path.ends_with("bit_rate")) + 1;
    assert!(others >= least, "{path}: {others} are good");
}

#[test]
fn what_is_none_of_a_bus_is_named_and_the_rest_is_answered() {
    check("bus.bit_rate", "500 V", "field.wrong-unit");
    check("bus.bit_rate", "4 kbit/s", "field.too-small");
    check("bus.bit_rate", "2 Mbit/s", "field.too-large");
    check("bus.bit_rate", "fast", "field.no-number");
    check("bus.terminators", "5", "field.too-large");
    check("bus.terminators", "1.5", "field.not-whole");
    check("bus.terminated_at", "somewhere", "field.unknown-choice");
    check("bus.length", "4 V", "field.wrong-unit");
    check("bus.length", "0 m", "field.too-small");
    check("bus.length", "6000 m", "field.too-large");
    check("bus.reading", "60 V", "field.wrong-unit");
    check("bus.reading", "-1 ohm", "field.too-small");
    check("bus.reading", "20 Mohm", "field.too-large");
    check("bus.reading", "closed", "field.no-number");
    check("bus.branch", "-1 m", "field.too-small");
    check("bus.branch", "short", "field.no-number");
    check("bus.branch", "2000 m", "field.too-large");
    check("bus.shape", "ring", "field.unknown-choice");
    check("bus.high", "100 V", "field.too-large");
    check("bus.high", "2.6 A", "field.wrong-unit");
    check("bus.low", "-40 V", "field.too-small");
    check("bus.low", "low", "field.no-number");
    check("bus.other_rate", "1 kbit/s", "field.too-small");
    check("bus.other_rate", "2 Mbit/s", "field.too-large");
    check("bus.size", "0.01 mm2", "field.too-small");
    check("bus.size", "20 mm2", "field.too-large");
}

#[test]
fn what_is_none_of_a_frame_is_named() {
    check("frames.0.identifier", "800", "bus.no-identifier");
    check("frames.0.identifier", "-5F0", "bus.no-identifier");
    check("frames.0.identifier", "engine", "bus.no-identifier");
    check("frames.0.identifier_kind", "12", "field.unknown-choice");
    check("frames.0.bytes", "9", "field.too-large");
    check("frames.0.bytes", "-1", "field.not-whole");
    check("frames.0.period", "20 Hz", "field.wrong-unit");
    check("frames.0.period", "0 ms", "field.too-small");
    check("frames.0.period", "2 days", "field.unknown-unit");
    check("frames.0.data", "01 02", "bus.no-data");
    check("frames.0.data", "01 02 03 04 05 06 07 0G", "bus.no-data");
    check("frames.0.data", "1 2 3 4 5 6 7 8", "bus.no-data");
}

fn verdict(typed: &[(&str, &str)], subject: &str) -> &'static str {
    let report = report(&plan(typed));
    let all = answers(&report, "bus");
    all.iter().find(|it| it.subject == subject).expect("the answer").verdict.message.code
}

#[test]
fn what_a_meter_says_without_an_end_is_read() {
    for text in ["OL", "ol", "O.L", "0L", "open", "inf", "∞"] {
        assert_eq!(verdict(&[("bus.reading", text)], "bus.termination"), "bus.pair-none", "{text}");
    }
    for text in ["60", "60R", "0.06k", "59..61 ohm", "60 ±2"] {
        assert_eq!(verdict(&[("bus.reading", text)], "bus.termination"), "bus.pair-read", "{text}");
    }
}

#[test]
fn a_bit_rate_is_read_as_it_is_written() {
    for text in ["500 kbit/s", "500k", "500", "0.5 Mbit/s", "500 kbps", "500000 bit/s", "500 kBd"] {
        let report = report(&plan(&[("bus.bit_rate", text)]));
        let shown = report.fields["bus.bit_rate"].value.as_ref().map(|it| it.shown.as_str());
        assert_eq!(shown, Some("500 kbit/s"), "{text}");
    }
}

#[test]
fn an_identifier_and_data_are_read_as_they_are_written() {
    for text in ["5F0", "5f0", "0x5F0", "5F0h"] {
        let report = report(&plan(&[("frames.0.identifier", text)]));
        let shown = report.fields["frames.0.identifier"].value.as_ref().map(|it| it.shown.as_str());
        assert_eq!(shown, Some("5F0"), "{text}");
    }
    for text in ["0102030405060708", "01 02 03 04 05 06 07 08", "01,02,03,04,05,06,07,08"] {
        let report = report(&plan(&[("frames.0.data", text)]));
        assert!(report.findings.is_empty(), "{text}: {:?}", report.findings);
    }
}

#[test]
fn a_blank_plan_is_asked_for_one_thing_and_finds_nothing() {
    let report = report(&Plan::default());
    let answers = answers(&report, "bus");
    let [answer] = answers.as_slice() else { panic!("one answer") };
    assert_eq!(answer.verdict.message.code, "bus.blank");
    assert!(answer.why.is_none() && answer.to_do.is_empty() && report.findings.is_empty());
}

/// Each blank is answered by what can be given.
#[test]
fn a_part_is_answered_where_a_part_is_known() {
    let of = |typed: &[(&str, &str)]| {
        let report = report(&planned(typed, &[]));
        assert!(report.findings.is_empty(), "{:?}", report.findings);
        let all = answers(&report, "bus");
        all.iter().map(|it| it.verdict.message.code).collect::<Vec<_>>()
    };
    assert_eq!(of(&[("bus.terminators", "2")]), ["bus.pair-planned", "bus.wire-open"]);
    assert_eq!(of(&[("bus.bit_rate", "500")]), ["bus.pair-open", "bus.wire-no-length"]);
    assert_eq!(of(&[("bus.length", "4 m")]), ["bus.pair-open", "bus.wire-no-rate"]);
    let half = of(&[("bus.high", "2.6 V")]);
    assert_eq!(half, ["bus.pair-open", "bus.wire-open", "bus.levels-half"]);
    let frame = of(&[("frames.0.identifier", "5F0")]);
    assert_eq!(frame, ["bus.pair-open", "bus.wire-open", "bus.load-no-period"]);
    let frame = of(&[("frames.0.period", "10 ms")]);
    assert_eq!(frame, ["bus.pair-open", "bus.wire-open", "bus.load-no-rate"]);
    // one whose period is not known is left out, and the load is no yes
    let two = [("bus.bit_rate", "500"), ("frames.0.period", "10 ms"), ("frames.1.name", "dash")];
    assert_eq!(of(&two), ["bus.pair-open", "bus.wire-no-length", "bus.load-so-far"]);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    /// Whatever is typed, each field stands somehow and the question is answered.
    #[test]
    fn no_text_stops_the_report(
        texts in prop::collection::vec(
            prop_oneof![
                "[0-9.,eE+-]{0,8} ?(ohm|m|kbit/s|V|ms|)",
                "\\PC{0,12}",
                "[0-9A-Fxh ]{0,20}",
                Just("1e308".to_owned()),
                Just("0".to_owned()),
                Just("OL".to_owned()),
            ],
            30,
        ),
    ) {
        let places = [Part::Bus, Part::Frames].into_iter().flat_map(Part::places);
        let paths: Vec<_> = places.map(Place::path).collect();
        let typed: Vec<_> = paths.iter().map(String::as_str).zip(texts.iter().map(String::as_str)).collect();
        prop_assert_eq!(lacking(&report(&plan(&typed)), "bus", &typed), Vec::<String>::new());
    }
}
