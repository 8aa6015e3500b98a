//! How each output rests, in every state of the key.

use quietpin_core::{
    finding::Severity::{Danger, Doubt, Fault},
    report::{Answer, Report, Tone, report, usual},
};

use super::{graded, planned, told, words};

fn answer<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let mut all = report.sections.iter().flat_map(|it| &it.answers);
    all.find(|it| it.subject == subject).expect(subject)
}

const OUTLIVES: &str = "outputs-outlives-key";
const DRIVES: &str = "outputs.drives-dead-feed";

/// By hand: with the key off the battery is at rest; through a diode of 0.7 V + 0.05 Ω and a switch of 0.1 Ω into the 5 Ω that hang
/// on 15: (12.6 - 0.7) / 5.15 = 2.31 A.
#[test]
fn a_controller_that_outlives_the_key_drives_its_resting_outputs_into_dead_feeds() {
    assert_eq!(told(OUTLIVES, &[], DRIVES), [Fault]);
    assert!(words(OUTLIVES, &[], DRIVES).contains("2.31 A"));
    let dies = [("controller.after_key_off", "dies")];
    assert_eq!(told(OUTLIVES, &dies, DRIVES), [], "its supply falls with the key");
    let rests_low = [("outputs.0.on_level", "battery"), ("relays.0.far_end", "ground")];
    assert_eq!(told(OUTLIVES, &rests_low, DRIVES), []);
    let open = [("outputs.0.stage", "open-drain"), ("outputs.0.on_level", "")];
    assert_eq!(told(OUTLIVES, &open, DRIVES), [], "it rests open");
}

/// More than the output bears, whenever the key is turned off: (12.6 - 0.7) / 5.15 = 2.31 A.
#[test]
fn what_an_output_drives_into_a_dead_feed_counts_against_its_limit() {
    assert_eq!(told(OUTLIVES, &[], "outputs.too-much-current"), []);
    let weak = [("outputs.0.current_limit", "2 A")];
    assert_eq!(told(OUTLIVES, &weak, "outputs.too-much-current"), [Danger]);
}

/// Without a diode the coil itself lies between the pin and what hangs on 15: 12.6 V × 90 / (90 + 5 + 0.1) = 11.9 V.
#[test]
fn a_load_between_a_resting_output_and_its_dead_feed_acts_as_long_as_the_controller_lives() {
    let bare = [("relays.0.suppression", "none")];
    assert_eq!(told(OUTLIVES, &bare, "outputs.live-outlived"), [Fault]);
    let fed = [("relays.0.suppression", "none"), ("relays.0.far_end", "battery")];
    assert_eq!(told(OUTLIVES, &fed, "outputs.live-outlived"), [], "both its ends stay at battery");
}

#[test]
fn where_it_is_not_known_whether_the_controller_outlives_the_key_that_is_a_doubt() {
    let unknown = ("controller.after_key_off", "");
    assert_eq!(told(OUTLIVES, &[unknown], "outputs.perhaps-drives-dead-feed"), [Doubt]);
    let bare = ("relays.0.suppression", "none");
    assert_eq!(told(OUTLIVES, &[unknown, bare], "outputs.perhaps-live-outlived"), [Doubt]);
    assert_eq!(told(OUTLIVES, &[unknown], DRIVES), []);
}

const KICKS: &str = "outputs-kicks";

/// By hand: 14.8 V less the switch over 1.5 Ω × 0.843 (copper at -20 °C) and 0.076 Ω is 11 A; half of 20 mH × 11² is 1.2 J, and the
/// supply adds its share while 45 V stand against 14.8: 1.2 × 45 / (45 - 14.8), less what the winding takes, 1.4 J.
#[test]
fn a_kick_is_judged_by_its_joules_whether_its_catcher_is_known_or_not() {
    let beyond = "outputs.kick-beyond-any";
    assert_eq!(told(KICKS, &[], beyond), [Fault], "8 A warm that nothing catches");
    assert!(words(KICKS, &[], beyond).contains("1.4 J"));
    let known = [("outputs.0.clamp", "45 V")];
    assert_eq!(
        told(KICKS, &known, beyond),
        [Fault],
        "a clamp of which no more is known is no milder"
    );
    let strong = [("outputs.0.clamp", "45 V"), ("outputs.0.clamp_energy", "5 J")];
    assert_eq!(told(KICKS, &strong, beyond), [], "one that bears it");
    let small = [("loads.0.resistance", "30 ohm")];
    assert_eq!(told(KICKS, &small, beyond), [], "0.6 A: 4 mJ");
    assert_eq!(told(KICKS, &[], "outputs.kick-beyond-usual"), [Doubt], "4 A and 10 mH: 0.1 J");
}

/// By hand, 0.3 Ω standing and 1.95 Ω running: 1 mH at 1 kHz smooths its current to about 3.5 A at the end of each pulse; what then
/// runs on into 45 V is some 30 mJ, a thousand times a second.
#[test]
fn a_motor_that_is_pulsed_into_a_clamp_melts_it() {
    let melts = "outputs.kicks-melt";
    assert_eq!(told(KICKS, &[], melts), [Danger]);
    let unknown = [("outputs.1.clamp", "")];
    assert_eq!(told(KICKS, &unknown, melts), [Danger], "a clamp that is not known is no milder");
    let untold = [("loads.1.suppression", "")];
    assert_eq!(told(KICKS, &untold, melts), [Fault], "perhaps there is a diode");
    let caught = [("loads.1.suppression", "diode")];
    assert_eq!(told(KICKS, &caught, melts), []);
}

#[test]
fn a_diode_across_the_winding_is_offered_first_where_it_is_the_cure() {
    for code in ["outputs.kick-beyond-any", "outputs.kicks-melt"] {
        let said = words(KICKS, &[], code);
        let first = said.lines().nth(1).expect("a cure");
        assert!(first.starts_with("Put a diode rated"), "{first}");
    }
}

const SIGNALS: &str = "outputs-inputs-and-signals";

/// By hand: a half-bridge gives its supply, 14.8 V; a logic output 5 V, which an input for 5.5 V bears.
#[test]
fn twelve_volts_on_an_input_for_five_are_a_danger_to_it() {
    assert_eq!(
        told(SIGNALS, &[], "outputs.over-voltage"),
        [Danger],
        "the igniter on the half-bridge alone"
    );
    let bears = [("loads.0.bears", "16 V")];
    assert_eq!(told(SIGNALS, &bears, "outputs.over-voltage"), []);
    let unknown = [("loads.0.bears", "")];
    assert_eq!(told(SIGNALS, &unknown, "outputs.over-voltage"), []);
    assert_eq!(told(SIGNALS, &unknown, "outputs.perhaps-over-voltage"), [Doubt]);
    let gauge = [("loads.0.bears", "16 V"), ("loads.2.bears", "")];
    assert_eq!(
        told(SIGNALS, &gauge, "outputs.perhaps-over-voltage"),
        [],
        "gauges are made for 12 V"
    );
}

#[test]
fn an_input_is_offered_a_logic_output_and_never_another_ground_or_a_relay() {
    let said = words(SIGNALS, &[], "outputs.over-voltage");
    assert!(said.contains("Use a logic output"), "{said}");
    for wrong in ["high-side", "ignition switch", "relay"] {
        assert!(!said.contains(wrong), "{said}");
    }
}

/// By hand: 5 V over 25 Ω is 200 mA of the 100 to 250 that such a supply gives (from memory); over 250 Ω 20 mA.
#[test]
fn a_load_on_the_controllers_five_volts_takes_what_the_sensors_live_on() {
    let code = "outputs.loads-logic-rail";
    assert_eq!(told("outputs-five-volt", &[], code), [Fault]);
    let small = [("loads.0.resistance", "250 ohm")];
    assert_eq!(told("outputs-five-volt", &small, code), []);
    let elsewhere = [("loads.0.far_end", "ignition")];
    assert_eq!(told("outputs-five-volt", &elsewhere, code), []);
}

/// By hand: 14.8 V less a diode's 0.7 V over the 5 Ω that hang there, its own 0.05 Ω and the switch's 0.076 Ω at -20 °C: 2.75 A,
/// and 13.8 V on what is thought dead.
#[test]
fn a_dead_feed_that_is_live_is_told_with_its_voltage() {
    let code = "outputs.drives-open-feed";
    assert_eq!(told("outputs-open-contact", &[], code), [Fault]);
    let said = words("outputs-open-contact", &[], code);
    assert!(said.contains("2.75 A") && said.contains("13.8 V"), "{said}");
    let open = [("outputs.0.stage", "open-drain"), ("outputs.0.on_level", "")];
    assert_eq!(told("outputs-open-contact", &open, code), [], "it rests open");
}

#[test]
fn a_diode_that_is_right_is_not_called_wrong_where_it_feeds_a_dead_circuit() {
    assert_eq!(told("outputs-open-contact", &[], "outputs.shorted-by-diode"), []);
    let wrong = [("relays.1.stripe", "pin")];
    assert_eq!(told("outputs-open-contact", &wrong, "outputs.shorted-by-diode"), [Danger]);
}

#[test]
fn a_grounded_valve_on_a_switch_to_ground_is_offered_the_other_end_though_its_kick_is_uncaught() {
    let said = words("outputs-grounded-relay", &[], "outputs.never-acts");
    assert!(said.contains("Move its other end to the ignition switch (15)"), "{said}");
    assert!(said.contains("Drive it through a relay"), "{said}");
    assert_eq!(
        told("outputs-grounded-relay", &[], "outputs.kick-uncaught"),
        [],
        "no current, no kick"
    );
}

/// By hand: 20 µA at 12 V are 600 kΩ, against which a lamp of 3 Ω and a meter of 10 MΩ are nothing: the pin reads the same on and off.
#[test]
fn a_pin_that_only_leaks_is_proved_with_a_resistor() {
    let proof = |leakage| {
        let plan = planned("outputs-leak-and-lamp", &[("outputs.0.leakage", leakage)]);
        let report = report(&plan);
        let section = report.sections.iter().find(|it| it.id == "outputs").expect("the section");
        section.answers[0].to_do[0].text.clone()
    };
    for leakage in ["", "20 uA"] {
        assert!(proof(leakage).contains("connect 1 kΩ from the bare pin"), "{}", proof(leakage));
    }
}

#[test]
fn off_means_off_and_no_fault() {
    let plan = planned("outputs-coil-unknown", &[]);
    let report = report(&plan);
    let section = report.sections.iter().find(|it| it.id == "outputs").expect("the section");
    let why = section.answers[0].why.as_ref().expect("it says why").text.clone();
    assert!(why.starts_with("It gets at most 0 V when off"), "{why}");
}

/// A filament follows what it gets: it has no voltage below which it lets go.
#[test]
fn a_lamp_has_no_hysteresis_and_is_cold_where_it_gets_next_to_nothing() {
    let pulled = [
        ("outputs.0.pull_up", "100 ohm"),
        ("outputs.0.pull_up_rail", "battery"),
        ("loads.0.far_end", "ground"),
    ];
    let grounded = [pulled[0], pulled[1], pulled[2], ("outputs.0.leakage", "")];
    assert_eq!(told("outputs-leak-and-lamp", &grounded, "outputs.may-stay-in"), [], "3 V at most");
    let plan = planned("outputs-leak-and-lamp", &grounded);
    let report = report(&plan);
    let found = report.findings.iter().find(|it| it.message.code == "outputs.live-at-rest");
    assert_eq!(
        found.map(|it| &it.message.text),
        None,
        "14.8 V × 3 / 103 is 0.43 V while it is cold"
    );
}

#[test]
fn relays_with_unknown_diodes_are_told_once_with_the_test_of_polarity() {
    let name = "outputs-coil-unknown";
    assert_eq!(told(name, &[], "outputs.diode-unknown"), [Doubt]);
    assert!(words(name, &[], "outputs.diode-unknown").contains("The same goes for lamp relay."));
    let known = [("relays.0.suppression", "diode"), ("relays.1.suppression", "none")];
    assert_eq!(told(name, &known, "outputs.diode-unknown"), []);
}

/// 13.3 V less two diodes' drops through a body diode and a coil: what fails holds in no more than it does at all.
#[test]
fn what_lets_go_is_not_said_to_act_when_the_controller_loses_its_ground() {
    let held = [("relays.0.suppression", "diode"), ("controller.supply_off", "5 ohm")];
    for code in ["outputs.acts-without-ground", "outputs.acts-without-supply"] {
        assert_eq!(told("outputs-coil-unknown", &held, code), []);
    }
}

const THROTTLE: &str = "outputs-throttle";

/// Common practice, no source: springs hold the plate a little open, and a second way takes its motor's supply away.
#[test]
fn an_electronic_throttle_is_driven_both_ways_and_cut_off_apart_from_it() {
    let report = report(&planned(THROTTLE, &[]));
    let grave = report.findings.iter().filter(|it| it.severity <= Doubt);
    assert_eq!(
        grave.map(|it| it.message.code).collect::<Vec<_>>(),
        Vec::<&str>::new(),
        "as it should be"
    );
    let none = [("loads.0.power_cut", "none")];
    assert_eq!(told(THROTTLE, &none, "outputs.throttle-no-cut"), [Danger]);
    let unknown = [("loads.0.power_cut", "")];
    assert_eq!(told(THROTTLE, &unknown, "outputs.throttle-cut-unknown"), [Doubt]);
    let itself = [("relays.0.output", "T2"), ("relays.0.far_end", "ground")];
    assert_eq!(told(THROTTLE, &itself, "outputs.throttle-cut-by-itself"), [Danger]);
    let undriven =
        [("relays.0.output", ""), ("relays.0.far_end", ""), ("relays.0.suppression", "")];
    assert_eq!(told(THROTTLE, &undriven, "outputs.throttle-cut-undriven"), [Fault]);
    let one_way = [("loads.0.far_end", "ignition"), ("outputs.0.on_level", "ground")];
    assert_eq!(told(THROTTLE, &one_way, "outputs.throttle-one-way"), [Fault]);
}

#[test]
fn a_throttle_that_moves_unasked_can_hurt_whatever_was_not_said() {
    let shared = [("outputs.1.on_level", "ground"), ("outputs.0.pull_up", "")];
    assert_eq!(told(THROTTLE, &shared, "outputs.live-at-rest"), [Danger], "the pair rests apart");
    let harmless = [shared[0], ("loads.0.unasked", "costly")];
    assert_eq!(told(THROTTLE, &harmless, "outputs.live-at-rest"), [Fault], "what is said stands");
}

/// By hand: 14.8 V over 2.5 Ω × 0.843 (copper at -20 °C) and two switches of 0.076 Ω is 6.55 A; 1 % over 6.5 A, and 9 % over 6 A.
#[test]
fn a_hair_over_a_limit_is_a_doubt() {
    let limit = |ampere| [("outputs.0.current_limit", ampere), ("outputs.1.current_limit", ampere)];
    assert_eq!(told(THROTTLE, &limit("6.5 A"), "outputs.at-limit"), [Doubt]);
    assert_eq!(told(THROTTLE, &limit("6 A"), "outputs.inrush"), [Fault]);
    assert_eq!(told(THROTTLE, &limit("7 A"), "outputs.at-limit"), []);
}

/// By hand: a valve of 10 Ω between the resting output and 30 Ω on 15: 12.6 V × 30 / 40.1 is 9.4 V on what should be dead; over 5 Ω it
/// is 4.2 V, and the valve has the rest.
#[test]
fn a_load_that_is_small_against_what_hangs_on_its_feed_keeps_that_feed_alive() {
    let valve = [("relays.0.resistance", "10 ohm"), ("relays.0.suppression", "none")];
    let feed = |ohm| {
        [valve[0], valve[1], ("switched_feeds.off_resistance", ohm), ("relays.0.pull_in", "12 V")]
    };
    assert_eq!(told(OUTLIVES, &feed("30 ohm"), DRIVES), [Fault]);
    assert!(words(OUTLIVES, &feed("30 ohm"), DRIVES).contains("engine may not stop"));
    assert_eq!(told(OUTLIVES, &feed("1 ohm"), "outputs.drives-dead-feed"), [Fault], "1.1 A");
    assert_eq!(
        told(OUTLIVES, &feed("5 ohm"), "outputs.live-outlived"),
        [],
        "it gets 8.4 V of the 12 it needs"
    );
}

#[test]
fn a_throttle_that_may_not_be_connected_is_told_why_and_not_how_to_prove_its_pin() {
    let plan = planned(THROTTLE, &[("loads.0.power_cut", "none")]);
    let report = report(&plan);
    let mut answers = report.sections.iter().flat_map(|it| it.answers.iter());
    let answer = answers.find(|it| it.subject == "loads.0").expect("its answer");
    let why = answer.why.as_ref().expect("it says why").code;
    assert_eq!((why, answer.to_do.len()), ("outputs.throttle-no-cut", 0));
}

const PULSES: &str = "outputs-pulses";

/// What would be live at rest if it took a steady voltage: 12 V stand across the second rev counter whenever its output is off.
#[test]
fn a_steady_voltage_is_nothing_to_what_counts_pulses() {
    let report = report(&planned(PULSES, &[]));
    let codes: Vec<_> = report.findings.iter().map(|it| it.message.code).collect();
    assert_eq!(codes, Vec::<&str>::new());
    let steady = [("loads.4.kind", "gauge")];
    assert_eq!(told(PULSES, &steady, "outputs.live-at-rest"), [Fault]);
}

/// By hand: off, a pull-up of 1 kΩ leaves 12.6 V × 10 / 11 = 11.5 V at the input, and it reads high from 6 V; an output that
/// pulls low and has no pull-up leaves 0 V either way.
#[test]
fn what_counts_pulses_must_be_high_and_low_in_turn() {
    let name = "outputs-no-pulses";
    assert_eq!(told(name, &[], "outputs.no-pulses"), [Fault]);
    assert!(words(name, &[], "outputs.no-pulses").contains("V all the same"));
    assert_eq!(told(PULSES, &[], "outputs.no-pulses"), [], "without the resistor it falls to 0 V");
    let pulled = [("outputs.1.pull_up", "1 kohm"), ("outputs.1.pull_up_rail", "battery")];
    let low_side = ("outputs.1.stage", "open-drain");
    assert_eq!(told(PULSES, &[low_side], "outputs.never-acts"), [Fault]);
    let both = [low_side, pulled[0], pulled[1]];
    assert_eq!(told(PULSES, &both, "outputs.never-acts"), []);
    assert_eq!(told(PULSES, &both, "outputs.no-pulses"), []);
}

/// By hand: while a hot engine is cranked at 8.5 V the valve gets 8.5 V / (1 + 0.00393 × 80) = 6.5 V worth of cold winding, less than the
/// 9 V that the slowest solenoid valves need; one that follows its duty moves less, and nobody minds.
#[test]
fn a_valve_that_follows_its_duty_is_not_weak_while_the_starter_turns() {
    let weak = "outputs.weak-while-cranking";
    let cold = ("battery.hot_cranking", "6 V");
    assert_eq!(told(PULSES, &[cold], weak), []);
    assert_eq!(told(PULSES, &[cold, ("loads.0.kind", "solenoid")], weak), [Doubt]);
}

/// By hand: 10 mA at 12 V are 1200 Ω; with them 120 Ω have 14.4 V × 120 / 1320, 1.31 V, of which 1.2 V hold the relay in.
/// The same current flows whether the output is off, the controller starts or its ground is gone: one cause.
#[test]
fn a_leak_that_holds_a_load_in_is_told_once_with_a_wiring_that_was_found() {
    let name = "outputs-leak-holds";
    let codes = |texts: &[(&str, &str)]| -> Vec<_> {
        let report = report(&planned(name, texts));
        let grave = report.findings.iter().filter(|it| it.severity <= Fault);
        grave.map(|it| (it.severity, it.message.code)).collect()
    };
    assert_eq!(codes(&[]), [(Danger, "outputs.may-stay-in")]);
    let said = words(name, &[], "outputs.may-stay-in");
    assert!(
        said.contains("1.31 V stays across it through the leakage of the upper switch"),
        "{said}"
    );
    // on the other output the coil's plus is where its minus was, and its diode with it
    assert!(said.contains("Move it to L2") && said.contains("swap its two wires"), "{said}");
    assert_eq!(codes(&[("outputs.0.leakage", "9 mA")]), [], "1.19 V let go of it");
    assert_eq!(codes(&[("relays.0.output", "L2"), ("relays.0.far_end", "ignition")]), []);
    // a pull-up that holds it in with the output off, the key off and at a restart is one cause as well
    let pulled = [
        ("outputs.0.leakage", ""),
        ("outputs.0.pull_up", "1 kohm"),
        ("outputs.0.pull_up_rail", "battery"),
    ];
    assert_eq!(codes(&pulled), [(Danger, "outputs.may-stay-in")]);
}

/// A way that is spoken of is one that was solved.
#[test]
fn no_wiring_is_spoken_of_as_offered_where_none_is() {
    let texts = [
        ("outputs.1.name", "U2"),
        ("outputs.1.stage", "high-side"),
        ("outputs.1.leakage", "10 mA"),
    ];
    let report = report(&planned("outputs-leak-holds", &texts));
    let found = report.findings.iter().find(|it| it.message.code == "outputs.may-stay-in");
    let found = found.expect("it stays in");
    let act = quietpin_core::explained::explanation(found.message.code).expect("why").act;
    assert!(!act.contains("offered"), "{act}");
    for cure in &found.remedies {
        assert!(!cure.text.contains("Move it to U2"), "{}", cure.text);
    }
}

/// By hand: 14.4 V × 120 / 1120 are 1.54 V while the controller starts, and of 1.5 kΩ 1.07 V; with the output off the pin is at ground.
#[test]
fn what_only_a_restart_holds_in_is_told_as_that() {
    let (name, code) = ("outputs-restart-holds", "outputs.may-stay-in-at-restart");
    assert_eq!(told(name, &[], code), [Doubt]);
    assert_eq!(told(name, &[("relays.0.unasked", "dangerous")], code), [Danger]);
    assert_eq!(told(name, &[("outputs.0.pull_up", "1.5 kohm")], code), []);
}

/// What a clamp takes is a figure where a clamp takes it, and its energy is worked where something inside the output gets hot.
#[test]
fn what_goes_into_a_clamp_is_shown_of_a_clamp() {
    let shown = |texts: &[(&str, &str)]| {
        let report = report(&planned(KICKS, texts));
        let mut all = report.sections.iter().flat_map(|it| &it.answers);
        let answer = all.find(|it| it.subject == "loads.0").expect("the load is answered");
        let figures = || answer.figures.iter();
        let lets_go = figures().find(|it| it.label.code == "outputs.figure-lets-go");
        let steps =
            lets_go.map(|it| it.working.iter().map(|step| step.symbols).collect::<Vec<_>>());
        let is_heated = steps.map(|it| it.iter().any(|it| it.starts_with("E = V_drop")));
        (figures().any(|it| it.label.code == "outputs.figure-in-clamp"), is_heated)
    };
    assert_eq!(shown(&[("outputs.0.clamp", "45 V")]), (true, Some(true)));
    assert_eq!(shown(&[("loads.0.suppression", "diode")]), (false, Some(false)));
}

/// What is wrong with two loads is told of both.
#[test]
fn two_kicks_are_two_findings() {
    let both = [("loads.2.inductance", "200 mH")];
    assert_eq!(told(KICKS, &both, "outputs.kick-beyond-any"), [Fault, Fault]);
}

/// By hand, common practice, no source: a valve of gas is hot with the key off where it hangs from permanent battery; from the ignition
/// switch on the same half-bridge it comes on with its fuse pulled; on a low-side output, with a diode, it does neither.
#[test]
fn a_cure_that_uncovers_a_fault_comes_behind_one_that_does_not() {
    let (name, code) = ("outputs-body-diode-valve", "outputs.live-key-off");
    let is_grave = |report: &Report| report.findings.iter().any(|it| it.severity <= Fault);
    let before = report(&planned(name, &[]));
    let found = before.findings.iter().find(|it| it.message.code == code).expect("it is live");
    assert_eq!(found.severity, Danger);
    let first = found.remedies.first().expect("a cure");
    assert!(first.text.contains("the ignition switch (15), and put a diode"), "{}", first.text);
    let edited = planned(name, &[]).edited(&first.edits).expect("its places");
    assert!(!is_grave(&report(&edited)), "with it nothing is grave");
    // what was first before uncovers two
    assert!(is_grave(&report(&planned(name, &[("loads.0.far_end", "ignition")]))));
    // its draw is cured with it: no switch is bought for that, and its plug is left off rather than its fuse
    let usual = usual::usual(&before);
    let bought: Vec<_> = usual.buy.iter().map(|it| it.words.text.as_str()).collect();
    assert!(!bought.iter().any(|it| it.contains("cut-off")), "{bought:?}");
    let cautions: Vec<_> = usual.cautions.iter().map(|it| it.text.as_str()).collect();
    assert!(
        cautions.iter().any(|it| it.contains("plug off until the pin is proved")),
        "{cautions:?}"
    );
    let low_side = [("loads.0.output", "D1"), ("loads.0.far_end", "ignition")];
    let usual = usual::usual(&report(&planned(name, &low_side)));
    let cautions: Vec<_> = usual.cautions.iter().map(|it| it.text.as_str()).collect();
    assert!(
        cautions.iter().any(|it| it.contains("fuse out until the pin is proved")),
        "{cautions:?}"
    );
}

/// By hand: 11.85 V over 12 and 6 ohm lift a dead supply of 6 ohm to 3.95 V: a controller that runs from 3.5 V may stay alive, one that needs 6 V
/// does not.
#[test]
fn a_dead_supply_keeps_the_engine_alive_only_where_it_reaches_what_the_controller_runs_on() {
    let (name, code) = ("outputs-body-diode-valve", "outputs.live-key-off");
    let lifted = |least| {
        let texts = [("controller.least_supply", least), ("controller.supply_off", "6 ohm")];
        words(name, &texts, code)
    };
    for (least, may_not_stop) in [("3.5 V", true), ("6 V", false), ("", true)] {
        let said = lifted(least);
        assert_eq!(said.contains("The engine may not stop"), may_not_stop, "{least}: {said}");
        assert!(said.contains("dead supply to 3.9"), "{said}");
    }
    // what hangs on the supply is only usual: the most that it may be lifted to counts
    let unknown = words(name, &[("controller.least_supply", "6 V")], code);
    assert!(unknown.contains("The engine may not stop"), "{unknown}");
    assert_eq!(told(name, &[], "outputs.wakes-controller"), [], "said with the valve");
}

/// By hand: 5 V × 10 k / (10 k + 1 k) = 4.55 V at inputs that count as on from 3 V, until the controller is up and holds them at ground. Set the
/// other way round the same pin is high as long as it is off, and that says it all.
#[test]
fn what_a_pull_up_does_at_start_and_at_rest_is_told_once() {
    let (name, start, rest) =
        ("outputs-live-at-start", "outputs.live-at-key-on", "outputs.live-at-rest");
    assert_eq!(told(name, &[], start), [Fault, Doubt]);
    assert_eq!(told(name, &[], rest), []);
    let open = [("outputs.0.stage", "open-drain"), ("outputs.0.on_level", "")];
    assert_eq!((told(name, &open, start), told(name, &open, rest)), (vec![], vec![Fault, Fault]));
    assert_eq!(told(name, &[("outputs.0.pull_up", "10 kohm")], start), [], "2.5 V are off");
}

/// Common practice, no source: what another output switches is switched at moments that are meant for something else.
#[test]
fn a_wire_on_another_output_than_planned_is_a_fault() {
    let code = "outputs.wired-elsewhere";
    let of = |texts: &[(&str, &str)]| told("outputs-wired-elsewhere", texts, code);
    assert_eq!(of(&[]), [Fault]);
    assert_eq!(of(&[("loads.0.unasked", "dangerous")]), [Danger]);
    assert_eq!(of(&[("loads.0.wired", "D1")]), []);
    assert_eq!(of(&[("loads.0.wired", "")]), []);
    // the plan follows the wire where that output is free, and the wire the plan where it isn't
    let said = |texts: &[(&str, &str)]| words("outputs-wired-elsewhere", texts, code);
    assert!(said(&[]).contains("have D2 switch valve"), "{}", said(&[]));
    let taken = said(&[("loads.0.wired", "D3")]);
    assert!(taken.contains("Move the wire of valve from D3 to D1"), "{taken}");
    assert!(!taken.contains("have D3 switch"), "{taken}");
    // what is on that output is dangerous: it acts with the valve
    assert_eq!(of(&[("loads.0.wired", "D3"), ("loads.1.unasked", "dangerous")]), [Danger]);
}

/// By hand: 14.4 V / 8 ohm = 1.8 A at a pin of 20 mA, whatever the output carries that it is planned on.
#[test]
fn a_load_is_judged_on_the_output_where_its_wire_was_found() {
    let name = "outputs-wired-elsewhere";
    let too_much = "outputs.too-much-current";
    let of = |texts: &[(&'static str, &'static str)]| {
        report(&planned(name, &[&[("loads.0.resistance", "8 ohm")], texts].concat()))
    };
    let here = of(&[("loads.0.wired", "L1")]);
    assert_eq!(graded(&here, too_much), [Danger]);
    assert_eq!(graded(&here, "outputs.wired-elsewhere"), [Fault]);
    let title = |report: &Report| {
        let answer = answer(report, "loads.0");
        (answer.title.as_ref().expect("titled").text.clone(), answer.verdict.tone)
    };
    assert_eq!(title(&here), ("Valve on L1".to_owned(), Tone::Bad));
    let meant = of(&[("loads.0.wired", "")]);
    assert_eq!(graded(&meant, too_much), []);
    assert_eq!(title(&meant), ("Valve on D1".to_owned(), Tone::Good));
    // where nothing worse is said of it there, that is its verdict
    let there = report(&planned(name, &[]));
    assert_eq!(title(&there), ("Valve on D2".to_owned(), Tone::Bad));
    let said = &answer(&there, "loads.0").verdict.message.text;
    assert_eq!(said, "Wired to D2, planned on D1");
    // the wire is moved to where it belongs before anything is bought
    let cures = here.findings.iter().find(|it| it.message.code == too_much);
    let first = &cures.expect("told").remedies.first().expect("cured").text;
    assert_eq!(first, "Move the wire of valve from L1 to D1.");
    let found = here.findings.iter().find(|it| it.message.code == "outputs.wired-elsewhere");
    let offered: Vec<_> = found.expect("told").remedies.iter().map(|it| it.code).collect();
    assert_eq!(offered, ["outputs.do-rewire"], "it can't stay there");
}

/// By hand: 14.8 V / 1.7 ohm = 8.7 A on 8 A. What no output of the plan carries, a relay does: common practice, no source.
#[test]
fn what_no_output_carries_gets_a_relay_first() {
    let of = |limit: &'static str| {
        let texts = [
            ("loads.0.wired", ""),
            ("loads.0.resistance", "1.7 ohm"),
            ("loads.0.stripe", "far-end"),
            ("outputs.0.current_limit", "8 A"),
            ("outputs.1.stage", "high-side"),
            ("outputs.1.current_limit", limit),
        ];
        let said = report(&planned("outputs-wired-elsewhere", &texts));
        let found = said.findings.iter().find(|it| it.message.code == "outputs.too-much-current");
        let cures = &found.expect("told").remedies;
        cures.iter().map(|it| it.code).collect::<Vec<_>>()
    };
    assert_eq!(of("8 A"), ["outputs.do-relay", "outputs.do-stage-turned"]);
    assert_ne!(of("20 A").first(), Some(&"outputs.do-relay"), "{:?}", of("20 A"));
}

const UNMEASURED: &str = "outputs-measured-first";

/// By hand: 14.4 V / 5 Ω are some 2.9 A in an output for 2 A, and 14.4 V / 30 Ω 0.5 A: with a usual valve it may be either.
#[test]
fn what_hangs_on_a_resistance_that_nobody_measured_is_one_doubt() {
    let (code, asked) = ("outputs.too-much-current", "outputs.depends-on-resistance");
    assert_eq!(told(UNMEASURED, &[], code), []);
    assert_eq!(told(UNMEASURED, &[], asked), [Doubt]);
    let plan = report(&planned(UNMEASURED, &[]));
    let answers: Vec<_> = plan.sections.iter().flat_map(|it| &it.answers).collect();
    let valve = answers.iter().find(|it| it.subject == "loads.0").expect("it is answered");
    assert_eq!(valve.verdict.message.code, "outputs.measure-first");
    assert!(valve.to_do.iter().all(|it| it.code != "outputs.do-relay"), "{:?}", valve.to_do);
    // measured: one or the other
    let low = [("loads.0.resistance", "5 ohm")];
    assert_eq!(
        (told(UNMEASURED, &low, code), told(UNMEASURED, &low, asked)),
        (vec![Danger], vec![])
    );
    let high = [("loads.0.resistance", "30 ohm")];
    assert_eq!((told(UNMEASURED, &high, code), told(UNMEASURED, &high, asked)), (vec![], vec![]));
    // any usual one is too much
    let small = [("outputs.0.current_limit", "0.3 A")];
    assert_eq!(told(UNMEASURED, &small, code), [Danger]);
}

/// A relay follows no pulses: common practice, no source.
#[test]
fn a_proportional_valve_is_not_put_behind_a_relay() {
    let cures = |kind| {
        let texts = [("loads.0.kind", kind), ("loads.0.resistance", "5 ohm")];
        words(UNMEASURED, &texts, "outputs.too-much-current")
    };
    assert!(cures("solenoid").contains("through a relay"), "{}", cures("solenoid"));
    assert!(!cures("proportional-valve").contains("through a relay"));
}

/// By hand: 0.05 mA through 50 kΩ are 2.5 V, through 10 kΩ 0.5 V; from 0.8 V on a rev counter may not see that a pulse ends (common
/// practice, no source).
#[test]
fn a_leak_blurs_the_pulses_of_a_rev_counter_only_where_its_resistance_is_known_to_be_high() {
    let code = "outputs.pulses-blurred";
    let at = "loads.1.resistance";
    assert_eq!(told(UNMEASURED, &[], code), [Doubt]);
    let said = words(UNMEASURED, &[], code);
    assert!(said.contains("may miss pulses: 2.5"), "{said}");
    assert_eq!(told(UNMEASURED, &[], "outputs.weak"), []);
    for resistance in ["10 kohm", ""] {
        assert_eq!(told(UNMEASURED, &[(at, resistance)], code), [], "{resistance}");
    }
    let asked = told(
        UNMEASURED,
        &[(at, ""), ("loads.0.resistance", "30 ohm")],
        "outputs.depends-on-resistance",
    );
    assert_eq!(asked, []);
    // leaks that were not typed
    assert_eq!(told(UNMEASURED, &[(at, ""), ("outputs.0.leakage", "")], code), []);
}
