//! What the report says, as data: a code, the values in it, and the English made from both.

mod gaps;

use std::ops::Deref;

pub use gaps::Gaps;

use serde::Serialize;

use crate::{
    quantity::Value,
    words::{self, Wording},
};

// A thin pointer: the report hands hundreds of them on, and the page carries every byte of the code that does.
/// A sentence of the report.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(as = "Sentence"))]
#[serde(transparent)]
pub struct Message(Box<Sentence>);

/// What a [`Message`] points to.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(rename = "Message", optional_fields))]
pub struct Sentence {
    /// Stable name of the sentence: a translation is keyed by it.
    pub code: &'static str,
    /// What stands in the sentence's gaps.
    #[serde(skip_serializing_if = "Gaps::is_empty")]
    #[cfg_attr(
        feature = "typescript",
        ts(as = "Option<std::collections::BTreeMap<&'static str, Value>>")
    )]
    pub values: Gaps,
    /// The sentence in English.
    pub text: String,
    /// What of the plan is to be typed anew, where the sentence says to do something that is such an edit.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub edits: Vec<Edit>,
}

/// A text that is to stand at a place of the plan.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
pub struct Edit {
    /// The path of the place.
    pub path: String,
    /// What is to stand there; blank: nothing.
    pub text: String,
}

impl Deref for Message {
    type Target = Sentence;

    fn deref(&self) -> &Sentence {
        &self.0
    }
}

/// Whatever can stand in a gap of a sentence.
pub trait Shown {
    /// As a value of the report.
    fn value(&self) -> Value;
}

impl<T: Clone + Into<Value>> Shown for T {
    fn value(&self) -> Value {
        self.clone().into()
    }
}

impl Message {
    /// A sentence with these values in its gaps.
    ///
    /// The values come as references to be turned into [`Value`]s here: the report has hundreds of sentences,
    /// and the page carries every byte of the code that builds them.
    ///
    /// `names` are those of the gaps, in the order of the values, with commas between them.
    pub fn new(wording: &'static Wording, names: &'static str, values: &[&dyn Shown]) -> Self {
        Self::from_pairs(wording, pairs(names, values).collect())
    }

    /// A sentence without gaps.
    pub fn plain(wording: &'static Wording) -> Self {
        let text = wording.text.to_owned();
        Self(Box::new(Sentence {
            code: wording.code,
            values: Gaps::default(),
            text,
            edits: Vec::new(),
        }))
    }

    /// The same, without the values for which the sentence has no gap.
    pub fn fitting(wording: &'static Wording, names: &'static str, values: &[&dyn Shown]) -> Self {
        let has_gap = |name: &str| wording.text.contains(&["{", name, "}"].concat());
        Self::from_pairs(wording, pairs(names, values).filter(|(name, _)| has_gap(name)).collect())
    }

    /// The same, done by these edits of the plan.
    #[must_use]
    pub(crate) fn done_by(mut self, edits: Vec<Edit>) -> Self {
        self.0.edits = edits;
        self
    }

    /// The same, and another sentence behind it: the values of both, under the name of the first.
    #[must_use]
    pub(crate) fn and_then(mut self, other: &Self) -> Self {
        self.0.text.extend([" ", other.0.text.as_str()]);
        for (name, value) in &other.0.values {
            self.0.values.put(name, value.clone());
        }
        self
    }

    /// A sentence with the values of another one.
    pub(crate) fn of_values(wording: &'static Wording, values: Gaps) -> Self {
        Self::from_pairs(wording, values)
    }

    /// The sentence in English.
    pub fn into_text(self) -> String {
        self.0.text
    }

    fn from_pairs(wording: &'static Wording, values: Gaps) -> Self {
        let text = words::fill(wording.text, &values);
        Self(Box::new(Sentence { code: wording.code, values, text, edits: Vec::new() }))
    }
}

fn pairs(
    names: &'static str,
    values: &[&dyn Shown],
) -> impl Iterator<Item = (&'static str, Value)> {
    names.split(',').map(str::trim).zip(values).map(|(name, shown)| (name, shown.value()))
}

/// Makes a [`Message`] of a constant: `say!(words::PIN_READS, pin = name, voltage = v)`. It does not compile where a gap
/// gets no value.
#[macro_export]
macro_rules! say {
    ($wording:path $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::say_of!(
            const { $crate::words::filled_by($wording, &[$(stringify!($name)),*]) }
            $(, $name = $value)*
        )
    };
}

/// Makes a [`Message`] of a wording that was chosen before.
#[macro_export]
macro_rules! say_of {
    ($wording:expr $(,)?) => {
        $crate::message::Message::plain($wording)
    };
    ($wording:expr $(, $name:ident = $value:expr)+ $(,)?) => {
        $crate::message::Message::new(
            $wording,
            stringify!($($name),+),
            &[$(&$value as &dyn $crate::message::Shown),+],
        )
    };
}
