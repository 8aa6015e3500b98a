//! Whole plans, from what is typed to what is said.

use proptest::prelude::*;
use quietpin_core::{
    fields::{loads, outputs, relays, temperatures},
    plan::{Plan, parse},
    report::{Answer, Picture, Report, Tone, report},
    schema::{Kind, Part, Place},
};
use quietpin_tests::{Checked, Worst};

/// What is typed in an output or a load, each text at its place in the first of them.
#[derive(Clone, Default)]
struct Record(Vec<(Place, &'static str)>);

impl Record {
    fn with(mut self, place: impl Into<Place>, text: &'static str) -> Self {
        self.0.push((place.into(), text));
        self
    }
}

fn output(name: &'static str, stage: &'static str, on_level: &'static str) -> Record {
    Record::default()
        .with(outputs::NAME, name)
        .with(outputs::STAGE, stage)
        .with(outputs::ON_LEVEL, on_level)
}

fn valve(output: &'static str, far_end: &'static str) -> Record {
    Record::default()
        .with(loads::NAME, "valve")
        .with(loads::KIND, "solenoid")
        .with(loads::RESISTANCE, "12 ohm")
        .with(loads::OUTPUT, output)
        .with(loads::FAR_END, far_end)
}

fn plan(outputs: &[Record], loads: &[Record]) -> Plan {
    let mut plan = Plan::default();
    for (list, records) in [(Part::Outputs, outputs), (Part::Loads, loads)] {
        for record in records {
            let at = plan.add(list);
            for (place, text) in &record.0 {
                assert_eq!(place.part(), list, "{} is no place of it", place.path());
                assert!(plan.put(place.at(at), text), "{} is in the plan", place.path());
            }
        }
    }
    plan
}

fn answers(report: &Report) -> &[std::rc::Rc<Answer>] {
    &report.sections.iter().find(|it| it.id == "outputs").expect("the section").answers
}

/// The code and the tone of the first answer.
#[track_caller]
fn check(plan: &Plan, code: &str, tone: Tone) {
    let report = report(plan);
    let verdict = &answers(&report)[0].verdict;
    assert_eq!((verdict.message.code, verdict.tone), (code, tone), "{:?}", answers(&report)[0].why);
}

fn finding<'a>(report: &'a Report, code: &str) -> Option<&'a quietpin_core::finding::Finding> {
    report.findings.iter().find(|it| it.message.code == code).map(std::rc::Rc::as_ref)
}

#[test]
fn an_empty_plan_asks_for_three_things() {
    check(&Plan::default(), "outputs.open", Tone::Open);
    let blank = [Record::default()];
    check(&plan(&[], &blank), "outputs.open", Tone::Open);
    check(&plan(&blank, &[]), "outputs.open-no-loads", Tone::Open);
    check(&plan(&blank, &blank), "outputs.open-stage", Tone::Open);
}

#[test]
fn the_only_output_is_taken() {
    let plan = plan(&[output("", "open-drain", "")], &[valve("", "ignition")]);
    check(&plan, "outputs.connect", Tone::Good);
    let report = report(&plan);
    let state = &report.fields["loads.0.output"];
    assert_eq!(state.value.as_ref().map(|it| it.shown.as_str()), Some("output 1"), "{state:?}");
}

#[test]
fn without_a_far_end_the_ends_that_would_do_are_named() {
    let report = report(&plan(&[output("A", "open-drain", "")], &[valve("A", "")]));
    let answer = &answers(&report)[0];
    assert_eq!(answer.verdict.message.code, "outputs.open-far-end", "asked");
    let texts: Vec<_> = answer.to_do.iter().map(|it| it.text.as_str()).collect();
    assert_eq!(texts.len(), 3, "15, 87 and 30, and not ground: {texts:?}");
    assert!(texts.iter().all(|it| !it.contains("(31)")), "{texts:?}");
}

#[test]
fn without_an_output_the_outputs_that_would_do_are_named() {
    let outputs = [output("A", "open-drain", ""), output("B", "high-side", "")];
    let report = report(&plan(&outputs, &[valve("", "ground")]));
    let answer = &answers(&report)[0];
    assert_eq!(answer.verdict.message.code, "outputs.open-output", "asked");
    assert_eq!(answer.to_do.len(), 1, "B alone: {:?}", answer.to_do);
    assert!(answer.to_do[0].text.starts_with("B would do"), "{:?}", answer.to_do);
}

#[test]
fn danger_is_what_can_hurt() {
    for (unasked, severity) in [
        ("dangerous", quietpin_core::finding::Severity::Danger),
        ("costly", quietpin_core::finding::Severity::Fault),
        ("", quietpin_core::finding::Severity::Fault),
    ] {
        let load = valve("A", "ground").with(loads::UNASKED, unasked);
        let report = report(&plan(&[output("A", "half-bridge", "ground")], &[load]));
        let found = finding(&report, "outputs.live-at-rest").expect("found");
        assert_eq!(found.severity, severity, "unasked {unasked:?}");
        assert_eq!(found.subject, "loads.0.far_end", "the page leads there");
        assert!(!found.remedies.is_empty() && !found.working.is_empty(), "{found:?}");
    }
}

#[test]
fn an_unknown_level_gives_both_answers() {
    let plan = plan(&[output("A", "half-bridge", "")], &[valve("A", "ground")]);
    check(&plan, "outputs.depends", Tone::Doubtful);
    let report = report(&plan);
    let answer = &answers(&report)[0];
    let why = answer.why.as_ref().expect("why").text.clone();
    assert!(why.contains("live when off") && why.contains("Connect it"), "{why}");
    assert_eq!(answer.pictures.len(), 2, "one for each level");
    let found = finding(&report, "outputs.depends-on-level").expect("found");
    assert_eq!(found.subject, "outputs.0.on_level", "the page leads there");
}

#[test]
fn what_is_set_otherwise_is_clean() {
    check(
        &plan(&[output("A", "half-bridge", "battery")], &[valve("A", "ground")]),
        "outputs.connect",
        Tone::Good,
    );
    check(
        &plan(&[output("A", "half-bridge", "ground")], &[valve("A", "ignition")]),
        "outputs.connect",
        Tone::Good,
    );
}

#[test]
fn an_unreadable_pull_up_is_not_none() {
    let broken = output("A", "open-drain", "").with(outputs::PULL_UP, "some");
    check(&plan(&[broken], &[valve("A", "ignition")]), "outputs.open-mend", Tone::Open);
    let load = valve("A", "ignition").with(loads::RESISTANCE, "1.500 ohm");
    check(&plan(&[output("A", "open-drain", "")], &[load]), "outputs.open-mend", Tone::Open);
}

#[test]
fn an_output_that_is_not_there_is_named() {
    let report = report(&plan(&[output("A", "open-drain", "")], &[valve("B", "ignition")]));
    let found = finding(&report, "field.no-such-output").expect("found");
    assert_eq!(found.subject, "loads.0.output", "at the field");
    assert!(found.message.text.contains('A'), "the outputs there are: {}", found.message.text);
}

#[test]
fn outputs_of_one_name_are_told_apart() {
    let outputs = [output("A", "high-side", ""), output("a ", "open-drain", "")];
    let report =
        report(&plan(&outputs, &[valve("A", "ground"), valve("a (output 2)", "ignition")]));
    assert!(finding(&report, "outputs.output-named-twice").is_some(), "said");
    let codes: Vec<_> = answers(&report).iter().map(|it| it.verdict.message.code).collect();
    assert_eq!(
        codes,
        ["outputs.connect", "outputs.connect"],
        "the first, and the second by its number"
    );
}

#[test]
fn more_than_can_be_read_is_said() {
    let outputs = vec![output("", "open-drain", ""); 70];
    let loads = vec![valve("output 70", "ignition"); 70];
    let report = report(&plan(&outputs, &loads));
    let subjects: Vec<_> = report
        .findings
        .iter()
        .filter(|it| it.message.code == "field.too-many")
        .map(|it| it.subject.as_str())
        .collect();
    assert_eq!(subjects, ["outputs", "loads"], "both lists");
    assert_eq!(answers(&report).len(), 64, "the rest is answered");
}

#[test]
fn a_level_to_let_go_above_the_level_to_act_is_refused() {
    let load = valve("A", "ignition").with(loads::PULL_IN, "6 V").with(loads::DROP_OUT, "7 V");
    let report = report(&plan(&[output("A", "open-drain", "")], &[load]));
    assert_eq!(
        finding(&report, "outputs.lets-go-above").expect("found").subject,
        "loads.0.drop_out",
        "there"
    );
}

#[test]
fn a_lamp_may_start_with_ten_times_its_current() {
    let lamp = valve("A", "ignition").with(loads::KIND, "lamp").with(loads::RESISTANCE, "0.7 ohm");
    let output = output("A", "open-drain", "").with(outputs::CURRENT_LIMIT, "5 A");
    let plan = plan(&[output], &[lamp]);
    check(&plan, "outputs.care-inrush", Tone::Doubtful);
}

/// Common practice, no source: a lamp's inrush lasts milliseconds, a motor's start tenths of a second.
#[test]
fn a_motor_whose_start_takes_more_than_the_output_bears_is_not_only_to_be_handled_with_care() {
    let motor =
        |ohms| valve("A", "ignition").with(loads::KIND, "motor").with(loads::RESISTANCE, ohms);
    let output = || output("A", "open-drain", "").with(outputs::CURRENT_LIMIT, "5 A");
    let plan_of = |ohms| plan(&[output()], &[motor(ohms)]);
    check(&plan_of("0.7 ohm"), "outputs.no-inrush", Tone::Bad);
    let report = report(&plan_of("0.7 ohm"));
    assert_eq!(
        finding(&report, "outputs.inrush").expect("found").severity,
        quietpin_core::finding::Severity::Fault
    );
    // 14.8 V / 3.6 ohm are 4.1 A at 20 °C, 4.9 A in the cold
    let report = quietpin_core::report::report(&plan_of("3.6 ohm"));
    assert!(finding(&report, "outputs.inrush").is_none());
}

#[test]
fn too_much_current_is_a_danger() {
    let output = output("A", "open-drain", "").with(outputs::CURRENT_LIMIT, "1 A");
    let plan = plan(&[output], &[valve("A", "ignition")]);
    check(&plan, "outputs.no-too-much-current", Tone::Bad);
    let report = report(&plan);
    let found = finding(&report, "outputs.too-much-current").expect("found");
    assert_eq!(found.severity, quietpin_core::finding::Severity::Danger, "it melts the output");
    // at -20 °C 12 ohm of copper are 10.1 ohm, and the switch has 76 mohm: 14.8 V over 10.2 ohm
    let worst = 14.8 / (0.1 * (1.0 - 40.0 * 0.006) + 12.0 * (1.0 - 40.0 * 0.00393));
    let said = found.message.values.get("current").expect("a value").number.expect("a number");
    assert!((said - worst).abs() < 1e-9, "{said} A instead of {worst} A");
}

/// Source: `reference/relay_facts.json`, computed there from the operate voltage of a data sheet.
pub(crate) fn hot_coils() -> Checked {
    let mut worst = Worst::default();
    let text = quietpin_tests::reference("relay_facts.json");
    let facts: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    for (key, hot) in [("v_operate_85C", "85"), ("v_operate_125C", "125")] {
        let expected = facts["hot_coil"][key].as_f64().expect("a number");
        let mut plan = plan(&[output("A", "open-drain", "")], &[]);
        let relay = plan.add(Part::Relays);
        plan.put(relays::OUTPUT.at(relay), "A");
        plan.put(relays::FAR_END.at(relay), "ignition");
        plan.put(relays::PULL_IN.at(relay), "6.9 V");
        plan.put(temperatures::HOT, hot);
        let report = report(&plan);
        let figures = &answers(&report)[0].figures;
        let figure =
            figures.iter().find(|it| it.label.code == "outputs.figure-acts-hot").expect("there");
        let found = figure.value.number.expect("a number");
        worst.check(key, Some(found), expected, 1e-9);
    }
    let against = "a relay's data sheet and IEC 60028, computed";
    worst.checked("outputs", "Pull-in of a hot relay coil", against, "V")
}

#[test]
fn a_hot_coil_needs_the_voltage_that_the_relay_facts_give() {
    hot_coils();
}

/// Source: DIN 72552, in `reference/terminals_din72552.json`.
pub(crate) fn terminals() -> Checked {
    let text = quietpin_tests::reference("terminals_din72552.json");
    let standard: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    let meaning = |number: &str| {
        let all = standard["terminals"].as_array().expect("a list");
        let found = all.iter().find(|it| it["t"] == number).expect("in the standard");
        found["meaning"].as_str().unwrap_or_default().to_owned()
    };
    let kind = loads::FAR_END.field().kind;
    let choices = if let Kind::Choice(choices) = kind { choices } else { &[] };
    for (code, number, word) in [
        ("ground", "31", "ground"),
        ("battery", "30", "battery positive, direct"),
        ("ignition", "15", "ignition on"),
        ("relay", "87", "relay contact output"),
    ] {
        let choice = choices.iter().find(|it| it.code == code).expect("a choice");
        assert!(choice.label.contains(number), "{} lacks {number}", choice.label);
        assert!(meaning(number).contains(word), "{number} means {}", meaning(number));
    }
    Checked::exact("outputs", "Numbers of terminals", "DIN 72552", 4)
}

#[test]
fn the_far_ends_bear_the_terminal_numbers_of_the_standard() {
    terminals();
}

/// The verdicts of a plan in `tests/plans`.
fn codes(name: &str) -> Vec<&'static str> {
    let path = format!("{}/plans/outputs-{name}.json", env!("CARGO_MANIFEST_DIR"));
    let plan = parse(&std::fs::read_to_string(path).expect("the file")).expect("a plan");
    assert!(plan.notes.starts_with("Shows"), "{name} says its purpose");
    let report = report(&plan);
    answers(&report).iter().map(|it| it.verdict.message.code).collect()
}

#[test]
fn the_plans_of_faults_and_milliamperes_show_what_their_notes_say() {
    assert_eq!(codes("faults"), ["outputs.connect"; 4], "faults");
    assert_eq!(
        codes("milliamperes"),
        [
            "outputs.no-live-at-rest",
            "outputs.no-live-at-rest",
            "outputs.connect",
            "outputs.care-lifts-logic-rail",
            "outputs.no-live-at-rest",
        ],
        "milliamperes"
    );
}

#[test]
fn every_other_plan_of_this_question_shows_what_its_notes_say() {
    assert_eq!(codes("ground-when-on"), ["outputs.no-live-at-rest"], "ground-when-on");
    assert_eq!(codes("key-off"), ["outputs.no-live-key-off"], "key-off");
    assert_eq!(codes("right"), ["outputs.connect"; 3], "right");
    assert_eq!(
        codes("level-unknown"),
        ["outputs.depends", "outputs.open-far-end"],
        "level-unknown"
    );
    assert_eq!(codes("gas-valve"), ["outputs.depends"], "gas-valve");
    let pairs = codes("pair-unknown");
    assert_eq!(pairs, ["outputs.depends", "outputs.connect"], "one level of a pair decides");
    assert_eq!(codes("pull-up"), ["outputs.no-may-stay-in"], "pull-up");
    assert_eq!(
        codes("care"),
        [
            "outputs.care-inrush",
            "outputs.care-drains",
            "outputs.care-weak",
            "outputs.care-leaks",
            "outputs.no-may-stay-in-key-off",
        ],
        "care"
    );
    assert_eq!(
        codes("unknowns"),
        [
            "outputs.no-live-at-rest",
            "outputs.no-either-way",
            "outputs.connect",
            "outputs.open-far-end",
            "outputs.measure-first",
            "outputs.no-live-key-off",
        ],
        "unknowns"
    );
    let never = codes("never");
    assert_eq!((never[0], never[3]), ("outputs.no-never-acts", "outputs.open-mend"), "never");
    assert_eq!(codes("too-many"), ["outputs.connect"], "too-many");
    let shared = codes("shared");
    assert_eq!(
        shared,
        [
            "outputs.no-live-at-rest",
            "outputs.no-live-at-rest",
            "outputs.no-too-much-current",
            "outputs.open-no-such-output"
        ],
        "shared"
    );
}

#[test]
fn every_number_has_its_working_and_every_picture_all_states() {
    for name in [
        "ground-when-on",
        "key-off",
        "right",
        "level-unknown",
        "pull-up",
        "shared",
        "care",
        "unknowns",
        "never",
    ] {
        let path = format!("{}/plans/outputs-{name}.json", env!("CARGO_MANIFEST_DIR"));
        let plan = parse(&std::fs::read_to_string(path).expect("the file")).expect("a plan");
        let report = report(&plan);
        for answer in answers(&report) {
            assert!(answer.figures.iter().all(|it| !it.working.is_empty()), "{name}");
            assert!(answer.tables.iter().all(|it| !it.working.is_empty()), "{name}");
            for table in &answer.tables {
                assert!(
                    table.rows.iter().all(|it| it.cells.len() == table.columns.len()),
                    "{name}"
                );
            }
            for picture in &answer.pictures {
                let Picture::Circuit(circuit) = picture else { panic!("a circuit") };
                let is_fed = matches!(circuit.far_end, "ignition" | "relay");
                // what another load on the pin brings with it apart
                let states = circuit.states.iter().map(|it| it.state);
                let states: Vec<_> = states.filter(|it| is_fed || *it != "outlived").collect();
                let mut expected = vec![
                    "key-off",
                    "starting",
                    "off",
                    "cranking",
                    "on",
                    "ground-lost",
                    "supply-lost",
                ];
                if circuit.far_end != "ground" {
                    expected.insert(5, "feed-lost");
                }
                if is_fed {
                    expected.insert(5, "outlived");
                }
                assert_eq!(states, expected, "{name}");
            }
        }
    }
}

/// Anything that may stand in a field of this question.
fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        4 => Just(String::new()),
        6 => prop::sample::select(vec![
            "open-drain", "high-side", "half-bridge", "ground", "battery", "ignition", "relay",
            "controller", "5v", "relay-coil", "solenoid", "motor", "lamp", "resistor", "dangerous",
            "harmless", "A", "B", "a", "12 ohm", "1k", "2.2k", "100 ohm ±5%", "0", "-1", "NaN",
            "output", "diode", "pin", "far-end", "300 Hz", "50 %", "10 to 90%", "45 V", "2 mJ", "30 mH",
            "1e300", "0.01", "6 V", "1 V", "12 H", "5 A", "75 to 90 ohm", "1.500", "10 Mohm",
        ])
        .prop_map(str::to_owned),
        1 => "[^{}]{0,20}",
    ]
}

/// A text for each field of a record.
fn texts(part: Part) -> impl Strategy<Value = Vec<String>> {
    prop::collection::vec(typed(), part.fields().len())
}

prop_compose! {
    fn any_plan()(
        outputs in prop::collection::vec(texts(Part::Outputs), 0..4),
        loads in prop::collection::vec(texts(Part::Loads), 0..4),
        relays in prop::collection::vec(texts(Part::Relays), 0..3),
        feeds in texts(Part::SwitchedFeeds),
        controller in texts(Part::Controller),
    ) -> Plan {
        let mut plan = Plan::default();
        for (part, records) in [
            (Part::Outputs, outputs),
            (Part::Relays, relays),
            (Part::Loads, loads),
            (Part::SwitchedFeeds, vec![feeds]),
            (Part::Controller, vec![controller]),
        ] {
            plan.set_count(part, records.len());
            for (at, texts) in records.iter().enumerate() {
                for (place, text) in part.places().zip(texts) {
                    assert!(plan.put(place.at(at), text), "{} is in the plan", place.path());
                }
            }
        }
        plan
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(400) })]

    #[test]
    fn no_plan_is_too_odd_to_answer(plan in any_plan()) {
        let report = report(&plan);
        let text = serde_json::to_string(&report).expect("a report can be written");
        for gap in ["{load", "{output", "{voltage", "{current", "{corner", "{end", "{level", "{then", "{on", "{unasked"] {
            prop_assert!(!text.contains(gap), "a gap is left open: {gap}");
        }
        for shown in answers(&report).iter().flat_map(|it| &it.figures).map(|it| &it.value.shown) {
            prop_assert!(!shown.contains("not a number"), "{shown}");
        }
        for place in Part::Outputs.places().chain(Part::Loads.places()) {
            for at in 0..plan.count(place.part()) {
                let path = place.at(at).path();
                prop_assert!(report.fields.contains_key(&path), "{path}");
            }
        }
    }
}

/// Each new field with a text that is no such quantity, with one out of range, and with a choice that is none.
#[test]
fn what_can_not_be_is_refused_at_its_field_and_the_rest_is_answered() {
    let cases = [
        ("outputs.0.clamp", "soon"),
        ("outputs.0.clamp", "3 V"),
        ("outputs.0.clamp_energy", "2 V"),
        ("outputs.0.clamp_energy", "-1 mJ"),
        ("outputs.0.pulse_limit", "fast"),
        ("outputs.0.pulse_limit", "0 Hz"),
        ("loads.0.frequency", "300 rpm"),
        ("loads.0.frequency", "-5 Hz"),
        ("loads.0.duty", "150%"),
        ("loads.0.duty", "half"),
        ("loads.0.inductance", "1000 H"),
        ("loads.0.inductance", "12 ohm"),
        ("loads.0.suppression", "snubber"),
        ("loads.0.stripe", "left"),
        ("loads.0.suppression_resistance", "none"),
    ];
    for (path, typed) in cases {
        let outputs = [output("A", "open-drain", ""), output("B", "open-drain", "")];
        let mut plan = plan(&outputs, &[valve("A", "ignition"), valve("B", "ignition")]);
        assert!(plan.set(path, typed), "{path} is a field");
        let report = report(&plan);
        let found = report.findings.iter().find(|it| it.subject == path);
        let found = found.unwrap_or_else(|| panic!("{path} = {typed:?} is not refused"));
        assert!(
            found.message.text.contains(&typed.replace('-', "−")),
            "what was typed is shown: {}",
            found.message.text
        );
        let codes: Vec<_> = answers(&report).iter().map(|it| it.verdict.message.code).collect();
        assert_eq!(codes, ["outputs.open-mend", "outputs.connect"], "{path} = {typed:?}");
        assert_eq!(plan.get(path), Some(typed), "nothing typed is lost");
    }
}

#[test]
fn a_load_between_two_outputs_is_a_bridge_pair() {
    let outputs = [output("H1", "half-bridge", "battery"), output("H2", "half-bridge", "battery")];
    let motor = |other: &'static str| {
        valve("H1", "output")
            .with(loads::KIND, "motor")
            .with(loads::RESISTANCE, "3 ohm")
            .with(loads::FAR_OUTPUT, other)
    };
    check(&plan(&outputs, &[motor("H2")]), "outputs.connect", Tone::Good);
    check(&plan(&outputs, &[motor("")]), "outputs.open-far-end", Tone::Open);
    for (other, code) in [("H1", "outputs.pair-of-one"), ("H7", "field.no-such-output")] {
        let plan = plan(&outputs, &[motor(other)]);
        check(&plan, "outputs.open-far-end", Tone::Open);
        let report = report(&plan);
        let found = finding(&report, code).expect("it is said");
        assert_eq!(found.subject, "loads.0.far_output", "at the field");
    }
    let torn = [output("H1", "half-bridge", "battery"), output("H2", "half-bridge", "ground")];
    check(&plan(&torn, &[motor("H2")]), "outputs.no-live-at-rest", Tone::Bad);
}
