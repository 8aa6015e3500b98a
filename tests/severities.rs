//! How grave each finding is, in one table that is read by a person, and held to the scale.
//!
//! Source: the scale is the project's own (`finding::SCALE`); that each finding stands on the right rung is judged by reading.

#![expect(clippy::expect_used, reason = "a plan that can't be read must end the test")]

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt::Write as _,
};

use quietpin_core::{
    finding::{COMMON, SCALE, Severity},
    plan,
    report::report,
};
use quietpin_tests::{blessed, plans};

/// The plans that show a finding, by its code and by how grave it is there.
fn shown() -> BTreeMap<&'static str, BTreeMap<Severity, BTreeSet<&'static str>>> {
    let mut shown: BTreeMap<_, BTreeMap<_, BTreeSet<_>>> = BTreeMap::new();
    for example in plans::ALL {
        let report = report(&plan::parse(example.text).expect(example.name));
        for finding in &report.findings {
            let of_code = shown.entry(finding.message.code).or_default();
            of_code.entry(finding.severity).or_default().insert(example.name);
        }
    }
    shown
}

/// Each finding with a plan for each rung that it stands on; those of bad input are all Faults, and told together.
fn table() -> String {
    let mut text = String::from(
        "# How grave each finding is\n\nMade by the tests from the plans in `plans/`; the rule of each rung stands in \
         `DEVELOPERS.md`.\n\n| finding | Danger | Fault | Doubt | Note |\n| --- | --- | --- | --- | --- |\n",
    );
    for (code, rungs) in shown() {
        let _ = write!(text, "| {code} |");
        for rung in SCALE {
            let plan = rungs.get(&rung.severity).and_then(|plans| plans.first());
            let _ = write!(text, " {} |", plan.copied().unwrap_or_default());
        }
        text.push('\n');
    }
    text
}

#[test]
fn the_table_is_as_it_was_read_and_accepted() {
    blessed("SEVERITIES.md", &table());
}

#[test]
fn each_example_of_a_rung_stands_on_it() {
    let shown = shown();
    for rung in SCALE {
        for code in rung.examples {
            let stands = shown.get(code).is_some_and(|rungs| rungs.contains_key(&rung.severity));
            assert!(stands, "{code} is no {:?} in any example plan", rung.severity);
        }
    }
    assert!(SCALE.is_sorted_by_key(|rung| rung.severity), "gravest first");
}

/// A contributor reads the same rule as the program's source states.
#[test]
fn the_contributors_guide_has_the_scale() {
    let one_line = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let guide = one_line(include_str!("../DEVELOPERS.md"));
    for rule in SCALE.iter().map(|rung| rung.rule).chain(COMMON.iter().copied()) {
        assert!(guide.contains(&one_line(rule)), "DEVELOPERS.md lacks: {rule}");
    }
    for code in SCALE.iter().flat_map(|rung| rung.examples) {
        assert!(guide.contains(code), "DEVELOPERS.md lacks the example {code}");
    }
}
