//! The supply and temperatures between which every answer must hold.

use yew::prelude::*;

use super::form_of;
use crate::components::Page;

/// The question, its answers and its fields.
pub(crate) fn conditions_view(page: &Page) -> Html {
    html! {
        <section id="at-conditions" class="question" tabindex="-1" aria-labelledby="title-conditions">
            <h2 id="title-conditions">{ "Between which voltages and temperatures must it hold?" }</h2>
            <p class="why">{ "Every answer is worked out at the ends of these." }</p>
            { form_of(page, "conditions") }
        </section>
    }
}
