//! The sentences of the question of channels.

use super::{Explanation, Sentence};

pub(super) const SENTENCES: &[Sentence] =
    &[("channels.question", "Question"), ("channels.open", "Not answered yet.")];

pub(super) const EXPLANATIONS: &[Explanation] = &[];
