//! The supply and temperatures between which every answer must hold.

use quietpin_core::schema::Part;

use super::form_of;
use crate::{
    components::Page,
    element::{View, el},
};

/// The question, its answers and its fields.
pub(crate) fn conditions_view(page: &Page) -> View {
    el!("section", "id" = "at-conditions", "class" = "question", "tabindex" = "-1",
        "aria-labelledby" = "title-conditions";
        el!("h2", "id" = "title-conditions"; "Between which voltages and temperatures must it hold?"),
        el!("p", "class" = "why"; "Every answer is worked out at the ends of these."),
        form_of(page, Part::Conditions),
    )
}
