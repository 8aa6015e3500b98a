//! What was found, each thing once, with its first cure.

use crate::{
    explained,
    finding::{Finding, Moment, Severity},
    message::Message,
    questions::outputs::words as outputs,
    report::Report,
    say,
    schema::Part,
};

use super::{
    names,
    step::{StepUse, shortened},
};

/// Something that was found, of one part or of several alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// How much it matters.
    pub severity: Severity,
    /// When it strikes.
    pub moment: Moment,
    /// The part that the words are about.
    pub about: String,
    /// The code of the finding.
    pub code: &'static str,
    /// How many findings it tells.
    pub count: usize,
    /// What was found; where there are several parts, of the first.
    pub words: String,
    /// The other parts of which it was found too.
    pub also: Vec<String>,
    /// The first cure; several where the parts are cured each in its own way.
    pub cures: Vec<Cured>,
    /// Whether the cure was solved for this plan.
    pub is_solved: bool,
}

/// What to do about something.
#[derive(Clone, Debug, PartialEq)]
pub struct Cured {
    /// The parts that it is for; nothing where it is for all.
    pub of: Vec<String>,
    /// What to do.
    pub words: String,
    /// The number of the fact, from 0, at which it is said already.
    pub said_at: Option<usize>,
}

/// Dangers and Faults by when they strike, then Doubts and Notes likewise.
pub(super) fn facts(report: &Report) -> Vec<Fact> {
    let mut facts: Vec<Fact> = Vec::new();
    for finding in &report.findings {
        let (about, cure) = (about(report, finding), cure(finding));
        let (words, others) = apart(&finding.message);
        match facts.iter_mut().find(|fact| is_like(fact, finding, &about)) {
            Some(fact) => {
                fact.count += 1;
                if about != fact.about {
                    fact.also.push(about.clone());
                }
                fact.also.extend(others);
                add(&mut fact.cures, about, cure);
            }
            None => facts.push(Fact {
                severity: finding.severity,
                moment: finding.strikes,
                code: finding.message.code,
                count: 1,
                also: others,
                words,
                is_solved: !finding.remedies.is_empty(),
                cures: cure.map(|words| told(&about, words)).into_iter().collect(),
                about,
            }),
        }
    }
    finish(&mut facts);
    facts
}

/// Whether the same was found of another part. What can't be read in a field is like nothing else.
fn is_like(fact: &Fact, finding: &Finding, about: &String) -> bool {
    let part = finding.subject.split('.').next().and_then(Part::named);
    let is_of_field = finding.message.code.starts_with("field.");
    let is_other = part.is_some_and(Part::is_list)
        && !is_of_field
        && fact.about != *about
        && !fact.also.contains(about);
    fact.severity == finding.severity
        && fact.code == finding.message.code
        && (is_other || fact.about == *about && fact.words == finding.message.text)
}

/// The part that was found to be so: the load, where it is said at its output.
pub(super) fn about(report: &Report, finding: &Finding) -> String {
    let load = names::in_gap(Some(&finding.message), "load").map(str::to_owned);
    load.unwrap_or_else(|| names::called(report, &finding.subject))
}

/// A finding of one part, and the names of the others of which it says the same.
fn apart(message: &Message) -> (String, Vec<String>) {
    let Some(others) = names::in_gap(Some(message), "also") else {
        return (message.text.clone(), Vec::new());
    };
    let said = say!(outputs::ALSO, also = others).into_text();
    match message.text.strip_suffix(said.as_str()) {
        Some(alone) => {
            (alone.trim_end().to_owned(), others.split(", ").map(str::to_owned).collect())
        }
        None => (message.text.clone(), Vec::new()),
    }
}

/// The first cure that was solved for this plan, or what is done in general.
fn cure(finding: &Finding) -> Option<String> {
    if let Some(remedy) = finding.remedies.first() {
        let few = shortened(remedy, StepUse::Cure);
        return Some(few.unwrap_or_else(|| remedy.clone()).into_text());
    }
    explained::explanation(finding.message.code).map(|it| it.act.to_owned())
}

fn told(about: &str, words: String) -> Cured {
    Cured { of: vec![about.to_owned()], words, said_at: None }
}

fn add(cures: &mut Vec<Cured>, about: String, cure: Option<String>) {
    let Some(words) = cure else { return };
    match cures.iter_mut().find(|it| it.words == words) {
        Some(cured) if cured.of.contains(&about) => {}
        Some(cured) => cured.of.push(about),
        None => cures.push(told(&about, words)),
    }
}

/// Where a cure was solved for a part, what is grave of the same part is cured by that, and not by what is said in general.
fn solved_at(facts: &[Fact], at: usize) -> Option<usize> {
    let fact = facts.get(at).filter(|it| !it.is_solved && it.severity <= Severity::Fault)?;
    let is_of_it = |other: &Fact| {
        other.is_solved && (other.about == fact.about || other.also.contains(&fact.about))
    };
    let is_alone = fact.also.is_empty() && fact.code.starts_with("outputs.");
    facts.iter().position(is_of_it).filter(|_| is_alone)
}

/// One cure is for all; what was said before is not said again; and names are as few as can be.
fn finish(facts: &mut [Fact]) {
    let solved: Vec<_> = (0..facts.len()).map(|at| solved_at(facts, at)).collect();
    let mut said: Vec<(String, usize)> = Vec::new();
    for ((at, fact), solved) in facts.iter_mut().enumerate().zip(solved) {
        fact.also = names::folded(&fact.also);
        if let [cured] = fact.cures.as_mut_slice() {
            cured.of.clear();
        }
        for cured in &mut fact.cures {
            cured.of = names::folded(&cured.of);
            if solved.is_some() {
                cured.said_at = solved;
                continue;
            }
            match said.iter().find(|(words, _)| *words == cured.words) {
                Some((_, first)) => cured.said_at = Some(*first).filter(|first| *first != at),
                None => said.push((cured.words.clone(), at)),
            }
        }
    }
}
