//! A coil that is held on, coils that share an igniter, and one that is charged while the controller starts.
//!
//! Source: beside each test.

use quietpin_core::{
    finding::Severity::{self, Danger, Doubt, Fault},
    quantity::{Measure, amperes},
    report::report,
    tables::fuses::holds_for,
};
use serde_json::Value;

use super::{planned, told, words};

const HELD: &str = "coils-held";
const NOTHING: [Severity; 0] = [];

/// Source: `reference/fuses_blade.json`, from memory; between two gates by hand, along a straight line of the logarithms.
#[test]
fn a_fuse_may_hold_as_long_as_its_gates_let_it() {
    let table: Value =
        serde_json::from_str(include_str!("../reference/fuses_blade.json")).expect("a table");
    for (kind, rating) in [("C", 20.0), ("E", 60.0)] {
        let gates = table["longest_s"][kind].as_object().expect("gates");
        for (percent, seconds) in gates {
            let times = percent.parse::<f64>().expect("a number") / 100.0;
            let holds = holds_for(amperes(rating), amperes(rating * times * 1.000_001));
            let expected = seconds.as_f64().expect("a time");
            let holds = holds.expect("it blows").base();
            assert!((holds / expected - 1.0).abs() < 1e-3, "{kind} {percent} %: {holds} s");
        }
        assert_eq!(holds_for(amperes(rating), amperes(rating * 1.34)), None);
        // between the last two, by hand: the share ln(5.7 / 3.5) / ln(6 / 3.5) = 0.90483 of the way
        let expected = if kind == "C" { 0.11656 } else { 1.2035 };
        let holds = holds_for(amperes(rating), amperes(rating * 5.7)).expect("it blows").base();
        assert!((holds / expected - 1.0).abs() < 1e-3, "{kind} 570 %: {holds} s");
        assert!(holds_for(amperes(rating), amperes(rating * 20.0)).is_some());
    }
}

/// Source: `reference/fuses_blade.json`, from memory: type C goes up to 40 A, at 200 % for 5 s; what is larger is of type E, 60 s.
#[test]
fn a_blade_of_40_amperes_is_a_regular_one_and_a_larger_one_is_not() {
    for (rating, seconds) in [(40.0, 5.0), (42.0, 60.0), (50.0, 60.0)] {
        let holds = holds_for(amperes(rating), amperes(rating * 2.000_001)).expect("it blows");
        assert!((holds.base() / seconds - 1.0).abs() < 1e-3, "{rating} A: {holds:?}");
    }
}

/// By hand, at 14.8 V less 1 V: 13.8 V / 0.5 Ω = 27.6 A; 27.6² × 0.5 Ω = 381 W heat 100 g of copper (common practice) by 100 K in
/// 3870 J / 381 W = 10.2 s, 27.6 W 10 g about the igniter in 14 s. 27.6 A are 184 % of 15 A: 50 s × (5 / 50)^(ln(1.84 / 1.6) / ln(2 / 1.6))
/// = 11.8 s; 276 % of 10 A, 5 s × (0.5 / 5)^(ln(2.76 / 2) / ln(3.5 / 2)) = 1.3 s.
#[test]
fn a_fuse_that_holds_longer_than_a_coil_that_is_held_on_lives_is_told() {
    let code = "coils.fuse-bears-held";
    let fused = |rating| told(HELD, &[("relays.0.fuse", rating)], code);
    assert_eq!(fused("15 A"), [Doubt]);
    assert_eq!(fused("10 A"), NOTHING);
    let said = words(HELD, &[], code);
    assert!(said.contains("27.6 A, and the 15 A fuse may last 11.8 s at that"), "{said}");
    assert!(
        said.contains("the coil's winding, with 381 W in it, is 100 °C hotter in 10.2 s"),
        "{said}"
    );
    let ever = words(HELD, &[("relays.0.fuse", "25 A")], code);
    assert!(ever.contains("the 25 A fuse may not blow at that"), "{ever}");
    // whatever the highest speed, and whether it is known
    assert_eq!(told(HELD, &[("engine.highest_speed", "7000 rpm")], code), [Doubt]);
    assert_eq!(told(HELD, &[("engine.cylinders", ""), ("engine.order", "")], code), [Doubt]);
    assert_eq!(told(HELD, &[("coils.lets_go", "500 ms")], code), NOTHING);
    assert_eq!(told(HELD, &[("coils.lets_go", "30 s")], code), [Doubt]);
}

/// By hand: at its limit of 10 A the coil leaves 14.8 V − 5 V to the igniter, 98 W: 387 J / 98 W = 3.95 s, before the coil at 50 W.
/// 10 A are 333 % of 3 A, 0.61 s; of 10 A, 100 %.
#[test]
fn an_igniter_at_its_limit_dies_before_its_coil() {
    let code = "coils.fuse-bears-held";
    let limited = |fuse| [("coils.limit", "10 A"), ("relays.0.fuse", fuse)];
    let said = words(HELD, &limited("10 A"), code);
    assert!(said.contains("the igniter, with 98 W in it, is 100 °C hotter in 3.95 s"), "{said}");
    assert_eq!(told(HELD, &limited("3 A"), code), NOTHING);
}

/// What a stuck output would do it would do in every car: a finding is what this plan itself does.
#[test]
fn a_coil_that_nothing_in_the_plan_holds_on_is_no_finding_and_its_fuse_is_spoken_of() {
    let code = "coils.fuse-bears-held";
    let feed = |texts: &[(&str, &str)]| {
        let report = report(&planned(HELD, texts));
        let answers = report.sections.into_iter().flat_map(|it| it.answers);
        let feed = answers.into_iter().find(|it| it.subject == "coils.feed").expect("the feed");
        feed.why.as_ref().map(|it| it.text.clone()).unwrap_or_default()
    };
    for texts in [[("outputs.0.pull_up", "")], [("coils.input", "")]] {
        assert_eq!(told(HELD, &texts, code), NOTHING, "{texts:?}");
        let why = feed(&texts);
        assert!(why.contains("would keep a coil on"), "{why}");
        assert!(why.contains("the 15 A fuse may last 11.8 s at that"), "{why}");
    }
    assert!(!feed(&[]).contains("would keep a coil on"), "{}", feed(&[]));
    // where the fuse blows in time there is nothing to speak of
    let quiet = [("outputs.0.pull_up", ""), ("relays.0.fuse", "10 A")];
    assert!(!feed(&quiet).contains("would keep a coil on"), "{}", feed(&quiet));
}

/// By hand: 15 A and more outlast the coil, 10 A blow in 1.3 s against 10.2 s; 1.1 × 10 A are the 11 A that the thinnest wire bears, and
/// some 2 A RMS would tire a fuse of 3 A.
#[test]
fn a_fuse_of_its_own_is_the_largest_that_still_blows_in_time() {
    let said = words(HELD, &[("engine.highest_speed", "7000 rpm")], "coils.fuse-bears-held");
    assert!(said.contains("its own fuse of 10 A"), "{said}");
}

#[test]
fn a_relay_that_follows_the_engine_is_a_cure_and_what_it_saves_is_said() {
    let planned = planned(HELD, &[]);
    let report = report(&planned);
    let mut findings = report.findings.iter();
    let found = findings.find(|it| it.message.code == "coils.fires-at-key-on").expect("it is told");
    let cure = found.remedies.first().expect("a cure");
    let typed: Vec<_> = cure.edits.iter().map(|it| (it.path.as_str(), it.text.as_str())).collect();
    assert_eq!(typed, [("relays.0.switched_by", "speed"), ("relays.0.relay_on_at", "100 rpm")]);
    assert_eq!(told(HELD, &typed, "coils.fuse-bears-held"), NOTHING);
    let cut = super::planned(HELD, &typed);
    let why = quietpin_core::report::report(&cut).sections.into_iter().flat_map(|it| it.answers);
    let why: Vec<_> =
        why.filter(|it| it.subject == "coils.feed").filter_map(|it| it.why.clone()).collect();
    assert!(
        why.iter()
            .any(|it| it.text.contains("With its threshold at 100 rpm the relay saves a coil")),
        "{why:?}"
    );
    // at nought it never lets go
    let nought = [typed[0], ("relays.0.relay_on_at", "0 rpm")];
    assert_eq!(told(HELD, &nought, "coils.fuse-bears-held"), [Doubt]);
}

/// Common practice, no source: 0.3 V between battery and coils are too much. What is lost goes with the length of the lead.
#[test]
fn a_lead_that_loses_more_than_three_tenths_of_a_volt_is_told() {
    let lost = |metres: f64| {
        let example = quietpin_tests::plans::ALL.iter().find(|it| it.name == "coils-eight");
        let mut plan = quietpin_core::plan::parse(example.expect("it is there").text).expect("it");
        assert!(plan.set("relays.0.lead_length", &format!("{metres} m")), "a place");
        let findings = report(&plan).findings;
        let found = findings.into_iter().find(|it| it.message.code == "coils.lead-drops")?;
        found.message.values.get("drop").expect("a value").number
    };
    let metre = lost(50.0).expect("that is far") / 50.0;
    assert!((0.28..=0.32).contains(&lost(0.31 / metre).expect("0.31 V are told")), "{metre} V/m");
    assert_eq!(lost(0.29 / metre), None, "0.29 V are not");
}

/// By hand: 10 A for two coils are 5 A each, and (5 / 7)² = half of the energy; 15 A are 7.5 A each.
#[test]
fn coils_on_one_igniter_share_what_it_holds() {
    let name = "coils-shared-igniter";
    let code = "coils.shared-limit";
    assert_eq!(told(name, &[], code), [Fault]);
    assert!(words(name, &[], code).contains("each gets 5 A"));
    assert_eq!(told(name, &[], "coils.falls-short"), NOTHING, "said once");
    assert_eq!(told(name, &[("coils.limit", "15 A")], code), NOTHING);
    for alone in ["1", ""] {
        assert_eq!(told(name, &[("coils.per_igniter", alone)], code), NOTHING);
    }
    assert_eq!(told(name, &[("coils.current", "")], code), [Doubt], "7 A is only usual");
    assert_eq!(told(name, &[], "coils.no-such-input"), [Fault]);
}

/// By hand: 5 V × 10 k / (10 k + 1 k) = 4.55 V at an input that acts from 3 V; with 10 k up 2.5 V. The coil is charged through:
/// (12.6 V − 1 V) / 0.5 Ω = 23.2 A, 3 mH × 23.2² / 2 = 0.807 J; held at 10 A 0.15 J.
#[test]
fn an_igniter_that_charges_while_the_controller_starts_fires_as_it_is_up() {
    let name = "coils-key-on";
    let code = "coils.fires-at-key-on";
    assert_eq!(told(name, &[], code), [Danger]);
    let said = words(name, &[], code);
    assert!(said.contains("23.2 A") && said.contains("807 mJ"), "{said}");
    let said = words(name, &[("coils.limit", "10 A")], code);
    assert!(said.contains("150 mJ"), "{said}");
    for (path, text) in [
        ("outputs.0.pull_up", "10 kohm"),
        ("outputs.0.pull_up", ""),
        ("outputs.0.pull_down", "100 ohm"),
        ("coils.input", ""),
    ] {
        assert_eq!(told(name, &[(path, text)], code), NOTHING, "{path} {text}");
    }
    // whatever is usual for an input, 4.55 V act on it, and 2.5 V may; a spark is one of any coil
    assert_eq!(told(name, &[("loads.0.pull_in", "")], code), [Danger]);
    let weak = [("loads.0.pull_in", ""), ("outputs.0.pull_up", "10 kohm")];
    assert_eq!(told(name, &weak, code), [Doubt]);
    assert_eq!(told(name, &[("coils.inductance", "")], code), [Danger]);
}

/// By hand: 5 V × 10 k / (10 k + 50) = 4.98 V at an input that acts from 3 V, and the coils come on with the key. Common practice, no
/// source: a coil that charges for longer than its dwell burns, or its igniter does.
#[test]
fn an_igniter_whose_output_rests_high_charges_its_coil_and_the_setting_is_the_cure() {
    let (name, code) = ("coils-at-rest", "outputs.live-at-rest");
    assert_eq!(told(name, &[], code), [Danger], "both in one");
    let said = words(name, &[], code);
    assert!(said.contains("counts as on from 3 V"), "{said}");
    assert!(said.contains("Its coil charges as long as it has power: 27.6 A"), "{said}");
    assert!(said.contains("the 15 A fuse may not save it"), "{said}");
    assert!(said.contains("The same goes for Igniter 2"), "{said}");
    assert!(said.contains("Set the controller so that 5 V counts as on"), "{said}");
    let of_coils = |texts: &[(&str, &str)]| {
        let answers = report(&planned(name, texts)).sections.into_iter().flat_map(|it| it.answers);
        let all = answers.filter(|it| it.subject.starts_with("coils"));
        all.map(|it| it.verdict.message.text.clone()).collect::<Vec<_>>().join("; ")
    };
    assert!(of_coils(&[]).contains("They charge with the outputs off"), "{}", of_coils(&[]));
    // set right it is calm
    let right = [("outputs.0.on_level", "battery")];
    assert_eq!(told(name, &right, code), NOTHING);
    assert!(!of_coils(&right).contains("They charge"), "{}", of_coils(&right));
    // an igniter that lets go by itself burns nothing
    assert_eq!(told(name, &[("coils.lets_go", "100 ms")], code), [Fault]);
    // what is no igniter's input charges nothing
    let other = words(name, &[("coils.input", ""), ("loads.1.output", "")], code);
    assert!(!other.contains("Its coil charges"), "{other}");
}

/// By hand, at 14.8 V: 2 mH, 0.5 Ω cold and 0.8 V at the igniter reach 7 A in 1.1 ms; 6 mH, hot, 2 V in four times that.
#[test]
fn a_dwell_of_a_coil_that_is_not_known_is_asked_for_and_none_is_given() {
    let name = "coils-unknown";
    let code = "coils.dwell-anything";
    assert_eq!(told(name, &[], code), [Doubt]);
    let said = words(name, &[], code);
    assert!(
        said.contains("inductance is not known: the dwell for 7 A is anything from 1.1"),
        "{said}"
    );
    assert!(said.contains("Start with 1.1"), "{said}");
    let resistance = [("coils.resistance", ""), ("coils.inductance", "3 mH")];
    assert!(words(name, &resistance, code).contains("resistance is not known"));
    assert_eq!(told(name, &[("coils.inductance", "3 mH")], code), NOTHING);
    // one that is entered is held against both ends of what is usual
    let code = "coils.entered-anything";
    let entered = [("controller.dwell", "2.5 ms")];
    assert_eq!(told(name, &entered, code), [Doubt]);
    assert_eq!(told(name, &entered, "coils.dwell-anything"), NOTHING);
    let known = [("controller.dwell", "2.5 ms"), ("coils.inductance", "3.5 mH")];
    assert_eq!(told(name, &known, code), NOTHING);
    // an igniter that holds the current bears any dwell that is long enough
    let held = [("controller.dwell", "6 ms"), ("coils.limit", "8 A")];
    assert_eq!(told(name, &held, code), NOTHING);
}
