//! One answer: the verdict in words, why, what to do; below it the pictures, the numbers and the working.

use quietpin_core::report::{Answer, Picture};
use yew::prelude::*;

use super::{WorkingView, figures};
use crate::{pictures, words};

#[derive(Properties, PartialEq)]
pub(crate) struct Props {
    pub(crate) answer: Answer,
    /// The fields that the answer rests on: they stand between the verdict and the numbers.
    #[prop_or_default]
    pub(crate) children: Html,
}

#[component]
pub(crate) fn AnswerView(props: &Props) -> Html {
    let answer = &props.answer;
    let tone = answer.verdict.tone;
    html! {
        <article class="answer" id={format!("at-{}", answer.subject)} tabindex="-1">
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
            { props.children.clone() }
            { for answer.pictures.iter().map(picture) }
            { figures::figures(&answer.figures) }
            { for answer.tables.iter().map(figures::table) }
            <WorkingView parts={working(answer)} />
        </article>
    }
}

fn picture(picture: &Picture) -> Html {
    match picture {
        Picture::Cycle(cycle) => html! { <pictures::CycleView cycle={cycle.clone()} /> },
        Picture::Circuit(circuit) => html! { <pictures::CircuitView circuit={circuit.clone()} /> },
        Picture::Timeline(timeline) => {
            html! { <pictures::TimelineView timeline={timeline.clone()} /> }
        }
    }
}

fn working(answer: &Answer) -> Vec<(AttrValue, Vec<quietpin_core::working::Step>)> {
    let figures =
        answer.figures.iter().map(|it| (it.label.text.clone().into(), it.working.clone()));
    let tables =
        answer.tables.iter().map(|it| (it.caption.text.clone().into(), it.working.clone()));
    figures.chain(tables).collect()
}
