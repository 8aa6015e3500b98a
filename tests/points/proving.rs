//! What is planned is not proved: what was not seen at the car stays open, and what was seen is not asked for again.

use quietpin_core::report::{Answer, Report, Tone, report, usual::usual};

use super::{planned, words};

fn answer<'a>(report: &'a Report, subject: &str) -> &'a Answer {
    let all = report.sections.iter().flat_map(|it| &it.answers);
    all.into_iter().find(|it| it.subject == subject).expect(subject)
}

/// Of a plan with these texts: how an answer stands, its verdict, and the codes of what is to be done.
fn stands(name: &str, texts: &[(&str, &str)], subject: &str) -> (Tone, String, Vec<&'static str>) {
    let report = report(&planned(name, texts));
    let answer = answer(&report, subject);
    let steps = answer.to_do.iter().map(|it| it.code).collect();
    (answer.verdict.tone, answer.verdict.message.text.clone(), steps)
}

/// What the usual report says to prove at the car.
fn to_prove(name: &str, texts: &[(&str, &str)]) -> Vec<String> {
    let lines = usual(&report(&planned(name, texts))).prove;
    lines.into_iter().map(|it| it.words.text.clone()).collect()
}

const IGNITION: &str = "channels.ignition_mode";
const INJECTION: &str = "channels.injection_mode";

/// The same plan with nothing found at the car.
fn unseen<'a>(wired: &str, channels: usize) -> Vec<(String, &'a str)> {
    (0..channels).map(|at| (format!("channels.{wired}.{at}"), "")).collect()
}

fn borrowed<'a>(texts: &'a [(String, &'a str)]) -> Vec<(&'a str, &'a str)> {
    texts.iter().map(|(path, text)| (path.as_str(), *text)).collect()
}

/// Common practice, no source: swapped plug leads are the commonest slip there is, and the first crank then backfires.
#[test]
fn channels_that_were_never_fired_at_the_car_are_planned_and_no_more() {
    let coils = unseen("coils_wired", 4);
    let (tone, verdict, steps) = stands("sound-boxer", &borrowed(&coils), IGNITION);
    assert_eq!(tone, Tone::Open);
    assert!(verdict.starts_with("Not yet proved: "), "{verdict}");
    assert!(steps.contains(&"firing.look-coils"), "{steps:?}");
    let usual = usual(&report(&planned("sound-boxer", &borrowed(&coils))));
    assert_ne!(usual.questions[0].tone, Tone::Good, "{:?}", usual.questions[0]);
    let prove = to_prove("sound-boxer", &borrowed(&coils));
    assert!(prove.iter().any(|it| it.contains("whose coil sparks?")), "{prove:?}");
    // of injectors likewise
    let injectors = unseen("injectors_wired", 4);
    let (tone, _, steps) = stands("sound-boxer", &borrowed(&injectors), INJECTION);
    assert_eq!((tone, steps.contains(&"firing.look-injectors")), (Tone::Open, true));
    // seen in full, nothing of it is left to do
    for subject in [IGNITION, INJECTION] {
        let (tone, verdict, steps) = stands("sound-boxer", &[], subject);
        assert_eq!(tone, Tone::Good, "{verdict}");
        assert!(!steps.iter().any(|it| it.starts_with("firing.look-")), "{steps:?}");
    }
    let prove = to_prove("sound-boxer", &[]);
    assert!(!prove.iter().any(|it| it.contains("one channel at a time")), "{prove:?}");
}

#[test]
fn what_hangs_on_the_only_channel_can_not_be_crossed() {
    for (wired, subject) in [("coils_wired", IGNITION), ("injectors_wired", INJECTION)] {
        let (tone, verdict, _) = stands("sound-single", &borrowed(&unseen(wired, 1)), subject);
        assert_eq!(tone, Tone::Good, "{verdict}");
    }
}

/// By hand: the marks of a five stand at 0 144 288 72 216 of a turn, each alone; those of a flat four at 0 180 0 180.
#[test]
fn a_light_that_read_all_proves_the_coils_where_no_two_marks_are_one() {
    let lit = |name, cylinders: usize| {
        let mut texts = unseen("coils_wired", cylinders);
        texts.extend((0..cylinders).map(|at| (format!("light.seen.{at}"), "10")));
        stands(name, &borrowed(&texts), IGNITION).0
    };
    assert_eq!(lit("sound-five", 5), Tone::Good);
    assert_eq!(lit("sound-boxer", 4), Tone::Open, "companions may be swapped unseen");
    assert_eq!(lit("sound-four", 4), Tone::Good, "companions share a coil");
}

/// By hand, of a twin at 0 and 270: the second comes 270 after the first, an even one 360.
#[test]
fn typed_angles_are_proved_by_a_degree_wheel_before_they_are_relied_on() {
    let steps = |texts: &[(&str, &str)]| stands("sound-twin", texts, "engine").2;
    let unlit = [("light.seen.1", "")];
    assert!(steps(&unlit).contains(&"firing.check-angles"), "{:?}", steps(&unlit));
    let prove = to_prove("sound-twin", &unlit);
    let said = "TDC of 2 by a degree wheel, 270° after 1; then the timing light on 2 too";
    assert!(prove.iter().any(|it| it == said), "{prove:?}");
    // with the light read on it, what is left is whence its mark came
    assert!(
        steps(&[]).contains(&"firing.check-marks") && !steps(&[]).contains(&"firing.check-angles")
    );
    let told = stands("sound-triple", &[], "engine").2;
    assert!(!told.iter().any(|it| it.starts_with("firing.check-an")), "it fires evenly: {told:?}");
    // the plan's engine fires evenly, and the controller's angles are others
    let other = [("controller.spacing", "angles"), ("controller.angles", "0 210 480")];
    let told = stands("sound-triple", &other, "engine").2;
    assert!(told.iter().any(|it| it.starts_with("firing.check-")), "{told:?}");
}

#[test]
fn the_stroke_is_proved_only_where_it_is_in_question() {
    let thumb = |name, texts: &[(&str, &str)]| {
        stands(name, texts, "light").2.contains(&"firing.light-do-thumb")
    };
    let blank = [("light.stroke", "")];
    assert!(thumb("sound-triple", &blank), "a coil each, once in two turns");
    assert!(!thumb("sound-triple", &[]), "it was looked at");
    assert!(!thumb("sound-four", &blank), "a coil of two ends sparks on both strokes");
    assert!(!thumb("sound-single", &blank), "it sparks every turn");
    assert!(!thumb("sound-rotary", &blank), "a rotor has no other stroke");
    let two_stroke = [("light.stroke", ""), ("engine.kind", "two-stroke")];
    assert!(!thumb("sound-triple", &two_stroke));
}

#[test]
fn the_cylinder_that_fires_at_the_wrong_moment_is_named() {
    let early = [("controller.angles", "0 180")];
    let (tone, verdict, _) = stands("sound-twin", &early, IGNITION);
    assert_eq!(tone, Tone::Bad);
    assert_eq!(verdict, "As entered, cylinder 2 fires at the wrong moment");
    let said = words("sound-twin", &early, "firing.entered-differs");
    assert!(said.contains("cylinder 2 90° early"), "{said}");
    let several = [("controller.spacing", "angles"), ("controller.angles", "0 180 420")];
    let (_, verdict, _) = stands("sound-triple", &several, IGNITION);
    assert_eq!(verdict, "As entered, cylinders 2 and 3 fire at the wrong moment");
}

#[test]
fn an_offset_that_the_light_has_shown_right_on_all_is_not_asked_for_again() {
    let offset = |texts: &[(&str, &str)]| {
        let report = report(&planned("sound-triple", texts));
        let said = &answer(&report, "controller.offset").verdict;
        (said.tone, said.message.code)
    };
    let speeds = [("trigger.seen_low", ""), ("trigger.seen_high", "")];
    assert_eq!(offset(&speeds), (Tone::Good, "trigger.offset-right"));
    let prove = to_prove("sound-triple", &speeds);
    assert!(!prove.iter().any(|it| it.starts_with("light at two speeds")), "{prove:?}");
    // one of three is not all
    let one = [speeds[0], speeds[1], ("light.seen.1", ""), ("light.seen.2", "")];
    assert_eq!(offset(&one), (Tone::Doubtful, "trigger.near"));
    // and what they show wrong is not right
    let late =
        [speeds[0], speeds[1], ("light.seen.0", "4"), ("light.seen.1", "4"), ("light.seen.2", "4")];
    assert_eq!(offset(&late), (Tone::Doubtful, "trigger.near"));
}

#[test]
fn one_channel_has_no_order_to_enter() {
    let is_asked = |name, subject| stands(name, &[], subject).2.contains(&"firing.do-enter");
    assert!(!is_asked("sound-single", IGNITION) && !is_asked("sound-single", INJECTION));
    assert!(is_asked("sound-twin", IGNITION) && is_asked("sound-twin", INJECTION));
}

/// What the usual report says to beware of.
fn beware(name: &str, texts: &[(&str, &str)]) -> Vec<String> {
    let cautions = usual(&report(&planned(name, texts))).cautions;
    cautions.into_iter().map(|it| it.text.clone()).collect()
}

#[test]
fn to_beware_of_is_what_the_plan_has_still_to_be_done() {
    let has = |texts: &[(&str, &str)], words: &str| {
        beware("sound-boxer", texts).iter().any(|it| it.contains(words))
    };
    let coils = unseen("coils_wired", 4);
    assert!(has(&borrowed(&coils), "Sparks kill") && !has(&[], "Sparks kill"));
    let injectors = unseen("injectors_wired", 4);
    assert!(
        has(&borrowed(&injectors), "fuel pressure let off") && !has(&[], "fuel pressure let off")
    );
    // what can hurt someone is named, and a switch that is there is not preached
    let boxer = report(&planned("sound-boxer", &[]));
    let of_pump = (0..boxer.fields.len()).map(|at| format!("relays.{at}.purpose")).position(|it| {
        boxer
            .fields
            .get(&it)
            .and_then(|it| it.value.as_ref())
            .is_some_and(|it| it.shown == "Fuel pump")
    });
    let of_pump = of_pump.expect("a pump");
    let (cut, unasked) = (format!("relays.{of_pump}.cut"), format!("relays.{of_pump}.unasked"));
    assert!(
        has(&[(&cut, "none")], "inertia switch") && !has(&[(&cut, "inertia")], "inertia switch")
    );
    assert!(has(&[(&unasked, "dangerous")], "can hurt someone: fuse out"));
    assert!(!has(&[(&unasked, "costly")], "can hurt someone: fuse out"));
    for name in ["sound-single", "sound-four", "sound-v8", "sound-v12", "sound-rotary"] {
        assert!(beware(name, &[]).len() <= 8, "{name}");
    }
    // what kills stands first
    assert!(beware("sound-boxer", &borrowed(&coils))[0].contains("Sparks kill"));
}

#[test]
fn the_pin_of_a_danger_is_measured_first() {
    let pins = |texts: &[(&str, &str)]| {
        let pins = usual(&report(&planned("outputs-leak-holds", texts))).pins;
        pins.into_iter().map(|it| it.about.join(", ")).collect::<Vec<_>>()
    };
    assert_eq!(pins(&[]), ["U1", "L1"]);
    // first, wherever it stands in the plan
    let swapped = [
        ("outputs.0.leakage", "1 uA"),
        ("relays.1.unasked", "dangerous"),
        ("outputs.1.pull_up", "47 ohm"),
        ("outputs.1.pull_up_rail", "battery"),
        ("relays.1.far_end", "ground"),
    ];
    assert_eq!(pins(&swapped).first().map(String::as_str), Some("L1"), "{:?}", pins(&swapped));
    // without a Danger in the order of the plan
    assert_eq!(pins(&[("outputs.0.leakage", "1 uA")]), ["U1", "L1"]);
}

#[test]
fn a_relay_of_the_coils_that_follows_no_speed_is_asked_for_none() {
    let name = "sound-boxer";
    let at = (0..8).find(|at| {
        planned(name, &[]).text(quietpin_core::fields::relays::PURPOSE.at(*at)) == "coils"
    });
    let switched = format!("relays.{}.switched_by", at.expect("a relay of the coils"));
    let on_at = format!("relays.{}.relay_on_at", at.expect("it"));
    let (tone, verdict, steps) = stands(name, &[(&switched, "otherwise")], "cranking");
    assert_eq!(tone, Tone::Good, "{verdict}");
    assert!(verdict.starts_with("No speed to set"), "{verdict}");
    assert!(
        !steps
            .iter()
            .any(|it| ["cranking.do-set", "cranking.do-keep", "cranking.do-listen"].contains(it))
    );
    let needs = |texts: &[(&str, &str)]| {
        let questions = usual(&report(&planned(name, texts))).questions;
        let relay = questions.into_iter().find(|it| it.id == "cranking").expect("the question");
        relay.needs.into_iter().map(|it| it.text.clone()).collect::<Vec<_>>()
    };
    assert_eq!(needs(&[(&switched, "otherwise"), (&on_at, "")]), [""; 0]);
    // one that is switched at a speed is asked for it
    assert_eq!(needs(&[(&switched, "speed"), (&on_at, "")]), ["The threshold of the coils' relay"]);
}
