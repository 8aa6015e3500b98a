//! From the text of a plan file to a plan, and back.

use super::{MOST_BYTES, Plan, file, node::DocumentNode};
use serde::Serialize;

/// The version of the format that this program writes. It reads this one and older ones.
pub const VERSION: u32 = 2;

/// Why a file is not a plan. The plan that is open stays as it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "typescript", derive(ts_rs::TS))]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum ReadError {
    /// Larger than [`MOST_BYTES`], or would be when it is written again.
    TooLarge {
        /// Its size in bytes, or no less than that.
        bytes: usize,
    },
    /// No JSON.
    NotJson {
        /// Where and why.
        detail: String,
    },
    /// JSON, but not a plan.
    NotAPlan {
        /// What is missing.
        detail: String,
    },
    /// Written by a later version of this program.
    Newer {
        /// The version of the file.
        version: u64,
    },
}

impl std::fmt::Display for ReadError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::TooLarge { bytes } => write!(
                f,
                "This file makes a plan of {bytes} bytes; a plan has far less than {MOST_BYTES}. It was not opened."
            ),
            Self::NotJson { detail } => write!(
                f,
                "This file is not a plan: it can't be read as JSON ({detail}). It was not opened."
            ),
            Self::NotAPlan { detail } => {
                write!(f, "This file is not a plan: {detail} It was not opened.")
            }
            Self::Newer { version } => write!(
                f,
                "This plan was saved by a newer Quietpin (its format is {version}, this one reads up to {VERSION}). \
                 Open it with the newer one; it was left as it is."
            ),
        }
    }
}

impl std::error::Error for ReadError {}

/// Reads the text of a plan file.
///
/// # Errors
/// [`ReadError`] says why it is not a plan that this program can open.
pub fn parse(text: &str) -> Result<Plan, ReadError> {
    if text.len() > MOST_BYTES {
        return Err(ReadError::TooLarge { bytes: text.len() });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    // first as plain JSON, so that a newer version is named before its unknown fields are
    let document: DocumentNode = serde_json::from_str(text)
        .map_err(|error| ReadError::NotJson { detail: error.to_string() })?;
    if !matches!(document, DocumentNode::Object(_)) {
        return Err(ReadError::NotAPlan { detail: "it is not an object in braces.".into() });
    }
    let bytes = document.weight(0);
    if bytes > 8 * MOST_BYTES {
        return Err(ReadError::TooLarge { bytes });
    }
    match document.member("quietpin").and_then(DocumentNode::whole) {
        None => Err(ReadError::NotAPlan {
            detail: format!(
                "it does not begin with its version, as in {{ \"quietpin\": {VERSION}, … }}."
            ),
        }),
        Some(version) if version > u64::from(VERSION) => Err(ReadError::Newer { version }),
        Some(0) => {
            Err(ReadError::NotAPlan { detail: "there is no version 0 of the format.".into() })
        }
        Some(_) => file::from_node(document)
            .map_err(|detail| ReadError::NotAPlan { detail })
            .and_then(written_again),
    }
}

/// What is read must be written, and read again.
fn written_again(plan: Plan) -> Result<Plan, ReadError> {
    if plan.fits() { Ok(plan) } else { Err(ReadError::TooLarge { bytes: write(&plan).len() }) }
}

/// The text of a plan file, in this version.
pub fn write(plan: &Plan) -> String {
    let plan = Plan { quietpin: VERSION, ..plan.clone() };
    // a record of texts has no form that JSON lacks
    serde_json::to_string_pretty(&plan).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields::{channels, engine};

    #[test]
    fn a_plan_is_the_same_after_writing_and_reading() {
        let mut plan = Plan { quietpin: VERSION, ..Plan::default() };
        plan.put(engine::ORDER, "1-5-3-6-2-4");
        plan.put(channels::COILS_WIRED, "1");
        plan.put(channels::COILS_WIRED.in_cell(2), "3");
        assert_eq!(parse(&write(&plan)), Ok(plan));
    }

    #[test]
    fn numbers_may_stand_without_quotes() {
        let plan =
            parse(r#"{"quietpin": 1, "engine": {"cylinders": 6, "order": null}}"#).expect("a plan");
        assert_eq!(plan.text(engine::CYLINDERS), "6");
        assert_eq!(plan.text(engine::ORDER), "");
    }

    #[track_caller]
    fn check_fails(text: &str, expected: &str) {
        let error = parse(text).expect_err(text);
        let kind = serde_json::to_value(&error).expect("data")["kind"].clone();
        assert_eq!(kind, expected, "{error}");
    }

    #[test]
    fn what_is_not_a_plan_is_said() {
        check_fails("", "not-json");
        check_fails("\u{0}\u{1}garbage", "not-json");
        check_fails("[]", "not-a-plan");
        check_fails("{}", "not-a-plan");
        check_fails(r#"{"quietpin": 0}"#, "not-a-plan");
        check_fails(r#"{"quietpin": 3, "later": {}}"#, "newer");
        check_fails(&"[".repeat(100_000), "not-json");
        check_fails(&" ".repeat(10_000_000), "too-large");
    }

    #[test]
    fn what_has_no_place_is_kept_and_told() {
        for (members, path, text) in [
            (r#""engine": {"cylindres": 6}"#, "engine.cylindres", "6"),
            (r#""engine": {"cylinders": [6]}"#, "engine.cylinders.0", "6"),
            (r#""engine": {"cylinders": 6, "cylinders": 4}"#, "engine.cylinders", "4"),
            (r#""engine": 6"#, "engine", "6"),
            (r#""outputs": {"name": true}"#, "outputs.name", "true"),
            (r#""loads": [{"name": {"first": "fan"}}]"#, "loads.0.name.first", "fan"),
            (r#""later": {"new": "fact"}"#, "later.new", "fact"),
            (r#""left_over": {"light.offset": "12"}"#, "light.offset", "12"),
        ] {
            let plan = parse(&format!(r#"{{"quietpin": 2, {members}}}"#)).expect(members);
            assert_eq!(plan.left_over(), [(path.to_owned(), text.to_owned())], "{members}");
            assert_eq!(parse(&write(&plan)).as_ref(), Ok(&Plan { quietpin: 2, ..plan.clone() }));
            let report = crate::report::report(&plan);
            let told = report.findings.iter().find(|it| it.message.code == "field.no-place");
            let told = &told.expect(members).message.text;
            assert!(told.contains(path) && told.contains(text), "{told}");
        }
    }
}
