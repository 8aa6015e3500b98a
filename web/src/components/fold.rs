//! A part that is folded away until it is wanted, and then stays open: it must not close under the hand.

use yew::prelude::*;

use crate::element::{View, el};

/// What is folded away behind a summary; `wanted` opens it.
pub(crate) fn fold(
    class: &'static str,
    summary: impl Into<AttrValue>,
    wanted: bool,
    children: View,
) -> View {
    let summary = summary.into();
    html! { <Fold {class} {summary} {wanted}>{ Html::from(children) }</Fold> }.into()
}

#[derive(Properties, PartialEq)]
struct Props {
    class: &'static str,
    summary: AttrValue,
    /// Opens it; what was opened once is closed by the fitter alone.
    wanted: bool,
    children: Html,
}

#[component]
fn Fold(props: &Props) -> Html {
    let opened = use_mut_ref(|| false);
    let mut opened = opened.borrow_mut();
    *opened |= props.wanted;
    el!("details", "class" = props.class, "open" = *opened;
        el!("summary"; props.summary.as_str()),
        View::from(props.children.clone()),
    )
    .into()
}
