//! What the tests share: the example plans, and reading the reference files.
#![expect(
    clippy::panic,
    reason = "a reference file that can't be read must end the test, and say where"
)]

#[path = "support/checked.rs"]
pub mod checked;
#[path = "support/plans.rs"]
pub mod plans;
#[path = "support/texts.rs"]
pub mod texts;
#[path = "support/typed.rs"]
pub mod typed;

pub use checked::Checked;

use std::env;
use std::fs;
use std::path::PathBuf;

/// A row of a reference table, which knows where it stands.
#[derive(Clone, Debug)]
pub struct Row {
    file: &'static str,
    line: usize,
    cells: Vec<(String, String)>,
}

/// Holds a file of this package against what the tests make of it; `cargo xtask bless` writes it.
///
/// # Panics
///
/// If it is another.
#[track_caller]
pub fn blessed(file: &str, made: &str) {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(file);
    if env::var_os("QUIETPIN_BLESS").is_some() {
        fs::write(&path, made).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    }
    let there = fs::read_to_string(&path).unwrap_or_default();
    assert!(there == made, "{file} is not current: cargo xtask bless");
}

/// The text of a file under `tests/reference/`.
///
/// # Panics
///
/// If it can't be read.
pub fn reference(file: &'static str) -> String {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("reference").join(file);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// All rows of a table under `tests/reference/`.
///
/// # Panics
///
/// If it can't be read, or a row has another length than the heading.
pub fn rows(file: &'static str) -> Vec<Row> {
    let text = reference(file);
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let heading = reader.headers().cloned().unwrap_or_else(|error| panic!("{file}: {error}"));
    let rows = reader.records().enumerate().map(|(index, record)| {
        let record = record.unwrap_or_else(|error| panic!("{file}: {error}"));
        let cells = heading.iter().map(str::to_owned).zip(record.iter().map(str::to_owned));
        // Counted from 1, under the heading.
        Row { file, line: index + 2, cells: cells.collect() }
    });
    rows.collect()
}

impl Row {
    /// File, line and first cell, for a message.
    pub fn place(&self) -> String {
        let name = self.cells.first().map_or("", |(_, text)| text);
        format!("tests/reference/{}:{} ({name})", self.file, self.line)
    }

    /// The text of a cell.
    ///
    /// # Panics
    ///
    /// If there is no such column.
    pub fn text(&self, column: &str) -> &str {
        let cell = self.cells.iter().find(|(name, _)| name == column);
        cell.map_or_else(|| panic!("{}: no column {column}", self.place()), |(_, text)| text)
    }

    /// The number in a cell, or nothing where it is blank.
    ///
    /// # Panics
    ///
    /// If there is no such column, or something else in it.
    pub fn maybe(&self, column: &str) -> Option<f64> {
        let text = self.text(column);
        let read =
            || text.parse().unwrap_or_else(|_| panic!("{}: {column} is {text}", self.place()));
        (!text.is_empty()).then(read)
    }

    /// The number in a cell.
    ///
    /// # Panics
    ///
    /// If it is blank or no number.
    pub fn number(&self, column: &str) -> f64 {
        self.maybe(column).unwrap_or_else(|| panic!("{}: {column} is blank", self.place()))
    }
}

/// The largest disagreement met so far, as a share of what is allowed.
#[derive(Clone, Debug, Default)]
pub struct Worst {
    cases: usize,
    share: f64,
    error: f64,
    tolerance: f64,
    place: String,
}

impl Worst {
    /// Holds a number against what the source says.
    ///
    /// # Panics
    ///
    /// If it is missing or beyond the tolerance.
    #[track_caller]
    pub fn check(&mut self, place: &str, found: Option<f64>, expected: f64, tolerance: f64) {
        let found = found.unwrap_or(f64::NAN);
        let error = (found - expected).abs();
        assert!(
            error <= tolerance,
            "{place}: {found} instead of {expected}, {error:e} apart where {tolerance:e} is allowed"
        );
        let share = error / tolerance;
        self.cases += 1;
        if share >= self.share {
            *self = Self { cases: self.cases, share, error, tolerance, place: place.to_owned() };
        }
    }

    /// How it came out, to two digits, so that any machine says the same.
    pub fn checked(
        &self,
        question: &'static str,
        what: &'static str,
        against: &'static str,
        unit: &str,
    ) -> Checked {
        let Self { cases, error, tolerance, .. } = *self;
        let apart = if error == 0.0 {
            "the same".to_owned()
        } else {
            format!("{error:.1e} of {tolerance:.1e} {unit}").trim_end().to_owned()
        };
        Checked { question, what, against, cases, apart }
    }
}

impl std::fmt::Display for Worst {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let Self { share, error, place, .. } = self;
        write!(formatter, "worst {error:.2e}, {:.1} % of the tolerance, at {place}", 100.0 * share)
    }
}
