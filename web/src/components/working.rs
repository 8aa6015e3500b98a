//! The working, as an engineer writes it.

use quietpin_core::working::Step;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    /// What was worked out, and its steps.
    pub(crate) parts: Vec<(AttrValue, Vec<Step>)>,
}

#[component]
pub(crate) fn WorkingView(props: &Props) -> Html {
    if props.parts.iter().all(|(_, steps)| steps.is_empty()) {
        return html! {};
    }
    html! {
        <details class="working">
            <summary>{ "Show the working" }</summary>
            { for props.parts.iter().filter(|(_, steps)| !steps.is_empty()).map(|(title, steps)| html! {
                <section>
                    <h4>{ title.clone() }</h4>
                    { for steps.iter().map(line) }
                </section>
            }) }
        </details>
    }
}

fn line(step: &Step) -> Html {
    html! {
        <div class="step">
            <p class="symbols">{ step.symbols }</p>
            <p class="filled">{ "= " }{ &step.filled }</p>
            <p class="result">{ "= " }<b>{ &step.result.shown }</b></p>
            <p class="source">{ step.source }</p>
        </div>
    }
}
