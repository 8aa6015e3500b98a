//! Every text of a report, with its place in it.

use quietpin_core::report::Report;
use serde_json::Value;

/// The texts of a report.
#[derive(Debug, Default)]
pub struct Texts {
    texts: Vec<(String, String)>,
    without_number: Vec<String>,
}

impl Texts {
    /// All that a report says, and all the numbers that it says it with.
    ///
    /// # Panics
    ///
    /// If a report is no plain data.
    #[expect(clippy::expect_used, reason = "a test ends by it")]
    pub fn of(report: &Report) -> Self {
        let mut texts = Self::default();
        let report = serde_json::to_value(report).expect("a report is data");
        texts.walk("report", &report);
        texts
    }

    /// The texts, each with its place.
    pub fn all(&self) -> impl Iterator<Item = (&str, &str)> {
        self.texts.iter().map(|(place, text)| (place.as_str(), text.as_str()))
    }

    /// Places where a number should be and is none: JSON has no word for NaN or for what is infinite.
    pub fn without_number(&self) -> &[String] {
        &self.without_number
    }

    fn walk(&mut self, place: &str, value: &Value) {
        match value {
            Value::String(text) => self.texts.push((place.to_owned(), text.clone())),
            Value::Array(items) => {
                for (at, item) in items.iter().enumerate() {
                    if item.is_null() {
                        self.without_number.push(format!("{place}.{at}"));
                    }
                    self.walk(&format!("{place}.{at}"), item);
                }
            }
            Value::Object(entries) => {
                if entries.contains_key("shown")
                    && entries.contains_key("unit")
                    && !entries["number"].is_number()
                {
                    self.without_number.push(place.to_owned());
                }
                for (name, entry) in entries {
                    // every bare number of a picture carries its unit in its name
                    if entry.is_null()
                        && (name.ends_with("_deg") || name.ends_with("_rpm") || name == "number")
                    {
                        self.without_number.push(format!("{place}.{name}"));
                    }
                    self.walk(&format!("{place}.{name}"), entry);
                }
            }
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }
}
