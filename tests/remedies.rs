//! A remedy that is an edit of the plan is tried: applied, and the whole plan reported again.
//!
//! Source: the rule is the project's own: what is advised helps, and nothing as grave comes of it.

use std::collections::BTreeSet;

use quietpin_core::{
    finding::{Finding, Severity},
    plan::{self, Plan},
    report::{Report, report},
    whole_car,
};
use quietpin_tests::plans;

type Named = (&'static str, String);

fn name(finding: &Finding) -> Named {
    (finding.message.code, finding.subject.clone())
}

/// What is as grave as this, or graver.
fn grave(report: &Report, severity: Severity) -> BTreeSet<Named> {
    report.findings.iter().filter(|it| it.severity <= severity).map(|it| name(it)).collect()
}

/// What is wrong with an offered remedy: its own finding is as grave as before, or another as grave has come.
fn complaints(plan: &Plan) -> (usize, Vec<String>) {
    let before = report(plan);
    let (mut tried, mut complaints) = (0, Vec::new());
    for finding in &before.findings {
        for remedy in finding.remedies.iter().filter(|it| !it.edits.is_empty()) {
            tried += 1;
            let Some(edited) = plan.edited(&remedy.edits) else {
                complaints.push(format!("{:?} has no place in the plan", remedy.edits));
                continue;
            };
            let after = report(&edited);
            let (was, is) = (grave(&before, finding.severity), grave(&after, finding.severity));
            let own = is.contains(&name(finding)).then(|| "its own stays".to_owned());
            // one that was as grave at the same place, and is gone, was the same in other words
            let gone: Vec<_> = was.difference(&is).filter(|it| **it != name(finding)).collect();
            let is_new = |it: &&Named| !gone.iter().any(|(_, subject)| *subject == it.1);
            let come: Vec<_> = is.difference(&was).filter(is_new).collect();
            let come = (!come.is_empty()).then(|| format!("{come:?} comes"));
            let what = own.into_iter().chain(come).collect::<Vec<_>>().join(", ");
            if !what.is_empty() {
                complaints.push(format!("{:?}: “{}”: {what}", name(finding), remedy.text));
            }
        }
    }
    (tried, complaints)
}

#[test]
fn what_is_offered_helps_and_nothing_as_grave_comes_of_it() {
    let (mut all, mut wrong) = (0, Vec::new());
    for example in plans::ALL {
        let plan = plan::parse(example.text).expect(example.name);
        let (tried, complaints) = complaints(&plan);
        all += tried;
        wrong.extend(complaints.into_iter().map(|it| format!("{}: {it}", example.name)));
    }
    assert!(all > 40, "only {all} remedies are edits");
    assert!(wrong.is_empty(), "{} of {all}:\n{}", wrong.len(), wrong.join("\n"));
}

/// The whole car with the coils' fuse and wire otherwise.
fn coils_fed(fuse: &str, wire: &str) -> Plan {
    let mut plan = whole_car();
    for (path, text) in [("relays.0.fuse", fuse), ("relays.0.lead_size", wire)] {
        assert!(plan.set(path, text), "{path}");
    }
    plan
}

/// By hand: 5 A is too little for the coils, which want 7.5 A; that passes 8.25 A for long (110 %, ISO 8820-3, from memory),
/// and 0.2 mm² bears 6.4 A by the power of the cable distributor's table: the first size that bears 8.25 A there is 0.5 mm².
#[test]
fn where_no_edit_helps_alone_two_that_help_together_are_offered_as_one() {
    let cures = |wire: &str| {
        let report = report(&coils_fed("5 A", wire));
        let found = report.findings.iter().find(|it| it.message.code == "coils.fuse-too-small");
        let remedies = found.expect("the fuse is too small").remedies.clone();
        let edits = |it: &quietpin_core::message::Message| {
            let edits = it.edits.iter().map(|edit| format!("{} = {}", edit.path, edit.text));
            (it.code, edits.collect::<Vec<_>>())
        };
        remedies.iter().map(edits).collect::<Vec<_>>()
    };
    let larger = || "relays.0.fuse = 7.5 A".to_owned();
    let both = vec![larger(), "relays.0.lead_size = 0.5 mm²".to_owned()];
    assert_eq!(cures("0.2 mm2"), [("field.both", both)]);
    // where one is enough it stands alone
    assert_eq!(cures("4 mm2"), [("coils.fuse-larger", vec![larger()])]);
    // and the rule holds for the pair as for any other
    let (tried, wrong) = complaints(&coils_fed("5 A", "0.2 mm2"));
    assert!(tried > 0 && wrong.is_empty(), "{wrong:?}");
}
