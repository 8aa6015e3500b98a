//! The sentences of the question of rest.

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] =
    &[("rest.question", "Question"), ("rest.open", "Not answered yet.")];

pub(super) const EXPLANATIONS: &[Explanation] = &[];
