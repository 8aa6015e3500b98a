//! Engines and channels, held against published firing orders, geometry and example plans.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a test says what is wrong by failing"
)]

mod bad_input;

use std::collections::{BTreeMap, BTreeSet};

use quietpin_core::{
    channels::{Check, Effect, Habit, Ignition, Layout, Target, Wired},
    engine::{Engine, EngineKind, Spacing},
    explained,
    plan::{self, Plan},
    quantity::CrankAngle,
    report::{Answer, Picture, Report, Tone, report},
};
use quietpin_tests::Checked;
use serde_json::Value;

const ORDERS: &str = include_str!("reference/firing_orders.json");

/// One row of the file.
struct Published {
    id: String,
    row: Value,
    engine: Engine,
}

fn numbers(value: &Value) -> Vec<u32> {
    let whole = |it: &Value| u32::try_from(it.as_u64().expect("a number")).expect("small");
    value.as_array().expect("a list").iter().map(whole).collect()
}

fn pairs(value: &Value) -> Vec<(u32, u32)> {
    let list = value.as_array().into_iter().flatten();
    list.map(|pair| (numbers(pair)[0], numbers(pair)[1])).collect()
}

fn published() -> Vec<Published> {
    let file: Value = serde_json::from_str(ORDERS).expect("JSON");
    let rows = file["engines"].as_array().expect("a list");
    rows.iter().map(|row| one(row.clone())).collect()
}

fn one(row: Value) -> Published {
    let id = row["id"].as_str().expect("a name").to_owned();
    let order = numbers(&row["firing_order"]);
    // only the V10 on common pins at 90 degrees is not even: its angles are what a fitter would measure
    let spacing =
        if id == "v10alt" { Spacing::Angles(angles(&row, &order)) } else { Spacing::Even };
    let cylinders = u32::try_from(row["cylinders"].as_u64().expect("a count")).expect("small");
    let engine = Engine::new(EngineKind::FourStroke, cylinders, &order, &spacing);
    Published { id, row, engine: engine.expect("a published engine") }
}

fn angles(row: &Value, order: &[u32]) -> Vec<CrankAngle> {
    let at = |cylinder: &u32| row["event_angle_deg"][cylinder.to_string()].as_f64();
    order.iter().map(|cylinder| CrankAngle::new(at(cylinder).expect("an angle"))).collect()
}

/// Source: `firing_orders.json`, `event_angle_deg` (computed from published orders).
pub(crate) fn fired() -> Checked {
    let mut cases = 0;
    let all = published();
    assert!(all.len() >= 25, "the file has lost rows: {}", all.len());
    for Published { id, row, engine } in &all {
        let order = engine.order();
        for (cylinder, expected) in order.iter().zip(angles(row, &order)) {
            let angle = engine.angle_of(*cylinder).expect("an angle");
            assert!(angle.is_near(expected), "{id}, cylinder {cylinder}: {angle:?}");
            cases += 1;
        }
        assert_eq!(engine.is_even(), id != "v10alt", "{id}: even?");
    }
    let against = "published firing orders of road vehicles, see SOURCES.md";
    Checked::exact("firing", "Angles at which cylinders fire", against, cases)
}

#[test]
fn every_published_engine_fires_at_its_angles() {
    fired();
}

/// Source: `firing_orders.json`, `companions_360deg` and `companion_gap_deg` (computed).
pub(crate) fn companions() -> Checked {
    let mut cases = 0;
    for Published { id, row, engine } in published() {
        let listed = pairs(&row["companions_360deg"]);
        assert_eq!(listed.is_empty(), engine.cylinders() % 2 == 1, "{id}: odd numbers have none");
        let gaps = row["companion_gap_deg"].as_array().cloned().unwrap_or_default();
        for (&(one, other), gap) in listed.iter().zip(gaps) {
            let miss = gap.as_f64().expect("a gap") - 360.0;
            let exact = miss.abs() < 0.01;
            assert_eq!(engine.companion(one), exact.then_some(other), "{id}: {one}");
            assert_eq!(engine.companion(other), exact.then_some(one), "{id}: {other}");
            let (nearest, off) = engine.nearest_companion(one).expect("others");
            assert_eq!(nearest, other, "{id}: nearest to {one}");
            assert!(off.is_near(CrankAngle::new(miss)), "{id}: {one} misses by {off:?}");
            cases += 1;
        }
    }
    let against = "computed from published firing orders";
    Checked::exact("firing", "Companions, a turn away", against, cases)
}

#[test]
fn every_published_engine_has_its_companions() {
    companions();
}

/// Source: `firing_orders.json`, `same_engine_numbered_bank_by_bank_*`; DIN 73021 as quoted there.
#[test]
fn one_engine_numbered_two_ways_fires_the_same_cylinders_alike() {
    let mut compared = 0;
    for Published { id, row, engine } in published() {
        for odd_first in [true, false] {
            let key = format!(
                "same_engine_numbered_bank_by_bank_{}_bank_first",
                if odd_first { "odd" } else { "even" }
            );
            if row.get(&key).is_some() {
                check_renumbered(&id, &engine, &numbers(&row[&key]), odd_first);
                compared += 1;
            }
        }
    }
    assert_eq!(compared, 10, "five engines, two ways each");
}

/// The number by banks of a cylinder that is numbered alternating: odd on one bank, even on the other.
fn by_bank(cylinder: u32, cylinders: u32, odd_first: bool) -> u32 {
    let place = cylinder.div_ceil(2);
    if (cylinder % 2 == 1) == odd_first { place } else { place + cylinders / 2 }
}

#[track_caller]
fn check_renumbered(id: &str, alternating: &Engine, order: &[u32], odd_first: bool) {
    let n = alternating.cylinders();
    let first = (1..=n).find(|&it| by_bank(it, n, odd_first) == 1).expect("a first");
    let start = alternating.angle_of(first).expect("an angle");
    let shifted = |cylinder| {
        let angle = alternating.angle_of(cylinder).expect("an angle");
        (angle - start).within(alternating.cycle())
    };
    let spacing = if alternating.is_even() {
        Spacing::Even
    } else {
        let place = alternating.place_of(first).expect("a place");
        let mut cylinders = alternating.order();
        cylinders.rotate_left(place);
        Spacing::Angles(cylinders.into_iter().map(shifted).collect())
    };
    let banked = Engine::new(EngineKind::FourStroke, n, order, &spacing).expect("an engine");
    for cylinder in 1..=n {
        let other = by_bank(cylinder, n, odd_first);
        let angle = banked.angle_of(other).expect("an angle");
        assert!(
            (angle - shifted(cylinder)).as_error(banked.cycle()).is_near(CrankAngle::default()),
            "{id} {odd_first}: {cylinder} is {other} and fires at {angle:?}"
        );
        let companion = alternating.companion(cylinder).map(|it| by_bank(it, n, odd_first));
        assert_eq!(banked.companion(other), companion, "{id} {odd_first}: {cylinder} is {other}");
    }
}

/// Source: `firing_orders.json`, `radial_7`: every other cylinder of a radial fires next.
#[test]
fn seven_cylinders_of_a_radial_fire_every_other_one() {
    let file: Value = serde_json::from_str(ORDERS).expect("JSON");
    let order = numbers(&file["radial_7"]["order"]);
    let engine = Engine::new(EngineKind::FourStroke, 7, &order, &Spacing::Even).expect("an engine");
    for pair in order.windows(2) {
        assert_eq!((pair[1] + 7 - pair[0]) % 7, 2, "{order:?}");
    }
    assert!(!engine.has_companions(), "an odd number");
}

/// Source: geometry. Pins 120 degrees apart, cylinders of a pin 90 degrees apart: 0, 90, 240, 330, 480, 570.
/// An engine told to be even is wrong by 30 degrees on one bank.
#[test]
fn an_odd_fire_six_told_to_be_even_is_30_degrees_wrong_on_one_bank() {
    let pins = [0.0, 240.0, 480.0];
    let angles: Vec<CrankAngle> =
        pins.iter().flat_map(|pin| [*pin, pin + 90.0]).map(CrankAngle::new).collect();
    let order = [1, 6, 5, 4, 3, 2];
    let odd =
        Engine::new(EngineKind::FourStroke, 6, &order, &Spacing::Angles(angles)).expect("odd");
    let even = Engine::new(EngineKind::FourStroke, 6, &order, &Spacing::Even).expect("even");
    check_told_even(&odd, &even, &[1, 3, 5], 30.0);
}

/// Source: `firing_orders.json`, `v10alt`: 54 and 90 degrees in turn.
#[test]
fn an_odd_fire_ten_told_to_be_even_is_18_degrees_wrong_on_one_bank() {
    let ten = published().into_iter().find(|it| it.id == "v10alt").expect("there");
    let even = Engine::new(EngineKind::FourStroke, 10, &ten.engine.order(), &Spacing::Even);
    check_told_even(&ten.engine, &even.expect("even"), &[1, 3, 5, 7, 9], 18.0);
}

#[track_caller]
fn check_told_even(odd: &Engine, even: &Engine, right: &[u32], late: f64) {
    let layout = Layout::ignition(even, Ignition::Sequential, Habit::ByOrder).expect("possible");
    let wired: Wired = layout.slots().iter().map(|slot| (slot.targets[0], slot.channel)).collect();
    for reached in Check::ignition(odd, &layout, &wired).reached {
        let cylinder = reached.target.cylinder;
        let expected = if right.contains(&cylinder) { 0.0 } else { late };
        let error = reached.error().expect("a spark");
        assert!(error.is_near(CrankAngle::new(expected)), "{cylinder}: {error:?}");
    }
}

/// Source: geometry of the two-stroke: a spark each turn, 360 / n apart.
#[test]
fn two_strokes_fire_once_a_turn() {
    for (cylinders, interval) in [(1, 360.0), (2, 180.0), (3, 120.0), (4, 90.0), (6, 60.0)] {
        let order: Vec<u32> = (1..=cylinders).collect();
        let engine = Engine::new(EngineKind::TwoStroke, cylinders, &order, &Spacing::Even);
        let engine = engine.expect("an engine");
        let after = engine.interval_after(cylinders).expect("an interval");
        assert!(after.is_near(CrankAngle::new(interval)), "{cylinders}: {after:?}");
        let once = Layout::ignition(&engine, Ignition::Sequential, Habit::ByOrder);
        let every = Layout::ignition(&engine, Ignition::EveryTurn, Habit::ByOrder);
        assert_eq!(once, every, "{cylinders}: every turn is once a cycle");
    }
}

/// Source: definition of paired firing: the spark that isn't its own lies exactly in the overlap.
#[test]
fn every_published_engine_with_companions_wastes_its_second_sparks() {
    for Published { id, engine, .. } in published() {
        let Ok(layout) = Layout::ignition(&engine, Ignition::PairedDouble, Habit::ByOrder) else {
            assert!(!engine.has_companions(), "{id} has companions");
            continue;
        };
        assert_eq!(layout.channels() * 2, engine.cylinders(), "{id}: half the channels");
        let wired: Wired = (1..=engine.cylinders())
            .map(Target::only)
            .map(|it| (it, layout.channel_of(it).expect("a channel")))
            .collect();
        for reached in Check::ignition(&engine, &layout, &wired).reached {
            let errors: Vec<f64> = reached.sparks.iter().map(|it| it.error.degrees()).collect();
            assert_eq!(errors, [0.0, 360.0], "{id}, {:?}", reached.target);
            assert_eq!(reached.effect, Effect::Right, "{id}, {:?}", reached.target);
        }
    }
}

// The example plans, as a fitter reads them.

fn example(name: &str) -> Report {
    let path = format!("{}/plans/firing-{name}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).expect(&path);
    report(&plan::parse(&text).expect(&path))
}

fn answers(report: &Report) -> &[std::rc::Rc<Answer>] {
    &report.sections.iter().find(|it| it.id == "firing").expect("the question").answers
}

#[track_caller]
fn check_answer(report: &Report, subject: &str, tone: Tone, verdict: &str) -> Answer {
    let answer = answers(report).iter().find(|it| it.subject == subject);
    let answer = answer.unwrap_or_else(|| panic!("{subject} has no answer in {}", report.name));
    assert_eq!(answer.verdict.message.text, verdict, "{}", report.name);
    assert_eq!(answer.verdict.tone, tone, "{}", report.name);
    Answer::clone(answer)
}

#[track_caller]
fn check_to_do(answer: &Answer, expected: &[&str]) {
    let texts: Vec<_> = answer.to_do.iter().map(|it| it.text.as_str()).collect();
    assert_eq!(texts, expected, "{}", answer.verdict.message.text);
}

#[track_caller]
fn check_figure(answer: &Answer, label: &str, expected: &str) {
    let figure = answer.figures.iter().find(|it| it.label.code == label).expect(label);
    assert_eq!(figure.value.shown, expected, "{label}");
}

const COILS: &str = "channels.coils_wired";
const INJECTORS: &str = "channels.injectors_wired";

#[test]
fn a_straight_six_that_is_right_is_told_so() {
    let report = example("six-right");
    check_answer(&report, "engine", Tone::Good, "Fires every 120°: 1-5-3-6-2-4");
    let verdict = "6 channels, one for each cylinder";
    let planned = check_answer(&report, "channels.ignition_mode", Tone::Good, verdict);
    check_figure(&planned, "firing.order-to-enter", "1-2-3-4-5-6");
    check_answer(&report, COILS, Tone::Good, "Wired right: all 6");
    check_answer(&report, INJECTORS, Tone::Good, "Wired right: all 6");
    assert!(report.findings.is_empty(), "{:?}", report.findings);
}

#[test]
fn two_leads_exchanged_are_put_right_by_a_text_or_one_exchange() {
    let report = example("six-two-leads");
    let answer = check_answer(&report, COILS, Tone::Bad, "Wired wrong: 2 of 6");
    check_to_do(
        &answer,
        &[
            "Enter this order of channels in the controller: 1-3-5-6-2-4. No lead is moved.",
            "Swap leads or coil connectors: 1 swap (3 with 5) puts 2 right.",
        ],
    );
    check_figure(&answer, "firing.figure-out-of-place", "2");
    check_figure(&answer, "firing.figure-exchanges", "1");
    check_answer(&report, INJECTORS, Tone::Doubtful, "Wired wrong: 2 of 6");
}

#[test]
fn mixed_habits_leave_number_1_right() {
    let report = example("six-habits-mixed");
    let answer = check_answer(&report, COILS, Tone::Bad, "Wired wrong: 4 of 6");
    // by hand: 2 and 5 hold each other's lead, 4 and 6 too; 3 is third to fire
    check_figure(&answer, "firing.figure-out-of-place", "4");
    check_figure(&answer, "firing.figure-exchanges", "2");
    assert_eq!(
        answer.to_do[0].values.get("order").expect("a value").shown,
        "1-5-3-6-2-4",
        "the firing order itself"
    );
    assert_eq!(answer.why.expect("a cause").code, "firing.habits-by-cylinder");
}

#[test]
fn all_leads_on_the_companion_are_one_setting() {
    let report = example("eight-turned");
    let answer = check_answer(&report, COILS, Tone::Bad, "All 8 out by the same: one setting");
    assert_eq!(answer.to_do[0].code, "firing.cure-setting-turn");
    assert_eq!(answer.to_do.len(), 3, "setting, order, leads: {:?}", answer.to_do);
    check_figure(&answer, "firing.figure-out-of-place", "8");
    check_figure(&answer, "firing.figure-exchanges", "4");
}

#[test]
fn leads_one_tower_round_are_turned_together() {
    let answer = check_answer(
        &example("distributor-one-tower"),
        COILS,
        Tone::Bad,
        "All 6 out by the same: one setting",
    );
    assert_eq!(answer.to_do[0].text, "Move all leads together 1 tower on, in rotor direction.");
}

#[test]
fn pairs_without_companions_are_refused_with_what_works() {
    let report = example("odd-six-pairs");
    let verdict = "Pairs don't work on this engine";
    let answer = check_answer(&report, "channels.ignition_mode", Tone::Bad, verdict);
    assert_eq!(
        answer.why.expect("a reason").text,
        "No cylinder fires exactly 360° from cylinder 1: the nearest, 4, misses by 30°. Sharing, cylinder 4 gets a spark −330° from its firing point (intake): backfire in the inlet."
    );
    assert_eq!(answer.to_do[0].code, "firing.instead-every-turn");
    let verdict = "Not yet proved: 2 channels, one for each bank";
    check_answer(&report, "channels.injection_mode", Tone::Open, verdict);
}

#[test]
fn too_few_channels_are_told_with_what_can_be_had() {
    let report = example("six-short");
    let verdict = "Needs 6 channels, you have 4";
    let answer = check_answer(&report, "channels.ignition_count", Tone::Bad, verdict);
    assert_eq!(
        answer.why.as_ref().expect("a reason").text,
        "You need 6 one by one, 3 in companion pairs; you have 4."
    );
    check_to_do(
        &answer,
        &[
            "With 4 channels: fire companion pairs (wasted spark), 3 channels. You give up a spark of its own for each cylinder.",
        ],
    );
}

#[test]
fn companion_swap_is_said_for_today_and_for_the_day_of_sequential() {
    let report = example("six-companions-swapped");
    let answer = check_answer(&report, COILS, Tone::Doubtful, "Runs like this, but not sequential");
    assert_eq!(
        answer.to_do[0].values.get("order").expect("a value").shown,
        "6-5-3-1-2-4",
        "{:?}",
        answer.to_do
    );
    assert!(!report.has_danger_or_fault(), "{:?}", report.findings);
}

#[test]
fn what_is_seen_so_far_gets_no_cure() {
    let report = example("four-partly-seen");
    let answer = check_answer(&report, COILS, Tone::Doubtful, "1 of 4 seen, nothing wrong so far");
    check_to_do(
        &answer,
        &[
            "Channel 3 can't be as planned: what the plan has there fired on another.",
            "Not seen yet: 2, 3 and 4. Fire one channel at a time and note whose coil sparks.",
        ],
    );
    let again = report.findings.iter().find(|it| it.subject == "channels.coils_wired.3");
    assert_eq!(again.expect("a finding").message.code, "firing.wired-again");
}

#[test]
fn an_engine_alone_gets_its_table_and_what_each_way_takes() {
    let report = example("engine-only");
    check_answer(&report, "engine", Tone::Good, "Fires every 144°: 1-2-4-5-3");
    let verdict = "Choose how the coils are fired";
    let answer = check_answer(&report, "channels.ignition_mode", Tone::Open, verdict);
    assert_eq!(answer.tables[0].rows.len(), 5, "every way");
}

#[test]
fn nothing_typed_asks_for_three_things() {
    let report = report(&Plan::default());
    let answer = check_answer(&report, "engine", Tone::Open, "Not answered yet");
    assert_eq!(answer.why.expect("a reason").code, "firing.needs-three");
}

#[test]
fn bad_input_is_named_and_nothing_else_is_lost() {
    for (name, path) in [("bad-order", "engine.order"), ("bad-cylinders", "engine.cylinders")] {
        let report = example(name);
        assert!(report.findings.iter().any(|it| it.subject == path), "{name}: {path} is not named");
        check_answer(&report, "engine", Tone::Open, "Not answered yet");
    }
}

fn examples() -> BTreeMap<String, Report> {
    let folder = format!("{}/plans", env!("CARGO_MANIFEST_DIR"));
    let names = std::fs::read_dir(folder).expect("plans").filter_map(|entry| {
        let name = entry.ok()?.file_name().into_string().ok()?;
        Some(name.strip_prefix("firing-")?.strip_suffix(".json")?.to_owned())
    });
    names.map(|name| (name.clone(), example(&name))).collect()
}

#[test]
fn every_finding_of_the_question_has_a_plan_that_shows_it() {
    let shown: BTreeSet<&str> = examples()
        .values()
        .flat_map(|report| report.findings.iter().map(|it| it.message.code))
        .collect();
    for it in explained::explanations().filter(|it| it.code.starts_with("channels.")) {
        assert!(shown.contains(it.code), "no plan shows {}", it.code);
    }
}

#[test]
fn every_number_of_every_plan_has_its_working() {
    for (name, report) in examples() {
        assert_whole(&name, &report);
    }
}

/// No gap left in a text, no number that is none, no number without working, no table with a ragged row.
#[track_caller]
fn assert_whole(name: &str, report: &Report) {
    let text = serde_json::to_string(&report.sections).expect("data");
    let gap = text.find("{n").or(text.find("\"text\":\"{")).or(text.find("NaN"));
    assert!(gap.is_none(), "{name}: a gap is left at {gap:?}");
    for answer in answers(report) {
        for figure in &answer.figures {
            assert!(!figure.working.is_empty(), "{name}: {} has no working", figure.label.text);
        }
        for table in &answer.tables {
            assert!(!table.working.is_empty(), "{name}: {} has no working", table.caption.text);
            for row in &table.rows {
                assert_eq!(row.cells.len(), table.columns.len(), "{name}: {}", table.caption.text);
            }
        }
        for picture in &answer.pictures {
            if let Picture::Strip(strip) = picture {
                for window in &strip.windows {
                    let is_within = (0.0..strip.cycle_deg).contains(&window.to_deg);
                    assert!(is_within && window.from_deg <= window.to_deg, "{name}: {window:?}");
                }
                continue;
            }
            let Picture::Cycle(cycle) = picture else { panic!("{name}: another picture") };
            let inside = |degrees: f64| (0.0..cycle.cycle_deg).contains(&degrees);
            assert!(cycle.events.iter().all(|it| inside(it.angle_deg)), "{name}: an event outside");
        }
    }
}

mod any_input {
    use proptest::prelude::*;

    use super::{assert_whole, report};
    use quietpin_core::{
        fields::{channels, engine},
        plan::Plan,
        schema::{Key, NumberRow, Part, Place},
    };

    /// What a person, or chance, may type into a field.
    fn typed() -> impl Strategy<Value = String> {
        let usual = [
            "",
            "1",
            "2",
            "3",
            "6",
            "16",
            "17",
            "0",
            "-1",
            "1e300",
            "NaN",
            "1-3-4-2",
            "1-5-3-6-2-4",
            "153624",
            "0 90 240 330 480 570",
            "1 3 5 / 2 4 6",
            "1L",
            "T2",
            "1 6",
            "sequential",
            "every-turn",
            "paired-single",
            "paired-double",
            "distributor",
            "each-once",
            "companions",
            "by-bank",
            "together",
            "by-cylinder",
            "by-order",
            "rotary",
            "two-stroke",
            "four-stroke",
            "angles",
            "even",
            "1,2",
            "½",
            "1-2-3-4-5-6",
        ];
        prop_oneof![
            4 => proptest::sample::select(usual.map(str::to_owned).to_vec()),
            1 => "[^{}]{0,12}",
        ]
    }

    /// The fields in which anything may stand.
    fn places() -> [Place; 12] {
        [
            engine::KIND.into(),
            engine::CYLINDERS.into(),
            engine::ORDER.into(),
            engine::SPACING.into(),
            engine::ANGLES.into(),
            engine::BANKS.into(),
            channels::IGNITION_MODE.into(),
            channels::IGNITION_COUNT.into(),
            channels::IGNITION_HABIT.into(),
            channels::INJECTION_MODE.into(),
            channels::INJECTION_COUNT.into(),
            channels::INJECTION_HABIT.into(),
        ]
    }

    fn anything() -> impl Strategy<Value = Plan> {
        let texts = proptest::collection::vec(typed(), places().len());
        let lists = || proptest::collection::vec(typed(), 0..20);
        (texts, lists(), lists()).prop_map(|(texts, coils, injectors)| {
            let mut plan = Plan::default();
            let cells = |of: Key<NumberRow>, texts: Vec<String>| {
                (0..).map(move |at| of.in_cell(at).place()).zip(texts)
            };
            let typed = places()
                .into_iter()
                .zip(texts)
                .chain(cells(channels::COILS_WIRED, coils))
                .chain(cells(channels::INJECTORS_WIRED, injectors));
            for (place, text) in typed {
                assert!(plan.put(place, &text), "{} is in the plan", place.path());
            }
            plan
        })
    }

    /// A plan whose engine can be read, with anything at all in its channels.
    fn known_engine() -> impl Strategy<Value = Plan> {
        let engines = [
            ("", "6", "1-5-3-6-2-4", ""),
            ("", "3", "1-3-2", ""),
            ("rotary", "2", "", ""),
            ("two-stroke", "4", "1-2-3-4", "0 0 180 180"),
            ("", "1", "", ""),
            ("", "6", "1-6-5-4-3-2", "0 90 240 330 480 570"),
        ];
        (anything(), proptest::sample::select(engines.to_vec())).prop_map(
            |(mut plan, (kind, cylinders, order, angles))| {
                plan.take(Part::Engine, &Plan::default());
                plan.put(engine::KIND, kind);
                plan.put(engine::CYLINDERS, cylinders);
                plan.put(engine::ORDER, order);
                plan.put(engine::ANGLES, angles);
                plan
            },
        )
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(400))]

        #[test]
        fn anything_typed_gives_a_report(plan in anything()) {
            let report = report(&plan);
            assert_whole("anything", &report);
            prop_assert_eq!(&report, &super::report(&plan), "the same twice");
        }

        #[test]
        fn any_channels_of_a_known_engine_give_whole_answers(plan in known_engine()) {
            assert_whole("known engine", &report(&plan));
        }
    }
}

/// One reading of several cylinders tells no cause from another; of a single there is no more. A rule is every second one of an even
/// number of cylinders that fire evenly, and of two readings only where there are no more.
#[test]
fn a_light_shows_a_rule_where_there_is_one() {
    use quietpin_core::channels::light::{LightFinding, Readings, finding};
    let degrees = CrankAngle::new;
    let seen = |engine: &Engine, late: &[f64]| {
        let read = |(cylinder, late): (&u32, &f64)| (*cylinder, degrees(10.0 - late));
        finding(
            engine,
            &Readings {
                advance: degrees(10.0),
                seen: engine.order().iter().zip(late).map(read).collect(),
                tolerance: degrees(1.0),
                offset: None,
                positions: None,
                stroke: None,
            },
        )
    };
    let of = |order: &[u32], spacing: &Spacing| {
        let cylinders = u32::try_from(order.len()).expect("few");
        Engine::new(EngineKind::FourStroke, cylinders, order, spacing).expect("an engine")
    };
    let (single, twin) = (of(&[1], &Spacing::Even), of(&[1, 2], &Spacing::Even));
    assert!(matches!(seen(&single, &[0.0]), LightFinding::Constant(..)), "there is no more");
    assert_eq!(seen(&twin, &[0.0]), LightFinding::TooFew);
    let six = of(&[1, 5, 3, 6, 2, 4], &Spacing::Even);
    let alternates = [0.0, 20.0, 0.0, 20.0, 0.0, 20.0];
    let is_rule = |found: LightFinding| matches!(found, LightFinding::Alternating(_));
    assert!(is_rule(seen(&six, &alternates)), "{:?}", seen(&six, &alternates));
    assert!(is_rule(seen(&twin, &[0.0, 20.0])), "both that there are");
    assert!(!is_rule(seen(&six, &[0.0, 20.0])), "two of six");
    let odd = Spacing::Angles([0.0, 90.0, 240.0, 330.0, 480.0, 570.0].map(degrees).to_vec());
    let uneven = of(&[1, 6, 5, 4, 3, 2], &odd);
    assert!(!is_rule(seen(&uneven, &alternates)), "it fires unevenly anyway");
    let triple = of(&[1, 2, 3], &Spacing::Even);
    assert!(!is_rule(seen(&triple, &[0.0, 20.0, 0.0])), "the first comes after the last");
}

/// By hand: a six whose tops lie 120 degrees apart is even one way alone, a twin at 180 degrees fires as unevenly either way round.
#[test]
fn a_crank_that_leaves_the_turn_open_leaves_the_engine_in_doubt() {
    for (name, tone) in
        [("firing-crank-six-split", Tone::Good), ("firing-crank-twin-180", Tone::Doubtful)]
    {
        let plan = quietpin_tests::plans::ALL.iter().find(|it| it.name == name).expect(name);
        let report = report(&plan::parse(plan.text).expect(name));
        let mut answers = report.sections.iter().flat_map(|it| &it.answers);
        let engine = answers.find(|it| it.subject == "engine").expect("an engine");
        assert_eq!(engine.verdict.tone, tone, "{name}: {}", engine.verdict.message.text);
    }
}
