//! Kill switch, starter, what the controller survives, and the wire of a single load.

use quietpin_core::finding::Severity::{self, Danger, Doubt, Fault, Note};

use crate::points::{told, words};

const NOTHING: [Severity; 0] = [];

/// Common practice, no source: an alternator that turns feeds the engine without a battery.
#[test]
fn a_kill_switch_that_leaves_the_alternator_is_a_danger() {
    let of = |texts: &[(&str, &str)]| told("feeds-kill-runs-on", texts, "feeds.kill-runs-on");
    assert_eq!(of(&[]), [Danger]);
    for cuts in ["none", "both", ""] {
        assert_eq!(of(&[("battery.kill_switch", cuts)]), NOTHING, "{cuts}");
    }
    assert_eq!(of(&[("battery.alternator", "")]), NOTHING, "no alternator is known");
    let idle = [("battery.alternator", ""), ("battery.alternator_idle", "30 A")];
    assert_eq!(of(&idle), [Danger]);
}

/// Source: ISO 16750-2, from memory: 24 V for 60 s, a load dump held to 35 V, 14 V reversed for 60 s.
#[test]
fn what_the_controller_does_not_survive_is_one_note() {
    let of = |texts: &[(&str, &str)]| told("feeds-kill-runs-on", texts, "feeds.not-survived");
    let said = |texts: &[(&str, &str)]| words("feeds-kill-runs-on", texts, "feeds.not-survived");
    assert_eq!(of(&[]), [Note]);
    let all = said(&[]);
    assert!(all.contains("24 V") && all.contains("35 V") && all.contains("reversed"), "{all}");
    let highest = |volts: &'static str| {
        [("controller.highest_supply", volts), ("controller.reverse", "survives")]
    };
    assert_eq!(of(&highest("23.9 V")), [Note]);
    assert!(!said(&highest("24 V")).contains("jump start"), "24 V is survived");
    assert_eq!(of(&highest("34.9 V")), [Note]);
    assert_eq!(of(&highest("35 V")), NOTHING);
    assert_eq!(of(&highest("")), NOTHING, "a blank says nothing");
    let reversed = [("controller.highest_supply", "40 V")];
    assert!(!said(&reversed).contains("35 V"));
    assert_eq!(of(&[("controller.highest_supply", "40 V"), ("controller.reverse", "")]), NOTHING);
    // of a car of 24 V
    assert_eq!(of(&[&highest("32 V")[..], &[("battery.resting", "25 V")]].concat()), NOTHING);
}

/// Common practice, no source.
#[test]
fn a_starter_that_nothing_blocks_is_a_danger_where_that_is_said() {
    let of =
        |texts: &[(&str, &str)]| told("feeds-starter-unlocked", texts, "feeds.starter-unlocked");
    assert_eq!(of(&[]), [Danger]);
    for blocks in ["switch", "controller", ""] {
        assert_eq!(of(&[("relays.0.interlock", blocks)]), NOTHING, "{blocks}");
    }
    assert_eq!(of(&[("relays.0.purpose", "other")]), NOTHING);
}

/// Common practice, no source: the solenoid of a starter takes four times what holds it, for 100 ms. By hand: between 200 % for 150 ms and
/// 350 % for 40 ms at least (ISO 8820-3, from memory) a fuse bears 100 ms up to 2 × (3.5 / 2)^0.3068 = 2.375 times its rating, 35.6 A of
/// 15 A. 40 A at 14.8 V are 0.37 Ω: with 30 mΩ before (common practice, no source) and 27.6 mΩ of wire, out and back, 34.6 A.
#[test]
fn a_starters_solenoid_must_not_blow_its_fuse() {
    let of = |inrush: &str, draws: &str| {
        let texts = [("relays.0.inrush", inrush), ("relays.0.draws", draws)];
        told("feeds-starter-unlocked", &texts, "feeds.inrush-over-fuse")
    };
    assert_eq!(of("", "10 A"), NOTHING);
    assert_eq!(of("", "11 A"), [Doubt]);
    assert_eq!(of("35.6 A", "10 A"), NOTHING);
    assert_eq!(of("35.7 A", "10 A"), [Doubt]);
}

/// A heater on a thin wire behind the fuse of 15.
const BRANCH: [(&str, &str); 3] = [
    ("loads.0.wire_size", "0.5 mm2"),
    ("switched_feeds.fuse", "25 A"),
    ("switched_feeds.size", "2.5 mm2"),
];

fn of_branch(texts: &[(&'static str, &'static str)], code: &str) -> Vec<Severity> {
    told("feeds-ground-rises", &[&BRANCH[..], texts].concat(), code)
}

/// By hand: 0.5 mm² of class B bears 11 A × 0.9774 = 10.75 A, and 25 A let 27.5 A pass for a hundred hours (ISO 8820-3, from memory): it burns.
/// 7.5 A let 8.25 A pass.
#[test]
fn a_thin_wire_of_a_load_behind_a_large_fuse_is_a_danger() {
    let of = |texts: &[(&'static str, &'static str)]| of_branch(texts, "feeds.branch-unfused");
    let size = |size: &'static str| [("loads.0.wire_size", size)];
    assert_eq!(of(&[]), [Danger]);
    assert_eq!(of(&size("")), NOTHING, "a blank says nothing");
    assert_eq!(of(&size("2.5 mm2")), NOTHING);
    assert_eq!(of(&[("switched_feeds.fuse", "7.5 A")]), NOTHING);
    assert_eq!(of(&[("loads.0.far_end", "ground")]), NOTHING, "the output is what feeds it");
    // as thick as its feed, that is what is told
    assert_eq!(of(&[("switched_feeds.size", "0.5 mm2")]), NOTHING);
    let battery = [
        ("loads.0.far_end", "battery"),
        ("switched_feeds.battery_fuse", "25 A"),
        ("switched_feeds.battery_size", "2.5 mm2"),
    ];
    assert_eq!(of(&battery), [Danger]);
    let relay = [("loads.0.far_end", "relay"), ("loads.0.far_relay", "Main relay")];
    assert_eq!(of(&relay), [Danger]);
}

/// By hand: a heater of 6 Ω takes 14.8 V / 6 Ω = 2.47 A, and 3 A carry 2.25 A for long (75 %: common practice, no source), 4 A 3 A; 4 A let
/// 4.4 A pass, less than the 10.75 A of 0.5 mm². Of 1.4 Ω 10.57 A: 15 A carry that, and burn the wire; then only a thicker one is left.
#[test]
fn a_fuse_of_its_own_cures_a_thin_wire_of_a_load() {
    let said = |texts: &[(&'static str, &'static str)]| {
        words("feeds-ground-rises", &[&BRANCH[..], texts].concat(), "feeds.branch-unfused")
    };
    let six = said(&[("loads.0.resistance", "6 ohm")]);
    assert!(six.contains("a fuse of 4 A for heater 1 alone"), "{six}");
    let large = said(&[("loads.0.resistance", "1.4 ohm")]);
    assert!(!large.contains("alone") && large.contains("wire of"), "{large}");
}

/// By hand, as above: 20 A let 22 A pass, with 28 % less 17.2 A: more than the overload of 0.5 mm² for good. Ten ohms take 1.48 A; a fuse
/// that carries less is told as any other, and so is one that its load's start blows.
#[test]
fn a_fuse_of_its_own_is_judged_as_any_other() {
    let fused = |fuse: &'static str| [("loads.0.fuse", fuse), ("loads.0.resistance", "10 ohm")];
    let of = |fuse, code: &str| of_branch(&fused(fuse), code);
    for code in ["feeds.branch-unfused", "feeds.fuse-over-wire", "feeds.fuse-too-small"] {
        assert_eq!(of("3 A", code), NOTHING, "{code}");
    }
    assert_eq!(of("20 A", "feeds.fuse-over-wire"), [Danger]);
    assert_eq!(of("20 A", "feeds.branch-unfused"), NOTHING, "it has one");
    assert_eq!(of("1 A", "feeds.fuse-too-small"), [Fault]);
    // by hand: 2 Ω read cold are a motor of 14.8 V / (2 Ω × 6.5) = 1.14 A; with 6.5 times that at first, 2 A bear 25 ms up to 10.1 A
    let motor =
        |fuse| [("loads.0.kind", "motor"), ("loads.0.resistance", "2 ohm"), ("loads.0.fuse", fuse)];
    assert_eq!(of_branch(&motor("2 A"), "feeds.inrush-over-fuse"), NOTHING);
    // a wire that is not typed is as its feed's: 25 A before 2.5 mm²
    let blank = [("loads.0.wire_size", ""), ("loads.0.fuse", "25 A")];
    assert_eq!(of_branch(&blank, "feeds.fuse-over-wire"), NOTHING);
    // the fuse before it is smaller, and protects the wire
    let before = [("switched_feeds.fuse", "5 A"), ("loads.0.fuse", "20 A")];
    assert_eq!(of_branch(&before, "feeds.fuse-over-wire"), NOTHING);
}
