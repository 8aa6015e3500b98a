//! What each question is answered, and what it still needs.

use std::rc::Rc;

use crate::{
    finding::Severity,
    message::Message,
    questions,
    report::{Answer, AnswerRole, Report, Section, Tone},
    schema::Place,
};

use super::{
    Fact, names,
    step::{StepUse, shortened},
};

/// A question and what it is answered.
#[derive(Clone, Debug, PartialEq)]
pub struct Verdicts {
    /// Its name in the report.
    pub id: &'static str,
    /// What it is called in one word.
    pub name: &'static str,
    /// The worst of its verdicts; bad, too, where a Danger or a Fault of it was found.
    pub tone: Tone,
    /// Its verdicts, the worst first.
    pub verdicts: Vec<Judged>,
    /// The numbers, from 0, of the Dangers and Faults that were found of it.
    pub grave: Vec<usize>,
    /// What it still needs.
    pub needs: Vec<Message>,
}

/// A verdict, and all of which it holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// How it sounds.
    pub tone: Tone,
    /// The words.
    pub words: Message,
    /// Of what it holds; nothing where the question is about one thing.
    pub about: Vec<String>,
    /// Of how many.
    pub count: usize,
    /// Whether it holds of all that the question is about.
    pub is_of_all: bool,
}

pub(super) fn questions(report: &Report, facts: &[Fact]) -> Vec<Verdicts> {
    report.sections.iter().map(|section| question(report, section, facts)).collect()
}

fn question(report: &Report, section: &Section, facts: &[Fact]) -> Verdicts {
    let mut verdicts: Vec<Judged> = Vec::new();
    let is_own = |it: &&Rc<Answer>| it.role == AnswerRole::Own;
    let answers: Vec<_> = section.answers.iter().filter(is_own).collect();
    for answer in &answers {
        let verdict = &answer.verdict;
        let is_same =
            |it: &&mut Judged| it.tone == verdict.tone && it.words.text == verdict.message.text;
        match verdicts.iter_mut().find(is_same) {
            Some(judged) => {
                judged.about.extend(about(report, answer));
                judged.count += 1;
            }
            None => verdicts.push(Judged {
                tone: verdict.tone,
                words: verdict.message.clone(),
                about: about(report, answer).into_iter().collect(),
                count: 1,
                is_of_all: false,
            }),
        }
    }
    for judged in &mut verdicts {
        judged.is_of_all = judged.count == answers.len();
        judged.about = names::folded(&judged.about);
    }
    verdicts.sort_by_key(|it| it.tone);
    let name =
        questions::ALL.iter().find(|it| it.id == section.id).map_or(section.id, |it| it.name);
    let is_grave = |fact: &Fact| {
        fact.severity <= Severity::Fault && asked_under(fact.code) == Some(section.id)
    };
    let grave: Vec<_> = (0..).zip(facts).filter(|(_, it)| is_grave(it)).map(|(at, _)| at).collect();
    let worst = verdicts.first().map_or(Tone::Open, |it| it.tone);
    Verdicts {
        id: section.id,
        name,
        tone: if grave.is_empty() { worst } else { Tone::Bad },
        grave,
        needs: needs(&section.answers),
        verdicts,
    }
}

/// The question to which a finding belongs; what is wrong with a field is told where it is.
fn asked_under(code: &str) -> Option<&str> {
    match code.split_once('.')?.0 {
        "field" => None,
        "engine" => Some("firing"),
        "fuel" => Some("injectors"),
        question => Some(question),
    }
}

/// What an answer is about, where its question has several.
fn about(report: &Report, answer: &Answer) -> Option<String> {
    let title = answer.title.as_ref()?;
    if let Some(load) = names::in_gap(Some(title), "load") {
        return Some(load.to_owned());
    }
    // an answer that waits for a field is about that field
    let is_field = Place::at_path(&answer.subject).is_some();
    let called = if is_field && !names::is_subject(&answer.subject) {
        title.text.clone()
    } else {
        names::called(report, &answer.subject)
    };
    Some(called).filter(|it| !it.is_empty())
}

fn needs(answers: &[Rc<Answer>]) -> Vec<Message> {
    let mut needs: Vec<Message> = Vec::new();
    for answer in answers {
        for message in answer.why.iter().chain(&answer.to_do) {
            let Some(need) = shortened(message, StepUse::Ask) else { continue };
            if !needs.iter().any(|it| it.text == need.text) {
                needs.push(need);
            }
        }
    }
    needs
}
