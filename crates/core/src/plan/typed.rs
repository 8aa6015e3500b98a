//! Texts as they stand in a plan file, where a number may be written without quotes.

use std::fmt;

use serde::{
    Deserialize, Deserializer,
    de::{Error, Visitor},
};

use super::MOST_ENTRIES;

/// A field that holds a text, or several.
pub(super) trait Place: Sized {
    /// Reads it from a file.
    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error>;
    /// The text at what is left of the path.
    fn get(&self, rest: &str) -> Option<&str>;
    /// The same, to be written to.
    fn place(&mut self, rest: &str) -> Option<&mut String>;
}

impl Place for String {
    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Text::deserialize(deserializer).map(|text| text.0)
    }
    fn get(&self, rest: &str) -> Option<&str> {
        rest.is_empty().then_some(self)
    }
    fn place(&mut self, rest: &str) -> Option<&mut String> {
        rest.is_empty().then_some(self)
    }
}

impl Place for Vec<String> {
    fn read<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let texts = Vec::<Text>::deserialize(deserializer)?;
        Ok(texts.into_iter().map(|text| text.0).collect())
    }
    fn get(&self, rest: &str) -> Option<&str> {
        let at: usize = rest.parse().ok()?;
        self.as_slice().get(at).map(String::as_str).or((at < MOST_ENTRIES).then_some(""))
    }
    fn place(&mut self, rest: &str) -> Option<&mut String> {
        let at: usize = rest.parse().ok()?;
        if at >= MOST_ENTRIES {
            return None;
        }
        if self.len() <= at {
            self.resize(at + 1, String::new());
        }
        self.get_mut(at)
    }
}

struct Text(String);

impl<'de> Deserialize<'de> for Text {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(TextVisitor)
    }
}

struct TextVisitor;

impl Visitor<'_> for TextVisitor {
    type Value = Text;

    fn expecting(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("a text in quotes, or a number")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Text, E> {
        Ok(Text(text.to_owned()))
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<Text, E> {
        Ok(Text(number.to_string()))
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Text, E> {
        Ok(Text(number.to_string()))
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Text, E> {
        Ok(Text(number.to_string()))
    }
    fn visit_unit<E: Error>(self) -> Result<Text, E> {
        Ok(Text(String::new()))
    }
}

/// Reads a field; a number without quotes is taken as its text.
pub(super) fn read<'de, D: Deserializer<'de>, P: Place>(deserializer: D) -> Result<P, D::Error> {
    P::read(deserializer)
}
