//! What the report says, as data: a code, the values in it, and the English made from both.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::{quantity::Value, words};

/// A sentence of the report.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[cfg_attr(feature = "typescript", ts(optional_fields))]
pub struct Message {
    /// Stable name of the sentence: a translation is keyed by it.
    pub code: &'static str,
    /// What stands in the sentence's gaps.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    #[cfg_attr(feature = "typescript", ts(as = "Option<_>"))]
    pub values: BTreeMap<&'static str, Value>,
    /// The sentence in English.
    pub text: String,
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
    /// The sentence named `code`, with these values in its gaps.
    ///
    /// The values come as references to be turned into [`Value`]s here: the report has hundreds of sentences,
    /// and the page carries every byte of the code that builds them.
    pub fn new(code: &'static str, values: &[(&'static str, &dyn Shown)]) -> Self {
        let values = values.iter().map(|(name, shown)| (*name, shown.value())).collect();
        let text = words::fill(words::sentence(code), &values);
        Self { code, values, text }
    }
}

/// Makes a [`Message`]: `say!("rest.pin-reads", pin = name, voltage = v)`.
#[macro_export]
macro_rules! say {
    ($code:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::message::Message::new($code, &[$((stringify!($name), &$value as &dyn $crate::message::Shown)),*])
    };
}
