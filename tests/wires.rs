//! What is cut, crimped, labelled and bought? Held against cases worked by hand, a library that reads CSV, bad input and laws.
//!
//! Source: subtraction and sums by hand; DIN 72552 as read for `tests/reference/terminals_din72552.json`; RFC 4180 as the
//! crate `csv` reads it.
#![expect(clippy::expect_used, clippy::indexing_slicing, reason = "a test fails by them")]

mod bad_input;
mod lists;

use quietpin_core::{
    plan::Plan,
    report::{Answer, Report, lists::HarnessList, report},
    supply::circuit::BOUGHT_MM2,
};
use quietpin_tests::{
    Checked, rows,
    typed::{self, planned},
};

/// A four with a coil and an injector for each cylinder, a fan on a relay, a valve, and a harness of 2.5 m, the fields over it
/// as typed.
pub(crate) fn four(typed: &[(&str, &str)]) -> Plan {
    let whole = [
        ("engine.cylinders", "4"),
        ("engine.order", "1-3-4-2"),
        ("channels.ignition_mode", "sequential"),
        ("channels.ignition_habit", "by-cylinder"),
        ("channels.injection_mode", "together"),
        ("outputs.0.name", "D1"),
        ("outputs.0.stage", "open-drain"),
        ("outputs.1.name", "H1"),
        ("outputs.1.stage", "high-side"),
        ("relays.0.name", "Fan relay"),
        ("relays.0.purpose", "fan"),
        ("relays.0.draws", "15 A"),
        ("relays.0.fuse", "25 A"),
        ("relays.0.rating", "40 A"),
        ("relays.0.lead_size", "4 mm2"),
        ("relays.0.lead_length", "2.9 m"),
        ("relays.0.output", "D1"),
        ("relays.0.far_end", "ignition"),
        ("relays.0.length", "1 m"),
        ("relays.0.other_length", "0.5 m"),
        ("loads.0.name", "valve"),
        ("loads.0.output", "H1"),
        ("loads.0.far_end", "ground"),
        ("loads.0.kind", "solenoid"),
        ("loads.0.resistance", "20 ohm"),
        ("loads.0.length", "2.2 m"),
        ("loads.0.other_length", "0.3 m"),
        ("crank_sensor.kind", "reluctance"),
        ("harness.length", "2.5 m"),
        ("harness.coils.0", "1.2 m"),
        ("harness.coils.1", "1.3 m"),
        ("harness.coils.2", "1.4 m"),
        ("harness.coils.3", "1.5 m"),
        ("harness.injectors.0", "1.1 m"),
        ("harness.crank", "2 m"),
    ];
    planned(&whole, typed)
}

/// What is said about the wires, or about a kind of them.
fn about<'a>(report: &'a Report, subject: &str) -> Option<&'a Answer> {
    typed::answers(report, "wires").into_iter().find(|it| it.subject == subject)
}

fn verdict(typed: &[(&str, &str)], subject: &str) -> String {
    let report = report(&four(typed));
    about(&report, subject).expect(subject).verdict.message.text.clone()
}

/// By hand: 4 coils, a wire for all injectors, the two ends of a relay's coil and of a valve, two of a crank sensor, the two of the
/// relay's contact, and the feed of its coil; the ground of the fan, which isn't measured, beside them.
#[test]
fn each_wire_is_counted_and_measured() {
    assert_eq!(verdict(&[], "harness"), "All 14 wires reach");
    assert_eq!(
        verdict(&[("harness.coils.2", "")], "harness"),
        "14 wires. Needs: the way of 1 of them"
    );
    assert_eq!(
        verdict(&[("harness.length", "")], "harness"),
        "14 wires. Needs: the harness's length"
    );
    assert_eq!(verdict(&[("harness.coils.3", "3 m")], "harness"), "1 of 14 wires don't reach");
    // 2.5 m less 1.2 to 1.5 m less 0.1 m
    assert_eq!(verdict(&[], "wires.coils"), "4 wires: cut off 0.90 m to 1.20 m");
    let spare = [("harness.spare", "0.2 m")];
    assert_eq!(verdict(&spare, "wires.coils"), "4 wires: cut off 0.80 m to 1.10 m");
}

/// A wire that is measured nowhere is neither cut nor good.
#[test]
fn what_is_not_measured_is_asked_for() {
    let report = report(&four(&[("harness.coils.0", "")]));
    let cut = about(&report, "wires.cut").expect("others are measured");
    let names: Vec<_> = cut.lists[0].items.iter().map(|it| it.name.as_str()).collect();
    assert!(!names.contains(&"ignition1") && names.contains(&"ignition2"), "{names:?}");
}

/// By hand: the longest ends come off first; 1.3 m of the injectors' wire, 1.4 m of the relay's.
#[test]
fn the_cut_list_goes_from_the_longest_end_to_the_shortest() {
    let report = report(&four(&[("harness.done", "ignition2")]));
    let cut = about(&report, "wires.cut").expect("all are measured");
    let items: Vec<_> = cut.lists.iter().flat_map(|it| &it.items).collect();
    let texts: Vec<_> = items.iter().map(|it| it.words.text.as_str()).collect();
    assert_eq!(texts[0], "D1 - Fan relay 85: cut off 1.40 m");
    assert_eq!(texts[1], "Injection 1 - injector 1 + 3 + 4 + 2: cut off 1.30 m");
    assert_eq!(texts[2], "Ignition 1 - coil 1: cut off 1.20 m");
    let done: Vec<_> = items.iter().filter(|it| it.is_done).map(|it| it.name.as_str()).collect();
    assert_eq!(done, ["ignition2"]);
    assert_eq!(cut.verdict.message.text, "1 of 11 done");
}

/// DIN 72552: 86 is where a relay's coil begins, by convention at plus, 85 where it ends.
#[test]
fn the_coil_of_a_relay_has_86_at_plus() {
    let labels = |far_end: &str| {
        let report = report(&four(&[("relays.0.far_end", far_end)]));
        let loads = about(&report, "wires.loads").expect("it is on an output");
        let rows = &loads.tables[0].rows;
        rows.iter()
            .map(|it| it.cells[0].shown.clone())
            .filter(|it| it.contains("Fan"))
            .collect::<Vec<_>>()
    };
    assert_eq!(labels("ignition"), ["D1 - Fan relay 85", "Fan relay 86 - ignition feed (15)"]);
    assert_eq!(labels("ground"), ["D1 - Fan relay 86", "Fan relay 85 - ground (31)"]);
}

/// Source: DIN 72552, in `reference/terminals_din72552.json`: what is said to be at a terminal is what it stands for.
pub(crate) fn terminals() -> Checked {
    let text = quietpin_tests::reference("terminals_din72552.json");
    let standard: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let all = standard["terminals"].as_array().expect("a list");
    let meaning = |number: &str| {
        let found = all.iter().find(|it| it["t"] == number).expect("in the standard");
        found["meaning"].as_str().unwrap_or_default().to_owned()
    };
    let (_, rows) = lists::read(HarnessList::Wires, &four(&[]));
    let ends: Vec<_> = rows.iter().flat_map(|it| [&it[1], &it[2]]).collect();
    let relay =
        [("85", "end of winding"), ("86", "start of winding"), ("87", "relay contact output")];
    let feeds = [("15", "switched positive"), ("31", "battery negative")];
    for (number, word) in relay.into_iter().chain(feeds) {
        assert!(meaning(number).contains(word), "{number} means {}", meaning(number));
        assert!(ends.iter().any(|it| it.contains(number)), "{number}: {ends:?}");
    }
    Checked::exact("wires", "Numbers of terminals at the ends of wires", "DIN 72552", 5)
}

/// Source: IEC 60228, class 5, in `reference/wire_iec60228.csv`.
pub(crate) fn sizes() -> Checked {
    let published: Vec<f64> =
        rows("wire_iec60228.csv").iter().map(|it| it.number("size_mm2")).collect();
    for size in BOUGHT_MM2 {
        assert!(published.contains(&size), "{size} mm² is no size of the standard");
    }
    Checked::exact("wires", "Sizes of wire to buy", "IEC 60228", BOUGHT_MM2.len())
}

#[test]
fn terminals_and_sizes_are_those_of_the_standards() {
    terminals();
    sizes();
}

/// By hand: of 2.9 m of 4 mm² are 0.5 m before the contact and 2.4 m behind it, each with 0.1 m to spare. To 15 0.6 m, of the thinnest that the fuse fitted for it protects; to ground 0.4 m for what
/// the valve takes, 0.74 A.
#[test]
fn what_is_bought_is_counted() {
    let report = report(&four(&[("relays.0.to_contact", "0.5 m")]));
    let buy = about(&report, "wires.buy").expect("the harness is begun");
    let list: Vec<_> = buy.to_do.iter().map(|it| it.text.as_str()).collect();
    assert!(list.contains(&"Buy 1 m of wire 4 mm², RD: feed (30)."), "{list:?}");
    assert!(list.contains(&"Buy 3 m of wire 4 mm², OG: feed (15, 87)."), "{list:?}");
    assert!(list.contains(&"Buy 1 m of wire 0.5 mm², OG: feed (15, 87)."), "{list:?}");
    assert!(list.contains(&"Buy 1 m of wire 0.5 mm², BK: ground (31)."), "{list:?}");
    assert!(list.contains(&"Buy 2 fuses of 25 A, one of them to spare: Fan relay."), "{list:?}");
    assert!(list.contains(&"Buy fuse holders: 2."), "{list:?}");
    assert!(
        list.contains(&"Buy 2 relays rated for 40 A, one of them to spare: Fan relay."),
        "{list:?}"
    );
    assert!(list.contains(&"Buy relay sockets with their terminals: 1."), "{list:?}");
    assert!(
        list.contains(&"Buy ring terminals for 4 mm²: 2, at battery plus, ground (31)."),
        "{list:?}"
    );
    assert!(list.contains(&"Buy 30 label sleeves, two for each wire."), "{list:?}");
}

/// By hand: four coils on two relays are two on each; all four injectors are on one channel.
#[test]
fn each_relay_branches_to_its_own_coils() {
    let two = [
        ("relays.1.name", "Coils 1"),
        ("relays.1.purpose", "coils"),
        ("relays.2.name", "Coils 2"),
        ("relays.2.purpose", "coils"),
    ];
    let (_, rows) = lists::read(HarnessList::Wires, &four(&two));
    let work = |label: &str| rows.iter().find(|it| it[0] == label).expect(label)[10].clone();
    assert!(work("Coils 1 87 - the coils").contains("splice to 2"));
    assert_eq!(work("Injection 1 - injector 1 + 3 + 4 + 2"), "splice to 4");
}

/// By hand: a cable of 2.9 m in two pieces, each with 0.1 m to spare, where nobody has said where the relay is.
#[test]
fn a_cable_whose_pieces_are_not_measured_is_bought_as_a_whole() {
    let report = report(&four(&[]));
    let buy = about(&report, "wires.buy").expect("the harness is begun");
    let has = |text: &str| buy.to_do.iter().any(|it| it.text.starts_with(text));
    assert!(has("Buy 4 m of wire 4 mm², RD + OG"), "{:?}", buy.to_do);
    let feeds = about(&report, "wires.feeds").expect("there is one");
    let ways: Vec<_> = feeds.tables[0].rows.iter().map(|it| it.cells[1].shown.as_str()).collect();
    assert!(ways.contains(&"2.90 m with the piece to 30"), "{ways:?}");
}

/// By hand: 1 m and 3 m less than the harness's 2.5 m in all: the piece to the contact is part of the cable of 2.9 m.
#[test]
fn the_piece_to_the_contact_is_part_of_the_cable() {
    let of = |typed: &str| {
        let plan = four(&[("relays.0.to_contact", typed)]);
        let found = report(&plan).findings;
        found.iter().filter(|it| it.message.code == "wires.beyond-cable").count()
    };
    assert_eq!(of("3 m"), 1);
    assert_eq!(of("2.9 m"), 0);
    assert_eq!(of("0.5 m"), 0);
    assert_eq!(of(""), 0);
}

/// A coil that the key switches has its two wires, and is no output's: common practice, no source.
#[test]
fn a_relay_that_the_key_switches_is_on_no_output() {
    let plan = four(&[
        ("relays.0.output", ""),
        ("relays.0.far_end", "ground"),
        ("relays.0.switched_by", "key"),
    ]);
    let (_, rows) = lists::read(HarnessList::Labels, &plan);
    let has = |label: &str| rows.iter().any(|it| it[0] == label);
    assert!(has("Fan relay 86 - ignition feed (15)") && has("Fan relay 85 - ground (31)"));
    let report = report(&plan);
    assert!(!typed::answers(&report, "outputs").iter().any(|it| it.subject == "relays.0.coil"));
    // an output that is named all the same is believed
    let named = four(&[("relays.0.switched_by", "key")]);
    let (_, rows) = lists::read(HarnessList::Labels, &named);
    assert!(rows.iter().any(|it| it[0] == "D1 - Fan relay 85"), "{rows:?}");
}

/// DIN 72552: 50 is where the key cranks; a relay on 15 would crank as soon as the ignition is on.
#[test]
fn a_starter_relay_is_on_the_start_position_and_no_branch_of_the_ignition_feed() {
    let keyed = |purpose: &'static str| {
        four(&[
            ("relays.0.output", ""),
            ("relays.0.far_end", "ground"),
            ("relays.0.switched_by", "key"),
            ("relays.0.purpose", purpose),
            ("controller.feed", "ignition"),
            ("loads.0.far_end", "ignition"),
            ("loads.0.output", "D1"),
            ("switched_feeds.fuse", "5 A"),
        ])
    };
    let of = |purpose: &'static str| {
        let (heads, rows) = lists::read(HarnessList::Wires, &keyed(purpose));
        let at = |head: &str| heads.iter().position(|it| it == head).expect(head);
        let coil = rows.iter().find(|it| it[0].starts_with("Fan relay 86")).expect("its coil");
        let feed = rows.iter().find(|it| it[0] == "Feed: Ignition feed (15)").expect("the feed");
        (coil[at("To")].clone(), feed[at("Work")].clone())
    };
    let (to, work) = of("starter");
    assert!(to.contains("start position (50)"), "{to}");
    assert_eq!(work, "splice to 2", "the valve and the controller");
    let (to, work) = of("fan");
    assert_eq!(to, "ignition feed (15)");
    assert_eq!(work, "splice to 3", "the relay's coil too");
}

/// By hand: what the first cure of a finding replaces is bought with it; what stays is bought as it stands.
#[test]
fn what_stays_is_bought_though_something_beside_it_is_replaced() {
    let bought = |typed: &[(&str, &str)]| {
        let report = report(&four(typed));
        let buy = about(&report, "wires.buy").expect("the harness is begun");
        buy.to_do.iter().map(|it| it.text.clone()).collect::<Vec<_>>()
    };
    let has = |list: &[String], what: &str| list.iter().any(|it| it.contains(what));
    // 15 A through 3 m of 1.5 mm² lose more than 5 %: the wire is replaced, fuse and relay stay
    let thin = bought(&[("relays.0.lead_size", "1.5 mm2"), ("relays.0.fuse", "20 A")]);
    assert!(has(&thin, "fuses of 20 A") && has(&thin, "rated for 40 A"), "{thin:?}");
    // 300 A through a contact of 40 A: the relay is replaced, the fuse stays
    let welds = bought(&[("relays.0.inrush", "200 A")]);
    assert!(!has(&welds, "rated for 40 A"), "{welds:?}");
}

/// By hand: a cable that is too thin is bought with its cure, and so is the minus cable, which is as thick.
#[test]
fn the_minus_cable_is_no_thinner_than_the_one_that_is_offered() {
    let of = |size: &'static str| {
        let plan = four(&[
            ("battery.starter", "200 A"),
            ("battery.lead_length", "4 m"),
            ("battery.lead_size", size),
            ("grounds.minus_to", "engine"),
            ("grounds.minus_length", "1 m"),
        ]);
        let report = report(&plan);
        let buy = about(&report, "wires.buy").expect("the harness is begun");
        buy.to_do.iter().filter(|it| it.text.contains("minus cable")).count()
    };
    assert_eq!(of("70 mm2"), 1);
    assert_eq!(of("16 mm2"), 0, "too thin");
}

/// By hand: 3 A and 2 A through pins of 1.5 A; grounds and loads are told apart, and those alike together.
#[test]
fn each_pin_that_is_too_hot_is_told() {
    let plan = four(&[
        ("harness.pin_current", "0.5 A"),
        ("grounds.wires", "3"),
        ("grounds.wire_size", "2.5 mm2"),
        ("grounds.wire_length", "1 m"),
        ("harness.pin_wire", "0.5 to 1 mm2"),
        ("loads.1.name", "heater"),
        ("loads.1.output", "D1"),
        ("loads.1.far_end", "ignition"),
        ("loads.1.kind", "resistor"),
        ("loads.1.resistance", "5 ohm"),
    ]);
    let found = report(&plan).findings;
    let said = |code: &str| {
        let of = found.iter().filter(|it| it.message.code == code);
        of.map(|it| it.message.text.clone()).collect::<Vec<_>>()
    };
    let hot = said("wires.pin-hot");
    assert_eq!(hot.len(), 2, "{hot:?}");
    assert!(hot.iter().any(|it| it.contains("D1 - heater") && it.contains("and 1 more")));
    assert!(hot.iter().any(|it| it.contains("Controller ground 1")), "{hot:?}");
    let misfit = said("wires.pin-wire");
    assert!(misfit.iter().all(|it| it.contains("and 2 more")) && misfit.len() == 1, "{misfit:?}");
}

/// By hand: coils and an injectors' fuse of 7.5 A behind one contact: that fuse is in the injectors' wire alone.
#[test]
fn the_fuse_of_the_injectors_is_in_their_wire_alone() {
    let main = |typed: &[(&str, &str)]| {
        let whole = [
            ("relays.1.name", "Main relay"),
            ("relays.1.purpose", "engine"),
            ("relays.1.fuse", "20 A"),
            ("relays.1.lead_size", "2.5 mm2"),
            ("injectors.fuse", "7.5 A"),
        ];
        four(&whole.into_iter().chain(typed.iter().copied()).collect::<Vec<_>>())
    };
    let (heads, rows) = lists::read(HarnessList::Wires, &main(&[]));
    let at = |head: &str| heads.iter().position(|it| it == head).expect(head);
    let of = |rows: &[Vec<String>], from: &str, head: &str| {
        let is_it = |it: &&Vec<String>| it[at("From")] == from && !it[at("Work")].is_empty();
        let found: Vec<_> = rows.iter().filter(is_it).map(|it| it[at(head)].clone()).collect();
        found
    };
    assert_eq!(of(&rows, "Main relay 87", "Fuse, A"), ["", "7.5"], "the trunk, the injectors");
    // four coils and the injectors' wire; four injectors
    assert_eq!(of(&rows, "Main relay 87", "Work"), ["splice to 5", "splice to 4"]);
    let alone = main(&[("relays.1.purpose", "injectors")]);
    let (_, rows) = lists::read(HarnessList::Wires, &alone);
    assert_eq!(of(&rows, "Main relay 87", "Fuse, A"), ["7.5"], "it feeds nothing else");
    let both = main(&[("relays.1.purpose", "injectors"), ("second_injectors.fuse", "10 A")]);
    let (_, rows) = lists::read(HarnessList::Wires, &both);
    let fuse =
        |label: &str| rows.iter().find(|it| it[0] == label).expect(label)[at("Fuse, A")].clone();
    assert_eq!(fuse("Main relay 87 - the injectors"), "", "a set behind each of two fuses");
    assert_eq!(fuse("Feed: Injectors"), "7.5");
}

/// By hand: two relays alike are two contacts, two sockets, two fuses and two leads, on one output.
#[test]
fn relays_that_are_alike_are_each_wired_and_bought() {
    let plan = four(&[("relays.0.alike", "2"), ("relays.0.to_contact", "0.5 m")]);
    let (_, rows) = lists::read(HarnessList::Wires, &plan);
    for label in ["battery plus - Fan relay 1 30", "battery plus - Fan relay 2 30"] {
        assert!(rows.iter().any(|it| it[0] == label), "{label}: {rows:?}");
    }
    let coil = rows.iter().find(|it| it[0] == "D1 - Fan relay 85").expect("its coil");
    assert_eq!(coil[10], "splice to 2");
    let report = report(&plan);
    let buy = about(&report, "wires.buy").expect("the harness is begun");
    let has = |text: &str| buy.to_do.iter().any(|it| it.text.starts_with(text));
    assert!(has("Buy 3 fuses of 25 A") && has("Buy 3 relays rated for 40 A"), "{:?}", buy.to_do);
    assert!(has("Buy relay sockets with their terminals: 2."), "{:?}", buy.to_do);
    // 2 × (0.5 + 0.1) m before the contacts, 2 × (2.4 + 0.1) m behind them
    assert!(
        has("Buy 2 m of wire 4 mm², RD") && has("Buy 5 m of wire 4 mm², OG"),
        "{:?}",
        buy.to_do
    );
}

/// By hand: 15 A / 75 % = 20 A: a fuse of 15 A is bought with its cure, its holder with the others.
#[test]
fn what_is_condemned_is_bought_once_and_its_holder_all_the_same() {
    let report = report(&four(&[("relays.0.fuse", "15 A")]));
    let buy = about(&report, "wires.buy").expect("the harness is begun");
    let has = |text: &str| buy.to_do.iter().any(|it| it.text.starts_with(text));
    assert!(!has("Buy 2 fuses of 15 A"), "{:?}", buy.to_do);
    assert!(has("Buy fuse holders: 2."), "{:?}", buy.to_do);
}

/// A branch from the feed to each coil and injector, as thick as the fuse before it asks: no thicker than the feed.
#[test]
fn coils_and_injectors_have_their_feeds_and_grounds() {
    let plan = four(&[
        ("relays.1.name", "Main relay"),
        ("relays.1.purpose", "engine"),
        ("relays.1.fuse", "20 A"),
        ("relays.1.lead_size", "2.5 mm2"),
        ("harness.coil_feed", "0.3 m"),
        ("harness.coil_ground", "0.2 m"),
        ("harness.injector_feed", "0.4 m"),
    ]);
    let (heads, rows) = lists::read(HarnessList::Wires, &plan);
    let at = |head: &str| heads.iter().position(|it| it == head).expect(head);
    let of = |label: &str, head: &str| {
        rows.iter().find(|it| it[0] == label).expect(label)[at(head)].clone()
    };
    for n in 1..=4 {
        assert_eq!(of(&format!("coil feed (87) - coil {n}"), "Way, m"), "0.30");
        assert_eq!(of(&format!("ground (31) - coil {n}"), "Colour"), "BK");
        assert_eq!(of(&format!("injector feed (87) - injector {n}"), "Way, m"), "0.40");
    }
    let size: f64 = of("coil feed (87) - coil 1", "mm2").parse().expect("it has a size");
    assert!(size <= 2.5, "{size}");
    assert_eq!(of("Main relay 87 - coils and injectors", "Work"), "splice to 8");
}

/// By hand: 3 m are 0.5 m more than 2.5 m, and 0.1 m are to spare.
#[test]
fn a_wire_that_is_lengthened_gets_what_it_has_to_spare_too() {
    let plan = four(&[("harness.coils.3", "3 m")]);
    let report = report(&plan);
    let cut = about(&report, "wires.cut").expect("all are measured");
    let texts: Vec<_> = cut.lists[0].items.iter().map(|it| it.words.text.as_str()).collect();
    assert!(texts.contains(&"Ignition 4 - coil 4: lengthen by 0.60 m"), "{texts:?}");
}

/// By hand: a fuse of 60 A before 4 mm² burns it: a smaller one is bought with the cure, and none of 60 A.
#[test]
fn a_fuse_that_is_wrong_is_not_bought() {
    let report = report(&four(&[("relays.0.fuse", "60 A")]));
    let buy = about(&report, "wires.buy").expect("the harness is begun");
    assert!(!buy.to_do.iter().any(|it| it.text.contains("60 A")), "{:?}", buy.to_do);
}

/// What burns is said before what doesn't reach: both strike as the engine runs, and the fire is graver.
#[test]
fn a_fire_stands_before_a_wire_that_is_too_short() {
    let report = report(&four(&[("relays.0.fuse", "60 A"), ("harness.coils.3", "3 m")]));
    let at =
        |code: &str| report.findings.iter().position(|it| it.message.code == code).expect(code);
    assert!(at("feeds.fuse-over-wire") < at("wires.too-short"));
}

#[test]
fn of_a_blank_plan_one_sentence_is_said() {
    let blank = report(&Plan::default());
    let answers = typed::answers(&blank, "wires");
    assert_eq!(answers.len(), 1);
    assert_eq!(answers[0].verdict.message.code, "wires.blank");
}
