//! The working, as an engineer writes it.

use quietpin_core::working::Step;
use yew::prelude::*;

/// What was worked out, each part with its steps.
pub(crate) fn working<'a>(parts: impl Iterator<Item = (&'a str, &'a [Step])>) -> Html {
    let parts: Vec<_> = parts.filter(|(_, steps)| !steps.is_empty()).collect();
    if parts.is_empty() {
        return html! {};
    }
    html! {
        <details class="working">
            <summary>{ "Show the working" }</summary>
            { for parts.into_iter().map(|(title, steps)| html! {
                <section>
                    <p class="part-name">{ title.to_owned() }</p>
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
