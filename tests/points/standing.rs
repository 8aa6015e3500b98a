//! What flows out of the battery while the car stands.

use quietpin_core::{finding::Severity, report::report};

use super::{planned, told, words};

/// By hand: 12.6 V less a body diode's 0.7 V over 220 Ω and the 5 Ω of the dead supply is 52.9 mA, and 1 mA for the controller;
/// 53.9 mA × 720 h is 38.8 Ah.
#[test]
fn a_drain_is_said_in_milliamperes_and_ampere_hours_a_month_whatever_else_is_found() {
    let report = report(&planned("standing-drain-beside-a-danger", &[]));
    let sections = report.sections.iter().filter(|it| it.id == "standing");
    let answers: Vec<_> = sections.flat_map(|it| it.answers.iter()).collect();
    let why = answers[0].why.as_ref().expect("it says why").text.clone();
    assert!(why.contains("53.9 mA, 38.8 Ah a month"), "{why}");
}

#[test]
fn what_drains_by_acting_is_told_as_what_acts() {
    let name = "standing-drain-beside-a-danger";
    assert_eq!(told(name, &[], "outputs.live-key-off"), [Severity::Danger]);
    assert_eq!(told(name, &[("outputs.0.pull_up", "")], "outputs.live-key-off"), []);
    let said = words(name, &[], "outputs.live-key-off");
    assert!(said.contains("with the key off"), "{said}");
}

/// By hand: 53.9 mA and 5 % of 60 Ah a month, 4.17 mA, take half of 60 Ah in 30 Ah / 58.1 mA = 517 h, 21.5 days; 53.9 mA alone would
/// take 23.2. The 3 to 5 % a month are common practice, from memory.
#[test]
fn what_a_battery_loses_by_itself_is_counted() {
    let texts = [("battery.capacity", "60 Ah"), ("battery.other_draw", "0 mA")];
    let said = |texts: &[(&str, &str)]| {
        let report = report(&planned("standing-drain-beside-a-danger", texts));
        let answers = report.sections.into_iter().filter(|it| it.id == "standing");
        let answer = answers.flat_map(|it| it.answers).next().expect("an answer");
        answer.why.as_ref().expect("it says why").text.clone()
    };
    let why = said(&texts);
    assert!(why.contains("loses up to 3 Ah a month by itself"), "{why}");
    assert!(why.contains("after 21.5 days half of its 60 Ah"), "{why}");
    // with next to nothing drawn it is what empties it: 10 months at 5 %
    let idle = [texts[0], texts[1], ("outputs.0.pull_up", ""), ("controller.key_off_draw", "0 mA")];
    let why = said(&idle);
    assert!(why.contains("after 300 days") || why.contains("after 29"), "{why}");
}

/// By hand: 5 % of 60 Ah a month are 100 mAh a day, and half of it is gone in 300 days; 1 mA for the controller takes 24 mAh a day more:
/// 30 Ah / 124 mAh = 242 days.
#[test]
fn a_controller_whose_feed_the_key_cuts_draws_nothing_of_its_own() {
    let time = |more: &[(&str, &str)]| {
        let texts = [
            ("battery.capacity", "60 Ah"),
            ("battery.other_draw", "0 mA"),
            ("outputs.0.pull_up", ""),
        ];
        let report = report(&planned("standing-drain-beside-a-danger", &[&texts, more].concat()));
        let answers = report.sections.into_iter().filter(|it| it.id == "standing");
        let answer = answers.flat_map(|it| it.answers).next().expect("an answer");
        answer.verdict.message.text.as_str().to_owned()
    };
    let ignition = ("controller.feed", "ignition");
    let battery = ("controller.feed", "battery");
    let dies = ("controller.after_key_off", "dies");
    for cut in [[ignition].as_slice(), &[dies], &[ignition, dies]] {
        assert!(time(cut).contains("300 days"), "{cut:?}: {}", time(cut));
    }
    for fed in [
        [].as_slice(),
        &[battery],
        &[battery, dies],
        &[ignition, ("controller.key_off_draw", "1 mA")],
    ] {
        assert!(time(fed).contains("242 days"), "{fed:?}: {}", time(fed));
    }
}
