//! The example plans of the question, and that every finding is shown by one of them.

use std::{collections::BTreeSet, fs, path::PathBuf};

use quietpin_core::{
    explained,
    plan::{Plan, parse},
    report::{Report, Tone, report},
};

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("plans")
}

fn read(name: &str) -> Plan {
    let text = fs::read_to_string(folder().join(name)).expect(name);
    parse(&text).expect(name)
}

/// The plans of this question.
fn names() -> Vec<String> {
    let in_folder = |at: &str| {
        let entries = fs::read_dir(folder().join(at)).expect("the plans");
        let names = entries
            .map(|entry| entry.expect("an entry").file_name().into_string().expect("a name"));
        names
            .filter(|name| name.starts_with("injectors-"))
            .map(|name| format!("{at}{name}"))
            .collect::<Vec<_>>()
    };
    let mut names = [in_folder(""), in_folder("points/")].concat();
    names.sort();
    names
}

fn of_this_question(report: &Report) -> BTreeSet<&'static str> {
    let codes = report.findings.iter().map(|finding| finding.message.code);
    codes.filter(|code| code.starts_with("injectors.")).collect()
}

#[track_caller]
fn check(name: &str, tone: Tone, verdict: &str, findings: &[&'static str]) {
    let report = report(&read(name));
    let section = report.sections.iter().find(|section| section.id == "injectors").expect("there");
    let found = &section.answers[0].verdict;
    assert_eq!((found.message.code, found.tone), (verdict, tone), "{name}: {}", found.message.text);
    assert_eq!(of_this_question(&report), findings.iter().copied().collect(), "{name}");
}

#[test]
fn the_firing_tells_how_many_are_on_one_output() {
    check(
        "injectors-bank-of-three.json",
        Tone::Bad,
        "injectors.too-much",
        &["injectors.too-much-for-output"],
    );
    check(
        "injectors-sharing-differs.json",
        Tone::Bad,
        "injectors.too-much",
        &["injectors.too-much-for-output", "injectors.sharing-differs"],
    );
}

#[test]
fn the_example_plans_are_answered_as_their_notes_say() {
    check("injectors-fits.json", Tone::Good, "injectors.carries", &[]);
    check(
        "injectors-no-margin.json",
        Tone::Doubtful,
        "injectors.carries-barely",
        &["injectors.no-margin"],
    );
    check(
        "injectors-ballast.json",
        Tone::Bad,
        "injectors.too-much-always",
        &["injectors.too-much-for-output"],
    );
    check(
        "injectors-starved.json",
        Tone::Bad,
        "injectors.too-much-always",
        &["injectors.too-much-for-output"],
    );
    check(
        "injectors-driver.json",
        Tone::Doubtful,
        "injectors.peak-good",
        &["injectors.hold-too-small", "injectors.peak-not-while-cranking"],
    );
    check(
        "injectors-driver-too-small.json",
        Tone::Bad,
        "injectors.peak-small",
        &["injectors.peak-too-small"],
    );
    check(
        "injectors-high-on-driver.json",
        Tone::Good,
        "injectors.peak-unused",
        &["injectors.peak-not-used"],
    );
    check(
        "injectors-doubtful.json",
        Tone::Open,
        "injectors.limit-wanted",
        &["injectors.neither-high-nor-low", "injectors.uneven"],
    );
    check(
        "injectors-too-many.json",
        Tone::Open,
        "injectors.sharing-unknown",
        &["injectors.more-than-there-are"],
    );
    check(
        "injectors-weak-battery.json",
        Tone::Bad,
        "injectors.carries-unopened",
        &["injectors.may-not-open"],
    );
}

#[test]
fn the_plans_of_clamp_driver_feed_and_remedies_are_answered_as_their_notes_say() {
    check(
        "injectors-clamp-weak.json",
        Tone::Bad,
        "injectors.kick-too-much",
        &["injectors.clamp-overloaded", "injectors.output-too-hot"],
    );
    check(
        "injectors-clamp-too-low.json",
        Tone::Bad,
        "injectors.kick-too-much",
        &["injectors.clamp-too-low"],
    );
    check(
        "injectors-peak-by-time.json",
        Tone::Good,
        "injectors.peak-by-time",
        &["injectors.peak-ends-by-time"],
    );
    check(
        "injectors-peak-cut-short.json",
        Tone::Bad,
        "injectors.peak-cut-short",
        &["injectors.peak-time-too-short"],
    );
    check(
        "injectors-two-sets.json",
        Tone::Good,
        "injectors.carries",
        &["injectors.fuse-too-small", "injectors.relay-too-small"],
    );
    check(
        "injectors-shared-sides.json",
        Tone::Bad,
        "injectors.too-much",
        &["injectors.too-much-for-output"],
    );
}

#[test]
fn every_finding_is_shown_by_a_plan_and_is_absent_from_another() {
    let reports: Vec<_> =
        names().iter().map(|name| of_this_question(&report(&read(name)))).collect();
    let codes: Vec<_> = explained::explanations()
        .map(|explanation| explanation.code)
        .filter(|code| code.starts_with("injectors."))
        .collect();
    assert!(codes.len() > 8, "the findings are there: {codes:?}");
    for code in codes {
        assert!(reports.iter().any(|found| found.contains(code)), "no plan shows {code}");
        assert!(reports.iter().any(|found| !found.contains(code)), "every plan shows {code}");
    }
}

#[test]
fn a_plan_says_its_purpose() {
    for name in names() {
        assert!(read(&name).notes.len() > 30, "{name} has no purpose");
    }
}

/// A finding names a field that the page can lead to, and a number.
#[test]
fn findings_lead_to_a_field_and_name_a_number() {
    for name in names() {
        let report = report(&read(&name));
        for finding in report.findings.iter().filter(|it| it.message.code.starts_with("injectors."))
        {
            let (path, text) = (&finding.subject, &finding.message.text);
            assert!(report.fields.contains_key(path), "{name}: {path} is no field");
            assert!(text.contains(|c: char| c.is_ascii_digit()), "{name}: {text}");
        }
    }
}
