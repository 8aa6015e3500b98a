//! How many injectors an output carries is said once: by how they are fired, or by what the car showed.

use quietpin_core::{
    finding::Severity,
    plan::Plan,
    read::State,
    report::{Report, Tone, report},
};
use quietpin_tests::typed::{answers, planned};

const PATH: &str = "injectors.per_output";

/// A six of two banks, with injectors of which an output carries one, not three.
const SIX: &[(&str, &str)] = &[
    ("engine.cylinders", "6"),
    ("engine.order", "1-5-3-6-2-4"),
    ("engine.banks", "1 2 3 / 4 5 6"),
    ("injectors.resistance", "12 ohm"),
    ("injectors.output_limit", "2 A"),
];

fn six(typed: &[(&str, &str)]) -> Plan {
    planned(SIX, typed)
}

/// How many to an output are counted with.
fn shared(report: &Report) -> Option<f64> {
    report.fields[PATH].value.as_ref().and_then(|value| value.number)
}

fn tone(report: &Report) -> Tone {
    answers(report, "injectors")[0].verdict.tone
}

#[test]
fn a_bank_of_three_on_one_output_is_three_times_the_current() {
    let alone = report(&six(&[("channels.injection_mode", "each-once")]));
    assert_eq!((shared(&alone), tone(&alone)), (Some(1.0), Tone::Good), "one is carried");
    let bank = report(&six(&[("channels.injection_mode", "by-bank")]));
    assert_eq!((shared(&bank), tone(&bank)), (Some(3.0), Tone::Bad), "three are not");
    let typed = report(&six(&[(PATH, "3")]));
    let highest = |report: &Report| {
        let found = report.findings.iter().find(|it| it.severity == Severity::Danger);
        found
            .and_then(|it| it.message.values.get("highest").expect("a value").number)
            .expect("a number")
    };
    assert!((highest(&bank) - highest(&typed)).abs() < 1e-12, "as if three were typed");
    // 14.8 V over 12 ohm of copper at -20 °C, 5 % low, wire left out, is the most that one takes: three take less than
    // three times that, and more than at 20 °C over the highest wire and switch
    let cold = 14.8 / (12.0 * 0.95 * (1.0 - 40.0 * 0.00393));
    assert!((3.0 * 14.8 / 14.0..3.0 * cold).contains(&highest(&bank)), "{}", highest(&bank));
}

#[test]
fn companions_share_by_two_and_all_together_by_six() {
    for (mode, most) in [("companions", 2.0), ("together", 6.0)] {
        let report = report(&six(&[("channels.injection_mode", mode)]));
        assert_eq!(shared(&report), Some(most), "{mode}");
        assert_eq!(report.fields[PATH].state, State::Assumed, "{mode}");
    }
}

#[test]
fn what_the_car_showed_goes_before_how_they_should_be_fired() {
    let each_once = ("channels.injection_mode", "each-once");
    let report = report(&six(&[each_once, ("channels.injectors_wired.0", "1 2")]));
    assert_eq!(shared(&report), Some(2.0), "two answered to one channel");
    let basis = report.fields[PATH].basis.as_deref().unwrap_or_default();
    assert!(basis.contains("found at the car"), "{basis}");
}

#[test]
fn a_number_that_the_firing_contradicts_is_asked_back() {
    let by_bank = ("channels.injection_mode", "by-bank");
    let report = report(&six(&[by_bank, (PATH, "1")]));
    let found: Vec<_> = report.findings.iter().filter(|it| it.subject == PATH).collect();
    assert_eq!(found.len(), 1, "once: {found:?}");
    assert_eq!(found[0].message.code, "injectors.sharing-differs");
    assert_eq!(found[0].severity, Severity::Doubt);
    assert_eq!(
        report.fields[PATH].state,
        State::Given,
        "what was typed counts until it is changed"
    );
    assert_eq!(tone(&report), Tone::Good, "and with one alone they are carried");
}

#[test]
fn a_number_that_can_not_be_is_a_fault_and_the_greater_one_counts() {
    let two_channels = ("channels.injection_count", "2");
    let by_bank = ("channels.injection_mode", "by-bank");
    let report = report(&six(&[by_bank, two_channels, (PATH, "1")]));
    let of = |report: &Report| -> Vec<Severity> {
        let found = report.findings.iter().filter(|it| it.subject == PATH);
        found.map(|it| it.severity).collect()
    };
    assert_eq!(of(&report), [Severity::Fault], "two outputs can't have one injector each of six");
    assert_eq!(tone(&report), Tone::Bad, "they are judged as they must hang: three on an output");
    // six outputs in two banks, each with its own injector, are nothing to wonder at
    let six_channels = ("channels.injection_count", "6");
    let report = quietpin_core::report::report(&six(&[by_bank, six_channels, (PATH, "1")]));
    assert_eq!(of(&report), []);
    // and two on an output can't be fired one at a time
    let each_once = ("channels.injection_mode", "each-once");
    let report = quietpin_core::report::report(&six(&[each_once, (PATH, "2")]));
    assert_eq!(of(&report), [Severity::Fault]);
}

#[test]
fn one_channel_for_each_is_offered_where_several_share_a_peak_that_is_too_small() {
    let driver = [
        ("injectors.resistance", "1 ohm"),
        ("injectors.output_kind", "current-controlled"),
        ("injectors.output_limit", "4 A"),
        ("injectors.opening_current", "2.5 A"),
        (PATH, "2"),
        ("injectors.count", "6"),
    ];
    let offered = |there: &str| {
        let report = report(&six(&[&driver[..], &[("channels.injection_count", there)]].concat()));
        let found = report.findings.iter().find(|it| it.message.code == "injectors.peak-too-small");
        let remedies = &found.expect("4 A are less than twice 2.5 A").remedies;
        remedies.iter().any(|it| it.code == "injectors.fewer-on-channel")
    };
    assert!(offered("6"), "six channels are enough for one each");
    assert!(!offered("3"), "three are not");
}

#[test]
fn a_number_that_the_firing_bears_out_is_calm() {
    for (mode, number) in [("by-bank", "3"), ("each-once", "1"), ("companions", "2")] {
        let report = report(&six(&[("channels.injection_mode", mode), (PATH, number)]));
        assert!(
            report.findings.iter().all(|it| it.subject != PATH),
            "{mode}: {:?}",
            report.findings
        );
    }
}

#[test]
fn a_second_set_is_shared_as_it_is_fired_itself() {
    let report = report(&six(&[
        ("channels.injection_mode", "each-once"),
        ("channels.second_mode", "by-bank"),
        ("second_injectors.resistance", "12 ohm"),
    ]));
    let second = &report.fields["second_injectors.per_output"];
    assert_eq!(second.value.as_ref().and_then(|value| value.number), Some(3.0));
    assert_eq!(shared(&report), Some(1.0), "the first set keeps its own");
}
