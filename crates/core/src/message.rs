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

impl Message {
    /// The sentence named `code`; its gaps are still to be filled.
    pub fn begin(code: &'static str) -> Self {
        Self { code, values: BTreeMap::new(), text: String::new() }
    }

    /// Puts a value into a gap.
    ///
    /// Kept out of line: the report has hundreds of sentences, and the page carries every byte of them.
    #[inline(never)]
    #[must_use]
    pub fn with(mut self, name: &'static str, value: Value) -> Self {
        self.values.insert(name, value);
        self
    }

    /// The whole sentence.
    #[inline(never)]
    #[must_use]
    pub fn end(mut self) -> Self {
        self.text = words::fill(words::sentence(self.code), &self.values);
        self
    }
}

/// Makes a [`Message`]: `say!("rest.pin-reads", pin = name, voltage = v)`.
#[macro_export]
macro_rules! say {
    ($code:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::message::Message::begin($code)
            $(.with(stringify!($name), $crate::quantity::Value::from($value)))*
            .end()
    };
}
