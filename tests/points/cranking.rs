//! The start: what relay and controller are left with, how the speed is read, and when it reads nought.
//!
//! Source: beside each test.

use quietpin_core::{
    finding::Severity::{Danger, Doubt, Fault},
    quantity::Holds,
    report::{Answer, Memory, Tone, report, report_after, tried},
};

use super::{graded, planned, told, words};

/// A coil relay on an accessory contact; each test makes the contact a live one first.
const PLAN: &str = "cranking-feed-cut";
const LIVE: (&str, &str) = ("switched_feeds.cranking", "live");
const NOTHING: [quietpin_core::finding::Severity; 0] = [];

/// What the question answers of the coils' relay: how it sounds, and in which words.
fn verdict(texts: &[(&str, &str)]) -> (Tone, String) {
    let report = report(&planned(PLAN, texts));
    let mut answers = report.sections.iter().flat_map(|it| &it.answers);
    let answer: &Answer = answers.find(|it| it.subject == "cranking").expect("it is asked");
    (answer.verdict.tone, answer.verdict.message.text.as_str().to_owned())
}

/// Common practice, no source: a key switch cuts its accessory contact at start.
#[test]
fn a_relay_on_a_contact_that_is_cut_while_the_starter_turns_is_a_fault() {
    let code = "cranking.feed-cut";
    assert_eq!(told(PLAN, &[], code), [Fault]);
    assert_eq!(verdict(&[]).0, Tone::Bad);
    assert_eq!(told(PLAN, &[LIVE], code), NOTHING);
    assert_eq!(verdict(&[LIVE]).0, Tone::Good);
    for (path, text) in [
        ("switched_feeds.cranking", ""),
        ("relays.0.far_end", "battery"),
        // a fan may stand while the starter turns
        ("relays.0.purpose", "fan"),
    ] {
        assert_eq!(told(PLAN, &[(path, text)], code), NOTHING, "{path} {text}");
    }
}

#[test]
fn what_hangs_on_the_cut_contact_through_another_relay_or_is_the_controller_is_named() {
    let through = [("relays.0.far_end", "relay"), ("relays.0.far_relay", "Main relay")];
    assert!(words(PLAN, &through, "cranking.feed-cut").contains("Coil relay"));
    let told = words(PLAN, &[("controller.feed", "ignition")], "cranking.feed-cut");
    assert!(told.contains("controller and Coil relay"), "{told}");
    let told = words(
        PLAN,
        &[("relays.0.far_end", "battery"), ("controller.feed", "ignition")],
        "cranking.feed-cut",
    );
    assert!(!told.contains("Coil relay"), "{told}");
}

/// By hand: 6.5 V at 20 °C are 6.5 × (1 + 0.00393 × 80) = 8.544 V at 100 °C (IEC 60028). The coil of 80 ohm has
/// 105.2 ohm then, 2 ohm of the output in a row with it: of 9.0 V − 0.2 V it gets 8.8 × 105.2 / 107.2 = 8.636 V, of
/// 8.9 V − 0.2 V 8.538 V.
#[test]
fn a_hot_relay_is_held_against_what_is_left_at_its_coil() {
    let code = "cranking.relay-weak";
    let hot = |battery| told(PLAN, &[LIVE, ("battery.hot_cranking", battery)], code);
    assert_eq!(hot("9.0 V"), NOTHING);
    assert_eq!(hot("8.9 V"), [Doubt]);
    let texts = [LIVE, ("battery.hot_cranking", "8.9 V")];
    assert_eq!(verdict(&texts).0, Tone::Doubtful, "{}", verdict(&texts).1);
    // typed throughout, and beyond a hair: 8.6 V − 0.2 V leave 8.24 V, 3.5 % less than 8.544 V
    let sure = |battery| {
        let texts = [LIVE, ("temperatures.hot", "100 °C"), ("battery.hot_cranking", battery)];
        told(PLAN, &texts, code)
    };
    assert_eq!(sure("8.9 V"), [Doubt]);
    assert_eq!(sure("8.6 V"), [Fault]);
    let told = words(PLAN, &texts, code);
    assert!(told.contains("8.54 V of the battery's 8.9 V"), "{told}");
    // 2 × 1.3144 = 2.629 V
    assert!(told.contains("2.63 V"), "it says what a relay that is in holds down to: {told}");
    // a better feed is enough, and so is a better output
    for better in
        [("switched_feeds.cranking_loss", "0.1 V"), ("outputs.0.on_resistance", "0.5 ohm")]
    {
        assert_eq!(super::told(PLAN, &[LIVE, texts[1], better], code), NOTHING, "{better:?}");
    }
}

/// By hand: 6.5 × (1 − 0.00393 × 40) = 5.478 V at −20 °C; the coil has 80 × 0.8428 = 67.4 ohm then, and gets of
/// 5.9 V − 0.2 V 5.7 × 67.4 / 69.4 = 5.536 V, of 5.8 V 5.439 V.
#[test]
fn a_relay_that_cannot_pull_in_even_cold_is_no_good_news() {
    let code = "cranking.relay-too-weak";
    let cold =
        |battery| [LIVE, ("battery.cold_cranking", battery), ("battery.hot_cranking", battery)];
    assert_eq!(told(PLAN, &cold("5.9 V"), code), NOTHING);
    assert_eq!(told(PLAN, &cold("5.8 V"), code), [Fault]);
    assert_eq!(verdict(&cold("5.8 V")).0, Tone::Bad);
    // what is lost is not known, or the battery is not: that is only usual
    let unknown = [cold("5.8 V").as_slice(), &[("switched_feeds.cranking_loss", "")]].concat();
    assert_eq!(told(PLAN, &unknown, code), [Doubt], "0.1 V may be all that is lost");
    let no_battery = [
        LIVE,
        ("battery.cold_cranking", ""),
        ("battery.hot_cranking", ""),
        ("relays.0.pull_in", "10 V"),
    ];
    assert_eq!(told(PLAN, &no_battery, code), [Doubt]);
    assert_eq!(verdict(&no_battery).0, Tone::Doubtful);
}

/// By hand: 4.2 V at 20 °C are 4.2 × (1 + 0.00393 × 80) = 5.52 V at 100 °C; 5.6 V − 0.2 V is less, 5.8 V − 0.2 V more.
#[test]
fn a_relay_that_is_in_before_the_starter_turns_is_held_against_where_it_lets_go() {
    let (name, code) = ("cranking-lets-go", "cranking.lets-go");
    let hot = |battery| told(name, &[("battery.hot_cranking", battery)], code);
    assert_eq!(hot("5.6 V"), [Doubt]);
    assert_eq!(hot("5.8 V"), NOTHING);
    let said = words(name, &[], code);
    assert!(said.contains("down to 5.52 V, and its coil then gets 5.4 V"), "{said}");
    // one that is switched at a speed is asked whether it pulls in; a fan may fall out
    for other in [("relays.1.switched_by", "speed"), ("relays.1.purpose", "fan")] {
        assert_eq!(told(name, &[other], code), NOTHING, "{other:?}");
    }
}

#[test]
fn a_controller_that_restarts_stands_under_no_good_verdict() {
    let code = "cranking.controller-restarts";
    let least = |least| [LIVE, ("controller.least_supply", least)];
    assert_eq!(
        (told(PLAN, &least("9.1 V"), code), verdict(&least("9.1 V")).0),
        (vec![Fault], Tone::Bad)
    );
    assert_eq!(
        (told(PLAN, &least("9.0 V"), code), verdict(&least("9.0 V")).0),
        (vec![], Tone::Good)
    );
    let unknown = [
        LIVE,
        ("battery.cold_cranking", ""),
        ("battery.hot_cranking", ""),
        ("controller.least_supply", "9 V"),
        ("relays.0.pull_in", ""),
    ];
    assert_eq!((told(PLAN, &unknown, code), verdict(&unknown).0), (vec![Doubt], Tone::Doubtful));
}

/// By hand: at 200 rpm with a dip of 35 % the speed falls to 130 rpm at each of six compressions in two turns, 0.6 s: ten times
/// a second.
#[test]
fn equal_speeds_on_and_off_are_simulated_and_openings_are_a_rate() {
    let equal =
        |speed| [LIVE, ("relays.0.relay_on_at", speed), ("relays.0.relay_off_below", speed)];
    let quick = [equal("80 rpm").as_slice(), &[("cranking.run_up", "100 ms")]].concat();
    let report = report(&planned(PLAN, &quick));
    assert_eq!(graded(&report, "cranking.release-above"), NOTHING);
    assert_eq!(graded(&report, "cranking.chatters"), NOTHING);
    assert_eq!(verdict(&quick).0, Tone::Good);
    let slow = words(PLAN, &equal("100 rpm"), "cranking.chatters");
    assert!(slow.contains("again, 1 time in the run-up"), "{slow}");
    let told = words(PLAN, &equal("150 rpm"), "cranking.chatters");
    assert!(told.contains("again, 10 times a second"), "{told}");
    let above = [LIVE, ("relays.0.relay_off_below", "101 rpm")];
    assert_eq!(super::told(PLAN, &above, "cranking.release-above"), [Fault]);
}

/// By hand: over 40 tooth intervals of a wheel of 60 a reading spans a third of a turn, one compression of this six, and
/// never reads far from 200 rpm; a start takes 0.3 s and 50 degrees to 100 rpm. One at every tooth agrees with the next after
/// 41 teeth, one from fresh teeth after 80: a third of a turn later, 0.1 s at 1200 degrees a second, 0.2 s in the run-up.
#[test]
fn a_reading_at_every_tooth_brings_power_sooner_than_one_from_fresh_teeth() {
    let after = |average| {
        let texts = [LIVE, ("cranking.averaging", "40"), ("cranking.average", average)];
        let report = report(&planned(PLAN, &texts));
        let mut answers = report.sections.iter().flat_map(|it| &it.answers);
        let answer = answers.find(|it| it.subject == "cranking").expect("it is asked");
        let mut figures = answer.figures.iter();
        let power = figures.find(|it| it.label.code == "cranking.figure-power").expect("it closes");
        power.value.number.expect("a time")
    };
    let (fresh, sliding) = (after("blocks"), after("sliding"));
    assert!((0.1..0.25).contains(&(fresh - sliding)), "{fresh} s and {sliding} s");
    assert!((after("") - fresh).abs() < 1e-12, "as usual");
}

/// By hand: where it is switched on at 40 rpm, the gap of three positions, 18°, takes at most 18° / (6 × 40) = 75 ms from then
/// on, and 18° / (6 × 130) = 23 ms in the dips at full speed.
#[test]
fn a_time_out_that_reads_nought_in_the_run_up_is_told_as_such() {
    let timeout = |time| {
        [
            LIVE,
            ("relays.0.relay_on_at", "40 rpm"),
            ("relays.0.relay_off_below", "5 rpm"),
            ("cranking.run_up", "1.5 s"),
            ("cranking.stall_timeout", time),
        ]
    };
    let report = report(&planned(PLAN, &timeout("40 ms")));
    assert_eq!(graded(&report, "cranking.timeout-in-gap"), [Fault]);
    assert_eq!(graded(&report, "cranking.chatters"), NOTHING, "the release has no part in it");
    let (tone, verdict) = verdict(&timeout("40 ms"));
    assert!(tone == Tone::Bad && verdict.contains("time-out"), "{verdict}");
    assert_eq!(told(PLAN, &timeout("80 ms"), "cranking.timeout-in-gap"), NOTHING);
}

/// By hand: 60 less 2 teeth at 60 rpm without dips, 360 degrees a second: the gap of 18 degrees takes 50 ms. Half as much again is 75 ms, in
/// whole hundredths 80. Above the speed no reading comes, which is told where the time-out leaves readings at all.
#[test]
fn a_time_out_is_held_against_the_gap_wherever_it_is_told() {
    let at = |on: &'static str, timeout: &'static str| {
        [
            LIVE,
            ("cranking.speed", "60 rpm ± 0 %"),
            ("cranking.dip", "0 %"),
            ("cranking.run_up", "100 ms"),
            ("wheels.crank_teeth", "60"),
            ("wheels.missing", "2"),
            ("cranking.stall_timeout", timeout),
            ("relays.0.relay_on_at", on),
            ("relays.0.relay_off_below", "31 rpm"),
        ]
    };
    let (silent, never) = ("cranking.timeout-in-gap", "cranking.never-closes");
    assert_eq!(told(PLAN, &at("40 rpm", "52 ms"), silent), NOTHING);
    assert_eq!(told(PLAN, &at("40 rpm", "48 ms"), silent), [Fault]);
    let said = words(PLAN, &at("40 rpm", "48 ms"), silent);
    assert!(said.contains("50 ms") && said.contains("80 ms"), "{said}");
    assert_eq!(told(PLAN, &at("70 rpm", "52 ms"), never), [Fault]);
    assert_eq!(told(PLAN, &at("70 rpm", "48 ms"), never), NOTHING, "the time-out is the finding");
    let verdict = |timeout| verdict(&at("70 rpm", timeout)).1;
    assert!(!verdict("52 ms").contains("time-out"), "{}", verdict("52 ms"));
    assert!(verdict("48 ms").contains("time-out"), "{}", verdict("48 ms"));
}

/// What is no more than a rocking engine may read, or than what is usual, is no more than that.
#[test]
fn what_is_just_as_usual_is_as_usual() {
    let standstill = |on| {
        told(
            PLAN,
            &[
                LIVE,
                ("cranking.rocking", "40 rpm"),
                ("relays.0.relay_on_at", on),
                ("relays.0.relay_off_below", "20 rpm"),
            ],
            "cranking.on-at-standstill",
        )
    };
    assert_eq!(standstill("40 rpm"), [Doubt], "the engine may read that while it rocks");
    assert_eq!(standstill("41 rpm"), NOTHING);
    let rocking = |on| {
        verdict(&[
            LIVE,
            ("cranking.rocking", "40 rpm"),
            ("relays.0.relay_on_at", on),
            ("relays.0.relay_off_below", "20 rpm"),
        ])
    };
    assert_ne!(rocking("40 rpm").0, Tone::Good, "{:?}", rocking("40 rpm"));
    let kicks = |back| told(PLAN, &[LIVE, ("cranking.kick_back", back)], "cranking.kick-back");
    assert_eq!(kicks("30 deg"), NOTHING, "30 degrees are usual: common practice, no source");
    assert_ne!(kicks("31 deg"), NOTHING);
}

/// By hand: at exactly 200 rpm with exactly 35 % of dip the speed goes from 130 to 270 rpm at every corner, and 210 rpm lie between.
#[test]
fn a_threshold_that_waits_for_a_crest_does_so_at_the_corners_where_it_does() {
    let at = [
        LIVE,
        ("cranking.speed", "200 rpm ± 0 %"),
        ("cranking.dip", "35 % ± 0 %"),
        ("relays.0.relay_on_at", "210 rpm"),
    ];
    let report = report(&planned(PLAN, &at));
    let found = report.findings.iter().find(|it| it.message.code == "cranking.waits-for-crest");
    assert_eq!(found.expect("it waits").holds, Holds::Always);
}

/// By hand: at 160 to 240 rpm without dips the gap of two teeth, taken for one, reads a third: 53 to 80 rpm. A release of 60 lies between.
#[test]
fn a_gap_that_is_taken_for_a_tooth_is_told_where_it_opens_the_relay() {
    let texts = [
        LIVE,
        ("cranking.speed", "200 rpm ± 20 %"),
        ("cranking.dip", "0 %"),
        ("wheels.crank_teeth", "60"),
        ("wheels.missing", "2"),
        ("cranking.confirmation", "1"),
        ("cranking.run_up", "10 ms"),
        ("relays.0.relay_off_below", "60 rpm"),
    ];
    let report = report(&planned(PLAN, &texts));
    let found = report.findings.iter().find(|it| it.message.code == "cranking.gap-as-tooth");
    let holds = found.map(|it| it.holds.clone());
    assert!(matches!(holds, Some(Holds::AtSome(_))), "{holds:?}");
}

/// A silence that cuts several relays at one speed is told once, and of one that is switched on earlier by itself.
#[test]
fn a_silence_is_told_once_for_relays_that_are_switched_alike() {
    let with = |on| {
        let texts = [
            LIVE,
            ("relays.0.relay_on_at", "40 rpm"),
            ("relays.0.relay_off_below", "5 rpm"),
            ("relays.1.purpose", "pump"),
            ("relays.1.switched_by", "speed"),
            ("relays.1.relay_on_at", on),
            ("relays.1.relay_off_below", "5 rpm"),
            ("cranking.run_up", "1.5 s"),
            ("cranking.stall_timeout", "40 ms"),
        ];
        told(PLAN, &texts, "cranking.timeout-in-gap").len()
    };
    assert_eq!((with("40 rpm"), with("35 rpm")), (1, 2));
}

/// By hand: at 60 rpm without dips the gap takes 50 ms. A time-out below that cuts every relay at full speed, and is told once; one above
/// it cuts only what is switched on while the engine turns slower than 18 degrees in 52 ms, 57.7 rpm.
#[test]
fn a_silence_at_full_speed_is_told_once_for_all_relays() {
    let with = |first, second, timeout| {
        let texts = [
            LIVE,
            ("cranking.speed", "60 rpm ± 0 %"),
            ("cranking.dip", "0 %"),
            ("wheels.crank_teeth", "60"),
            ("wheels.missing", "2"),
            ("relays.0.relay_on_at", first),
            ("relays.0.relay_off_below", "5 rpm"),
            ("relays.1.purpose", "pump"),
            ("relays.1.switched_by", "speed"),
            ("relays.1.relay_on_at", second),
            ("relays.1.relay_off_below", "5 rpm"),
            ("cranking.run_up", "3 s"),
            ("cranking.stall_timeout", timeout),
        ];
        told(PLAN, &texts, "cranking.timeout-in-gap").len()
    };
    assert_eq!(with("40 rpm", "35 rpm", "48 ms"), 1, "at full speed");
    assert_eq!(with("59 rpm", "35 rpm", "52 ms"), 1, "the second alone, in the run-up");
}

/// Common practice, no source: a pump must stop with its engine, by the controller or by a switch in its feed.
#[test]
fn a_pump_that_the_key_keeps_running_is_a_danger_where_nothing_else_stops_it() {
    let (plan, code) = ("cranking-pump-on-key", "cranking.pump-on-with-key");
    assert_eq!(told(plan, &[], code), [Danger]);
    // before the start of the engine is known, and with no output at all
    assert_eq!(told(plan, &[("cranking.speed", "")], code), [Danger]);
    assert_eq!(
        told(plan, &[("relays.1.output", ""), ("relays.1.far_end", "ground")], code),
        [Danger]
    );
    // what else stops it is to be found out
    assert_eq!(told(plan, &[("relays.1.cut", "")], code), [Doubt]);
    for texts in [
        [("relays.1.cut", "inertia")].as_slice(),
        &[("relays.1.cut", "oil-pressure")],
        // switched by the controller, or fed through a relay that is
        &[("relays.1.switched_by", "speed"), ("relays.1.relay_on_at", "100 rpm")],
        &[("relays.0.switched_by", "speed"), ("relays.0.relay_on_at", "100 rpm")],
        &[("relays.1.purpose", "fan")],
    ] {
        assert_eq!(told(plan, texts, code), NOTHING, "{texts:?}");
    }
    // its contact through one that follows the engine
    let coils = [("relays.0.switched_by", "speed"), ("relays.0.relay_on_at", "100 rpm")];
    let behind = [("relays.1.far_end", "ignition"), ("relays.1.behind", "Main relay")];
    assert_eq!(told(plan, &behind, code), [Danger]);
    assert_eq!(told(plan, &[coils, behind].concat(), code), NOTHING);
    // relays that feed each other
    assert_eq!(told(plan, &[("relays.0.behind", "Pump relay")], code), [Danger]);
}

#[test]
fn a_pump_on_the_key_is_cured_by_the_controller_or_by_an_inertia_switch() {
    let plan = planned("cranking-pump-on-key", &[]);
    let mut memory = Memory::detailed();
    let report = report_after(&mut memory, &plan);
    let tried = tried(&report, &plan, &memory);
    let mut findings = tried.findings.iter();
    let found = findings.find(|it| it.message.code == "cranking.pump-on-with-key");
    let codes: Vec<_> = found.expect("told").remedies.iter().map(|it| it.code).collect();
    assert_eq!(codes, ["cranking.pump-by-controller", "cranking.fit-cut"]);
    let answers = report.sections.iter().flat_map(|it| &it.answers);
    let tones: Vec<_> =
        answers.filter(|it| it.subject == "relays.1").map(|it| it.verdict.tone).collect();
    assert!(tones.contains(&Tone::Bad), "{tones:?}");
}

/// What is typed and works is what is entered, whatever else would work as well.
#[test]
fn a_pump_threshold_that_works_is_entered_as_it_is_typed() {
    let to_do = |speed| {
        let typed = [("relays.1.switched_by", "speed"), ("relays.1.relay_on_at", speed)];
        let report = report(&planned("cranking-pump-on-key", &typed));
        let mut answers = report.sections.iter().flat_map(|it| &it.answers);
        let about = |it: &&std::rc::Rc<Answer>| {
            it.subject == "relays.1" && it.verdict.message.code.starts_with("cranking.")
        };
        let answer = answers.find(about).expect("it is answered");
        answer.to_do.iter().map(|it| (it.code, it.text.as_str().to_owned())).collect::<Vec<_>>()
    };
    for speed in ["60 rpm", "100 rpm"] {
        let steps = to_do(speed);
        assert!(
            steps.iter().any(|(code, it)| *code == "cranking.do-keep" && it.contains(speed)),
            "{steps:?}"
        );
    }
    for speed in ["20 rpm", "400 rpm"] {
        let steps = to_do(speed);
        assert!(steps.iter().any(|(code, _)| *code == "cranking.do-set"), "{steps:?}");
    }
}
