//! A remedy that is an edit of the plan is tried before it is offered: with it, the whole report must be better.
//!
//! **The rule.** With the edit made, its own finding is gone or milder, and no finding as grave has come that was not there. What
//! cures a Danger and uncovers a Fault is offered only where nothing better holds.
//! What does not hold is not offered, neither by the finding nor by the answer. They are tried best first, up to the first
//! that holds, and those of the gravest findings before others; then further ones. A report makes few trials, so that an edit
//! waits for little: of what was not tried, the first of a finding stays as advice, without its edits, and what comes behind
//! one that holds is not said.
//!
//! **Two together.** Where none of the edits of a Danger or a Fault holds, what is still wrong with each of them has remedies
//! of its own: the first pair that holds, best first, is offered as one remedy with the edits of both.

use std::rc::Rc;

use super::{Report, Section, untried};
use crate::{
    finding::{Finding, Severity},
    message::{Edit, Message},
    plan::Plan,
    questions::Memory,
    say, sorted,
    words::field,
};

/// More trials than this an edit does not wait for.
const MOST: usize = 6;

/// The same, of pairs.
const MOST_PAIRS: usize = 4;

/// After so many steps of work in its trials an edit waits for none further: about a third of a second natively. A plan whose
/// report costs as much as one may makes few.
const MOST_STEPS: u64 = 300_000_000;

/// The same report with those remedies that hold; `memory` is that of the report.
pub fn tried(report: &Report, plan: &Plan, memory: &Memory) -> Report {
    let mut made = Made::default();
    loop {
        if let Some(tried) = tried_further(report, plan, memory, &mut made) {
            return tried;
        }
    }
}

/// What came of the trials of a report that were made so far.
#[derive(Debug, Default)]
pub struct Made {
    ends: Vec<MadeTrial>,
}

#[derive(Debug)]
struct MadeTrial {
    code: &'static str,
    subject: String,
    edits: Vec<Edit>,
    end: TrialEnd,
    /// Steps that it took.
    steps: u64,
}

/// One trial more: [`tried`], in pieces between which a page can do other things. Nothing, as long as trials are left.
pub fn tried_further(
    report: &Report,
    plan: &Plan,
    memory: &Memory,
    made: &mut Made,
) -> Option<Report> {
    let mut report = report.clone();
    let mut trials = Trials {
        report: &report,
        plan,
        memory,
        left: MOST,
        left_of_pairs: MOST_PAIRS,
        steps: 0,
        dropped: Vec::new(),
        made,
        is_one_made: false,
        is_short: false,
    };
    let mut findings = report.findings.clone();
    let can_be_tried =
        |it: &&mut Rc<Finding>| it.remedies.iter().any(|remedy| !remedy.edits.is_empty());
    let mut solved: Vec<_> =
        findings.iter_mut().filter(can_be_tried).map(TriedFinding::new).collect();
    sorted::by(&mut solved, |one, other| one.finding.severity.cmp(&other.finding.severity));
    for it in &mut solved {
        it.first(&mut trials);
    }
    for it in &mut solved {
        it.paired(&mut trials);
    }
    for it in &mut solved {
        it.further(&mut trials);
    }
    if trials.is_short {
        return None;
    }
    let dropped = trials.dropped;
    report.findings = findings;
    report.sections.iter_mut().for_each(|section| without(section, &dropped));
    Some(report)
}

/// The trials that a report may still make, and what did not hold.
struct Trials<'a> {
    report: &'a Report,
    plan: &'a Plan,
    memory: &'a Memory,
    left: usize,
    left_of_pairs: usize,
    /// Steps that those which were made took.
    steps: u64,
    dropped: Vec<Message>,
    made: &'a mut Made,
    /// Whether one was made that was not known.
    is_one_made: bool,
    /// Whether another one would have been.
    is_short: bool,
}

impl Trials<'_> {
    /// Whether a remedy holds; nothing where no trial is left.
    fn of(&mut self, finding: &Finding, remedy: &Message) -> Option<TrialEnd> {
        if self.steps >= MOST_STEPS {
            return None;
        }
        self.left = self.left.checked_sub(1)?;
        let outcome = self.outcome(finding, remedy);
        if matches!(outcome, TrialEnd::Fails(_)) {
            self.dropped.push(remedy.clone());
        }
        Some(outcome)
    }

    /// Whether a pair holds; not where no trial is left.
    fn of_pair(&mut self, finding: &Finding, both: &Message) -> bool {
        let Some(left) = self.left_of_pairs.checked_sub(1) else { return false };
        self.left_of_pairs = left;
        self.steps < MOST_STEPS && matches!(self.outcome(finding, both), TrialEnd::Holds)
    }

    fn outcome(&mut self, finding: &Finding, remedy: &Message) -> TrialEnd {
        let is_it = |it: &&MadeTrial| {
            it.code == finding.message.code
                && it.subject == finding.subject
                && it.edits == remedy.edits
        };
        if let Some(known) = self.made.ends.iter().find(is_it) {
            self.steps = self.steps.saturating_add(known.steps);
            return known.end.clone();
        }
        if self.is_one_made {
            self.is_short = true;
            (self.left, self.left_of_pairs) = (0, 0);
            return TrialEnd::Fails(Vec::new());
        }
        let Some(edited) = self.plan.edited(&remedy.edits) else {
            return TrialEnd::Fails(Vec::new());
        };
        self.is_one_made = true;
        let mut memory = self.memory.of_findings();
        let after = untried(&mut memory, &edited);
        let (end, steps) = (outcome(self.report, finding, &after, remedy), memory.worked());
        self.steps = self.steps.saturating_add(steps);
        self.made.ends.push(MadeTrial {
            code: finding.message.code,
            subject: finding.subject.clone(),
            edits: remedy.edits.clone(),
            end: end.clone(),
            steps,
        });
        end
    }
}

/// A finding whose remedies are tried.
struct TriedFinding<'a> {
    finding: &'a mut Rc<Finding>,
    /// Where the first stands that holds.
    first: Option<usize>,
    /// The first that cures a Danger and uncovers a Fault: no better than what is still to be found.
    second: Option<Message>,
    /// Those that do not hold, each with what might mend what is still wrong then.
    pairs: Vec<(Message, Message)>,
}

/// What comes of a remedy.
#[derive(Clone, Debug)]
enum TrialEnd {
    /// It holds.
    Holds,
    /// It cures a Danger, and a Fault comes of it that was not there; these are the remedies of that.
    Uncovers(Vec<Message>),
    /// It does not; these are the remedies of what is still wrong with it, or has come of it.
    Fails(Vec<Message>),
}

impl<'a> TriedFinding<'a> {
    fn new(finding: &'a mut Rc<Finding>) -> Self {
        Self { finding, first: None, second: None, pairs: Vec::new() }
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
                Some(TrialEnd::Holds) => {
                    self.first = Some(kept.len());
                    kept.push(remedy);
                }
                Some(TrialEnd::Uncovers(others)) => {
                    self.pairs.extend(others.into_iter().map(|other| (remedy.clone(), other)));
                    self.second.get_or_insert(remedy);
                }
                Some(TrialEnd::Fails(others)) => {
                    self.pairs.extend(others.into_iter().map(|other| (remedy.clone(), other)));
                }
                None => kept.push(remedy.done_by(Vec::new())),
            }
        }
        Rc::make_mut(self.finding).remedies = kept;
    }

    /// Tries pairs of a Danger's or a Fault's remedies, where none of them holds by itself.
    fn paired(&mut self, trials: &mut Trials<'_>) {
        let is_tried = |it: &Message| !it.edits.is_empty();
        let is_open = self.finding.severity <= Severity::Fault
            && self.first.is_none()
            && !self.finding.remedies.iter().any(is_tried);
        if !is_open {
            trials.dropped.extend(self.second.take());
            return;
        }
        let pairs = std::mem::take(&mut self.pairs);
        let mut both = pairs.iter().map(|(one, other)| together(one, other));
        let best = both.find(|both| trials.of_pair(self.finding, both)).or(self.second.take());
        if let Some(best) = best {
            Rc::make_mut(self.finding).remedies.insert(0, best);
        }
    }

    /// Tries those behind the first that holds; what was not tried is not said.
    fn further(&mut self, trials: &mut Trials<'_>) {
        let Some(first) = self.first else { return };
        let remedies = std::mem::take(&mut Rc::make_mut(self.finding).remedies);
        let mut kept = Vec::with_capacity(remedies.len());
        for (at, remedy) in remedies.into_iter().enumerate() {
            let is_sure = at <= first || remedy.edits.is_empty();
            if is_sure || matches!(trials.of(self.finding, &remedy), Some(TrialEnd::Holds)) {
                kept.push(remedy);
            }
        }
        Rc::make_mut(self.finding).remedies = kept;
    }
}

/// Two remedies as one: what both type at one place is as the second has it.
fn together(one: &Message, other: &Message) -> Message {
    let is_kept = |edit: &&Edit| !other.edits.iter().any(|it| it.path == edit.path);
    let edits = one.edits.iter().filter(is_kept).chain(&other.edits).cloned().collect();
    say!(field::BOTH, one = one.text.as_str(), other = other.text.as_str()).done_by(edits)
}

fn outcome(before: &Report, finding: &Finding, after: &Report, remedy: &Message) -> TrialEnd {
    let of = |severity| wrong(before, finding, after, (remedy, severity));
    if let Some(others) = of(finding.severity) {
        return TrialEnd::Fails(others);
    }
    match of(Severity::Fault).filter(|_| finding.severity < Severity::Fault) {
        Some(others) => TrialEnd::Uncovers(others),
        None => TrialEnd::Holds,
    }
}

/// The remedies of what is still wrong with a remedy, or has come of it, of what is as grave as that; nothing where all is well.
fn wrong(
    before: &Report,
    finding: &Finding,
    after: &Report,
    (remedy, severity): (&Message, Severity),
) -> Option<Vec<Message>> {
    let as_grave = |report: &Report| -> Vec<Rc<Finding>> {
        let all = report.findings.iter().filter(|it| it.severity <= severity);
        all.cloned().collect()
    };
    let (before, after) = (as_grave(before), as_grave(after));
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
    let mut wrong = after.iter().filter(|it| !was_there(it) || is_same(it, finding)).peekable();
    wrong.peek()?;
    // what types at the same places only takes the remedy back
    let is_typed = |it: &Edit| remedy.edits.iter().any(|edit| edit.path == it.path);
    let adds = |it: &&Message| !it.edits.iter().all(is_typed);
    let others = wrong.flat_map(|it| &it.remedies).filter(adds);
    Some(others.take(2).cloned().collect())
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
