//! A part of the page that is drawn anew only where something that it shows has changed: an edit changes little, and a
//! plan with forty loads has thirty thousand elements.

use std::{mem::discriminant, rc::Rc};

use quietpin_core::plan::MOST_ENTRIES;
use yew::prelude::*;

use super::Page;
use crate::{
    element::{View, all},
    state::State,
};

/// How a part is drawn, and when it need not be.
#[derive(Clone, Copy)]
pub(crate) struct Drawn {
    /// Draws the part with this number.
    pub(crate) draw: fn(&Page, usize) -> View,
    /// Whether all that it shows is the same in both. What it does when pressed must not depend on anything else.
    pub(crate) is_same: fn(&State, &State, usize) -> bool,
}

/// Whether something is as it was; most is handed on from one report to the next, and need not be looked at.
pub(crate) fn is_as_before<T: PartialEq>(one: Option<&Rc<T>>, other: Option<&Rc<T>>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => Rc::ptr_eq(one, other) || one == other,
        (one, other) => one.is_none() && other.is_none(),
    }
}

/// The parts with these numbers, each as it was drawn before where that will do; no more of them than are read.
pub(crate) fn parts(page: &Page, count: usize, how: Drawn) -> View {
    all((0..count.min(MOST_ENTRIES))
        .map(|at| html! { <Part key={at} page={page.clone()} {at} {how} /> }.into()))
}

#[derive(Properties)]
struct Props {
    page: Page,
    at: usize,
    how: Drawn,
}

impl PartialEq for Props {
    fn eq(&self, other: &Self) -> bool {
        let (state, changed) = (&self.page.state, &other.page.state);
        // at one place of the page, all parts are drawn in one way
        self.at == other.at
            && discriminant(&state.answers) == discriminant(&changed.answers)
            && discriminant(&state.details) == discriminant(&changed.details)
            && (self.how.is_same)(state, changed, self.at)
    }
}

#[component]
fn Part(props: &Props) -> Html {
    (props.how.draw)(&props.page, props.at).into()
}
