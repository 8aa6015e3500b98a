//! Where top dead centre lies, and the wheel's name.

use quietpin_core::{
    finding::Severity::{Danger, Fault},
    report::report,
};

use super::{planned, told, words};

/// By hand: 16 seen at 1000 and at 4000 a minute with 10 locked are 6 too early; 84 + 6 is 90.
#[test]
fn an_offset_that_is_wrong_is_told_by_the_number_to_enter() {
    let name = "trigger-gap-differs";
    let light = |seen| {
        [
            ("wheels.gap_angle", ""),
            ("controller.locked_advance", "10 deg"),
            ("trigger.seen_low", seen),
            ("trigger.speed_low", "1000 rpm"),
            ("trigger.seen_high", seen),
            ("trigger.speed_high", "4000 rpm"),
        ]
    };
    let said = words(name, &light("16 deg"), "trigger.offset-wrong");
    assert!(said.contains("6° too early at any speed: enter 90° in place of 84°"), "{said}");
    let said = words(name, &light("4 deg"), "trigger.offset-wrong");
    assert!(said.contains("6° too late at any speed: enter 78° in place of 84°"), "{said}");
    // the number is entered by a tap, and with it goes what was read at the old one
    let found = report(&planned(name, &light("4 deg"))).findings;
    let found = found.iter().find(|it| it.message.code == "trigger.offset-wrong").expect("it");
    let edited = planned(name, &light("4 deg")).edited(&found.remedies[0].edits).expect("a place");
    assert_eq!(edited.text(quietpin_core::fields::controller::OFFSET), "78 deg");
    assert!(report(&edited).findings.iter().all(|it| it.message.code != "trigger.offset-wrong"));
    // without the offset that is entered, which way it changes
    let mut blank = light("4 deg").to_vec();
    blank.push(("controller.offset", ""));
    let said = words(name, &blank, "trigger.offset-wrong-blank");
    assert!(said.contains("6° smaller (90° becomes 84°)"), "{said}");
}

#[test]
fn the_angle_behind_the_gap_and_the_offset_are_one_angle() {
    let name = "trigger-gap-differs";
    let apart = |angle| told(name, &[("wheels.gap_angle", angle)], "trigger.gap-differs");
    assert_eq!(apart("96 deg"), [Danger], "12 degrees too early");
    assert_eq!(apart("72 deg"), [Fault], "12 degrees too late");
    assert_eq!(apart("86 deg"), [], "2 degrees: as a mark is read");
    assert_eq!(apart("87 deg"), [Danger]);
    assert_eq!(apart(""), []);
    let turned = [("controller.offset", "-276 deg"), ("wheels.gap_angle", "84 deg")];
    assert_eq!(told(name, &turned, "trigger.gap-differs"), [], "a turn apart is the same");
}

/// By hand: tooth 20 of 60 is 19 × 6° = 114°. A controller that is told 84° fires 30° early (kick-back, common practice, no source), one
/// that is told 144° as much late.
#[test]
fn a_tooth_that_differs_from_the_offset_says_which_way_and_how_much() {
    let (name, code) = ("trigger-offset-differs", "trigger.offset-differs");
    let with = |offset| [("controller.offset", offset)];
    assert_eq!(told(name, &[], code), [Danger]);
    let said = words(name, &[], code);
    assert!(
        said.contains("30° too early") && said.contains("If it is 20 again, enter 114°"),
        "{said}"
    );
    assert_eq!(told(name, &with("144 deg"), code), [Fault]);
    assert!(words(name, &with("144 deg"), code).contains("30° too late"));
    assert_eq!(told(name, &with("116 deg"), code), [], "within half a tooth");
    // what a light shows of the same is told by the light alone
    let lit = |seen| {
        [
            ("trigger.seen_low", seen),
            ("trigger.speed_low", "1000 rpm"),
            ("trigger.seen_high", seen),
            ("trigger.speed_high", "3000 rpm"),
        ]
    };
    assert_eq!(told(name, &lit("40 deg"), code), [], "30 degrees early");
    assert_eq!(told(name, &lit("40 deg"), "trigger.offset-wrong"), [Danger]);
    assert_eq!(told(name, &lit("-20 deg"), code), [Danger], "light and tooth don't agree");
}

/// By hand: twelve positions less one: the gap and the tooth behind it reach from 60° before the first tooth to 30° behind it. A spark of
/// a twin at 0 or 360° falls there where the first tooth stands at top dead centre, and half a turn away where the seventh does.
#[test]
fn where_the_gap_is_not_known_it_is_asked_for_and_the_tooth_tells() {
    let name = "trigger-gap-unknown";
    let codes = |texts: &[(&str, &str)]| {
        let [unknown, loses] = ["trigger.gap-unknown", "trigger.loses"];
        (told(name, texts, unknown).len(), told(name, texts, loses).len())
    };
    assert_eq!(codes(&[]), (1, 0));
    assert!(words(name, &[], "trigger.gap-unknown").contains("Count the tooth at TDC"));
    assert_eq!(codes(&[("trigger.tooth", "1")]), (0, 1));
    assert_eq!(codes(&[("trigger.tooth", "7")]), (0, 0));
    assert_eq!(codes(&[("controller.offset", "180 deg")]), (0, 0));
    // the firings as they are, not as if they were even: the second of an odd-fire twin
    let odd = [("engine.spacing", "angles"), ("engine.angles", "0 180"), ("trigger.tooth", "7")];
    assert_eq!(codes(&odd), (0, 1));
}

#[test]
fn a_wheel_typed_by_its_name_is_taken_apart_by_a_tap() {
    let name = "cranking-wheel-by-name";
    let edits = |typed| {
        let plan = planned(name, &[("wheels.crank_teeth", typed)]);
        let found = report(&plan).findings;
        let found = found.iter().find(|it| it.message.code == "cranking.wheel-by-name")?;
        let texts: Vec<_> = found.remedies[0].edits.iter().map(|it| it.text.clone()).collect();
        Some((texts, found.remedies.len()))
    };
    let apart = |one: &str, other: &str, n| Some((vec![one.to_owned(), other.to_owned()], n));
    assert_eq!(edits("60-2"), apart("60", "2", 1));
    assert_eq!(edits("36 - 1"), apart("36", "1", 1));
    assert_eq!(edits("36-2-2-2"), apart("36", "2", 2), "and that one gap is worked out");
    assert_eq!(edits("60"), None);
    assert_eq!(edits("-60"), None, "no name");
}
