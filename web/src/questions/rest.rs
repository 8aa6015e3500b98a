//! Question 3: how does this output rest, before the load is connected?

use quietpin_core::fields;
use yew::prelude::*;

use super::{form, frame, section};
use crate::{
    components::{Dispatch, Page, answer_view},
    state::{Action, List},
};

/// The question, its answers and its fields.
pub(crate) fn rest_view(page: &Page) -> Html {
    let state = &page.state;
    let section = section(&state.report, "rest");
    let answers = section.map(|section| section.answers.as_slice()).unwrap_or_default();
    let of_load = |at: usize| answers.iter().find(|answer| answer.subject == format!("loads.{at}"));
    let others = answers.iter().filter(|answer| !answer.subject.starts_with("loads."));
    let outputs = List::Outputs.length(&state.plan);
    frame(
        section,
        html! {
            <>
                <div>{ for others.map(|answer| answer_view(answer, html! {})) }</div>
                <div>{ for (0..List::Loads.length(&state.plan)).map(|at| html! {
                    <div key={format!("load{at}")}>
                        if let Some(answer) = of_load(at) {
                            { answer_view(answer, entry(page, List::Loads, at)) }
                        } else {
                            { entry(page, List::Loads, at) }
                        }
                    </div>
                }) }</div>
                { add(List::Loads, "Add a load", page.send.clone()) }
                <h3>{ "The controller’s outputs" }</h3>
                <div>{ for (0..outputs).map(|at| html! { <div key={format!("output{at}")}>{ entry(page, List::Outputs, at) }</div> }) }</div>
                { add(List::Outputs, "Add an output", page.send.clone()) }
            </>
        },
    )
}

fn entry(page: &Page, list: List, at: usize) -> Html {
    let record = format!("{}.{at}", list.name());
    let fields: Vec<_> = fields::of(list.name()).collect();
    let named = page.state.plan.get(&format!("{record}.name")).unwrap_or_default();
    let (what, send) = (what(list, at, named), page.send.clone());
    let onclick = Callback::from(move |_: MouseEvent| send.dispatch(Action::Remove(list, at)));
    html! {
        <fieldset id={format!("at-{record}-fields")}>
            <legend>{ &what }</legend>
            { form(page, &record, &fields) }
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
