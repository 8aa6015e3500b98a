//! What people may type, and what is said to it.

use proptest::prelude::*;
use quietpin_core::{
    plan::Plan,
    read::State,
    report::{Answer, Report, Tone, report},
    schema::Part,
};
use quietpin_tests::typed::planned;

/// A plan of a usual engine with fields of it as typed.
pub(crate) fn plan(typed: &[(&str, &str)]) -> Plan {
    let usual = [
        ("engine.highest_speed", "7000 rpm"),
        ("injectors.count", "6"),
        ("channels.injection_mode", "each-once"),
        ("fuel.flow", "550 cc/min"),
        ("fuel.power", "200 kW"),
    ];
    planned(&usual, typed)
}

fn answer(report: &Report) -> &Answer {
    let mut answers = report.sections.iter().flat_map(|section| &section.answers);
    answers.find(|answer| answer.subject == "fuel").expect("the answer is there")
}

#[track_caller]
fn check_answer(typed: &[(&str, &str)], tone: Tone, verdict: &str) {
    let report = report(&plan(typed));
    let found = &answer(&report).verdict;
    assert_eq!(
        (found.tone, found.message.code),
        (tone, verdict),
        "{typed:?}: {}",
        found.message.text
    );
}

/// The finding at the field, and what the answer is then.
#[track_caller]
fn check(path: &str, text: &str, finding: &str, verdict: &str) {
    let report = report(&plan(&[(path, text)]));
    let at_field: Vec<_> =
        report.findings.iter().filter(|it| it.subject == path).map(|it| it.message.code).collect();
    assert_eq!(at_field, [finding], "{path}: {text:?}");
    assert_eq!(report.fields[path].state, State::Unreadable, "{path}: {text:?}");
    assert_eq!(answer(&report).verdict.message.code, verdict, "{path}: {text:?}");
}

/// Common practice, no source: a flow is scaled to one and a half times its pressure, 4.5 bar for 3, or down to 2 bar; a dead time weighs
/// from 15 % of a cycle on. By hand: a cycle takes 120 s / 6000 = 20 ms, and 15 % of it are 3 ms.
#[test]
fn what_deserves_a_look_begins_at_its_line() {
    let told = |typed: &[(&str, &str)], code: &str| {
        report(&plan(typed)).findings.iter().any(|it| it.message.code == code)
    };
    for (rail, is_beyond) in
        [("1.92 bar", true), ("2.08 bar", false), ("4.35 bar", false), ("4.65 bar", true)]
    {
        let pressures = [("fuel.stated_pressure", "3 bar"), ("fuel.rail_pressure", rail)];
        assert_eq!(told(&pressures, "fuel.pressure-beyond"), is_beyond, "{rail}");
    }
    for (dead, is_heavy) in [("2.85 ms", false), ("3.15 ms", true)] {
        let slow = [("engine.highest_speed", "6000 rpm"), ("fuel.dead_time", dead)];
        assert_eq!(told(&slow, "fuel.dead-time-heavy"), is_heavy, "{dead}");
    }
}

/// What is offered to settle for can be typed: a power from 1 kW on.
#[test]
fn less_power_is_offered_where_its_field_takes_it() {
    let offered = |flow: &str| {
        let typed = [
            ("injectors.count", "1"),
            ("fuel.duty_limit", "50 %"),
            ("fuel.consumption", "1 lb/hph"),
            ("fuel.flow", flow),
        ];
        let report = report(&plan(&typed));
        let found = report.findings.iter().find(|it| it.message.code == "fuel.runs-lean");
        let cures = &found.expect("far too small").remedies;
        let less = cures.iter().find(|it| it.code == "fuel.cure-less")?;
        let edited = plan(&typed).edited(&less.edits).expect("its place");
        Some(super::typed::<quietpin_core::quantity::Power>(edited.get("fuel.power")?))
    };
    let feeds = |flow: &str| offered(flow).map(quietpin_core::quantity::Measure::base);
    // what a flow feeds goes with it
    let each = feeds("100 cc/min").expect("some kilowatts") / 100.0;
    let flow = |watts: f64| format!("{} cc/min", watts / each);
    assert_eq!(feeds(&flow(940.0)), None, "the field asks for a kilowatt");
    assert!(feeds(&flow(1060.0)).is_some_and(|it| it >= 1000.0), "{:?}", feeds(&flow(1060.0)));
}

#[test]
fn a_flow_that_is_none_is_named_at_its_field_and_what_is_wanted_is_said() {
    const WANTED: &str = "fuel.wanted";
    check("fuel.flow", "0", "field.too-small", WANTED);
    check("fuel.flow", "-550 cc/min", "field.too-small", WANTED);
    check("fuel.flow", "much", "field.no-number", WANTED);
    check("fuel.flow", "1e300", "field.not-finite", WANTED);
    check("fuel.flow", "550 l/min", "field.too-large", WANTED);
    check("fuel.flow", "550 psi", "field.wrong-unit", WANTED);
    check("fuel.flow", "550 gal", "field.unknown-unit", WANTED);
    check("fuel.flow", "52 lb/h ±200%", "field.too-small", WANTED);
}

#[test]
fn what_does_not_depend_on_a_bad_field_is_still_answered() {
    const ENOUGH: &str = "fuel.enough";
    check("fuel.kind", "diesel", "field.unknown-choice", ENOUGH);
    check("fuel.stated_pressure", "3 kg", "field.unknown-unit", ENOUGH);
    check("fuel.stated_pressure", "0 bar", "field.too-small", ENOUGH);
    check("fuel.rail_pressure", "300 bar", "field.too-large", ENOUGH);
    check("fuel.rail_pressure", "0.3 mPa", "field.wrong-capitals", ENOUGH);
    check("fuel.boost", "-1 bar", "field.too-small", ENOUGH);
    check("fuel.regulator", "magic", "field.unknown-choice", ENOUGH);
    check("fuel.dead_time", "1 s", "field.too-large", ENOUGH);
    check("fuel.duty_limit", "110 %", "field.too-large", ENOUGH);
    check("fuel.duty_limit", "0", "field.too-small", ENOUGH);
    check("fuel.consumption", "0.5", "field.too-small", ENOUGH);
    check("fuel.consumption", "0.5 lb", "field.wrong-unit", ENOUGH);
    check("fuel.density", "745", "field.too-large", ENOUGH);
    check("fuel.test_density", "heptane", "field.no-number", ENOUGH);
    check("fuel.second_flow", "0 cc/min", "field.too-small", ENOUGH);
    check("fuel.second_flow", "550 psi", "field.wrong-unit", ENOUGH);
    check("fuel.power", "0 kW", "field.too-small", "fuel.feeds");
    check("fuel.power", "300 MW", "field.wrong-capitals", "fuel.feeds");
    check("fuel.power", "300 Nm", "field.unknown-unit", "fuel.feeds");
    check("engine.highest_speed", "0 rpm", "field.too-small", "fuel.enough-but-speed");
    check("engine.highest_speed", "fast", "field.no-number", "fuel.enough-but-speed");
    check("injectors.count", "six", "field.not-whole", "fuel.count-unknown");
}

#[test]
fn a_part_is_answered_where_a_part_is_known() {
    check_answer(&[], Tone::Good, "fuel.enough");
    check_answer(&[("fuel.power", "")], Tone::Open, "fuel.feeds");
    check_answer(&[("fuel.flow", "")], Tone::Open, "fuel.wanted");
    check_answer(
        &[("fuel.flow", ""), ("fuel.power", ""), ("fuel.kind", "e85")],
        Tone::Open,
        "fuel.wants-flow",
    );
    check_answer(&[("injectors.count", "")], Tone::Open, "fuel.count-unknown");
    check_answer(&[("engine.highest_speed", "")], Tone::Open, "fuel.enough-but-speed");
    check_answer(&[("fuel.power", "400 kW")], Tone::Bad, "fuel.too-small");
    check_answer(&[("fuel.power", "330 kW")], Tone::Doubtful, "fuel.barely");
    // too small is too small, whatever the speed
    check_answer(
        &[("fuel.power", "500 kW"), ("engine.highest_speed", "")],
        Tone::Bad,
        "fuel.too-small",
    );
}

/// By hand: two sets alike are twice the injectors; and of 300 cc/min and 600 cc/min, six each, as of six of 900 cc/min, but for the
/// dead time, which both lose alike.
#[test]
fn a_second_set_adds_what_it_passes() {
    let feeds = |typed: &[(&str, &str)]| -> Vec<Option<f64>> {
        let report = report(&plan(typed));
        let figures = answer(&report).figures.iter();
        figures
            .filter(|it| it.label.code == "fuel.feeds-at-speed")
            .map(|it| it.value.number)
            .collect()
    };
    let alike = feeds(&[("fuel.second_flow", "550 cc/min"), ("second_injectors.count", "6")]);
    assert_eq!(alike, feeds(&[("injectors.count", "12")]));
    let two = feeds(&[
        ("fuel.flow", "300 cc/min"),
        ("fuel.second_flow", "600 cc/min"),
        ("second_injectors.count", "6"),
    ]);
    let [Some(two)] = two.as_slice() else { panic!("one figure with a number: {two:?}") };
    let one = feeds(&[("fuel.flow", "900 cc/min")])[0].expect("a number");
    assert!((two - one).abs() < 1e-9 * one, "{two} and {one}");
}

#[test]
fn a_second_set_without_a_number_is_left_out_and_that_is_said() {
    let to_do = |typed: &[(&str, &str)]| -> Vec<&'static str> {
        answer(&report(&plan(typed))).to_do.iter().map(|it| it.code).collect()
    };
    let second = ("fuel.second_flow", "550 cc/min");
    assert!(to_do(&[second]).contains(&"fuel.do-count-second"));
    let counted = to_do(&[second, ("second_injectors.count", "6")]);
    assert!(!counted.contains(&"fuel.do-count-second"), "{counted:?}");
    let short = [second, ("second_injectors.count", "6"), ("fuel.power", "900 kW")];
    let words = answer(&report(&plan(&short))).to_do.iter().map(|it| it.code).collect::<Vec<_>>();
    assert!(words.contains(&"fuel.cure-larger-sets"), "{words:?}");
}

#[test]
fn a_blank_plan_is_not_asked_about_fuel() {
    let report = report(&Plan::default());
    let answer = answer(&report);
    assert_eq!((answer.verdict.tone, answer.verdict.message.code), (Tone::Open, "fuel.blank"));
    assert!(answer.to_do.is_empty() && answer.figures.is_empty(), "it is quiet");
    assert!(!report.fields.contains_key("fuel.boost"), "nothing is taken");
}

#[test]
fn every_field_of_it_stands_in_the_report_once_one_is_typed() {
    let report = report(&plan(&[]));
    for place in Part::Fuel.places() {
        let path = place.path();
        assert!(report.fields.contains_key(&path), "{path} has no state");
    }
}

#[test]
fn a_flow_by_mass_is_read_as_a_mass() {
    // twice as heavy a test fluid: a volume of it weighs more, a mass of it doesn't
    let at = |flow, density| {
        let report = report(&plan(&[
            ("fuel.flow", flow),
            ("fuel.test_density", density),
            ("fuel.density", "0.75 kg/l"),
        ]));
        let mass = answer(&report).tables[0].rows[0].cells[4].number.expect("a mass");
        (mass, report.fields["fuel.flow"].value.clone().expect("given").into_shown())
    };
    let (light, shown) = at("52 lb/h", "0.7 kg/l");
    let (heavy, _) = at("52 lb/h", "0.8 kg/l");
    assert!((light - heavy).abs() < 1e-12, "{light} and {heavy}");
    assert_eq!(shown, "52 lb/h, 6.55 g/s");
    assert!(at("550 cc/min", "0.8 kg/l").0 > at("550 cc/min", "0.7 kg/l").0 * 1.1);
}

/// What a person might type, and what a cat on the keyboard would.
fn typed() -> impl Strategy<Value = String> {
    prop_oneof![
        3 => (-1.0..900.0_f64).prop_map(|number| format!("{number:.2}")),
        2 => (0.01..900.0_f64, 0.0..30.0_f64).prop_map(|(n, t)| format!("{n:.2} ±{t:.0}%")),
        1 => (0.1..5.0_f64, 0.1..5.0_f64).prop_map(|(a, b)| format!("{a:.2} to {b:.2}")),
        2 => (1.0..900.0_f64, prop_oneof!["lb/h", "g/s", "kW", "PS", "psi", "bar", "ms", "%", "g/kWh", "kg/l"])
            .prop_map(|(number, unit)| format!("{number:.1} {unit}")),
        1 => prop_oneof!["petrol", "methanol", "fixed", "referenced"],
        2 => Just(String::new()),
        1 => "[0-9a-zA-Zµ.,± -]{0,12}",
        1 => "[^{}]{0,8}",
    ]
}

proptest! {
    #[test]
    fn nothing_that_is_typed_breaks_the_answer(
        texts in proptest::collection::vec(typed(), Part::Fuel.fields().len()),
        speed in typed(),
        count in 0..20_u32,
    ) {
        let mut plan = plan(&[("engine.highest_speed", &speed), ("injectors.count", &count.to_string())]);
        for (place, text) in Part::Fuel.places().zip(&texts) {
            plan.put(place, text);
        }
        let report = report(&plan);
        let answer = answer(&report);
        let said = [&answer.verdict.message].into_iter().chain(&answer.why).chain(&answer.to_do);
        for message in said.chain(&answer.cautions) {
            prop_assert!(!message.text.contains('{'), "a gap is left: {}", message.text);
            prop_assert!(!message.text.contains("not a number"), "no number: {}", message.text);
        }
        for figure in &answer.figures {
            prop_assert!(!figure.working.is_empty(), "{:?} has no working", figure.label);
            prop_assert!(figure.value.number.is_none_or(f64::is_finite), "{:?}", figure);
            prop_assert!(!figure.value.shown.contains("not a number"), "{:?}", figure);
        }
    }
}
