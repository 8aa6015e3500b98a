//! Cranks and numberings, held against published firing orders, and what is typed of them against the report.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a test says what is wrong by failing"
)]

use quietpin_core::{
    engine::{
        Engine, EngineKind, Spacing,
        geometry::{Geometry, Turns, turns},
        numbering::{EngineEnd, Numbering, Side},
    },
    plan::Plan,
    quantity::CrankAngle,
    read::State,
    report::{Report, Tone, report},
};
use quietpin_tests::Checked;
use serde_json::Value;

const ORDERS: &str = include_str!("reference/firing_orders.json");

/// How the cranks of the published engines are built: cylinders by bank, angles of the further banks, pins, split.
///
/// Source: textbook cranks, from memory: in line the pins of 3 and 6 cylinders stand 120 degrees apart, of 4 in one
/// plane, of 5 72 degrees apart; a boxer has its pins opposite in pairs; a V8 here is cross-plane. Bank angles from the
/// file; 270 where its second bank is passed first.
const CRANKS: &[(&str, &str, &str, &str, f64)] = &[
    ("i3", "1 2 3", "", "0 240 120", 0.0),
    ("i3r", "1 2 3", "", "0 120 240", 0.0),
    ("i4a", "1 2 3 4", "", "0 180 180 0", 0.0),
    ("i4b", "1 2 3 4", "", "0 180 180 0", 0.0),
    ("i5", "1 2 3 4 5", "", "0 144 216 288 72", 0.0),
    ("i6a", "1 2 3 4 5 6", "", "0 120 240 240 120 0", 0.0),
    ("i6b", "1 2 3 4 5 6", "", "0 120 240 240 120 0", 0.0),
    ("i6c", "1 2 3 4 5 6", "", "0 240 120 120 240 0", 0.0),
    ("i6d", "1 2 3 4 5 6", "", "0 240 120 120 240 0", 0.0),
    ("f4a", "1 2/3 4", "180", "0 180 180 0", 0.0),
    ("f4b", "1 3/2 4", "180", "0 180 180 0", 0.0),
    ("f6", "1 2 3/4 5 6", "180", "0 240 120 180 60 300", 0.0),
    ("v6alt", "1 3 5/2 4 6", "60", "0 240 120", 60.0),
    ("v6bank", "1 2 3/4 5 6", "60", "0 240 120", 60.0),
    ("v6alt2", "1 3 5/2 4 6", "270", "0 120 240", -30.0),
    ("v8alt", "1 3 5 7/2 4 6 8", "270", "0 270 90 180", 0.0),
    ("v8alt2", "1 3 5 7/2 4 6 8", "270", "0 270 90 180", 0.0),
    ("v8bank", "1 2 3 4/5 6 7 8", "90", "0 270 90 180", 0.0),
    ("v8bank2", "1 2 3 4/5 6 7 8", "90", "0 270 90 180", 0.0),
    ("v10alt", "1 3 5 7 9/2 4 6 8 10", "270", "0 288 72 216 144", 0.0),
    ("v10bank", "1 2 3 4 5/6 7 8 9 10", "72", "0 288 72 216 144", 0.0),
    ("v12bank", "1 2 3 4 5 6/7 8 9 10 11 12", "60", "0 120 240 240 120 0", 0.0),
    ("v12bank2", "1 2 3 4 5 6/7 8 9 10 11 12", "60", "0 120 240 240 120 0", 0.0),
];

fn degrees(text: &str) -> Vec<CrankAngle> {
    text.split_whitespace().map(|it| CrankAngle::new(it.parse().expect("degrees"))).collect()
}

fn whole(text: &str) -> Vec<u32> {
    text.split([' ', '-']).map(|it| it.parse().expect("a cylinder")).collect()
}

fn crank(banks: &str, bank_angles: &str, pins: &str, split: f64) -> Geometry {
    let rows = banks.split('/').map(whole).collect();
    let split = CrankAngle::new(split);
    Geometry::new(rows, degrees(bank_angles), degrees(pins), split).expect("a crank")
}

#[track_caller]
fn check_near(name: &str, angles: &[CrankAngle], expected: &[CrankAngle]) {
    assert_eq!(angles.len(), expected.len(), "{name}");
    for (angle, expected) in angles.iter().zip(expected) {
        assert!(angle.is_near(*expected), "{name}: {angle:?} for {expected:?}");
    }
}

fn numbers(value: &Value) -> Vec<u32> {
    let whole = |it: &Value| u32::try_from(it.as_u64().expect("a number")).expect("small");
    value.as_array().expect("a list").iter().map(whole).collect()
}

/// Source: `firing_orders.json`, `event_angle_deg`: the angles of two turns come out of crank, banks and order alone.
pub(crate) fn cranks() -> Checked {
    let mut cases = 0;
    let file: Value = serde_json::from_str(ORDERS).expect("JSON");
    let engines = file["engines"].as_array().expect("a list");
    for row in engines {
        let id = row["id"].as_str().expect("a name");
        let Some((_, banks, bank_angles, pins, split)) = CRANKS.iter().find(|it| it.0 == id) else {
            assert!(row["bank_angle_deg"].is_null(), "{id} has no crank here");
            continue;
        };
        let order = numbers(&row["firing_order"]);
        let at = |cylinder: &u32| row["event_angle_deg"][cylinder.to_string()].as_f64();
        let expected: Vec<_> =
            order.iter().map(|it| CrankAngle::new(at(it).expect("an angle"))).collect();
        let tops = crank(banks, bank_angles, pins, *split).tops();
        let found = turns(EngineKind::FourStroke, &order, &tops).expect(id);
        check_near(id, &found.angles, &expected);
        cases += expected.len();
        assert!(found.others.is_empty(), "{id}: more than one turn: {found:?}");
    }
    let against = "published firing orders, see SOURCES.md";
    Checked::exact("firing", "The same angles from crank, banks and order", against, cases)
}

#[test]
fn the_angles_of_published_engines_follow_from_their_cranks() {
    cranks();
}

#[track_caller]
fn check(name: &str, crank: &Geometry, order: &str, expected: &str) -> Turns {
    let found = turns(EngineKind::FourStroke, &whole(order), &crank.tops()).expect(name);
    check_near(name, &found.angles, &degrees(expected));
    found
}

/// Source: geometry by hand; that the common-pin V6 fires at 0 90 240 330 480 570 and splitting its pins by 30 degrees
/// makes it even is textbook, from memory.
#[test]
fn cranks_that_the_file_does_not_have_fire_as_worked_by_hand() {
    let six = |split| crank("1 3 5/2 4 6", "90", "0 240 120", split);
    check("common pins", &six(0.0), "1-2-3-4-5-6", "0 90 240 330 480 570");
    check("split pins", &six(30.0), "1-2-3-4-5-6", "0 120 240 360 480 600");
    let flat = crank("1 2 3 4/5 6 7 8", "90", "0 180 180 0", 0.0);
    check("flat-plane V8", &flat, "1-5-3-7-4-8-2-6", "0 90 180 270 360 450 540 630");
    let broad = crank("1 2 3 4/5 6 7 8/9 10 11 12", "60 120", "0 180 180 0", 0.0);
    let even = "0 60 120 180 240 300 360 420 480 540 600 660";
    check("W12, three banks", &broad, "1-5-9-3-7-11-4-8-12-2-6-10", even);
    let radial = crank("1/2/3/4/5", "72 144 216 288", "0", 0.0);
    check("radial of five", &radial, "1-3-5-2-4", "0 144 288 432 576");
}

/// Source: by hand. Pins at 270 give 270 and 450; banks of 70 on pins split by 40 tops 110 apart, so 250 and 470; 50 on one
/// pin 310 and 410; pins at 180 give 180 and 540, of which a crank alone can't say which comes first.
#[test]
fn twins_fire_in_the_more_even_of_two_ways() {
    let twin = |crank: &Geometry, expected: &str, is_tie: bool| {
        let found = check(expected, crank, "1-2", expected);
        assert_eq!((found.others.len(), found.is_tie), (1, is_tie), "{expected}: {found:?}");
    };
    twin(&crank("1 2", "", "0 270", 0.0), "0 270", false);
    twin(&crank("1 2", "", "0 180", 0.0), "0 180", true);
    twin(&crank("1/2", "70", "0", 40.0), "0 470", false);
    twin(&crank("1/2", "50", "0", 0.0), "0 410", false);
}

/// Source: `firing_orders.json`, `same_engine_numbered_bank_by_bank_*`: a V numbered along the crank, and by DIN 73021.
#[test]
fn a_published_order_is_translated_into_the_other_numbering() {
    let file: Value = serde_json::from_str(ORDERS).expect("JSON");
    let mut compared = 0;
    for row in file["engines"].as_array().expect("a list") {
        for (key, own) in [("odd", "banks-left-front"), ("even", "banks-right-front")] {
            let Some(expected) =
                row.get(format!("same_engine_numbered_bank_by_bank_{key}_bank_first"))
            else {
                continue;
            };
            let order: Vec<_> = numbers(&row["firing_order"]).iter().map(u32::to_string).collect();
            let expected: Vec<_> = numbers(expected).iter().map(u32::to_string).collect();
            let plan = plan(&[
                ("cylinders", &order.len().to_string()),
                ("order", &order.join("-")),
                ("numbering", own),
                ("order_numbering", "alternating-left"),
            ]);
            let report = report(&plan);
            let verdict = answer(&report).verdict.message.text.clone();
            assert!(verdict.ends_with(&expected.join("-")), "{}: {verdict}", row["id"]);
            compared += 1;
        }
    }
    assert_eq!(compared, 10, "five engines, two ways each");
}

/// Source: the rules of DIN 73021 (free end, left bank first) and TGL 6864 (power output, left bank first), by hand:
/// the left bank from one end is the right bank from the other, so every number is counted from the other end.
#[test]
fn two_standards_count_the_same_engine_from_either_end() {
    let din = Numbering::BankByBank(EngineEnd::Front, Side::Left);
    let tgl = Numbering::BankByBank(EngineEnd::Flywheel, Side::Left);
    for it in tgl.into_other(din, 6).expect("one engine") {
        assert_eq!(it.there + it.here, 7, "{it:?}");
    }
}

// What is typed, as the report has it. Source: the rules of this plan.

fn plan(fields: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    for (name, text) in fields {
        assert!(plan.set(&format!("engine.{name}"), text), "{name} is no field");
    }
    plan
}

fn answer(report: &Report) -> &quietpin_core::report::Answer {
    let section = report.sections.iter().find(|it| it.id == "firing").expect("the question");
    section.answers.iter().find(|it| it.subject == "engine").expect("the engine")
}

/// A boxer of four by its crank: what is typed over it is to be named.
const BOXER: &[(&str, &str)] = &[
    ("cylinders", "4"),
    ("order", "1-4-3-2"),
    ("spacing", "geometry"),
    ("banks", "1 2 / 3 4"),
    ("bank_angles", "180"),
    ("pins", "0 180 180 0"),
];

#[test]
fn a_boxer_by_its_crank_is_even_and_has_companions() {
    let report = report(&plan(BOXER));
    assert!(report.findings.is_empty(), "{:?}", report.findings);
    assert_eq!(answer(&report).verdict.message.text, "Fires every 180°: 1-4-3-2");
    assert_eq!(answer(&report).tables[0].working[1].filled, "0° + 0° + 0° − 0° + 0°");
}

#[track_caller]
fn check_found(name: &str, text: &str, code: &str, is_engine_left: bool) {
    let mut plan = plan(BOXER);
    plan.set(&format!("engine.{name}"), text);
    let report = report(&plan);
    let path = format!("engine.{name}");
    let found: Vec<_> =
        report.findings.iter().map(|it| (it.subject.as_str(), it.message.code)).collect();
    assert_eq!(found, [(path.as_str(), code)], "{text}: {:?}", report.findings);
    assert_eq!(report.fields[&path].state, State::Unreadable, "{path} {text}");
    assert_eq!(answer(&report).verdict.tone == Tone::Good, is_engine_left, "{path} {text}");
    let message = &report.findings[0].message.text;
    assert!(!message.contains(['{', '}']), "a gap is left: {message}");
}

#[test]
fn each_mistake_is_named_at_its_field() {
    check_found("pins", "0 180 180", "engine.pins-count", false);
    check_found("pins", "0 180 x 0", "engine.crank-unreadable", false);
    check_found("pins", "NaN", "engine.crank-unreadable", false);
    check_found("pins", "0 1e300", "engine.angle-beyond-turn", false);
    check_found("pins", "0 360", "engine.angle-beyond-turn", false);
    check_found("pins", "0 0 0 0", "engine.out-of-turn", false);
    check_found("bank_angles", "180 180", "engine.bank-angles-count", false);
    check_found("bank_angles", "flat", "engine.crank-unreadable", false);
    check_found("bank_angles", "720", "engine.angle-beyond-turn", false);
    check_found("split", "181", "field.too-large", false);
    check_found("split", "30 ohm", "field.wrong-unit", false);
    check_found("spacing", "crank", "field.unknown-choice", false);
    check_found("numbering", "left", "field.unknown-choice", false);
    check_found("order_numbering", "left", "field.unknown-choice", false);
    check_found("banks", "1 2 / 3", "engine.banks-missing", false);
}

#[test]
fn numberings_that_can_not_be_are_named_and_the_engine_is_answered() {
    let check = |fields: &[(&str, &str)], codes: &[&str]| {
        let report = report(&plan(fields));
        let found: Vec<_> = report.findings.iter().map(|it| it.message.code).collect();
        assert_eq!(found, codes, "{:?}", report.findings);
        // what was taken for a field that can't be used makes it no yes
        let mut numbering = report.fields.iter().filter(|(path, _)| path.ends_with("numbering"));
        let is_unread = numbering.any(|(_, it)| it.state == State::Unreadable);
        let tone = if is_unread { Tone::Doubtful } else { Tone::Good };
        assert_eq!(answer(&report).verdict.tone, tone, "{fields:?}");
    };
    let five = [("order", "1-2-4-5-3"), ("numbering", "alternating-left")];
    check(&five, &["engine.numbering-odd"]);
    let four = ("order", "1-3-4-2");
    let other = ("order_numbering", "inline-front");
    check(&[four, ("numbering", "banks-left-front"), other], &["engine.numbering-layouts"]);
    let banks = ("banks", "1 3 / 2 4");
    check(&[four, ("numbering", "banks-left-front"), banks], &["engine.numbering-banks"]);
    check(&[four, ("numbering", "alternating-right"), banks], &[]);
}

/// Angles typed in the order of the book stay those of the same cylinders, and begin with this plan's cylinder 1.
#[test]
fn angles_are_translated_with_their_order() {
    let report = report(&plan(&[
        ("order", "1-2-3-4-5-6"),
        ("spacing", "angles"),
        ("angles", "0 90 240 330 480 570"),
        ("numbering", "alternating-right"),
        ("order_numbering", "alternating-left"),
    ]));
    // 2 there is 1 here; from it the others come 150, 240, 390, 480 and 630 degrees later
    assert_eq!(answer(&report).verdict.message.text, "Odd-fire: 1-4-3-6-5-2");
    let shown: Vec<_> =
        answer(&report).tables[0].rows.iter().map(|row| row.cells[1].shown.as_str()).collect();
    assert_eq!(shown, ["0°", "150°", "240°", "390°", "480°", "630°"]);
}

#[test]
fn without_its_crank_an_odd_fire_engine_asks_for_it() {
    let report = report(&plan(&[("order", "1-3-4-2"), ("spacing", "geometry")]));
    let why = answer(&report).why.as_ref().expect("a reason");
    assert_eq!(why.code, "engine.needs-crank");
}

mod any_crank {
    use proptest::prelude::*;

    use super::{CrankAngle, Engine, EngineKind, Geometry, Spacing, turns};

    /// Cylinders in line, each with its pin and the turn in which it fires; no two within a degree.
    fn cylinders() -> impl Strategy<Value = Vec<u32>> {
        proptest::collection::btree_set(0_u32..720, 1..=16)
            .prop_map(|all| all.into_iter().collect::<Vec<_>>())
            .prop_shuffle()
    }

    fn in_line(pins: &[f64]) -> Geometry {
        let numbers = (1..).take(pins.len()).collect();
        let pins = pins.iter().map(|it| CrankAngle::new(it % 360.0)).collect();
        Geometry::new(vec![numbers], Vec::new(), pins, CrankAngle::default()).expect("a crank")
    }

    fn order(angles: &[u32]) -> Vec<u32> {
        let mut order: Vec<_> = angles.iter().zip(1_u32..).collect();
        order.sort_unstable();
        order.into_iter().map(|(_, cylinder)| cylinder).collect()
    }

    proptest! {
        /// Source: kinematics: what fires at these angles has its tops there, a turn or two round.
        #[test]
        fn the_true_angles_are_among_those_found(angles in cylinders()) {
            let order = order(&angles);
            let pins: Vec<_> = angles.iter().copied().map(f64::from).collect();
            let found = turns(EngineKind::FourStroke, &order, &in_line(&pins).tops()).expect("it fires");
            let start = angles.iter().min().copied().unwrap_or_default();
            let mut expected: Vec<_> = angles.iter().map(|it| f64::from(it - start)).collect();
            expected.sort_by(f64::total_cmp);
            let is_true = |way: &Vec<CrankAngle>| {
                way.iter().zip(&expected).all(|(it, angle)| it.is_near(CrankAngle::new(*angle)))
            };
            let mut ways = [&found.angles].into_iter().chain(&found.others);
            prop_assert!(ways.any(is_true), "{expected:?} is not among {found:?}");
        }

        #[test]
        fn turning_the_zero_of_the_crank_changes_nothing(angles in cylinders(), by in 0_u32..360) {
            let order = order(&angles);
            let found = |by: u32| {
                let pins: Vec<_> = angles.iter().map(|it| f64::from(it + by)).collect();
                turns(EngineKind::FourStroke, &order, &in_line(&pins).tops()).expect("it fires")
            };
            prop_assert_eq!(found(0), found(by));
        }

        #[test]
        fn angles_found_are_angles_that_can_be_typed_and_fill_the_cycle(angles in cylinders()) {
            let order = order(&angles);
            let pins: Vec<_> = angles.iter().copied().map(f64::from).collect();
            let found = turns(EngineKind::FourStroke, &order, &in_line(&pins).tops()).expect("it fires");
            for way in [found.angles].into_iter().chain(found.others) {
                let count = u32::try_from(order.len()).expect("small");
                let spacing = Spacing::Angles(way.clone());
                let engine = Engine::new(EngineKind::FourStroke, count, &order, &spacing);
                let engine = engine.expect("an engine");
                let typed: Vec<_> = engine.firings().iter().map(|it| it.angle).collect();
                prop_assert_eq!(typed, way);
                let intervals = order.iter().filter_map(|it| engine.interval_after(*it));
                let sum: f64 = intervals.map(CrankAngle::degrees).sum();
                prop_assert!((sum - 720.0).abs() < 1e-6, "{}", sum);
            }
        }
    }
}
