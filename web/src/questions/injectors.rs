//! Question 2: can the outputs carry these injectors?

use yew::prelude::*;

use super::{Props, form_of, frame, section};
use crate::components::AnswerView;

#[component]
pub(crate) fn InjectorsView(props: &Props) -> Html {
    let section = section(&props.shown.0.report, "injectors");
    let answer = section.and_then(|section| section.answers.first());
    frame(
        section,
        html! {
            if let Some(answer) = answer {
                <AnswerView answer={answer.clone()}>{ form_of(props, "injectors") }</AnswerView>
            }
        },
    )
}
