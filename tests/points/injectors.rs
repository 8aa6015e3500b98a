//! Injectors a hair over their output's limit, behind a resistor, and on a wire as the standard allows it.

use quietpin_core::{
    finding::Severity::{Danger, Doubt, Fault, Note},
    quantity::{Area, Measure, celsius, metres},
    report::{Tone, report},
    tables::copper,
};
use quietpin_tests::{Checked, Worst, rows};

use super::{planned, told, words};

const HAIR: &str = "injectors-hair";
const HANGS: &str = "injectors-opening-hangs";

fn verdict(name: &str, texts: &[(&str, &str)]) -> (Tone, &'static str) {
    let report = report(&planned(name, texts));
    let section = report.sections.iter().find(|it| it.id == "injectors").expect("injectors");
    let verdict = &section.answers.first().expect("an answer").verdict;
    (verdict.tone, verdict.message.code)
}

/// By hand, cold and charging: winding 12 Ω · 0.95 · 0.8428 = 9.608 Ω, wire 15 ft of 18 AWG 4.572 / (58 · 0.8230) · 0.8428 =
/// 0.0807 Ω; 2 · 14.8 V / 9.689 Ω = 3.055 A. That is 0.60 % over 3.037 A, 3.0 % over 2.966 A, 3.9 % over 2.94 A; with nothing
/// off its nominal value (12 Ω, 25 mΩ of contacts, 0.1 Ω for each output) it is 2.84 A.
#[test]
fn a_hair_over_the_limit_is_a_doubt_and_asks_for_no_resistor() {
    let code = "injectors.too-much-for-output";
    assert_eq!(told(HAIR, &[], "injectors.barely-over"), [Doubt]);
    assert_eq!(told(HAIR, &[], code), []);
    assert_eq!(verdict(HAIR, &[]), (Tone::Doubtful, "injectors.hair-over"));
    let said = words(HAIR, &[], "injectors.barely-over");
    assert!(said.contains("3.06 A") && !said.contains(" in series "), "{said}");
    // over by what was typed, and not by the tolerance alone
    assert_eq!(told(HAIR, &[("injectors.output_limit", "2.7 A")], code), [Danger]);
    assert_eq!(told(HAIR, &[("injectors.output_limit", "2.85 A")], code), []);
    let exact = [("injectors.resistance", "11.4 ohm"), ("injectors.tolerance", "0 %")];
    let at = |limit| [exact[0], exact[1], ("injectors.output_limit", limit)];
    assert_eq!(told(HAIR, &at("2.97 A"), code), [], "2.9 % over");
    assert_eq!(told(HAIR, &at("3.06 A"), "injectors.no-margin"), [Doubt], "within it");
}

/// By hand, cranking hot (8 V, 100 °C): 2.4 Ω · 1.05 · 1.3144 = 3.312 Ω, resistor 4.7 Ω · 1.05 = 4.935 Ω, wire 1.16 · 4 / 58 ·
/// 1.3144 = 0.105 Ω, contacts 0.05 Ω, output 0.1 Ω: 8 V / 8.502 Ω = 941 mA. Usual is √(1.5 W / 2.4 Ω) = 791 mA, some want
/// 1.12 A: common practice, no source.
#[test]
fn behind_a_resistor_a_usual_opening_current_is_asked_for() {
    let code = "injectors.opening-hangs";
    assert_eq!(told(HANGS, &[], code), [Doubt]);
    assert!(words(HANGS, &[], code).contains("941 mA"), "{}", words(HANGS, &[], code));
    assert_eq!(verdict(HANGS, &[]).0, Tone::Doubtful);
    let given = |text| [("injectors.opening_current", text)];
    assert_eq!(told(HANGS, &given("0.9 A"), code), []);
    assert_eq!(verdict(HANGS, &given("0.9 A")).0, Tone::Good);
    assert_eq!(told(HANGS, &given("0.95 A"), "injectors.may-not-open"), [Doubt], "1 % below it");
    assert_eq!(told(HANGS, &given("0.98 A"), "injectors.may-not-open"), [Fault], "4 % below it");
    // 8 V / 6.24 Ω = 1.28 A is enough for all that are usual
    let smaller = [("injectors.resistor", "2.2 ohm"), ("injectors.output_limit", "8 A")];
    assert_eq!(told(HANGS, &smaller, code), []);
    // and without a resistor nothing is said: a sound car stays calm
    let plain = [("injectors.resistor", ""), ("injectors.resistance", "14 ohm")];
    assert_eq!(told(HANGS, &plain, code), []);
}

#[test]
fn what_is_taken_for_the_opening_current_is_listed_as_assumed() {
    let said = |texts: &[(&str, &str)]| {
        let report = report(&planned(HANGS, texts));
        let section = report.sections.iter().find(|it| it.id == "injectors").expect("injectors");
        section.answers[0].assumed.as_ref().map(|it| it.text.clone()).unwrap_or_default()
    };
    assert!(said(&[]).contains("Current that opens one: 791 mA"), "{}", said(&[]));
    let given = said(&[("injectors.opening_current", "0.9 A")]);
    assert!(!given.contains("Current that opens one"), "{given}");
}

/// Source: IEC 60228:2004, table 3, class 5 (`wire_iec60228.csv`); the reading by hand as above.
pub(crate) fn stranded() -> Checked {
    let mut worst = Worst::default();
    for row in rows("wire_iec60228.csv") {
        let area = Area::from_base(row.number("size_mm2") * 1e-6);
        let most = copper::wire_at_most(metres(1000.0), area, celsius(20.0)).base();
        let true_size = copper::wire(metres(1000.0), area, celsius(20.0)).base();
        let standard = row.number("max_ohm_per_km");
        assert!(true_size < standard, "{}: copper of true size has less", row.place());
        assert!(most > standard * 0.999, "{}: {most} of {standard} Ω", row.place());
        worst.check(&row.place(), Some(most), standard, standard * 0.06);
    }
    let against = "IEC 60228:2004, table 3, class 5";
    worst.checked("injectors", "The most that stranded wire may have", against, "Ω/km, never less")
}

#[test]
fn no_wire_is_taken_to_be_better_than_the_standard_allows() {
    stranded();
}

/// By hand: 12.6 V / 12 Ω is 1.05 A; 12 mH / 12 Ω × ln((12.6 + 0.7) / (0.25 × 12.6 + 0.7)) = 1 ms × 1.239 = 1.24 ms. A clamp of 45 V
/// ends the same current in 1 ms × ln(1 + 12.6 / (45 - 12.6)) = 0.33 ms.
#[test]
fn a_diode_across_an_injector_is_told_by_itself() {
    let (name, code) = ("injectors-diode-across", "injectors.diode-across");
    assert_eq!(told(name, &[], code), [Fault]);
    assert!(words(name, &[], code).contains("1.24 ms"), "{}", words(name, &[], code));
    assert_eq!(verdict(name, &[]).0, Tone::Bad);
    for without in ["", "none"] {
        assert_eq!(told(name, &[("injectors.across", without)], code), []);
    }
}

/// By hand: 12.6 V / 2.4 Ω = 5.25 A of the peak of 6 A at rest; at a peak of 4 A it is missed only while the starter turns, 8 V / (2.4 Ω ×
/// 1.31) = 2.5 A hot.
#[test]
fn a_peak_that_is_missed_only_while_the_starter_turns_is_worth_a_note() {
    let name = "injectors-peak-not-reached";
    let code = "injectors.peak-not-reached";
    assert_eq!(told(name, &[], code), [Doubt]);
    let lower = [("injectors.output_limit", "3.5 A")];
    assert_eq!(told(name, &lower, code), []);
    assert_eq!(told(name, &lower, "injectors.peak-not-while-cranking"), [Note]);
}

/// By hand: six channels reach six cylinders, one injector each; of twelve, six more hang on the same outputs or on others.
#[test]
fn more_injectors_than_the_channels_are_planned_for_are_asked_about_once() {
    let (plan, code) = ("injectors-several-at-each", "injectors.several-at-each");
    let per_output = |texts: &[(&str, &str)]| {
        let report = report(&planned(plan, texts));
        let field = &report.fields["injectors.per_output"];
        field.value.as_ref().and_then(|value| value.number)
    };
    let cures = |texts: &[(&str, &str)]| {
        let report = report(&planned(plan, texts));
        let mut findings = report.findings.iter();
        let found = findings.find(|it| it.message.code == code).expect("it is told");
        found.remedies.iter().map(|it| it.code).collect::<Vec<_>>()
    };
    let (shared, apart) = ("injectors.several-share", "injectors.several-apart");
    assert_eq!(told(plan, &[], code), [Doubt]);
    assert_eq!((cures(&[]), per_output(&[])), (vec![shared, apart], Some(2.0)));
    // an output for each of them speaks for a second set
    let there = [("channels.injection_count", "12")];
    assert_eq!((cures(&there), per_output(&there)), (vec![apart, shared], Some(1.0)));
    // said that they share, or that they are fired otherwise
    for texts in [
        ("injectors.per_output", "2"),
        ("injectors.count", "6"),
        ("injectors.count", ""),
        ("channels.injection_mode", "together"),
    ] {
        assert_eq!(told(plan, &[texts], code), [], "{texts:?}");
        assert_eq!(told(plan, &[texts], "injectors.sharing-differs"), [], "{texts:?}");
    }
    // one rotor has two as well
    let rotary = [
        ("engine.kind", "rotary"),
        ("engine.cylinders", "2"),
        ("engine.order", ""),
        ("injectors.count", "4"),
        ("channels.injection_count", "4"),
    ];
    assert_eq!(told(plan, &rotary, code), [Doubt]);
    // no multiple is told as such
    assert_eq!(told(plan, &[("injectors.count", "8")], code), []);
    assert_eq!(told(plan, &[("injectors.count", "8")], "injectors.count-differs"), [Fault]);
}
