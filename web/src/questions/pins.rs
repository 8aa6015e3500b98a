//! Which output takes which load?

use super::answers_in;
use crate::{cards::Card, state::State};

/// What is asked of outputs and loads is asked with them.
pub(super) fn cards(state: &State) -> Vec<Card> {
    vec![Card::new("pins", "Pins").answering(answers_in(&state.report, "pins"))]
}
