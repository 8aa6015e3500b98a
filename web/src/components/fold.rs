//! A part that is folded away until it is wanted, and then stays open: it must not close under the hand.

use std::rc::Rc;

use web_sys::HtmlDetailsElement;
use yew::prelude::*;

use crate::{
    browser::folds,
    element::{View, el, keyed, on},
};

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

/// The same, and it closes once it is no longer wanted.
pub(crate) fn fold_while(
    class: &'static str,
    summary: impl Into<AttrValue>,
    wanted: bool,
    children: View,
) -> View {
    // another one, which was never opened
    let key = if wanted { "wanted" } else { "done" };
    keyed(key, el!("div"; fold(class, summary, wanted, children)))
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

/// What is folded away, and made only while it is open. It is remembered by its name whether it was left open.
pub(crate) fn lazy_fold(
    name: String,
    summary: &'static str,
    draw: Rc<dyn Fn() -> View>,
    version: usize,
) -> View {
    html! { <LazyFold {name} {summary} {version} draw={Drawing(draw)} /> }.into()
}

#[derive(Properties, PartialEq)]
struct LazyProps {
    name: String,
    summary: &'static str,
    draw: Drawing,
    /// Another one where something else would be drawn.
    version: usize,
}

#[derive(Clone)]
struct Drawing(Rc<dyn Fn() -> View>);

impl PartialEq for Drawing {
    fn eq(&self, _: &Self) -> bool {
        // the version tells whether it draws the same
        true
    }
}

const CLASS: &str = "more";

#[component]
fn LazyFold(props: &LazyProps) -> Html {
    let opened = use_state(|| folds::is_open(&props.name));
    let toggle = {
        let (opened, name) = (opened.clone(), props.name.clone());
        Callback::from(move |event: Event| {
            // what unfolds inside tells of itself as well
            let details = event.target_dyn_into::<HtmlDetailsElement>();
            if let Some(details) = details.filter(|it| it.class_name() == CLASS) {
                folds::remember(&name, details.open());
                opened.set(details.open());
            }
        })
    };
    let details = el!("details", "class" = CLASS, "open" = *opened;
        el!("summary"; props.summary),
        opened.then(|| (props.draw.0)()),
    );
    on("toggle", details, toggle).into()
}
