//! What stands in the place of a report until there is one.

use std::rc::Rc;

use super::{Answer, Report, Section, Tone};
use crate::{
    plan::Plan, questions, questions::Question, read::FieldStates, say_of, words::Wording,
};

impl Report {
    /// Every question of this plan, and nothing answered yet. It knows only the few words that it says, so that a page
    /// can show it before the rest of the core is there.
    ///
    /// Its answers are about what those of the report will be about, as far as that can be told without reading the
    /// plan: what stands beside them on a page then stays where it is.
    pub fn pending(plan: &Plan) -> Self {
        let section = |question: &Question| {
            section(question.id, question.asks, question.pending, (question.subjects)(plan))
        };
        let sections = questions::ALL.iter().map(section).collect();
        Self { name: plan.name.clone(), findings: Vec::new(), sections, fields: FieldStates::new() }
    }
}

fn section(
    id: &'static str,
    question: &'static Wording,
    pending: &'static Wording,
    mut subjects: Vec<String>,
) -> Section {
    if subjects.is_empty() {
        subjects.push(id.to_owned());
    }
    let answer = |subject| Rc::new(Answer::new(subject, Tone::Open, say_of!(pending)));
    let answers = subjects.into_iter().map(answer).collect();
    Section { id, question: say_of!(question), answers }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{demo, report::report};

    /// The questions as they are asked, and what their first answers are about.
    fn outline(report: &Report) -> Vec<(&str, &str, Vec<&str>)> {
        let subject = |it: &'_ Rc<Answer>| -> &'static str {
            let known = [
                "engine",
                "channels.ignition",
                "channels.injection",
                "injector",
                "fuel",
                "cranking",
            ];
            known.into_iter().find(|known| it.subject.starts_with(known)).unwrap_or("rest")
        };
        let about = |section: &Section| {
            // whether anything is wired as it should be is asked only where the plan says how it is wired; and one cycle
            // at a speed has a place of its own on a page
            let wired = |it: &&Rc<Answer>| it.subject.ends_with("_wired") || it.subject == "strip";
            let mut all: Vec<_> =
                section.answers.iter().filter(|it| !wired(it)).map(subject).collect();
            all.dedup();
            all
        };
        let sections = report.sections.iter();
        sections.map(|it| (it.id, it.question.text.as_str(), about(it))).collect()
    }

    #[test]
    fn the_frame_is_that_of_the_report() {
        for plan in [Plan::default(), demo()] {
            assert_eq!(outline(&Report::pending(&plan)), outline(&report(&plan)), "{}", plan.name);
        }
    }

    #[test]
    fn nothing_is_answered() {
        let pending = Report::pending(&demo());
        let mut answers = pending.sections.iter().flat_map(|section| &section.answers);
        assert!(answers.all(|it| it.verdict.tone == Tone::Open), "a pending report answers");
        assert!(pending.findings.is_empty() && pending.fields.is_empty(), "it was not computed");
    }
}
