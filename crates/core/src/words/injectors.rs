//! The sentences of the question of injectors.

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] =
    &[("injectors.question", "Question"), ("injectors.open", "Not answered yet.")];

pub(super) const EXPLANATIONS: &[Explanation] = &[];
