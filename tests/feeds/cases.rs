//! Cases worked by hand.

use quietpin_core::{
    finding::Severity,
    plan::Plan,
    report::{Report, Tone, report},
};
use quietpin_tests::typed::put;

use super::{about, codes, feed, figure, found, plan, verdict};

const RELAY: &str = "feeds.relay.0";

#[track_caller]
fn near(found: Option<f64>, expected: f64) {
    assert!(found.is_some_and(|it| (it - expected).abs() < 1e-6), "{found:?} is not {expected}");
}

/// What is to be done about the first feed, and the texts that do it.
fn to_do(report: &Report) -> Vec<(&'static str, Vec<(String, String)>)> {
    let answer = about(report, RELAY).expect("it is answered");
    let edits = |it: &quietpin_core::message::Message| {
        it.edits.iter().map(|edit| (edit.path.clone(), edit.text.clone())).collect()
    };
    answer.to_do.iter().map(|it| (it.code, edits(it))).collect()
}

fn edit(field: &str, text: &str) -> (String, String) {
    (format!("relays.0.{field}"), text.to_owned())
}

#[test]
fn a_blank_plan_is_asked_for_one_thing() {
    let report = report(&Plan::default());
    let answers = quietpin_tests::typed::answers(&report, "feeds");
    let [answer] = answers.as_slice() else { panic!("{} answers", answers.len()) };
    assert_eq!(answer.verdict.message.code, "feeds.blank");
    assert!(answer.why.is_none() && answer.figures.is_empty() && answer.cautions.is_empty());
}

#[test]
fn a_feed_that_is_big_enough_is_said_to_be() {
    let report = report(&feed(&[]));
    assert_eq!(codes(&report), [""; 0]);
    let answer = about(&report, RELAY).expect("it is answered");
    assert_eq!((answer.verdict.tone, verdict(&report, RELAY)), (Tone::Good, "feeds.good-contact"));
    assert!(answer.to_do.is_empty(), "nothing to do: {:?}", answer.to_do);
    // by hand: 6.5 × 9 A, common practice, no source, are 0.253 Ω at 14.8 V; with 30 mΩ before and 2 × 20.7 mΩ of wire 45.6 A; 2 × 9 A × 24 mΩ
    near(figure(&report, RELAY, "feeds.figure-draws"), 9.0);
    near(figure(&report, RELAY, "feeds.figure-inrush"), 45.6268);
    near(figure(&report, RELAY, "feeds.figure-lost"), 0.432);
}

/// By hand: 9 A / 75 % are 12 A: 15 A, which bear 75.7 A for 25 ms (ISO 8820-3, from memory; see `tests/points/feeds.rs`). 1.16 × 3 m / (58 × 1 mm²) = 60 mΩ,
/// out and back 1.08 V of 14.8 V; 1.5 mm² 0.72 V, 4.9 %: less than 5 %.
#[test]
fn what_is_wanting_is_named_and_what_would_do_is_offered() {
    for (blank, wants, does, edits) in [
        (&["draws"][..], "feeds.open-draws", "feeds.do-draws", vec![]),
        (&["rating"], "feeds.open-contact", "feeds.do-rating", vec![]),
        (&["fuse"], "feeds.open-fuse", "feeds.do-fit-fuse", vec![edit("fuse", "15 A")]),
        (
            &["lead_size"],
            "feeds.open-wire",
            "feeds.do-fit-wire",
            vec![edit("lead_size", "1.5 mm²")],
        ),
        (
            &["fuse", "lead_size"],
            "feeds.open-fit",
            "feeds.do-fit",
            vec![edit("fuse", "15 A"), edit("lead_size", "1.5 mm²")],
        ),
    ] {
        let mut plan = feed(&[]);
        for field in blank {
            put(&mut plan, &format!("relays.0.{field}"), "");
        }
        let report = report(&plan);
        assert_eq!(verdict(&report, RELAY), wants, "{blank:?}");
        assert_eq!(to_do(&report), [(does, edits)], "{blank:?}");
        assert_eq!(codes(&report), [""; 0], "{blank:?}");
    }
}

/// By hand: 9 A of its own, 4 A behind it, and 2 A behind that.
#[test]
fn what_lies_behind_a_contact_flows_through_it_through_however_many() {
    let chain = [
        ("relays.1.name", "Second"),
        ("relays.1.draws", "4 A"),
        ("relays.1.behind", "pump relay"),
        ("relays.2.name", "Third"),
        ("relays.2.draws", "2 A"),
        ("relays.2.behind", "Second"),
        ("battery.alternator", "60 A"),
    ];
    let first = report(&feed(&chain));
    let draws = |report: &Report, at: usize| {
        figure(report, &format!("feeds.relay.{at}"), "feeds.figure-draws")
    };
    near(draws(&first, 0), 15.0);
    near(draws(&first, 1), 6.0);
    near(draws(&first, 2), 2.0);
    // counted once, however many contacts it flows through
    near(figure(&first, "feeds.alternator", "feeds.figure-needed"), 15.0);
    assert!(codes(&first).contains(&"feeds.fuse-too-small"), "15 A behind 15 A");
    let unknown = report(&feed(&[&chain[..], &[("relays.2.draws", "")]].concat()));
    // of what is not known nothing is said, and of what it flows through neither
    let known: Vec<_> = (0..3).filter(|at| draws(&unknown, *at).is_some()).collect();
    assert_eq!(known, [0_usize; 0]);
}

/// By hand: 1.16 × 4 m / (58 × 35 mm²) = 2.2857 mΩ, and 2 × 200 A × that is 0.9143 V; 9 V less that is 8.0857 V. 50 mm² lose 0.64 V.
#[test]
fn a_cable_to_the_rear_is_judged_and_the_next_that_does_is_offered() {
    let cable = |size: &str| {
        report(&feed(&[
            ("battery.lead_length", "4 m"),
            ("battery.lead_size", size),
            ("battery.starter", "200 A"),
        ]))
    };
    let thin = cable("35 mm2");
    assert_eq!(verdict(&thin, "feeds.cable"), "feeds.cable-thin");
    near(
        figure(&thin, "feeds.cable", "feeds.figure-drop"),
        2.0 * 200.0 * 1.16 * 4.0 / (58.0 * 35.0),
    );
    let remedy = &found(&thin)[0].remedies[0];
    assert_eq!(remedy.edits[0].text, "50 mm²");
    let thick = cable("50 mm2");
    assert_eq!(verdict(&thick, "feeds.cable"), "feeds.cable-good");
    near(figure(&thick, "feeds.cable", "feeds.figure-drop"), 0.64);
    assert!(about(&report(&feed(&[])), "feeds.cable").is_none(), "nothing is said of nothing");
}

/// By hand: 9 A and 20 A are 29 A; 30 A at idle leave 1 A; 80 % of 40 A are 32 A, 3 A more. 27 A lack 2 A, more than a twentieth of 29 A;
/// 80 % of 34 A are 27.2 A and lack 1.8 A.
#[test]
fn an_alternator_is_held_against_all_feeds() {
    let second = [
        ("relays.1.name", "Heater relay"),
        ("relays.1.purpose", "heater"),
        ("relays.1.draws", "20 A"),
    ];
    let with = |typed: &[(&str, &str)]| report(&feed(&[&second[..], typed].concat()));
    let needed = |report: &Report| figure(report, "feeds.alternator", "feeds.figure-needed");
    let both = with(&[("battery.alternator", "40 A"), ("battery.alternator_idle", "30 A")]);
    near(needed(&both), 29.0);
    near(figure(&both, "feeds.alternator", "feeds.figure-idle"), 1.0);
    near(figure(&both, "feeds.alternator", "feeds.figure-speed"), 3.0);
    assert_eq!(verdict(&both, "feeds.alternator"), "feeds.alternator-good");
    let speed = with(&[("battery.alternator", "40 A")]);
    assert_eq!(verdict(&speed, "feeds.alternator"), "feeds.alternator-speed");
    let idle = with(&[("battery.alternator", "40 A"), ("battery.alternator_idle", "27 A")]);
    assert_eq!(verdict(&idle, "feeds.alternator"), "feeds.alternator-idle");
    let short = with(&[("battery.alternator", "34 A")]);
    assert_eq!(verdict(&short, "feeds.alternator"), "feeds.alternator-short");
    // one that is not known may draw anything
    let open = with(&[("battery.alternator", "40 A"), ("relays.1.draws", "")]);
    assert_eq!(verdict(&open, "feeds.alternator"), "feeds.alternator-open");
}

/// By hand: 4 A, 9 A, 16 A and 9.5 A are 38.5 A, beside the injectors; those take 30 % at idle (common practice, no source). 45 A at idle;
/// 80 % of 90 A are 72 A.
#[test]
fn injectors_take_less_at_idle() {
    let example = quietpin_tests::plans::ALL.iter().find(|it| it.name == "feeds-suits");
    let plan = quietpin_core::plan::parse(example.expect("a plan").text).expect("a plan");
    let report = report(&plan);
    assert_eq!(codes(&report), [""; 0]);
    let injectors = figure(&report, "feeds.injectors", "feeds.figure-draws").expect("it is known");
    // 12 Ω at 14.4 V: 1.2 A each, or a little more where it is cold and within its tolerance
    assert!((4.0..5.6).contains(&injectors), "{injectors} A");
    let of = |code: &str| figure(&report, "feeds.alternator", code);
    near(of("feeds.figure-needed"), 38.5 + injectors);
    near(of("feeds.figure-idle"), 45.0 - 38.5 - 0.3 * injectors);
    near(of("feeds.figure-speed"), 72.0 - 38.5 - injectors);
    // through the main relay's contact flows what its own 4 A and the injectors behind it take
    near(figure(&report, "feeds.relay.0", "feeds.figure-draws"), 4.0 + injectors);
}

/// By hand: class A of 2.5 mm² in 60 °C, four of a bundle loaded: 29 A × 0.65 × √(25 K / 85 K × 1.33405 / 1.25545) = 10.54 A (the bundle
/// by IEC 60364-5-52, from memory). Alone in 20 °C it bears 29 A × √(65 / 85 × 1.0626) = 26.1 A.
#[test]
fn a_hot_bundle_bears_less() {
    let of = |draws: &str, laid: &[(&str, &str)]| {
        let bare = [("relays.0.fuse", ""), ("relays.0.lead_length", ""), ("relays.0.draws", draws)];
        let class = [("wiring.insulation", "a")];
        codes(&report(&feed(&[&bare[..], &class, laid].concat())))
    };
    let hot = [("wiring.ambient", "60 °C"), ("wiring.bundled", "4")];
    assert_eq!(of("10.5 A", &hot), [""; 0]);
    assert_eq!(of("10.6 A", &hot), ["feeds.wire-hot"]);
    assert_eq!(of("26 A", &[]), ["feeds.inrush-over-contact"], "169 A through a contact of 30 A");
    assert!(of("26.2 A", &[]).contains(&"feeds.wire-hot"));
}

/// What hangs on 15 and on 30 without a relay's contact is judged by its own fuse and wire: 30 A before 0.5 mm², which bears 10.75 A.
#[test]
fn a_feed_without_a_relay_is_judged_at_its_own_fields() {
    for (fuse, size, subject) in [
        ("switched_feeds.fuse", "switched_feeds.size", "feeds.ignition"),
        ("switched_feeds.battery_fuse", "switched_feeds.battery_size", "feeds.battery"),
    ] {
        let large = report(&plan(&[(fuse, "30 A"), (size, "0.5 mm2")]));
        let told: Vec<_> = found(&large)
            .iter()
            .map(|it| (it.message.code, it.subject.clone(), it.severity))
            .collect();
        let expected = ("feeds.fuse-over-wire", fuse.to_owned(), Severity::Danger);
        assert_eq!(told, [expected], "{fuse}");
        assert_eq!(verdict(&large, subject), "feeds.bad-wire");
        let small = report(&plan(&[(fuse, "5 A"), (size, "0.75 mm2")]));
        assert_eq!(codes(&small), [""; 0]);
        assert_eq!(verdict(&small, subject), "feeds.good");
    }
}

/// The injectors' own fuse before 0.5 mm²: by hand as above. A fuse of theirs is judged for sure, not as a doubt.
#[test]
fn a_fuse_of_the_injectors_alone_is_judged_with_their_wires() {
    let with = |fuse: &str| {
        report(&plan(&[
            ("injectors.resistance", "12 ohm"),
            ("injectors.output_limit", "3 A"),
            ("injectors.count", "4"),
            ("injectors.wire_size", "0.5 mm2"),
            ("injectors.fuse", fuse),
        ]))
    };
    let large = with("25 A");
    assert_eq!(codes(&large), ["feeds.fuse-over-wire"]);
    assert_eq!(found(&large)[0].subject, "injectors.fuse");
    assert_eq!(codes(&with("7.5 A")), [""; 0]);
    let mut second = plan(&[]);
    for (field, text) in [
        ("resistance", "12 ohm"),
        ("output_limit", "3 A"),
        ("count", "4"),
        ("wire_size", "0.5 mm2"),
        ("fuse", "25 A"),
    ] {
        put(&mut second, &format!("second_injectors.{field}"), text);
    }
    let second = report(&second);
    assert_eq!(codes(&second), ["feeds.fuse-over-wire"], "each set has its own");
    assert_eq!(found(&second)[0].subject, "second_injectors.fuse");
}

/// By hand: 9 A and a valve of 7.4 Ω at 14.8 V, 2 A while on, pulsed at 25 %: √0.25 × 2 A = 1 A RMS, 0.25 × 2 A = 0.5 A on the average.
#[test]
fn what_is_pulsed_draws_less_on_the_average_than_it_heats() {
    let valve = |duty: &'static str| {
        report(&feed(&[
            ("outputs.0.name", "D1"),
            ("outputs.0.stage", "open-drain"),
            ("loads.0.name", "valve"),
            ("loads.0.output", "D1"),
            ("loads.0.far_end", "relay"),
            ("loads.0.far_relay", "pump relay"),
            ("loads.0.kind", "solenoid"),
            ("loads.0.resistance", "7.4 ohm"),
            ("loads.0.frequency", if duty.is_empty() { "" } else { "100 Hz" }),
            ("loads.0.duty", duty),
        ]))
    };
    let pulsed = valve("25%");
    near(figure(&pulsed, RELAY, "feeds.figure-draws"), 10.0);
    near(figure(&pulsed, RELAY, "feeds.figure-mean"), 9.5);
    let steady = valve("");
    near(figure(&steady, RELAY, "feeds.figure-draws"), 11.0);
    assert_eq!(figure(&steady, RELAY, "feeds.figure-mean"), None, "both are the same");
}
