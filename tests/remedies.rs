//! A remedy that is an edit of the plan is tried: applied, and the whole plan reported again.
//!
//! Source: the rule is the project's own: what is advised helps, and nothing as grave comes of it.

use std::collections::BTreeSet;

use quietpin_core::{
    finding::{Finding, Severity},
    plan::{self, Plan},
    report::{Report, report},
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
