//! The shape that every answer has.

use std::rc::Rc;

use serde::Serialize;

use super::{Bench, Checklist, Picture};
use crate::{
    finding::Basis,
    message::Message,
    quantity::{Band, Measure, Value},
    working::Step,
};

/// A question and its answers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Section {
    /// `channels`, `injectors`, `rest` or `cranking`.
    pub id: &'static str,
    /// The question as a person asks it.
    pub question: Message,
    /// The answers: one for the question, or one for each part it asks about.
    pub answers: Vec<Rc<Answer>>,
}

/// How an answer sounds. Never told by colour alone: the verdict says it in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Tone {
    /// No: it can hurt or will not work.
    Bad,
    /// Only so far: too little margin, or something is not known.
    Doubtful,
    /// Not answered yet: it says what is needed.
    Open,
    /// Yes.
    Good,
}

/// What an answer is among those of its question.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AnswerRole {
    /// An answer of its own; of what is to be done, what comes first is enough at first.
    #[default]
    Own,
    /// A part of what the question's first answer sums up.
    Part,
    /// Such a part whose steps are a list, read as a whole.
    List,
}

/// The answer in a few words.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Verdict {
    /// How it sounds.
    pub tone: Tone,
    /// The words.
    pub message: Message,
}

/// One answer: the verdict, why, what to do, the numbers, the working.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Answer {
    /// The path of what it is about (`channels`, `loads.0`).
    pub subject: String,
    /// What it is among the answers of its question: how it is told, nothing of what it says.
    #[serde(skip)]
    pub role: AnswerRole,
    /// What it is about, where a question has several answers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub title: Option<Message>,
    /// The answer in a few words.
    pub verdict: Verdict,
    /// Made from the plan, or from what was found at the car.
    pub basis: Basis,
    /// Why, in one sentence.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<Message>,
    /// The usual values that it rests on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub assumed: Option<Message>,
    /// What to do, in order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub to_do: Vec<Message>,
    /// Cautions, where the doing can hurt.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub cautions: Vec<Message>,
    /// The numbers behind it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub figures: Vec<Figure>,
    /// Tables behind it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub tables: Vec<Table>,
    /// Pictures, as numbers to draw from.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub pictures: Vec<Picture>,
    /// What is to be done one by one, to be ticked off.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub lists: Vec<Checklist>,
    /// A test at the car, worked by tapping.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bench: Option<Bench>,
}

impl Answer {
    /// What was assumed for it stands behind the reason: it is nothing to do.
    pub(crate) fn assume(&mut self, taken: Option<Message>) {
        self.assumed = taken;
    }

    /// An answer that is only a verdict so far.
    pub fn new(subject: impl Into<String>, tone: Tone, message: Message) -> Self {
        Self {
            subject: subject.into(),
            role: AnswerRole::Own,
            title: None,
            verdict: Verdict { tone, message },
            basis: Basis::AsPlanned,
            why: None,
            assumed: None,
            to_do: Vec::new(),
            cautions: Vec::new(),
            figures: Vec::new(),
            tables: Vec::new(),
            pictures: Vec::new(),
            lists: Vec::new(),
            bench: None,
        }
    }

    /// Puts below it what is there to be shown.
    pub(crate) fn show(&mut self, detail: Option<Detail>) {
        if let Some(Detail { figures, tables, pictures }) = detail {
            self.figures = figures;
            self.tables = tables;
            self.pictures = pictures;
        }
    }
}

/// What stands below an answer. What makes it comes to a page after the answers.
#[derive(Debug, Default)]
pub(crate) struct Detail {
    pub(crate) figures: Vec<Figure>,
    pub(crate) tables: Vec<Table>,
    pub(crate) pictures: Vec<Picture>,
}

/// A number with its range and how it was found.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Figure {
    /// What it is; the message's code names the figure for scripts.
    pub label: Message,
    /// The nominal value.
    pub value: Value,
    /// The lowest at any corner.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<Value>,
    /// The highest at any corner.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<Value>,
    /// How it was found: at least one step.
    pub working: Vec<Step>,
}

impl Figure {
    /// A figure with its range.
    pub fn new<Q: Measure>(label: Message, band: Band<Q>, working: Vec<Step>) -> Self {
        let (low, high) = if band.is_spread() {
            (Some(band.low.show()), Some(band.high.show()))
        } else {
            (None, None)
        };
        Self { label, value: band.nominal.show(), low, high, working }
    }

    /// A figure that is a count or a text, without range.
    pub fn plain(label: Message, value: impl Into<Value>, working: Vec<Step>) -> Self {
        Self { label, value: value.into(), low: None, high: None, working }
    }
}

/// A table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Table {
    /// What it shows.
    pub caption: Message,
    /// The heads of its columns.
    pub columns: Vec<Message>,
    /// Its rows, each with a cell a column.
    pub rows: Vec<Row>,
    /// How its numbers were found.
    pub working: Vec<Step>,
}

/// A row of a table.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Row {
    /// The cells.
    pub cells: Vec<Value>,
    /// Set where the row stands out; a cell says why in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tone: Option<Tone>,
}
