//! Question 2: can the outputs carry these injectors?

use super::question_view;
use crate::{components::Page, element::View};

/// The question, its answers and its fields.
pub(crate) fn injectors_view(page: &Page) -> View {
    question_view(page, "injectors")
}
