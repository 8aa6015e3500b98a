//! One answer: the verdict in words, why, what to do; below it the pictures, the numbers and the working.

use quietpin_core::report::{Answer, Picture};
use yew::prelude::*;

use super::{figures, working};
use crate::{pictures, words};

/// The fields that the answer rests on stand between the verdict and the numbers.
pub(crate) fn answer_view(answer: &Answer, fields: Html) -> Html {
    let tone = answer.verdict.tone;
    // each part has its own fixed place: a part that comes or goes must not make the fields anew, or the letter
    // that is being typed is lost
    html! {
        <article key={key_of(&answer.subject).to_owned()} class="answer" id={format!("answer-{}", answer.subject)} tabindex="-1">
            <div class="said">
                if let Some(title) = &answer.title { <h3>{ &title.text }</h3> }
                <div class={classes!("verdict", words::tone_class(tone))}>
                    <span class="sign" aria-hidden="true">{ words::tone_sign(tone) }</span>
                    <p aria-live="polite">{ &answer.verdict.message.text }</p>
                </div>
                if let Some(why) = &answer.why { <p class="why">{ &why.text }</p> }
                if !answer.to_do.is_empty() {
                    <ul class="to-do" aria-label="What to do">
                        { for answer.to_do.iter().map(|it| html! { <li>{ &it.text }</li> }) }
                    </ul>
                }
                { for answer.cautions.iter().map(|it| html! {
                    <p class="caution"><strong>{ "Caution: " }</strong>{ &it.text }</p>
                }) }
            </div>
            <div class="fields">{ fields }</div>
            <div class="numbers">
                { for answer.pictures.iter().map(picture) }
                { figures::figures(&answer.figures) }
                { for answer.tables.iter().map(figures::table) }
                { working_of(answer) }
            </div>
        </article>
    }
}

/// What an answer is about, without the field that it points at now.
fn key_of(subject: &str) -> &str {
    subject.strip_suffix("_count").or_else(|| subject.strip_suffix("_mode")).unwrap_or(subject)
}

fn picture(picture: &Picture) -> Html {
    match picture {
        Picture::Cycle(cycle) => pictures::cycle_view(cycle),
        Picture::Circuit(circuit) => html! { <pictures::CircuitView circuit={circuit.clone()} /> },
        Picture::Timeline(timeline) => pictures::timeline_view(timeline),
    }
}

fn working_of(answer: &Answer) -> Html {
    let figures = answer.figures.iter().map(|it| (it.label.text.as_str(), it.working.as_slice()));
    let tables = answer.tables.iter().map(|it| (it.caption.text.as_str(), it.working.as_slice()));
    working(figures.chain(tables))
}
