//! Question 4: at what speed does the relay pull in?

use yew::prelude::*;

use super::{Props, form_of, frame, section};
use crate::components::AnswerView;

#[component]
pub(crate) fn CrankingView(props: &Props) -> Html {
    let section = section(&props.shown.0.report, "cranking");
    let answer = section.and_then(|section| section.answers.first());
    frame(
        section,
        html! {
            if let Some(answer) = answer {
                <AnswerView answer={answer.clone()}>{ form_of(props, "cranking") }</AnswerView>
            }
        },
    )
}
