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
    /// The sentence named `code`, with these values in its gaps.
    pub fn new(code: &'static str, values: BTreeMap<&'static str, Value>) -> Self {
        let text = words::fill(words::sentence(code), &values);
        Self { code, values, text }
    }
}

/// Makes a [`Message`]: `say!("rest.pin-reads", pin = name, voltage = v)`.
#[macro_export]
macro_rules! say {
    ($code:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::message::Message::new(
            $code,
            std::collections::BTreeMap::from([$((stringify!($name), $crate::quantity::Value::from($value))),*]),
        )
    };
}
