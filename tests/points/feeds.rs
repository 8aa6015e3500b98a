//! Fuse, contact and wire of a feed, the battery's cable and the alternator.
//!
//! Each plan has 12.6 V at rest and 14.8 V charging, class B (100 °C) and 20 °C around its wires, where nothing else is typed.

mod grounds;
mod guards;

use quietpin_core::{
    finding::Severity::{self, Danger, Doubt, Fault, Note},
    report::{Report, report},
};

use super::{planned, told, words};

const NOTHING: [Severity; 0] = [];

/// By hand, in parts of the resistance at 20 °C: 2.5 mm² bears 29 A at 105 °C in 20 °C (`tests/reference/wire_thinwall_current.csv`), and
/// gives off 29² × 1.33405 / 85 = 13.2 by kelvin; 44 A, 110 % of 40 A for a hundred hours (ISO 8820-3, from memory), are 1936: more than
/// 150 °C after 1936 / (13.2 − 7.6) = 346 K, reached in minutes. 110 % of 30 A, 33 A: 1089 / (13.2 − 4.3) = 122 K, 142 °C: it ages, and at
/// 40.5 A, 135 % for up to 600 s, it is past 150 °C in two or three minutes; with 28 % less nothing is. 110 % of 25 A is less than the
/// 28.3 A that the wire bears for ever, with the 17 % that the numbers are good for also at 135 %.
#[test]
fn a_wire_that_burns_behind_its_fuse_is_a_danger_and_one_that_ages_a_doubt() {
    let name = "feeds-over-wire";
    let of = |fuse: &str, code: &str| told(name, &[("relays.0.fuse", fuse)], code);
    assert_eq!(told(name, &[], "feeds.fuse-over-wire"), [Danger]);
    assert_eq!(of("40 A", "feeds.fuse-near-wire"), NOTHING, "the graver is enough");
    assert_eq!(of("30 A", "feeds.fuse-over-wire"), NOTHING);
    assert_eq!(of("30 A", "feeds.fuse-near-wire"), [Doubt]);
    assert_eq!(of("25 A", "feeds.fuse-near-wire"), NOTHING);
    assert_eq!(of("25 A", "feeds.fuse-over-wire"), NOTHING);
    let said = words(name, &[], "feeds.fuse-over-wire");
    assert!(said.contains("44 A") && said.contains("100 hours"), "{said}");
    assert!(said.contains("25 A"), "what would do is offered: {said}");
}

/// By hand: 13.5 A, 135 % of 10 A (ISO 8820-3, from memory), bring 1 mm², which bears 16.5 A, to 20 + 182.25 / (4.2729 − 0.7162) = 71.2 °C. 1.16 ×
/// 20 m / (58 × 1 mm²) = 0.4 Ω are 0.4806 Ω then, and with 0.4 Ω back and 0.06 Ω before (common practice, no source) 12.6 V give
/// 13.40 A: less than 13.5 A. Of 19.5 m: 12.6 V / 0.9186 Ω = 13.72 A.
#[test]
fn a_wire_too_long_for_its_fuse_to_blow_is_a_fault() {
    let name = "feeds-never-blows";
    let of =
        |length: &str| told(name, &[("relays.0.lead_length", length)], "feeds.fuse-never-blows");
    assert_eq!(of("20 m"), [Fault]);
    assert_eq!(of("19.5 m"), NOTHING);
    let said = words(name, &[], "feeds.fuse-never-blows");
    assert!(said.contains("13.4 A"), "{said}");
}

/// Common practice, no source: a fuse is no larger than the contact behind it.
#[test]
fn a_fuse_may_have_the_rating_of_its_contact() {
    let of = |rating: &str| {
        told("feeds-over-contact", &[("relays.0.rating", rating)], "feeds.fuse-over-contact")
    };
    assert_eq!(of("30 A"), [Fault]);
    assert_eq!(of("39 A"), [Fault]);
    assert_eq!(of("40 A"), NOTHING);
    assert_eq!(of(""), NOTHING, "nothing is said where nothing is known");
}

/// By hand: 75 % of 15 A are 11.25 A (common practice, no source). More than its rating it does not carry at all.
#[test]
fn a_fuse_carries_three_quarters_of_its_rating_for_long() {
    let of = |draws: &str| {
        told("feeds-fuse-too-small", &[("relays.0.draws", draws)], "feeds.fuse-too-small")
    };
    assert_eq!(of("11.25 A"), NOTHING);
    assert_eq!(of("11.3 A"), [Doubt]);
    assert_eq!(of("15 A"), [Doubt]);
    assert_eq!(of("15.1 A"), [Fault]);
}

/// Common practice, no source: a contact carries its rating.
#[test]
fn a_contact_carries_its_rating_and_no_more() {
    let of = |draws: &str| {
        told("feeds-contact-too-small", &[("relays.0.draws", draws)], "feeds.contact-too-small")
    };
    assert_eq!(of("30 A"), NOTHING);
    assert_eq!(of("30.1 A"), [Fault]);
    let said = words("feeds-contact-too-small", &[], "feeds.contact-too-small");
    // by hand: 31 A / 75 % = 41.3 A
    assert!(said.contains("rated for 50 A"), "{said}");
}

/// Common practice, no source: a contact makes four times its rating, 120 A of 30 A; cold lamps take ten times what they burn, less what
/// battery and wire leave of it.
#[test]
fn lamps_may_take_four_times_what_their_contact_is_rated_for() {
    let of = |texts: &[(&str, &str)]| {
        told("feeds-inrush-over-contact", texts, "feeds.inrush-over-contact")
    };
    assert_eq!(of(&[("relays.0.inrush", "")]), NOTHING);
    // what was typed goes before what is usual
    assert_eq!(of(&[("relays.0.inrush", "120 A")]), NOTHING);
    assert_eq!(of(&[("relays.0.inrush", "121 A")]), [Doubt]);
    let heater = [("relays.0.purpose", "heater"), ("relays.0.inrush", "")];
    assert_eq!(of(&heater), NOTHING, "a heater takes no more at first");
}

/// Common practice, no source: what is typed of an inrush and is half as much again as a good contact makes, six times its rating, welds it:
/// 180 A of 30 A. What is only usual is no more than a doubt.
#[test]
fn an_inrush_of_six_times_the_rating_welds_the_contact() {
    let of = |texts: &[(&str, &str)], code| told("feeds-inrush-welds", texts, code);
    let (welds, may) = ("feeds.inrush-welds", "feeds.inrush-over-contact");
    assert_eq!(of(&[("relays.0.inrush", "181 A")], welds), [Fault]);
    assert_eq!(of(&[("relays.0.inrush", "179 A")], welds), NOTHING);
    assert_eq!(of(&[("relays.0.inrush", "179 A")], may), [Doubt]);
    assert_eq!(of(&[("relays.0.inrush", "")], welds), NOTHING);
    // 260 A / 4 = 65 A
    let said = words("feeds-inrush-welds", &[], welds);
    assert!(said.contains("rated for 70 A"), "{said}");
}

/// By hand: 14.4 V − what a fuse of 10 A lets pass for long, 11 A, is below what 2.5 mm² carries: 20 A blow it first, and the wire is no
/// danger.
#[test]
fn a_wire_that_its_fuse_protects_is_not_told_to_burn_of_its_load() {
    let of = |fuse: &'static str, code| {
        let texts = [
            ("relays.0.fuse", fuse),
            ("relays.0.draws", "60 A"),
            ("relays.0.lead_size", "2.5 mm2"),
            ("relays.0.rating", "100 A"),
        ];
        told("feeds-fuse-too-small", &texts, code)
    };
    assert_eq!(of("10 A", "feeds.wire-hot"), NOTHING);
    assert_eq!(of("10 A", "feeds.fuse-too-small"), [Fault]);
    assert_eq!(of("80 A", "feeds.wire-hot"), [Danger]);
}

/// Common practice, no source: a contact of 40 A for a fan of 20 A, one of 30 A for a pump of 10 A, one of 30 A for lamps of 110 W, 9.2 A,
/// last; a rating for a resistance is good for half of it or so in lamps, and for half to two thirds in motors. By hand: 120 A, four
/// times 30 A, are 14.8 V through 0.1233 Ω: less the 30 mΩ before it (common practice, no source) lamps of 14.8 V × 10 / 0.0933 Ω cold,
/// 15.9 A burning, and a motor of 24.4 A; the lead takes some more.
#[test]
fn a_contact_is_good_for_less_in_lamps_and_motors() {
    let of = |rating: &'static str, purpose: &'static str, draws: &'static str| {
        let texts = [
            ("relays.0.rating", rating),
            ("relays.0.purpose", purpose),
            ("relays.0.draws", draws),
            ("relays.0.inrush", ""),
            ("relays.0.lead_length", ""),
        ];
        told("feeds-inrush-over-contact", &texts, "feeds.inrush-over-contact")
    };
    assert_eq!(of("40 A", "fan", "20 A"), NOTHING);
    assert_eq!(of("30 A", "pump", "10 A"), NOTHING);
    assert_eq!(of("30 A", "lamps", "9.2 A"), NOTHING);
    assert_eq!(of("30 A", "lamps", "15.8 A"), NOTHING);
    assert_eq!(of("30 A", "lamps", "16 A"), [Doubt]);
    assert_eq!(of("30 A", "fan", "24.3 A"), NOTHING);
    assert_eq!(of("30 A", "fan", "24.5 A"), [Doubt]);
    assert_eq!(of("30 A", "heater", "30 A"), NOTHING);
}

/// By hand: between 350 % for 40 ms and 600 % for 20 ms at least (ISO 8820-3, from memory) a fuse bears the 25 ms of a motor's start (common
/// practice, no source) up to 3.5 × (6 / 3.5)^0.678 = 5.044 times its rating; of 15 A 75.66 A. A motor of the 11.25 A that 15 A carry for
/// long takes 6.5 times that, 73.1 A.
#[test]
fn a_motor_must_not_blow_its_fuse_as_it_starts() {
    let of = |draws: &str, inrush: &str| {
        let texts = [("relays.0.draws", draws), ("relays.0.inrush", inrush)];
        told("feeds-inrush-over-fuse", &texts, "feeds.inrush-over-fuse")
    };
    assert_eq!(told("feeds-inrush-over-fuse", &[], "feeds.inrush-over-fuse"), [Doubt]);
    assert_eq!(of("10.2 A", "75.6 A"), NOTHING);
    assert_eq!(of("10.2 A", "75.7 A"), [Doubt]);
    assert_eq!(of("11.25 A", ""), NOTHING);
    assert_eq!(of("11.3 A", "76 A"), NOTHING, "a fuse that is too small anyhow is said once");
}

/// By hand: 1.16 × 3 m / (58 × 2.5 mm²) = 24 mΩ, out and back 48 mΩ; 5 % of 14.8 V (common practice, no source) are 0.74 V, lost at
/// 15.417 A.
#[test]
fn a_twentieth_of_the_supply_may_be_lost_in_a_wire() {
    let of = |texts: &[(&str, &str)]| told("feeds-wire-drops", texts, "feeds.wire-drops");
    assert_eq!(of(&[("relays.0.draws", "15.5 A")]), [Doubt]);
    assert_eq!(of(&[("relays.0.draws", "15.4 A")]), NOTHING);
    assert_eq!(of(&[("relays.0.lead_size", "3 mm2")]), NOTHING);
    let said = words("feeds-wire-drops", &[], "feeds.wire-drops");
    assert!(said.contains("744 mV"), "{said}");
}

/// By hand: 29 A × √(80 K / 85 K × 1.33405 / 1.3144) = 28.34 A, from the distributor's 29 A at 105 °C to the 100 °C of class B.
#[test]
fn a_wire_without_a_known_fuse_bears_what_the_table_says_at_its_class() {
    let of = |texts: &[(&str, &str)]| told("feeds-wire-hot", texts, "feeds.wire-hot");
    assert_eq!(of(&[("relays.0.draws", "28.4 A")]), [Danger]);
    assert_eq!(of(&[("relays.0.draws", "28.3 A")]), NOTHING);
    // by hand: 29 A × √(105 K / 85 K × 1.33405 / 1.41265) = 31.32 A
    let of_class_c = |draws: &str| of(&[("wiring.insulation", "c"), ("relays.0.draws", draws)]);
    assert_eq!(of_class_c("31.3 A"), NOTHING);
    assert_eq!(of_class_c("31.4 A"), [Danger]);
}

/// By hand: in a bundle of six in air of 80 °C 1.5 mm² of class B carries 21 A × 0.57 × √(20 K / 85 K × 1.33405 / 1.3144) = 5.85 A. What the
/// load itself does to its wire is told, and not what a fault would do besides.
#[test]
fn a_wire_that_its_own_load_overheats_is_told_of_that_whatever_its_fuse() {
    let with = |draws: &'static str| {
        [
            ("relays.0.draws", draws),
            ("relays.0.fuse", "15 A"),
            ("relays.0.lead_size", "1.5 mm2"),
            ("wiring.ambient", "80 °C"),
            ("wiring.bundled", "6"),
        ]
    };
    let of = |draws, code: &str| told("feeds-wire-hot", &with(draws), code);
    assert_eq!(of("5.9 A", "feeds.wire-hot"), [Danger]);
    assert_eq!(of("5.9 A", "feeds.fuse-over-wire"), NOTHING);
    assert_eq!(of("5.8 A", "feeds.wire-hot"), NOTHING);
    // by hand: alone it carries 10.3 A, and outlasts what 15 A let pass, less 28 %: 12.9 A
    assert_eq!(of("5.8 A", "feeds.fuse-over-wire"), NOTHING);
    assert_eq!(of("5.8 A", "feeds.fuse-near-wire"), [Doubt]);
}

/// By hand: 4 mm² of class B bears 38.12 A alone, and four in a bundle 65 % of that, 24.8 A (IEC 60364-5-52, from memory), if all of them
/// carry as much at once. 30 A let 33 A pass for a hundred hours: alone nothing, in the bundle a doubt. 60 A burn it alone.
#[test]
fn what_burns_for_its_bundle_alone_is_a_doubt() {
    let of = |bundled: &str, fuse: &str, code: &str| {
        let texts =
            [("relays.0.lead_size", "4 mm2"), ("relays.0.fuse", fuse), ("wiring.bundled", bundled)];
        told("feeds-over-wire", &texts, code)
    };
    assert_eq!(of("1", "30 A", "feeds.fuse-near-wire"), NOTHING);
    assert_eq!(of("4", "30 A", "feeds.fuse-near-wire"), [Doubt]);
    assert_eq!(of("4", "30 A", "feeds.fuse-over-wire"), NOTHING);
    assert_eq!(of("4", "60 A", "feeds.fuse-over-wire"), [Danger]);
}

/// By hand: 1.16 × 4 m / (58 × 35 mm²) = 2.2857 mΩ, out and back 4.571 mΩ; 0.8 V (common practice, no source) are lost at 175 A.
#[test]
fn a_battery_cable_may_lose_eight_tenths_of_a_volt() {
    let of = |texts: &[(&str, &str)]| told("feeds-cable-drops", texts, "feeds.cable-drops");
    assert_eq!(of(&[("battery.starter", "176 A")]), [Doubt]);
    assert_eq!(of(&[("battery.starter", "174 A")]), NOTHING);
    assert_eq!(of(&[("battery.lead_size", "50 mm2")]), NOTHING);
    assert!(words("feeds-cable-drops", &[], "feeds.cable-drops").contains("50 mm²"));
}

/// By hand: 80 % of 60 A are 48 A (common practice, no source); 32.6 A and 18 A are 50.6 A. A twentieth of that, 2.53 A, is within what is
/// known of it: 2.6 A are lacking; of 50.5 A 2.5 A, less than 2.525 A.
#[test]
fn an_alternator_gives_four_fifths_of_its_rating_when_hot() {
    let name = "feeds-alternator-lacks";
    let of = |draws: &str| told(name, &[("relays.0.draws", draws)], "feeds.alternator-lacks");
    assert_eq!(of("32.6 A"), [Fault]);
    assert_eq!(of("32.5 A"), NOTHING);
    assert_eq!(told(name, &[], "feeds.idle-lacks"), NOTHING, "the graver is enough");
    assert!(words(name, &[], "feeds.alternator-lacks").contains("2.6 A less"));
}

/// By hand: 48 A at idle are 2.6 A less than 50.6 A, 48.1 A 2.5 A less, within a twentieth; 80 % of 80 A are 64 A.
#[test]
fn what_lacks_at_idle_alone_is_a_note() {
    let name = "feeds-idle-lacks";
    let of = |idle: &str| told(name, &[("battery.alternator_idle", idle)], "feeds.idle-lacks");
    assert_eq!(of("48 A"), [Note]);
    assert_eq!(of("48.1 A"), NOTHING);
    assert_eq!(told(name, &[], "feeds.alternator-lacks"), NOTHING);
}

/// Source: the names of the plan.
#[test]
fn a_contact_is_fed_through_another_relay_of_this_plan() {
    let of = |texts: &[(&str, &str)], code: &str| told("feeds-behind", texts, code);
    let (none, itself) = ("feeds.no-such-relay", "feeds.behind-itself");
    assert_eq!(of(&[], none), [Fault]);
    assert_eq!(of(&[("relays.1.behind", " main RELAY ")], none), NOTHING);
    assert_eq!(of(&[("relays.1.behind", "")], none), NOTHING);
    assert_eq!(of(&[], itself), [Fault]);
    assert_eq!(of(&[("relays.2.behind", "Main relay")], itself), NOTHING);
}

/// By hand: class B of 0.5 mm² bears 11 A × 0.9774 = 10.75 A, and 27.5 A flow through 25 A for a hundred hours: it burns. 2.5 mm² bears
/// 28.3 A; 15 A on 1 mm² of 16.13 A let pass 16.5 A, within what the numbers are good for. A wire that burns
/// behind the fuse of its relay is a danger; one that may age, as behind any fuse, a doubt.
#[test]
fn injectors_behind_a_large_fuse_want_one_of_their_own() {
    let of =
        |texts: &[(&str, &str)]| told("feeds-injectors-unfused", texts, "feeds.branch-unfused");
    assert_eq!(of(&[]), [Danger]);
    assert_eq!(of(&[("injectors.wire_size", "2.5 mm2")]), NOTHING);
    assert_eq!(of(&[("injectors.fuse", "7.5 A")]), NOTHING);
    let small = [("relays.0.fuse", "15 A"), ("injectors.wire_size", "1 mm2")];
    assert_eq!(of(&small), NOTHING);
    let said = words("feeds-injectors-unfused", &[], "feeds.branch-unfused");
    assert!(said.contains("for Injectors alone"), "{said}");
}

/// Common practice, no source: wires of 0.75 mm² behind their relay's 10 or 15 A are what most harnesses of injectors have, and a fuse is
/// no larger than what its wire carries. By hand: 0.75 mm² bears 14 A × 0.9774 = 13.7 A, with 17 % more 16 A; in air of 60 °C, class
/// C, 14 A × √(65 / 85 × 1.33405 / 1.41265) = 11.9 A, with 17 % more 13.9 A: there 15 A are one size too large, and 20 A two.
#[test]
fn usual_wires_of_injectors_behind_the_usual_fuse_of_their_relay_are_calm() {
    let hot = [("wiring.ambient", "60 °C"), ("wiring.insulation", "c")];
    let of = |fuse: &'static str, laid: &[(&'static str, &'static str)]| {
        let size = [("relays.0.fuse", fuse), ("injectors.wire_size", "0.75 mm2")];
        let texts = [&size[..], laid].concat();
        ["feeds.branch-unfused", "feeds.fuse-over-wire", "feeds.fuse-near-wire"]
            .map(|code| told("feeds-injectors-unfused", &texts, code))
            .concat()
    };
    assert_eq!(of("10 A", &[]), NOTHING);
    assert_eq!(of("15 A", &[]), NOTHING);
    assert_eq!(of("10 A", &hot), NOTHING);
    assert_eq!(of("15 A", &hot), [Doubt]);
    assert_eq!(of("20 A", &hot), [Danger]);
}

/// Common practice, no source: one feed has one fuse, wherever it sits. Where the relay feeds something else too, its own is asked for.
#[test]
fn the_fuse_of_the_injectors_is_that_of_a_relay_that_feeds_nothing_else() {
    let verdict = |texts: &[(&'static str, &'static str)]| {
        let fused =
            [("relays.0.fuse", ""), ("injectors.fuse", "7.5 A"), ("injectors.wire_size", "1 mm2")];
        let report = report(&planned("feeds-injectors-unfused", &[&fused[..], texts].concat()));
        let mut answers = report.sections.iter().flat_map(|section| &section.answers);
        let of = answers.find(|it| it.subject == "feeds.relay.0").expect("it is answered");
        of.verdict.message.code
    };
    assert_eq!(verdict(&[]), "feeds.good-contact");
    assert_eq!(verdict(&[("relays.0.draws", "4 A")]), "feeds.open-fuse");
    assert_eq!(verdict(&[("injectors.fuse", "")]), "feeds.open-fuse");
    assert_eq!(verdict(&[("relays.0.lead_size", "")]), "feeds.open-wire");
    // its contact is held against that fuse
    let small = [("relays.0.rating", "5 A")];
    assert_eq!(verdict(&small), "feeds.bad-contact");
}

/// By hand: eight injectors of 3 Ω take 4.9 A each at 14.8 V, 39 A together: more than 1.5 mm² carries (21 A,
/// `tests/reference/wire_thinwall_current.csv`), and each has its own wire.
#[test]
fn each_injector_has_a_wire_of_its_own() {
    let texts = [
        ("injectors.resistance", "3 ohm"),
        ("injectors.count", "8"),
        ("injectors.fuse", "60 A"),
        ("injectors.wire_size", "1.5 mm2"),
    ];
    assert_eq!(told("feeds-injectors-unfused", &texts, "feeds.wire-hot"), NOTHING);
}

/// By hand: coils and injectors of this plan draw 7.75 A together, and 75 % of 10 A are 7.5 A (common practice, no source); of the coils or
/// of the injectors alone each carries its own.
#[test]
fn fuse_and_contact_of_coils_and_injectors_together_are_judged_once() {
    let of = |fuse: &'static str| {
        let texts = [("relays.2.purpose", "engine"), ("relays.2.fuse", fuse)];
        report(&planned("sound-four", &texts))
    };
    let graved = |report: &Report| {
        let grave = report.findings.iter().filter(|it| it.severity != Note);
        grave.map(|it| it.message.code).collect::<Vec<_>>()
    };
    assert_eq!(graved(&of("15 A")), NO_CODES);
    for fuse in ["10 A", "7.5 A", "2 A"] {
        let report = of(fuse);
        assert_eq!(graved(&report), ["feeds.fuse-too-small"], "{fuse}");
        let cures = &report.findings.first().expect("told").remedies;
        let said: Vec<_> = cures.iter().map(|it| it.text.as_str()).collect();
        assert_eq!(said, ["Fit a fuse of 15 A for Coil relay."], "{fuse}");
    }
    let contact = [("relays.2.purpose", "engine"), ("relays.2.rating", "5 A")];
    let found = report(&planned("sound-four", &contact));
    let over: Vec<_> = graved(&found).into_iter().filter(|it| it.contains("small")).collect();
    assert_eq!(over, ["feeds.contact-too-small"]);
}

const NO_CODES: [&str; 0] = [];

/// By hand: of 35 A each of two relays carries 17.5 A, and 75 % of 30 A are 22.5 A (common practice, no source); the alternator feeds all of it.
#[test]
fn relays_that_share_a_load_each_carry_their_share() {
    let of = |alike: &str, draws: &str, code: &str| {
        told("sound-four", &[("relays.1.alike", alike), ("relays.1.draws", draws)], code)
    };
    assert_eq!(of("", "35 A", "feeds.fuse-too-small"), [Fault]);
    for code in ["feeds.fuse-too-small", "feeds.wire-hot", "feeds.inrush-over-contact"] {
        assert_eq!(of("2", "35 A", code), NOTHING, "{code}");
    }
    assert_eq!(of("2", "46 A", "feeds.fuse-too-small"), [Doubt]);
    let sum = |alike| {
        let texts = [("relays.1.alike", alike), ("relays.1.draws", "35 A")];
        let report = report(&planned("sound-four", &texts));
        let mut all = report.sections.iter().flat_map(|it| &it.answers);
        let answer = all.find(|it| it.subject == "feeds.alternator").expect("answered");
        answer.verdict.message.text.clone()
    };
    assert_eq!(sum("2"), sum(""));
}

/// By hand: 35 A / 75 % = 46.7 A (common practice, no source): a fuse of 50 A, and a contact of no less. Nothing can be taken off one motor.
#[test]
fn what_is_too_much_for_a_small_fuse_gets_a_larger_one_where_it_is_one_thing() {
    let said = |texts: &[(&'static str, &'static str)]| {
        let fan = [
            ("relays.1.draws", "35 A"),
            ("relays.1.fuse", "40 A"),
            ("relays.1.lead_size", "6 mm2"),
        ];
        words("sound-four", &[&fan[..], texts].concat(), "feeds.fuse-too-small")
    };
    let one = said(&[]);
    assert!(one.contains("a fuse of 50 A"), "{one}");
    assert!(one.contains("rated for 50 A"), "{one}");
    assert!(!one.contains("Take something off"), "{one}");
    let several = said(&[("relays.1.purpose", "other")]);
    assert!(several.contains("Take something off"), "{several}");
    assert!(!several.contains("50 A"), "{several}");
}
