//! A remedy that is an edit of the plan is tried before it is offered: with it, the whole report must be better.
//!
//! **The rule.** With the edit made, its own finding is gone or milder, and no finding as grave has come that was not there.
//! What does not hold is not offered, neither by the finding nor by the answer. They are tried best first, up to the first
//! that holds, and those of the gravest findings before others; a report makes few trials, so that an edit waits for little.
//! What was not tried stays as advice, without its edits.

use std::rc::Rc;

use super::{Report, Section, untried};
use crate::{finding::Finding, message::Message, plan::Plan, questions::Memory};

/// More trials than this an edit does not wait for.
const MOST: usize = 6;

/// The same report with those remedies that hold; `memory` is that of the report.
pub fn tried(mut report: Report, plan: &Plan, memory: &Memory) -> Report {
    let (mut left, mut dropped) = (MOST, Vec::new());
    let mut findings = report.findings.clone();
    for finding in &mut findings {
        if finding.remedies.iter().all(|it| it.edits.is_empty()) {
            continue;
        }
        let remedies = std::mem::take(&mut Rc::make_mut(finding).remedies);
        let (mut kept, mut one_holds) = (Vec::with_capacity(remedies.len()), false);
        for remedy in remedies {
            if remedy.edits.is_empty() {
                kept.push(remedy);
            } else if one_holds || left == 0 {
                kept.push(remedy.done_by(Vec::new()));
            } else {
                left -= 1;
                one_holds = holds(&report, finding, plan, &remedy, memory);
                if one_holds {
                    kept.push(remedy);
                } else {
                    dropped.push(remedy);
                }
            }
        }
        Rc::make_mut(finding).remedies = kept;
    }
    report.findings = findings;
    report.sections.iter_mut().for_each(|section| without(section, &dropped));
    report
}

fn holds(
    before: &Report,
    finding: &Finding,
    plan: &Plan,
    remedy: &Message,
    memory: &Memory,
) -> bool {
    let Some(edited) = plan.edited(&remedy.edits) else { return false };
    let after = untried(&mut memory.of_findings(), &edited);
    let as_grave = |report: &Report| -> Vec<Rc<Finding>> {
        let all = report.findings.iter().filter(|it| it.severity <= finding.severity);
        all.cloned().collect()
    };
    let (before, after) = (as_grave(before), as_grave(&after));
    let is_gone = |it: &Finding| !after.iter().any(|other| is_same(other, it));
    // what was said of a place in other words, as gravely, is nothing new there
    let is_said_otherwise = |known: &Finding, it: &Finding| {
        known.subject == it.subject
            && known.severity <= it.severity
            && is_gone(known)
            && !is_same(known, finding)
    };
    let was_there = |it: &Finding| {
        before.iter().any(|known| is_same(known, it) || is_said_otherwise(known, it))
    };
    after.iter().all(|it| was_there(it) && !is_same(it, finding))
}

fn is_same(one: &Finding, other: &Finding) -> bool {
    one.message.code == other.message.code && one.subject == other.subject
}

/// What was dropped from a finding is not said by an answer, in whatever words.
fn without(section: &mut Section, dropped: &[Message]) {
    let is_dropped =
        |it: &Message| !it.edits.is_empty() && dropped.iter().any(|other| other.edits == it.edits);
    for answer in &mut section.answers {
        if answer.to_do.iter().any(is_dropped) {
            Rc::make_mut(answer).to_do.retain(|it| !is_dropped(it));
        }
    }
}
