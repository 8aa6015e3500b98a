//! A part that is folded away until it is wanted, and then stays open: it must not close under the hand.

use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    pub(crate) class: &'static str,
    pub(crate) summary: &'static str,
    /// Opens it; what was opened once is closed by the fitter alone.
    pub(crate) wanted: bool,
    pub(crate) children: Html,
}

#[component]
pub(crate) fn Fold(props: &Props) -> Html {
    let opened = use_mut_ref(|| false);
    let mut opened = opened.borrow_mut();
    *opened |= props.wanted;
    html! {
        <details class={props.class} open={*opened}>
            <summary>{ props.summary }</summary>
            { props.children.clone() }
        </details>
    }
}
