use proptest::prelude::*;

use crate::{
    plan::Plan,
    report::{Answer, Picture, Report, Tone, report},
    schema::Part,
};

fn plan(fields: &[(&str, &str)]) -> Plan {
    let mut plan = Plan::default();
    plan.add(Part::Relays);
    for (path, text) in fields {
        assert!(plan.set(path, text), "{path} is no place in the plan");
    }
    plan
}

/// A straight-six that cranks at 200 rpm, and what else is given.
fn six(fields: &[(&str, &str)]) -> Plan {
    let basis = [
        ("engine.cylinders", "6"),
        ("engine.order", "1-5-3-6-2-4"),
        ("cranking.speed", "200 rpm"),
        ("relays.0.purpose", "coils"),
        ("relays.0.relay_on_at", "100 rpm"),
        ("cranking.dip", "30 to 40 %"),
    ];
    plan(&basis.iter().chain(fields).copied().collect::<Vec<_>>())
}

fn answer(report: &Report) -> &Answer {
    let section = report.sections.iter().find(|section| section.id == "cranking");
    &section.expect("every report has the question").answers[0]
}

#[track_caller]
fn check(plan: &Plan, tone: Tone, code: &str) {
    let report = report(plan);
    let answer = answer(&report);
    assert_eq!(
        (answer.verdict.tone, answer.verdict.message.code),
        (tone, code),
        "{:?}",
        answer.why
    );
    assert!(answer.why.is_some(), "a verdict has a reason");
    for figure in &answer.figures {
        assert!(!figure.working.is_empty(), "{} has no working", figure.label.code);
    }
}

#[track_caller]
fn check_finding(plan: &Plan, subject: &str, code: &str) {
    let report = report(plan);
    let found = report.findings.iter().any(|it| it.subject == subject && it.message.code == code);
    let all: Vec<_> = report.findings.iter().map(|it| (&it.subject, it.message.code)).collect();
    assert!(found, "{code} at {subject} is not among {all:?}");
    let words = crate::explained::explanation(code).expect("every finding is explained");
    assert!(!words.act.is_empty(), "{code} says what to do");
}

#[test]
fn a_blank_plan_asks_for_three_things() {
    let report = report(&Plan::default());
    let answer = answer(&report);
    assert_eq!(answer.verdict.tone, Tone::Open, "nothing is known");
    let why = &answer.why.as_ref().expect("it says what it needs").text;
    for wanted in ["cylinders", "cranking speed", "threshold"] {
        assert!(why.contains(wanted), "{why:?} does not ask for {wanted}");
    }
}

#[test]
fn without_a_threshold_the_band_is_the_answer() {
    check(
        &plan(&[("engine.cylinders", "6"), ("cranking.speed", "200")]),
        Tone::Open,
        "cranking.any-works",
    );
}

#[test]
fn a_usual_start_suits() {
    check(&six(&[]), Tone::Good, "cranking.suits");
}

#[test]
fn verdicts_follow_from_the_simulation() {
    let bad = Tone::Bad;
    check(&six(&[("relays.0.relay_on_at", "300")]), bad, "cranking.never");
    check(&six(&[("cranking.speed", "60 to 220")]), Tone::Bad, "cranking.may-never");
    check(&six(&[("cranking.speed", "120 to 220")]), Tone::Doubtful, "cranking.crest");
    let ripple = [("relays.0.relay_on_at", "180"), ("relays.0.relay_off_below", "175")];
    check(&six(&ripple), bad, "cranking.chatter");
    check(&six(&[("relays.0.relay_on_at", "0")]), bad, "cranking.always");
    check(&six(&[("relays.0.relay_on_at", "25")]), Tone::Doubtful, "cranking.rocking");
    check(&six(&[("relays.0.relay_off_below", "101")]), bad, "cranking.release");
    check(&six(&[("wheels.missing", "0")]), bad, "cranking.suits-no-spark");
    check(&six(&[("cranking.stall_timeout", "12 ms")]), bad, "cranking.timeout");
    check(&six(&[("cranking.run_up", "2 s")]), bad, "cranking.chatter");
    let slow = [("cranking.run_up", "800 ms"), ("cranking.dip", "15%")];
    check(&six(&slow), Tone::Good, "cranking.suits-late");
    let late = [("cranking.run_up", "5 s"), ("wheels.gap_angle", "10"), ("cranking.dip", "5%")];
    check(&six(&late), Tone::Doubtful, "cranking.late");
}

#[test]
fn what_is_wrong_is_said_at_its_field() {
    let at = |path: &str, text: &str, code: &str| {
        check_finding(&six(&[(path, text)]), path, code);
    };
    at("relays.0.relay_on_at", "-100", "field.too-small");
    at("relays.0.relay_on_at", "NaN", "field.no-number");
    at("relays.0.relay_on_at", "1e300", "field.not-finite");
    at("relays.0.relay_on_at", "100 V", "field.wrong-unit");
    at("relays.0.relay_on_at", "90 to 110", "cranking.setting-spread");
    at("relays.0.relay_on_at", "0 rpm", "cranking.always-on");
    at("relays.0.relay_on_at", "20 rpm", "cranking.on-at-standstill");
    at("relays.0.relay_on_at", "300 rpm", "cranking.never-closes");
    at("relays.0.relay_on_at", "150 rpm", "cranking.waits-for-crest");
    at("cranking.speed", "0", "field.too-small");
    at("cranking.speed", "fast", "field.no-number");
    at("relays.0.relay_off_below", "101 rpm", "cranking.release-above");
    at("cranking.dip", "120 %", "field.too-large");
    at("wheels.crank_teeth", "0", "field.too-small");
    at("wheels.crank_teeth", "36.5", "field.not-whole");
    at("wheels.missing", "99", "field.too-large");
}

#[test]
fn what_is_wrong_between_fields_is_said_at_the_one_to_change() {
    let few = [("wheels.crank_teeth", "4"), ("wheels.missing", "4")];
    check_finding(&six(&few), "wheels.missing", "cranking.all-missing");
    check_finding(&six(&[("wheels.missing", "0")]), "cranking.sync", "cranking.no-mark");
    let short = [("cranking.stall_timeout", "12 ms")];
    check_finding(&six(&short), "cranking.stall_timeout", "cranking.timeout-in-gap");
    let ripple = [("relays.0.relay_on_at", "180"), ("relays.0.relay_off_below", "175")];
    check_finding(&six(&ripple), "relays.0.relay_off_below", "cranking.chatters");
    let naive = [("relays.0.relay_off_below", "60"), ("cranking.confirmation", "1")];
    check_finding(&six(&naive), "wheels.missing", "cranking.gap-as-tooth");
    check_finding(
        &six(&[("cranking.run_up", "2 s")]),
        "relays.0.relay_on_at",
        "cranking.sparks-lost",
    );
    let path = "relays.0.pull_in";
    check_finding(&six(&[(path, "7.2 V")]), path, "cranking.relay-weak");
    check_finding(&six(&[(path, "11 V")]), path, "cranking.relay-too-weak");
    let slow = [("relays.0.relay_off_below", "1"), ("cranking.stall_timeout", "5 s")];
    check_finding(&six(&slow), "cranking.stall_timeout", "cranking.on-after-stop");
    let no_order = plan(&[("engine.cylinders", "6"), ("cranking.speed", "200")]);
    check_finding(&no_order, "engine.order", "cranking.even-guess");
}

/// The longest time without a tooth is told with the finding; what a controller waits is held against it, from both sides. Half as much
/// again is offered, in hundredths of a second.
#[test]
fn a_time_out_is_held_against_the_longest_time_without_a_tooth() {
    let found = |timeout_s: f64| {
        let typed = format!("{timeout_s} s");
        let report = report(&six(&[("cranking.stall_timeout", &typed)]));
        let verdict = answer(&report).verdict.message.code;
        let mut findings = report.findings.into_iter();
        (verdict, findings.find(|it| it.message.code == "cranking.timeout-in-gap"))
    };
    let (_, told) = found(0.012);
    let told = told.expect("12 ms is shorter");
    let interval = told.message.values.get("interval").expect("a value").number.expect("a time");
    // by hand: three pitches of 6 degrees at no less than 60 % of 200 rpm, 720 degrees a second, take 25 ms at the most
    assert!((0.015..=0.025).contains(&interval), "{interval} s");
    let (verdict, _) = found(interval * 0.95);
    assert_eq!(verdict, "cranking.timeout");
    let (verdict, none) = found(interval * 1.05);
    assert!(none.is_none() && verdict != "cranking.timeout", "{verdict}");
    let cure = told.remedies[0].values.get("timeout").expect("a value").number.expect("a time");
    assert!((cure - (interval * 150.0).ceil() / 100.0).abs() < 1e-9, "{cure} s");
}

/// Common practice, no source: two seconds of power at standstill are usual. By hand: from 800 rpm in a second the last tooth passes
/// within √(2 × 18 / 4800) s = 87 ms of the stop.
#[test]
fn power_of_two_seconds_at_standstill_is_not_worth_a_word() {
    let is_told = |timeout: &str| {
        let slow = [("relays.0.relay_off_below", "1"), ("cranking.stall_timeout", timeout)];
        let report = report(&six(&slow));
        report.findings.iter().any(|it| it.message.code == "cranking.on-after-stop")
    };
    assert!(!is_told("1.95 s") && is_told("2.15 s"), "from two seconds on");
}

/// A remedy is simulated before it is offered; applied, it leaves nothing to cure.
#[test]
fn what_is_advised_works() {
    for fields in [
        [("relays.0.relay_on_at", "300"), ("relays.0.relay_off_below", "")],
        [("relays.0.relay_on_at", "0"), ("relays.0.relay_off_below", "")],
        [("relays.0.relay_on_at", "20"), ("relays.0.relay_off_below", "")],
        [("relays.0.relay_on_at", "180"), ("relays.0.relay_off_below", "175")],
        [("relays.0.relay_on_at", "150"), ("relays.0.relay_off_below", "")],
    ] {
        let report = report(&six(&fields));
        let advice = answer(&report).to_do.iter().find(|it| it.code == "cranking.do-set");
        let advice = advice.expect("there is a threshold that works");
        let number =
            |name| advice.values.get(name).expect("a value").number.expect("a speed").to_string();
        let (threshold, release) = (number("threshold"), number("release"));
        let cured = six(&[
            ("relays.0.relay_on_at", threshold.as_str()),
            ("relays.0.relay_off_below", release.as_str()),
        ]);
        check(&cured, Tone::Good, "cranking.suits");
    }
}

#[test]
fn an_unreadable_field_leaves_the_rest_answered() {
    check(&six(&[("cranking.dip", "deep")]), Tone::Doubtful, "cranking.suits");
    check(&six(&[("relays.0.relay_on_at", "what")]), Tone::Open, "cranking.any-works");
}

#[test]
fn the_picture_is_small_and_marks_what_matters() {
    let report = report(&six(&[("wheels.crank_teeth", "360"), ("wheels.missing", "2")]));
    let Some(Picture::Timeline(picture)) = answer(&report).pictures.first() else {
        panic!("there is a picture");
    };
    for curve in [&picture.speed, &picture.measured] {
        assert!((50..=400).contains(&curve.len()), "{} points", curve.len());
        assert!(curve.is_sorted_by(|one, next| one.0 <= next.0), "time rises");
    }
    let marks: Vec<_> = picture.marks.iter().map(|mark| mark.1.code).collect();
    assert!(marks.contains(&"cranking.mark-power"), "{marks:?}");
    assert!(marks.contains(&"cranking.mark-spark"), "{marks:?}");
}

fn anything() -> impl Strategy<Value = String> {
    prop_oneof![
        2 => Just(String::new()),
        2 => "[0-9]{1,4}( rpm| ms| %| V| deg)?",
        1 => "[0-9]{1,3} to [0-9]{1,3}",
        1 => prop_oneof![Just("gap"), Just("cam"), Just("1e300"), Just("-5"), Just("NaN"), Just("0")]
            .prop_map(str::to_owned),
        1 => any::<String>(),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn whatever_is_typed_gives_an_answer_in_whole_sentences(
        texts in prop::collection::vec(anything(), Part::Cranking.fields().len()),
        cylinders in prop_oneof![3 => Just("6".to_owned()), 1 => anything()],
        kind in prop_oneof![Just(""), Just("two-stroke")],
    ) {
        let mut plan = Plan::default();
        plan.set("engine.cylinders", &cylinders);
        plan.set("engine.kind", kind);
        for (place, text) in Part::Cranking.places().zip(&texts) {
            plan.put(place, text);
        }
        let report = report(&plan);
        for place in Part::Cranking.places() {
            let path = place.path();
            prop_assert!(report.fields.contains_key(&path), "{path} has no state");
        }
        let typed = texts.iter().chain([&cylinders]).any(|text| text.contains(['{', 'n']));
        let json = serde_json::to_string(answer(&report)).expect("a report can be written");
        // what can't be finite is written as null
        for wrong in ["null", "not a number", "without limit"] {
            prop_assert!(typed || !json.contains(wrong), "{wrong} in {json}");
        }
        let texts = answer(&report).why.iter().chain(&answer(&report).to_do);
        for message in texts.chain([&answer(&report).verdict.message]) {
            prop_assert!(typed || !message.text.contains('{'), "{:?}", message.text);
        }
    }
}
