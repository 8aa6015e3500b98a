//! One answer: the verdict in words, why, what to do; below it the pictures, the numbers and the working.

use std::rc::Rc;

use quietpin_core::{
    message::Message,
    report::{Answer, Tone},
};
use yew::prelude::*;

use super::{Page, fold};
use crate::{
    element::{View, all, el, keyed, whole},
    words,
};

/// The verdict, why, what to do, and what stands below; with its title, where the card has several answers.
pub(crate) fn answer_view(page: &Page, answer: &Rc<Answer>, is_titled: bool, warned: &[String]) -> View {
    let numbers = page.state.details.there().map(|details| {
        let (answer, draw) = (Rc::clone(answer), details.numbers);
        View::from(html! { <Numbers {answer} {draw} /> })
    });
    let lists = page
        .state
        .details
        .there()
        .map(|details| all(answer.lists.iter().map(|it| (details.checklist)(page, it))));
    let id = format!("answer-{}", answer.subject);
    let view = el!("article", "class" = "answer", "id" = id, "tabindex" = "-1";
        said(answer, is_titled, warned),
        el!("div"; lists),
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
    draw: fn(&Rc<Answer>) -> View,
}

impl PartialEq for Numbered {
    fn eq(&self, other: &Self) -> bool {
        // there is one function that draws; and to compare the answers would take as long as to draw them
        Rc::ptr_eq(&self.answer, &other.answer)
    }
}

fn said(answer: &Answer, is_titled: bool, warned: &[String]) -> View {
    let tone = answer.verdict.tone;
    // of several ways out of what is wrong, the best one is enough at first; of what is to be done, what comes first
    let first = if tone == Tone::Bad { 1 } else { 2 };
    let steps = |steps: &[Message]| {
        el!("ul", "class" = "to-do", "aria-label" = "What to do";
            all(steps.iter().map(|it| el!("li"; whole(&it.text)))))
    };
    let (best, more) = answer.to_do.split_at(first.min(answer.to_do.len()));
    let caution =
        |it: &Message| el!("p", "class" = "caution"; el!("strong"; "Caution: "), whole(&it.text));
    el!("div", "class" = "said";
        answer.title.as_ref().filter(|_| is_titled).map(|it| el!("h3"; &it.text)),
        el!("div", "class" = format!("verdict {}", words::tone_class(tone));
            el!("span", "class" = "sign", "aria-hidden" = "true"; words::tone_sign(tone)),
            el!("p"; whole(&answer.verdict.message.text)),
        ),
        answer.why.as_ref().map(|it| el!("p", "class" = "why"; whole(&it.text))),
        (!best.is_empty()).then(|| steps(best)),
        (!more.is_empty()).then(|| fold("ways", format!("{}: {}", if tone == Tone::Bad { "More to do, and other ways" } else { "More to do" }, more.len()), false, steps(more))),
        all(answer.cautions.iter().filter(|it| !warned.contains(&it.text)).map(caution)),
    )
}

/// What an answer is about, without the field that it points at now.
fn key_of(subject: &str) -> &str {
    subject.strip_suffix("_count").or_else(|| subject.strip_suffix("_mode")).unwrap_or(subject)
}
