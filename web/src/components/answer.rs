//! One answer: the verdict in words, why, what to do; below it the pictures, the numbers and the working.

use std::rc::Rc;

use quietpin_core::{
    message::Message,
    report::{Answer, Picture},
};
use yew::prelude::*;

use super::{Page, checklist::checklist_view, figures, working};
use crate::{
    element::{View, all, el, keyed, several, whole},
    pictures,
    state::Answers,
    words,
};

/// The fields that the answer rests on stand between the verdict and the numbers.
pub(crate) fn answer_view(page: &Page, answer: &Rc<Answer>, fields: View) -> View {
    let numbers = match page.state.answers {
        Answers::There(answering) => {
            let (answer, draw) = (Rc::clone(answer), answering.numbers);
            Some(html! { <Numbers {answer} {draw} /> }.into())
        }
        Answers::Coming | Answers::Missed => None,
    };
    let id = format!("answer-{}", answer.subject);
    let view = el!("article", "class" = "answer", "id" = id, "tabindex" = "-1";
        said(answer),
        el!("div"; all(answer.lists.iter().map(|it| checklist_view(page, it)))),
        el!("div", "class" = "fields"; fields),
        el!("div", "class" = "numbers"; numbers),
    );
    keyed(key_of(&answer.subject), view)
}

/// What stands below an answer, drawn anew only where the answer is another one.
#[component]
fn Numbers(props: &Numbered) -> Html {
    (props.draw)(&props.answer).into()
}

#[derive(Properties)]
struct Numbered {
    answer: Rc<Answer>,
    draw: fn(&Answer) -> View,
}

impl PartialEq for Numbered {
    fn eq(&self, other: &Self) -> bool {
        // there is one function that draws; and to compare the answers would take as long as to draw them
        Rc::ptr_eq(&self.answer, &other.answer)
    }
}

/// What stands below an answer: its pictures, its numbers, its tables and the working.
pub(crate) fn numbers(answer: &Answer) -> View {
    several!(
        all(answer.pictures.iter().map(picture)),
        figures::figures(&answer.figures),
        all(answer.tables.iter().map(figures::table)),
        working_of(answer),
    )
}

fn said(answer: &Answer) -> View {
    let tone = answer.verdict.tone;
    let to_do = || {
        el!("ul", "class" = "to-do", "aria-label" = "What to do";
            all(answer.to_do.iter().map(|it| el!("li"; whole(&it.text)))))
    };
    let caution =
        |it: &Message| el!("p", "class" = "caution"; el!("strong"; "Caution: "), whole(&it.text));
    el!("div", "class" = "said";
        answer.title.as_ref().map(|it| el!("h3"; &it.text)),
        el!("div", "class" = format!("verdict {}", words::tone_class(tone));
            el!("span", "class" = "sign", "aria-hidden" = "true"; words::tone_sign(tone)),
            el!("p", "aria-live" = "polite"; whole(&answer.verdict.message.text)),
        ),
        answer.why.as_ref().map(|it| el!("p", "class" = "why"; whole(&it.text))),
        (!answer.to_do.is_empty()).then(to_do),
        all(answer.cautions.iter().map(caution)),
    )
}

/// What an answer is about, without the field that it points at now.
fn key_of(subject: &str) -> &str {
    subject.strip_suffix("_count").or_else(|| subject.strip_suffix("_mode")).unwrap_or(subject)
}

fn picture(picture: &Picture) -> View {
    match picture {
        Picture::Cycle(cycle) => pictures::cycle_view(cycle),
        Picture::Strip(strip) => pictures::strip_view(strip),
        Picture::Circuit(circuit) => {
            html! { <pictures::CircuitView circuit={circuit.clone()} /> }.into()
        }
        Picture::Timeline(timeline) => pictures::timeline_view(timeline),
        Picture::Traces(traces) => pictures::traces_view(traces),
    }
}

fn working_of(answer: &Answer) -> View {
    let figures = answer.figures.iter().map(|it| (it.label.text.as_str(), it.working.as_slice()));
    let tables = answer.tables.iter().map(|it| (it.caption.text.as_str(), it.working.as_slice()));
    working(figures.chain(tables))
}
