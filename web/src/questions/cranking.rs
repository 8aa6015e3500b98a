//! Question 4: at what speed does the relay pull in?

use super::question_view;
use crate::{components::Page, element::View};

/// The question, its answers and its fields.
pub(crate) fn cranking_view(page: &Page) -> View {
    question_view(page, "cranking")
}
