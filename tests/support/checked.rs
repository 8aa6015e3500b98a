//! What was compared with something outside the project, and how it came out.

/// A comparison, as it came out.
#[derive(Clone, Debug)]
pub struct Checked {
    /// The question that rests on it, by its id.
    pub question: &'static str,
    /// What was compared.
    pub what: &'static str,
    /// With what: the source, and its edition.
    pub against: &'static str,
    /// How many numbers.
    pub cases: usize,
    /// How far they are apart at most, and how far they may be.
    pub apart: String,
}

impl Checked {
    /// A comparison of things that must be the same.
    pub fn exact(
        question: &'static str,
        what: &'static str,
        against: &'static str,
        cases: usize,
    ) -> Self {
        Self { question, what, against, cases, apart: "the same".to_owned() }
    }

    /// A row of a table.
    pub fn row(&self) -> String {
        let Self { what, against, cases, apart, .. } = self;
        format!("| {what} | {against} | {cases} | {apart} |\n")
    }
}
