//! A remedy that is an edit of the plan is tried before it is offered: with it, the whole report must be better.
//!
//! **The rule.** With the edit made, its own finding is gone or milder, and no finding as grave has come that was not there.
//! What does not hold is not offered, neither by the finding nor by the answer. They are tried best first, up to the first
//! that holds, and those of the gravest findings before others; then further ones. A report makes few trials, so that an edit
//! waits for little: of what was not tried, the first of a finding stays as advice, without its edits, and what comes behind
//! one that holds is not said.

use std::rc::Rc;

use super::{Report, Section, untried};
use crate::{finding::Finding, message::Message, plan::Plan, questions::Memory};

/// More trials than this an edit does not wait for.
const MOST: usize = 6;

/// The same report with those remedies that hold; `memory` is that of the report.
pub fn tried(mut report: Report, plan: &Plan, memory: &Memory) -> Report {
    let mut trials = Trials { report: &report, plan, memory, left: MOST, dropped: Vec::new() };
    let mut findings = report.findings.clone();
    let can_be_tried =
        |it: &&mut Rc<Finding>| it.remedies.iter().any(|remedy| !remedy.edits.is_empty());
    let mut solved: Vec<_> =
        findings.iter_mut().filter(can_be_tried).map(TriedFinding::new).collect();
    for it in &mut solved {
        it.first(&mut trials);
    }
    for it in &mut solved {
        it.further(&mut trials);
    }
    let dropped = trials.dropped;
    report.findings = findings;
    report.sections.iter_mut().for_each(|section| without(section, &dropped));
    report
}

/// The trials that a report may still make, and what did not hold.
struct Trials<'a> {
    report: &'a Report,
    plan: &'a Plan,
    memory: &'a Memory,
    left: usize,
    dropped: Vec<Message>,
}

impl Trials<'_> {
    /// Whether a remedy holds; nothing where no trial is left.
    fn of(&mut self, finding: &Finding, remedy: &Message) -> Option<bool> {
        self.left = self.left.checked_sub(1)?;
        let holds = holds(self.report, finding, self.plan, remedy, self.memory);
        if !holds {
            self.dropped.push(remedy.clone());
        }
        Some(holds)
    }
}

/// A finding whose remedies are tried.
struct TriedFinding<'a> {
    finding: &'a mut Rc<Finding>,
    /// Where the first stands that holds.
    first: Option<usize>,
}

impl<'a> TriedFinding<'a> {
    fn new(finding: &'a mut Rc<Finding>) -> Self {
        Self { finding, first: None }
    }

    /// Tries up to the first that holds; what was not tried loses its edits.
    fn first(&mut self, trials: &mut Trials<'_>) {
        let remedies = std::mem::take(&mut Rc::make_mut(self.finding).remedies);
        let mut kept = Vec::with_capacity(remedies.len());
        for remedy in remedies {
            if remedy.edits.is_empty() || self.first.is_some() {
                kept.push(remedy);
                continue;
            }
            match trials.of(self.finding, &remedy) {
                Some(true) => {
                    self.first = Some(kept.len());
                    kept.push(remedy);
                }
                Some(false) => {}
                None => kept.push(remedy.done_by(Vec::new())),
            }
        }
        Rc::make_mut(self.finding).remedies = kept;
    }

    /// Tries those behind the first that holds; what was not tried is not said.
    fn further(&mut self, trials: &mut Trials<'_>) {
        let Some(first) = self.first else { return };
        let remedies = std::mem::take(&mut Rc::make_mut(self.finding).remedies);
        let mut kept = Vec::with_capacity(remedies.len());
        for (at, remedy) in remedies.into_iter().enumerate() {
            let is_sure = at <= first || remedy.edits.is_empty();
            if is_sure || trials.of(self.finding, &remedy) == Some(true) {
                kept.push(remedy);
            }
        }
        Rc::make_mut(self.finding).remedies = kept;
    }
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
