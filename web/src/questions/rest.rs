//! Question 3: how does this output rest, before the load is connected?

use quietpin_core::fields;
use yew::prelude::*;

use super::{Props, form, frame, section};
use crate::{
    components::{AnswerView, Dispatch},
    state::{Action, List},
};

#[component]
pub(crate) fn RestView(props: &Props) -> Html {
    let state = &props.shown.0;
    let section = section(&state.report, "rest");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let of_load = |at: usize| answers.iter().find(|answer| answer.subject == format!("loads.{at}"));
    let others = answers.iter().filter(|answer| !answer.subject.starts_with("loads."));
    let outputs = List::Outputs.length(&state.plan);
    frame(
        section,
        html! {
            <>
                { for others.map(|answer| html! { <AnswerView key={answer.subject.clone()} answer={answer.clone()} /> }) }
                { for (0..List::Loads.length(&state.plan)).map(|at| html! {
                    <div key={format!("load{at}")}>
                        if let Some(answer) = of_load(at) {
                            <AnswerView answer={answer.clone()}>{ entry(props, List::Loads, at) }</AnswerView>
                        } else {
                            { entry(props, List::Loads, at) }
                        }
                    </div>
                }) }
                { add(List::Loads, "Add a load", props.dispatch.clone()) }
                <h3>{ "The controller’s outputs" }</h3>
                { for (0..outputs).map(|at| html! { <div key={format!("output{at}")}>{ entry(props, List::Outputs, at) }</div> }) }
                { add(List::Outputs, "Add an output", props.dispatch.clone()) }
            </>
        },
    )
}

fn entry(props: &Props, list: List, at: usize) -> Html {
    let record = format!("{}.{at}", list.name());
    let fields: Vec<_> = fields::of(list.name()).collect();
    let named = props.shown.0.plan.get(&format!("{record}.name")).unwrap_or_default();
    let (what, send) = (what(list, at, named), props.dispatch.clone());
    let onclick = Callback::from(move |_: MouseEvent| send.dispatch(Action::Remove(list, at)));
    html! {
        <fieldset id={format!("at-{record}-fields")}>
            <legend>{ &what }</legend>
            { form(props, &record, &fields) }
            <button type="button" class="quiet" {onclick}>{ format!("Remove {what}") }</button>
        </fieldset>
    }
}

fn what(list: List, at: usize, named: &str) -> String {
    let kind = match list {
        List::Outputs => "output",
        List::Loads => "load",
    };
    if named.trim().is_empty() {
        format!("{kind} {}", at + 1)
    } else {
        format!("{kind} “{}”", named.trim())
    }
}

fn add(list: List, label: &'static str, send: Dispatch) -> Html {
    let onclick = Callback::from(move |_: MouseEvent| send.dispatch(Action::Add(list)));
    html! { <button type="button" class="add" {onclick}>{ label }</button> }
}
