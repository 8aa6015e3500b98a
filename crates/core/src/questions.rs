//! The questions, each in a folder of its own: its fields, how they are read, its answers, its words.

pub mod fuel;

use std::rc::Rc;

use crate::{
    car::Car, finding::Findings, plan::Plan, report::Section, say_of, schema::Part, words::Wording,
};

/// A question, as far as it stands before it is answered.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// Its name in the report.
    pub id: &'static str,
    /// What it is called in one word.
    pub name: &'static str,
    /// The sentence that asks it.
    pub(crate) asks: &'static Wording,
    /// What is said in the place of an answer that is still to come.
    pub(crate) pending: &'static Wording,
    /// The parts of the plan whose fields are asked with it.
    pub parts: &'static [Part],
    /// What its answers will be about, as far as that can be told without reading the plan.
    pub(crate) subjects: fn(&Plan) -> Vec<String>,
}

/// Declares the questions: a line each, in the order in which a fitter meets them.
macro_rules! questions {
    ($($question:ident,)*) => {
        $(pub mod $question;)*

        /// Every question, in the order in which a fitter meets them.
        pub const ALL: &[Question] = &[$($question::QUESTION,)*];

        /// What was read and answered for the report before: an edit of one question leaves the others as they are.
        ///
        /// The default one is that of reports without details: verdicts, what to do, findings.
        #[derive(Clone, Debug, Default)]
        pub struct Memory {
            details: Option<&'static Details>,
            $(pub(crate) $question: $question::Memory,)*
        }

        /// What makes the details of each question's answers.
        #[derive(Clone, Copy, Debug)]
        struct Details {
            $($question: $question::Details,)*
        }

        /// They are named nowhere else: a page fetches them after the answers.
        const DETAILS: Details = Details { $($question: $question::DETAILS,)* };

        /// The answers to all questions. They are named nowhere else: a page fetches them after the form.
        pub(crate) fn answered(
            car: &Car<'_>,
            memory: &mut Memory,
            findings: &mut Findings,
        ) -> Vec<Section> {
            let details = memory.details;
            vec![$(
                section($question::QUESTION, {
                    let details = details.map(|it| &it.$question);
                    $question::answers(car, &mut memory.$question, details, findings)
                }),
            )*]
        }
    };
}

impl Memory {
    /// That of reports with all details.
    pub fn detailed() -> Self {
        Self { details: Some(&DETAILS), ..Self::default() }
    }

    /// Steps that this report took, beside what was remembered.
    pub(crate) fn worked(&self) -> u64 {
        self.cranking.worked().saturating_add(self.outputs.worked())
    }

    /// The same, for a report of which only the findings count.
    pub(crate) fn of_findings(&self) -> Self {
        Self { details: None, ..self.clone() }
    }
}

questions! {
    firing,
    injectors,
    outputs,
    pins,
    trigger,
    sensors,
    cranking,
    coils,
    feeds,
    standing,
    bus,
    wires,
}

fn section(question: Question, answers: Vec<Rc<crate::report::Answer>>) -> Section {
    Section { id: question.id, question: say_of!(question.asks), answers }
}
