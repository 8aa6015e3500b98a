//! The sentences of the question of cranking.

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] =
    &[("cranking.question", "Question"), ("cranking.open", "Not answered yet.")];

pub(super) const EXPLANATIONS: &[Explanation] = &[];
